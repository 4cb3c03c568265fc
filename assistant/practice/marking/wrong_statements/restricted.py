"""What an answer makes depend on something, or leaves to be done at any time, that nothing bears out.

"15° right, but only if the pedals are pushed" takes back what it says; "a horn that you can always silence" forgets
the case in which it cannot be.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from assistant.knowledge.records import Fact
from assistant.practice.marking.finding.elements import told_concepts
from assistant.practice.marking.finding.found import Held
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.synonyms import fellows
from assistant.resolving.knowing import Knowledge

_ONLY = re.compile(r"\bbut only (?:if|when|while|with|after|once|as long as|provided)\b(?P<case>[^.;]*)")
_ALWAYS = re.compile(
    r"\b(?:(?:can|may|could) (?:be )?(?:always|at any time)|always (?:can|may|could))\b"
    r"(?: be)?(?P<done>[^.;]*)|\b(?:can|may|could)(?: be)? (?P<early>\w+(?: \w+)?) "
    r"(?:at any time|any time|whenever|always|in any case|at will)\b"
)
_CASES = re.compile(r"\b(?:if|while|with|unless|except|until|but|without|when|only)\b")
_CANNOT = re.compile(r"\bcan(?:not| not|'t) be (\w+)")


def restricted(held: Sequence[Held], need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return what an answer restricts or frees against what is known."""
    text = " ".join(said.reading.words)
    return [*_on_a_condition(text, need, know), *_at_any_time(text, need, said, know), *_some(held, need, said)]


def _some(held: Sequence[Held], need: Need, said: Said) -> Iterator[str]:
    """Yield the number of what there is none of."""
    if counts_none(need) and not any(h.share for h in held):
        yield from (c.amount.raw for c in said.claims if c.amount.value > 0 and c.amount.unit in (None, "", "count"))


def counts_none(need: Need) -> bool:
    """Return whether it is asked how many, and there is none."""
    return _NOT_ONE.match(need.expected) is not None and _COUNTED.search(need.question.text) is not None


_NOT_ONE = re.compile(r"(?:Not one|None|No) ")
_COUNTED = re.compile(r"\bhow many\b", re.IGNORECASE)


def _on_a_condition(text: str, need: Need, know: Knowledge) -> Iterator[str]:
    """Yield the condition of which neither the full answer nor anything told of the subject knows."""
    found = _ONLY.search(text)
    named = told_concepts(know.phrase(found["case"])) if found else frozenset()
    if not found or not named:
        return
    plainly = any(p.figures for p in need.points) and not any(_CASES.search(p.text) for p in need.points)
    things = frozenset(c for c in named if know.lexicon.kinds.get(c, "thing") == "thing" and c[0] not in "~@=")
    told = _told_with(need, know)
    if plainly or not things or not any(things <= each for each in told):
        yield found.group()


def _told_with(need: Need, know: Knowledge) -> list[frozenset[str]]:
    """Return the concepts of each statement that speaks of a thing of the question, and of the full answer."""
    own = told_concepts(need.question)
    facts = (know.phrase(says).concepts for says in _statements(know))
    return [need.said, *(each for each in facts if each & own)]


def _statements(know: Knowledge) -> Iterator[str]:
    for name in know.base.ids("facts"):
        record = know.base.records[name]
        if isinstance(record, Fact):
            yield record.says


def _at_any_time(text: str, need: Need, said: Said, know: Knowledge) -> Iterator[str]:
    """Yield what is said to be possible at any time, where a statement on the same thing says when it is not."""
    found = _ALWAYS.search(text)
    done = (found["done"] or found["early"]) if found else ""
    if not found or not done or _CASES.search(done):
        return
    verbs = {plain(w) for word in done.split() for w in (word, *fellows(word))}
    own = told_concepts(need.question) | told_concepts(said.reading)
    for says in _statements(know):
        denied = _CANNOT.search(says)
        if denied and plain(denied[1]) in verbs and own & told_concepts(know.phrase(says)):
            yield found.group()
            return
