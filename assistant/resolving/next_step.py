"""The step of a procedure that follows those told as done: "reversers are out, anti-skid is off, what next?"."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from assistant.frozen import NamedTuple
from assistant.knowledge.records import Procedure, Step
from assistant.resolving.asked_quantity import asked_of
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import ProcedureResult
from assistant.understanding.matching import Match
from assistant.understanding.mentions import BOUNDS, Mention, Reading

_AFTER_NEXT = frozenset({
    "memory", "recall", "item", "step", "action", "move", "thing", "please", "do", "and", "is", "then", "now", "?", "!",
    ".", ",", ";", "in",
})  # fmt: skip
"""Words after which "next" asks for what is to be done, and not for the next flight."""
_PAIRS = frozenset({
    ("what", "then"), ("then", "what"), ("what", "now"), ("now", "what"), ("what", "else"), ("step", "after"),
    ("item", "after"),
    ("what", "follows"), ("what", "remains"),
})  # fmt: skip
_FOLLOWING = frozenset(("next", "then", "now", "else", "after", "follows", "remains"))
"""Words of which one is in whatever asks for the next step."""
_BEFORE_NEXT = frozenset(("what", "whats", "is", "comes", "come"))
_COMING_OF_IT = frozenset({
    "lost", "lose", "loses", "losing", "gone", "goes", "fails", "failed", "works", "working", "affected", "affect",
    "affects", "missing", "changes", "happens", "unavailable", "dead", "out", "stops", "suffers",
})  # fmt: skip
"""Words for what becomes of things."""
_NEAR = 0.9
_LOOKED_AT = 24
_BASE, _EACH, _MOST = 0.3, 0.2, 1.1


class _About(NamedTuple):
    """What a procedure is about, and what any of those that may be meant are about."""

    own: frozenset[str]
    any: frozenset[str]


def next_step(question: Question, know: Knowledge, ranked: Sequence[Match]) -> tuple[float, ProcedureResult] | None:
    """Return the step after the last one that a question tells as done, with its score; None where it asks for none.

    Of several procedures that may be meant, the one of which most is told in order comes first.
    """
    if not _asks_next(question.reading.words):
        return None
    meant = _procedures(ranked, know)
    titles = {m.record: know.phrase(know.base.records[m.record].title).concepts - BOUNDS for m in meant}
    known = frozenset().union(*titles.values())
    best: tuple[float, float, ProcedureResult] | None = None
    for match in meant:
        procedure, about = know.base.records[match.record], _About(titles[match.record], known)
        done = [i for i, step in enumerate(procedure.steps) if any(_tells(d, about, question, know) for d in step.done)]
        if not done or max(done) + 1 == len(procedure.steps) or not _gives(procedure.steps[max(done) + 1], question):
            continue
        if len(done) == 1 and _is_of_another(question, match.record, about, know):
            continue
        in_order = 2 * len(done) - max(done) - 1
        score = min(_MOST, match.score + _BASE + _EACH * len(done))
        found = (match.score + _EACH * in_order, score, ProcedureResult(procedure, max(done) + 1))
        best = found if best is None or found[0] > best[0] else best
    return best[1:] if best else None


def _is_of_another(question: Question, record: str, about: _About, know: Knowledge) -> bool:
    """Return whether one step told may be of anything else: with an amount, or with a thing that the procedure has not.

    "Gear down at 260 kt, what now" is no step of any procedure that begins so.
    """
    if question.reading.amounts and about.own.isdisjoint(question.reading.concepts):
        return True
    known = know.matcher.vocabulary(record)
    things = (m for m in question.reading.mentions if not (m.weak or m.is_plain or know.matcher.is_soft(m)))
    return any(known.isdisjoint(mention.concepts) for mention in things)


def _asks_next(words: Sequence[str]) -> bool:
    if _FOLLOWING.isdisjoint(words):
        return False
    if any(pair in _PAIRS and not _of_what_follows(pair, words[k + 2 :]) for k, pair in enumerate(pairwise(words))):
        return True
    if ("what", "comes", "after") in zip(words, words[1:], words[2:], strict=False):
        return True
    around = zip(("", *words), words, (*words[1:], "?"), strict=False)
    return any(word == "next" and (old in _BEFORE_NEXT or new in _AFTER_NEXT) for old, word, new in around)


def _of_what_follows(pair: tuple[str, str], after: Sequence[str]) -> bool:
    """Return whether "what else" asks for what comes of a state, and for nothing to do: "what else | have I lost |"."""
    clause = after[: next((k for k, word in enumerate(after) if word in (".", "?", ",", ";")), len(after))]
    return pair == ("what", "else") and not _COMING_OF_IT.isdisjoint(clause)


def _procedures(ranked: Sequence[Match], know: Knowledge) -> list[Match]:
    """Return the best match of each procedure that a question may be about."""
    found: dict[str, Match] = {}
    for match in ranked[:_LOOKED_AT]:
        if isinstance(know.base.records[match.record], Procedure):
            found.setdefault(match.record, match)
    best = max((m.score for m in found.values()), default=0.0)
    return [m for m in found.values() if m.score >= _NEAR * best]


def _tells(phrase: str, about: _About, question: Question, know: Knowledge) -> bool:
    """Return whether a question holds all that a phrase says, states and figures too."""
    reading, said = know.phrase(phrase), question.reading
    if not all(_says(mention, about, said) for mention in reading.mentions):
        return False
    figures = {(a.value, a.unit) for a in said.amounts}
    given = {(c.input, c.value) for c in question.conditions}
    return figures.issuperset((a.value, a.unit) for a in reading.amounts) and know.phrase_states(phrase) <= given


def _says(mention: Mention, about: _About, said: Reading) -> bool:
    """Return whether a question holds what one name of a phrase says; a common word is told as it stands.

    What the procedure is about is told once more: "mismatch on extension" says of no lever that it is down. What
    another one is about is told in the same words: legs that will not retract are no lever that is up.
    """
    if mention.weak:
        return set(mention.text.split()) <= set(said.words)
    told = [m for m in said.mentions if not mention.concepts.isdisjoint(m.concepts)]
    if not mention.concepts.isdisjoint(about.any):
        told = [m for m in told if not set(m.text.split()).isdisjoint(mention.text.split())]
    return len(told) > (not mention.concepts.isdisjoint(about.own))


def _gives(step: Step, question: Question) -> bool:
    """Return whether a step gives the quantity asked for besides: "what next, and below what speed?"."""
    asked = asked_of(question.reading)
    return not asked or any(value.quantity in asked for value in step.values)
