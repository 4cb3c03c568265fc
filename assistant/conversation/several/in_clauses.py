"""Several questions in one sentence, each answered by a record of its own: "at what speed, and how long at most?".

A clause leaves out what the first one or the words before them all name: it is asked with them, with the thing that
"it" stands for, as the clause before it with the like of its own name, or by itself. Nothing is told unless every
clause is surely answered, and by another record.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import cache, partial

from assistant.conversation.several.parting import may_join
from assistant.conversation.several.surely import SURE, Sure, surely
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import FactResult

_READ = 300
_BEFORE = (
    r"(?:(?:at|in|on|by|to|up to|from|for|with|after|below|above|over|under|until|past|of|about) )*"
    r"(?:about )?"
)
_ASKS = rf"{_BEFORE}(?:what|which|who|whom|whose|where|when|why|how)\b"
_NEXT = rf"\s*(?:[,;.?]\s*(?:(?:and|then|but)\s+)*|\s+and\s+(?:then\s+)?)(?={_ASKS})"
_HEAD = rf"^(.+?)[:,.;]\s+(?:and )?(?={_ASKS})"
_TOLD_WHEN = r"(?:when|while|where) (?!(?:is|are|does|do|did|may|can|must|will|should|and|to|was)\b)"
"""A clause that tells when, and does not ask it."""
_PRONOUN = r"\b(?:it|they|them|one)\b"
_VERB = r"\b(?:is|are|was|does|do|did|has|have|may|can|must|will|should|be)\b"
_FIGURE = (
    r"\b(?:above|below|under|over|past|until|up to|by|at|after|from) (?:about )?what\b(?! order)|"
    r"\b(?:what|which) (?:\w+ ){0,3}"
    r"(?:speeds?|pressures?|temperatures?|angles?|shares?|heights?|altitudes?|mass(?:es)?|times?|distances?|decelerations?|delays?)\b|"
    r"\bhow (?:much|many|long|far|fast|high|hot|deep|wide|heavy)\b"
)
_NAMED = r"^what (?:is|are) the\b|^what (?:\w+ )?(?:chrome|clearance)\b"
_NEAR = 0.55
"""How well a figure of the same paragraph must answer a clause."""
_MOST, _SHORT = 4, 6
"""Clauses of a sentence, and words of one that takes over what the one before says, at the most."""
_Asked = Callable[[str], Sure | None]
"""Returns what answers a text nearly well enough or better, each text once."""


def each_clause(text: str, knowledge: Knowledge, variant: str = "") -> list[Sure]:
    """Return what answers each clause of a text, by a record of its own; nothing unless all are surely answered."""
    head, clauses = _parted(text)
    if not 1 < len(clauses) <= _MOST or not all(_asks_something(clause, knowledge) for clause in clauses):
        return []
    subject = _named(head or clauses[0], knowledge)
    wordings = [
        list(dict.fromkeys(_texts(clause, clauses[n - 1] if n else "", head, subject, knowledge)))
        for n, clause in enumerate(clauses)
    ]
    asked = cache(partial(surely, knowledge=knowledge, variant=variant, least=_NEAR))  # wordings come up again
    found: list[Sure | None] = []
    for clause, texts in zip(clauses, wordings, strict=True):
        found.append(_first(texts, clause, _told(found), knowledge, asked))
        if found == [None] and not any(_figures(texts, clause, asked)):
            return []  # no name before the first clause leads it: nothing else can answer it
    for n, clause in enumerate(clauses):
        led = [f"{name} {clause}" for name in (" ".join(subject), *subject)] if n else []
        led = [] if _fails(_told(found), knowledge) else led
        one = found[n] or _beside([*wordings[n], *led], clause, _told(found), knowledge, asked)
        found[n] = one or _stated(led[:1], clause, _told(found), knowledge, asked)
        if found[n] is None:
            return []
    return _told(found)


def _told(found: Sequence[Sure | None]) -> list[Sure]:
    """Return what answers the clauses that are answered."""
    return [one for one in found if one]


def _first(texts: Iterable[str], clause: str, found: Sequence[Sure], know: Knowledge, asked: _Asked) -> Sure | None:
    """Return what surely answers a clause in the first of its wordings that a record not told yet answers."""
    told = {one.record for one in found}
    sure = (one for one in map(asked, texts) if one and one.score >= SURE)
    return next((one for one in sure if one.record not in told and _is_of_kind(one, clause, know)), None)


def _figures(texts: Iterable[str], clause: str, asked: _Asked) -> Iterator[Sure]:
    """Yield the figures that answer a clause, well enough for one of the same paragraph as what answers another."""
    for one in map(asked, texts) if _takes_a_figure(clause) else ():
        if one and not isinstance(one.result, FactResult):
            yield one


def _beside(texts: Iterable[str], clause: str, found: Sequence[Sure], know: Knowledge, asked: _Asked) -> Sure | None:
    """Return the figure that answers a clause with one of the names before it, where it stands in a paragraph of what
    answers another clause.
    """
    records = know.base.records
    near = {source for one in found for source in records[one.record].sources}
    told = {one.record for one in found}
    figures = (one for one in _figures(texts, clause, asked) if one.record not in told) if near else ()
    return next((one for one in figures if near.intersection(records[one.record].sources)), None)


def _fails(found: Sequence[Sure], know: Knowledge) -> bool:
    """Return whether something is told to be in another state than the normal one, which a bare name leaves out."""
    told = [c for one in found for c in one.question.conditions if not c.is_result]
    return any(c.value != know.states.normal(c.input) for c in told)


def _stated(texts: Sequence[str], clause: str, found: Sequence[Sure], know: Knowledge, asked: _Asked) -> Sure | None:
    """Return the statement that surely answers a clause led by all the names; a figure may be another case's."""
    one = _first(texts, clause, found, know, asked)
    return one if one and isinstance(one.result, FactResult) else None


def _asks_something(clause: str, know: Knowledge) -> bool:
    """Return whether a clause asks for more than a bare "with what"."""
    return any(not m.weak for m in know.reader.read(clause).mentions)


def _is_of_kind(one: Sure, clause: str, know: Knowledge) -> bool:
    """Return whether a figure answers a clause that asks for one, and anything but a bare statement does then."""
    if isinstance(one.result, FactResult):
        asks = re.search(_FIGURE, clause, re.IGNORECASE) is not None
        fact = one.result.fact
        told = know.reader.read(". ".join((fact.says, *fact.points)))
        return not asks or bool(told.amounts) or bool(told.concepts & know.reader.read(clause).concepts & QUANTITIES)
    return _takes_a_figure(clause)


def _takes_a_figure(clause: str) -> bool:
    """Return whether a clause may be answered with a figure: it asks for one, or what something is that has one."""
    return re.search(f"{_FIGURE}|{_NAMED}", clause, re.IGNORECASE) is not None


def _parted(text: str) -> tuple[str, list[str]]:
    """Return what stands before the first question of a text, and its clauses."""
    plain = text[:_READ].strip(" ?.!")
    if not may_join(plain):
        return "", [plain]  # sooner known than by patterns
    found = re.match(_HEAD, plain, re.IGNORECASE)
    asks = found and re.match(_ASKS, plain, re.IGNORECASE) and not re.match(_TOLD_WHEN, plain, re.IGNORECASE)
    if found and not asks:
        return found.group(1), re.split(_NEXT, plain[found.end() :], flags=re.IGNORECASE)
    return "", re.split(_NEXT, plain, flags=re.IGNORECASE)


def _texts(clause: str, before: str, head: str, subject: Sequence[str], know: Knowledge) -> Iterator[str]:
    """Yield a clause as questions that stand alone: with what leads them all, with the name of what it leaves out."""
    named = [re.sub(_PRONOUN, f"the {name}", clause, count=1, flags=re.IGNORECASE) for name in subject]
    said = not named or named[0] == clause
    if head:
        yield f"{head}: {clause}"
        yield f"{head}: {named[0] if named else clause}"
    if before:
        yield from _filled(clause, before, know)
    if said and (not before or _named(clause, know)):
        yield clause
    yield from named if not said else ()


def _named(text: str, know: Knowledge) -> list[str]:
    """Return the names of the things that a text is about."""
    found = know.reader.read(text)
    measures = ("quantity", "ask", "ask!")
    kinds = know.lexicon.kinds
    told = [m for m in found.mentions if not know.matcher.is_soft(m) and not m.is_plain]
    return [m.text for m in told if not all(kinds.get(c) in measures for c in m.concepts)]


def _filled(clause: str, before: str, know: Knowledge) -> Iterator[str]:
    """Yield the clause before with what a short one names in the place of its like: "and when FULL"."""
    own, other = know.reader.read(clause), know.reader.read(before)
    if len(own.words) > _SHORT or re.search(_VERB, clause, re.IGNORECASE):
        return
    families = know.lexicon.families
    for one in own.mentions:
        mine = {families.get(c) for c in one.concepts} - {None}
        for its in other.mentions:
            if one.text.lower() != its.text.lower() and mine & {families.get(c) for c in its.concepts}:
                yield re.sub(rf"\b{re.escape(its.text)}\b", one.text, before, flags=re.IGNORECASE)
