"""Questions that ask for two things at once: under one head, of each of some things joined by "and", what and why.

"STEER LOST: what colour, and does it show when System 1 is lost?" is two questions on STEER LOST; "what are the masses
for take-off and landing?" asks for each of two things; "what happens to it, and why?" wants the reason too.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Any

from assistant.conversation.reading_turns.readings import question_of
from assistant.practice.marking.of_statements.narrowing import MODES
from assistant.practice.marking.questions.asked import Asked, as_asked, ask, bare_names, record_of, things
from assistant.practice.marking.questions.parts import head_of
from assistant.practice.marking.questions.phrased import tells_more
from assistant.resolving import results as r
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates

_SURE = 0.8
"""Score from which a statement answers a part of a question under its head."""
ITEM = 0.6
"""Score from which one of several things asked about is answered."""
_CERTAIN = 0.95
"""Score from which both of two things are answered, though the question as a whole is not."""
_NEAR_BY = 4
_AS_NEAR = 0.03
"""By how much less a shorter statement may fit."""
_TOLD = (r.FactResult, r.LimitResult, r.ProcedureResult, r.TableResult, r.TablesResult, r.BandResult)
_STATED = (r.FactResult, r.LimitResult)
WHY = re.compile(r"[,;]? (?:and )?why\s*\??$", re.IGNORECASE)
"""A reason that is asked for besides."""
_EACH = re.compile(r"\s+(?:each|respectively)\b", re.IGNORECASE)


def headed(parts: Sequence[str], text: str, steps: bool, know: Knowledge) -> tuple[Asked, ...]:
    """Return what answers each part of a question on the subject that stands before them; nothing unless all are.

    steps: whether the question as a whole is answered by a procedure, of which the parts ask for figures.
    """
    head = head_of(text, parts) if len(parts) > 1 else ""
    subject = things(question_of(head, know, ""), know) if head else frozenset()
    if not subject:
        return ()
    together = of_all(parts, head, know)
    if together:
        return (together,)
    found: list[Asked] = []
    for part in parts:
        if found and tells_more(part, text):
            continue
        one = best_of(f"{head}: {part}", part, _SURE, know)
        if one is None or not _is_on(one, subject, know):
            return ()
        if not any(_same(one, other) for other in found):
            found.append(one)
    stated = all(isinstance(one.result, r.LimitResult) for one in found) and not steps
    whole = len(found) > 1 or tells(found[0]) >= len(parts)
    return tuple(found) if whole and not stated else ()


def best_of(text: str, shown: str, least: float, know: Knowledge) -> Asked | None:
    """Return the statement that answers a text best, if it does so surely."""
    question = question_of(text, know, "")
    near = [c for c in candidates(question, know)[:_NEAR_BY] if c.score >= least and plainly(c)]
    wanted = know.phrase(shown).concepts & QUANTITIES
    near = [c for c in near if quantity_of(c.result, know) in wanted] or near
    if not near:
        return None
    near = [c for c in near if c.score >= near[0].score - _AS_NEAR and type(c.result) is type(near[0].result)]
    result: Any = min(near, key=lambda c: _length(c.result)).result
    if isinstance(result, r.ProcedureResult):
        result = result._replace(step=None)
    return as_asked(shown, question, result, know)


def _is_on(one: Asked, subject: frozenset[str], know: Knowledge) -> bool:
    """Return whether a statement speaks of a subject by its name."""
    record = record_of(one.result)
    says = getattr(record, "says", "") or getattr(record, "of", "") or getattr(record, "title", "")
    return not subject.isdisjoint(know.phrase(says).concepts)


def of_all(parts: Sequence[str], head: str, know: Knowledge) -> Asked | None:
    """Return the one statement that tells something on each of at least three parts: what goes with System 1."""
    if len(parts) < _SEVERAL:
        return None
    told: list[dict[str, Candidate]] = []
    for part in parts:
        near = candidates(question_of(f"{head}: {part}", know, ""), know)[:_NEAR_BY]
        facts = [c for c in near if isinstance(c.result, r.FactResult) and c.score >= _TOLD_BY_ALL and plainly(c)]
        told.append({c.result.fact.id: c for c in facts if isinstance(c.result, r.FactResult)})
    for name, candidate in told[0].items():
        if all(name in each for each in told) and len(know.base.records[name].points) >= len(parts):
            return as_asked(head, question_of(head, know, ""), candidate.result, know)
    return None


_SEVERAL = 3
_TOLD_BY_ALL = 0.75
"""Score from which a statement tells something on a part of a question."""


def plainly(candidate: Candidate) -> bool:
    """Return whether a candidate is a statement that nothing in the question speaks against."""
    return isinstance(candidate.result, _TOLD) and candidate.match is not None and not candidate.match.barred


def _length(result: Any) -> int:
    """Return how much a statement tells: of two that answer as well, the shorter says no more than was asked."""
    return len(result.fact.says) if isinstance(result, r.FactResult) else 0


def _same(one: Asked, other: Asked) -> bool:
    return record_of(one.result) is record_of(other.result)


def tells(one: Asked) -> int:
    """Return how many points the statement that answers has."""
    return len(getattr(record_of(one.result), "points", ()))


def joined(whole: Asked | None, text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what answers a question on each of two things that it joins by "and", where they are two statements."""
    if whole and (not isinstance(whole.result, _STATED) or tells(whole) > 1):
        return ()
    for one, other in _halves(WHY.sub("", text), know):
        first, second = ask(one, know), ask(other, know)
        if first is None or second is None:
            continue
        made = (first[1], second[1])
        kind = type((whole or made[0]).result)
        if kind not in _STATED or any(type(each.result) is not kind for each in made) or _same(*made):
            continue
        if whole is None and min(first[0], second[0]) >= _CERTAIN:
            return made
        own = whole is not None and any(_same(whole, each) or _is_reason(whole, each) for each in made)
        if own and min(first[0], second[0]) >= ITEM:
            return made
    return ()


def _is_reason(whole: Asked, one: Asked) -> bool:
    """Return whether what answers a question as a whole is the reason of a statement that it asks for too."""
    why = getattr(record_of(one.result), "why", "")
    return bool(why) and why == getattr(record_of(whole.result), "id", "")


def _halves(text: str, know: Knowledge) -> Iterator[tuple[str, str]]:
    """Yield a question with the first alone, and with the second alone, of two things that an "and" joins."""
    plain = _EACH.sub("", text)
    for one, other in ((_WITH.sub(r"with \1", plain), _WITH.sub(r"without \1", plain)),):
        if one != plain:
            yield one, other
    whole = _THE_AND_THE.search(plain)
    if whole:
        yield (
            f"{plain[: whole.start()]}{whole.group(1)}{plain[whole.end() :]}",
            f"{plain[: whole.start()]}{whole.group(2)}{plain[whole.end() :]}",
        )
    for found in _JOINS_TWO.finditer(plain):
        before, after = know.phrase(found.group(1)).mentions, know.phrase(found.group(3)).mentions
        if any(not m.weak for m in before) and any(not m.weak and m.start == 0 for m in after):
            first = found.end(1) - len(_name_at_end(found.group(1), know))
            for words in _ends(found.group(3)):
                yield (
                    plain[: found.end(1)] + plain[found.start(3) + len(words) :],
                    plain[:first] + found.group(2) + plain[found.start(3) :],
                )


_WITH = re.compile(
    r"\b(?:with|without) ((?:the |an? )?[\w-]+),? and (?:with|without)(?: (?:them|it|one)\b|(?=\s*\?))", re.IGNORECASE
)
"""One thing there and not there: "with the fans and without them"."""
_THE_AND_THE = re.compile(
    r"\b(the [\w -]+?) and ((?:the|maximum|minimum) [\w -]+?)(?= (?:of|for|on|in|with)\b|\s*[?.,])", re.IGNORECASE
)
"""Two things named whole: "the maximum take-off mass and the maximum landing mass"."""


_JOINS_TWO = re.compile(r"((?:[\w°%'’-]+ ){0,2}[\w°%'’-]+) and ((?:the |an? )?)([\w°%'’-]+(?: [\w'’-]+)?)")


def _name_at_end(words: str, know: Knowledge) -> str:
    """Return the longest end of some words that is one name, else the last word."""
    parts = words.split()
    for n in range(len(parts)):
        rest = " ".join(parts[n:])
        mentions = know.phrase(rest).mentions
        if len(mentions) == 1 and len(mentions[0].taken) == len(know.phrase(rest).words):
            return rest
    return parts[-1]


def _ends(words: str) -> Iterator[str]:
    """Yield how much of what follows an "and" may be the second thing: two words, one."""
    yield words
    if " " in words:
        yield words.split()[0]


def of_each(parts: Sequence[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the figures of each of some settings or modes that a question names, for each of its parts."""
    named = members(text, know)
    if len(named) < _SOME or not parts:
        return ()
    found: list[Asked] = []
    for part in parts:
        own = members(part, know)
        if own and len(own) < len(named):
            return ()
        for member in named:
            asking = f"{member} {_without(part, own)}"
            one = best_of(asking, asking, ITEM, know)
            if one is None or not isinstance(one.result, r.LimitResult) or any(_same(one, o) for o in found):
                return ()
            found.append(one)
    return tuple(found)


_SOME = 2


def members(text: str, know: Knowledge) -> list[str]:
    """Return the settings or modes that a text names, as it names them."""
    reading = know.reader.read(text)
    families = {**bare_names(know, MODES), **know.lexicon.families}
    return [m.text for m in reading.mentions if any(families.get(c) in MODES for c in m.concepts)]


def _without(part: str, names: Sequence[str]) -> str:
    """Return a part of a question without some names and what joins them."""
    for name in names:
        either = "|".join(map(re.escape, (name, *(w for w in name.split() if w not in _COMMON))))
        part = re.sub(rf"\b(?:{either})\b,?(?: and\b)?", "", part, flags=re.IGNORECASE)
    return _EACH.sub("", _LEFT_OVER.sub(" ", re.sub(r"^and ", "", part)))


_COMMON = frozenset(("in", "mode", "autobrake", "braking"))
_LEFT_OVER = re.compile(r"\s+(?:in|with|for|on|of)\b(?=\s*(?:[,?.;]|$|in\b|with\b|for\b|on\b|of\b))")
"""Prepositions of which the names are left out."""
