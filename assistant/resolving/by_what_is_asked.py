"""Candidates that tell something else than what is asked for (another quantity, measure or type) step back."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.resolving.asked_quantity import (
    NOT_TOLD,
    is_asked,
    is_told_in,
    quantity_of,
    tells_measure,
    tells_outright,
    tells_quantity,
)
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BandResult, ModelResult, ProcedureResult, Result, TableResult, TablesResult
from assistant.understanding.clauses import asking, asks_whether
from assistant.understanding.mentions import Mention

_WANTED, _OF_ANOTHER = 1.1, 0.66
_NO_BOUND = 0.6
_BOUND_WORDS = frozenset({"least", "most", "minimum", "maximum", "min", "max", "lowest", "highest"})
_WHAT_IS_THE = ("what", "is", "the")
_OF_ALL = 0.75
"""How well what is true of all aeroplanes must fit, where another type is asked of."""
_HELPING = frozenset(("do", "does", "is", "am", "are", "have", "has", "will"))
_NO_TIME = 0.9
_FIGURES = ("distance", "length", "temperature", "pressure", "mass", "speed")
_TAKING = frozenset(("use", "should", "help", "take", "try"))


def asks_when(words: Sequence[str]) -> bool:
    """Return whether it is asked when something is so: "when do I have no wheel brakes"."""
    return words[:1] == ("when",) and not _HELPING.isdisjoint(words[1:2])


def told_when(candidate: Candidate) -> Candidate:
    """Let a drill for a case step back where it is asked when that case comes about."""
    if isinstance(candidate.result, ProcedureResult):
        return candidate._replace(score=candidate.score * _NO_TIME)
    return candidate


def of_all_aeroplanes(
    found: Iterable[Candidate], said: Mention, question: Question, know: Knowledge
) -> list[Candidate]:
    """Return what is true of other aeroplanes too; what is known of this type is no more than nearby."""
    kept = [c for c in found if c.match is not None]
    general = [know.is_general_record(c.match.record, question.variant) for c in kept if c.match]
    found = []
    for each, everywhere in zip(kept, general, strict=True):
        if each.match and not (everywhere and each.score >= _OF_ALL):
            each = each._replace(score=each.score * 0.5, match=each.match._replace(barred=(said,)))
        found.append(each)
    return found


def by_measure(candidate: Candidate, question: Question, know: Knowledge) -> Candidate:
    """Let what tells another measure of a thing than the one asked for step back: "temperature of the nose tyre"."""
    match = candidate.match
    if match is None or tells_measure(candidate.result, match.concepts, question.reading, know):
        return candidate
    return candidate._replace(score=candidate.score * NOT_TOLD)


def by_asked(candidate: Candidate, asked: frozenset[str], question: Question, know: Knowledge) -> Candidate:
    """Let a result of another quantity than the one asked for step back: "how long" wants no temperature."""
    if asked and isinstance(candidate.result, (TableResult, TablesResult)):
        own = isinstance(candidate.result, TableResult) and _is_its_own(candidate.result, asked, know)
        if own or candidate.match:  # with a match, it stands in the place of a figure that a control does not give now
            return candidate
        bound = _NO_BOUND if _asks_bound(question) else 1.0
        return candidate._replace(score=candidate.score * (0.9 if "count" in asked else 0.7) * bound)
    if isinstance(candidate.result, TableResult) and _asks_bound(question):
        return candidate._replace(score=candidate.score * _NO_BOUND)
    if isinstance(candidate.result, ModelResult) and not asked and _wants_no_figure(question):
        return candidate._replace(score=candidate.score * _OF_ANOTHER)
    told = candidate.match.concepts if candidate.match else frozenset()
    if not tells_outright(candidate.result, told, question.reading, know):
        return candidate._replace(score=candidate.score * NOT_TOLD)
    in_unit = _in_the_unit(candidate.result, asked, question, know)
    if in_unit < 1.0:
        return candidate._replace(score=candidate.score * in_unit)
    mine = quantity_of(candidate.result, know)
    if question.wanted and mine == question.wanted:
        return candidate._replace(score=candidate.score * _WANTED)
    if not asked and mine and mine in question.reading.concepts:
        return candidate._replace(score=candidate.score * 1.03)
    if not asked or not mine:
        return candidate
    return candidate._replace(score=candidate.score * (1.04 if is_asked(mine, asked) else _OF_ANOTHER))


def _wants_no_figure(question: Question) -> bool:
    """Return whether it is asked what to do, and no figure is named as what it is, or which of two ways to take:
    "ANTI-SKID LOST, a runway of 2,000 m, what do I have to do".
    """
    reading = question.reading
    return (reading.has("steps") and not reading.has(*_FIGURES)) or _chooses(reading.words)


def _chooses(words: Sequence[str]) -> bool:
    """Return whether it is asked which of two ways to take, which no calculation tells: "should I use … or …"."""
    asks = asking(words)
    return asks_whether(words) and any(words[i] == "or" for i in asks) and any(words[i] in _TAKING for i in asks)


def _in_the_unit(result: Result, asked: frozenset[str], question: Question, know: Knowledge) -> float:
    """Return how well a result may be said in the unit that is asked for: no verdict on a speed is in megajoules."""
    if not is_told_in(result, question.reading, know):
        return NOT_TOLD
    bands = isinstance(result, BandResult) and bool(question.reading.unit)
    return _OF_ANOTHER if bands and not tells_quantity(result, asked, know) else 1.0


def _asks_bound(question: Question) -> bool:
    """Return whether a question asks outright for a least or a most: "what's the least for parking?"."""
    words = question.reading.words
    bounds = (m for m in question.reading.mentions if m.text.removeprefix("the ") in _BOUND_WORDS)
    return any(words[max(0, m.end - 4) : m.end - 1] == _WHAT_IS_THE for m in bounds)


def _is_its_own(result: TableResult, asked: frozenset[str], know: Knowledge) -> bool:
    """Return whether a table itself tells what is asked for as a quantity: "how hard may I press" is a technique."""
    asks = (ask for o in result.table.outputs if o.id in result.asked for ask in o.asks)
    return any(not asked.isdisjoint(m.concepts) for ask in asks for m in know.phrase(ask).mentions)
