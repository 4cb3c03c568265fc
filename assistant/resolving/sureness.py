"""Whether the best candidate is good enough to be told: by itself, or well ahead of any other."""

from __future__ import annotations

from assistant.knowledge.records import Source
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Question
from assistant.resolving.leaning import ANSWERING
from assistant.resolving.offering import COVER
from assistant.resolving.results import CheckResult, FactResult, LimitResult, Result, TableResult
from assistant.understanding.mentions import BOUNDS

_LEAST = 0.4
_AHEAD = 0.08
_FOLLOWS = 0.6
"""How well what follows from the states given must fit, where nothing else fits nearly as well."""
_MUCH, _CLOSE = 0.75, 0.06
"""Share of a way of asking below which a record leaves as open what is meant as one that fits nearly as well."""
_ACTION = 0.9
"""Share of its way of asking that a verdict must have, to be given together with another on the same action."""


def is_sure(found: list[Candidate], question: Question) -> bool:
    """Return whether the best reading is good enough: by itself, or well ahead of any other."""
    best = found[0]
    if best.match and best.match.barred:
        return False
    if _is_no_verdict(best, question):
        return False
    if best.score >= ANSWERING or _held_at_once(found):
        return bool(question.reading.amounts) or not _undecided(best, found)
    others = [c.score for c in found[1:] if not _same_place(best, c)]
    ahead = best.score - max(others, default=0.0)
    if best.match is None and isinstance(best.result, TableResult):
        return best.score >= _FOLLOWS and ahead >= _AHEAD
    fits = bool(best.match and best.score >= _LEAST and best.match.covered >= COVER and ahead >= _AHEAD)
    return fits and not _leaves_bound(best, question)


def _leaves_bound(best: Candidate, question: Question) -> bool:
    """Return whether a question asks for the most or the least there may be, and a statement gives no figure at all."""
    fact = best.result.fact if isinstance(best.result, FactResult) else None
    if fact is None or fact.values or best.match is None:
        return False
    return not BOUNDS.isdisjoint(question.reading.concepts) and BOUNDS.isdisjoint(best.match.concepts)


def _is_no_verdict(best: Candidate, question: Question) -> bool:
    """Return whether a statement is held against a number that it does not know: "free fall at 240 ok?"."""
    if not isinstance(best.result, FactResult) or not question.reading.has("can"):
        return False
    told = {f"{value.value:g}" for value in best.result.fact.values} | {
        word.strip("%°.,") for word in best.result.fact.says.split()
    }
    judged = [a for a in question.reading.amounts if a.unit is None and f"{a.value:g}" not in told]
    return bool(judged) if best.score >= ANSWERING else bool(question.reading.amounts)


def _held_at_once(found: list[Candidate]) -> bool:
    """Return whether the best two are verdicts on two amounts of one action: "extend at 20,000 ft with 220 kt"."""
    best = found[0]
    if not isinstance(best.result, CheckResult) or not best.match or best.score < _LEAST:
        return False
    one = best.result.checks[0]
    for c in found[1:4]:
        if isinstance(c.result, CheckResult) and c.match and c.match.open and c.score >= best.score - _AHEAD:
            other = c.result.checks[0]
            if other.unit != one.unit and other.given != one.given:
                return best.match.covered > _ACTION and c.match.covered > _ACTION
    return False


def _undecided(best: Candidate, found: list[Candidate]) -> bool:
    """Return whether a question holds as much of another figure as of the best one, and no more: "maximum mass"."""
    match = best.match
    if match is None or match.covered >= _MUCH or not isinstance(best.result, LimitResult):
        return False
    return any(
        c.match and c.score >= best.score - _CLOSE and c.match.share == match.share and c.match.record != match.record
        for c in found[1:4]
        if isinstance(c.result, LimitResult)
    )


def _same_place(one: Candidate, other: Candidate) -> bool:
    """Return whether a candidate says what another does: one record, or a statement of what stands in one paragraph."""
    if isinstance(one.result, TableResult) and isinstance(other.result, TableResult):
        return (one.result.table, one.result.rows) == (other.result.table, other.result.rows)
    if not one.match or not other.match:
        return False
    states = isinstance(one.result, (FactResult, LimitResult))
    same = states and set(_sources(one.result)[:1]) & set(_sources(other.result)[:1])
    return one.match.record == other.match.record or bool(same)


def _sources(result: Result) -> tuple[Source, ...]:
    """Return the paragraphs of the statement, figure or procedure that a result tells."""
    if isinstance(result, LimitResult):
        return result.limits[0].sources
    told = getattr(result, "fact", None) or getattr(result, "procedure", None) or getattr(result, "bands", None)
    return told.sources if told else ()
