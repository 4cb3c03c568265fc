"""Which of two kinds of result goes before the other where both answer: a statement, a result, a verdict, a state."""

from __future__ import annotations

from collections.abc import Callable

from assistant.resolving import limits as limit_rules
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.leaning import ANSWERING
from assistant.resolving.results import CheckResult, FactResult, LimitResult, TableResult, TablesResult
from assistant.understanding.clauses import asks_whether
from assistant.understanding.matching import Match

_LEAST = 0.4
_JUST = 0.01
_WHAT = frozenset(("what", "whats", "which", "who", "how", "why", "where"))
_NEARLY_ALL = 0.95
_TOLD = 0.6
"""Least score of a statement that goes before what follows from a state that is only told of."""
_TELLS = 2.0
"""How much more of a question than such a state that statement must explain."""


def in_their_order(found: list[Candidate], question: Question, know: Knowledge) -> list[Candidate]:
    """Return the candidates with those put back that answer less to the point than one of another kind."""
    ordered = _statement_first(_result_first(_verdict_first(found, question, know), question), question)
    return _whole_first(ordered)


def _put_behind(
    found: list[Candidate], leading: list[float], follows: Callable[[Candidate], bool]
) -> list[Candidate]:
    """Return the candidates with those that follow scored no higher than just below the best of the leading scores."""
    most = max(leading) - _JUST
    return [c._replace(score=min(c.score, most)) if follows(c) else c for c in found]


def _whole_first(found: list[Candidate]) -> list[Candidate]:
    """Put a statement that explains all but a number, told by the way, before what is too unsure to be told."""
    if max((c.score for c in found), default=1.0) >= ANSWERING:
        return found
    return [
        c._replace(score=ANSWERING)
        if isinstance(c.result, FactResult) and c.match and _explains_all(c.match) and c.score >= _LEAST
        else c
        for c in found
    ]


def _explains_all(match: Match) -> bool:
    return match.open and match.whole and match.share >= _NEARLY_ALL


def _statement_first(found: list[Candidate], question: Question) -> list[Candidate]:
    """Put a statement that a question asks for whole before what follows from a state that it only tells of.

    "The free-fall lever is pulled, what pushes the nose leg out?" asks for no consequence.
    """
    rows = [c for c in found if isinstance(c.result, TableResult) and not c.result.asked and c.score > _LEAST]
    if not rows or not _WHAT.intersection(question.reading.words):
        return found
    least = min(c.weight for c in rows)
    facts = [
        c.score
        for c in found
        if isinstance(c.result, FactResult) and c.match and c.match.open and c.match.whole
        if c.score >= _TOLD and c.weight > least + _TELLS
    ]
    return _put_behind(found, facts or [1.0], lambda c: c in rows)


def _result_first(found: list[Candidate], question: Question) -> list[Candidate]:
    """Put a result that is asked for with yes or no, under states, before a figure: "accu flat, does it hold?"."""
    rows = [c.score for c in found if isinstance(c.result, TableResult) and c.result.asked and c.score >= ANSWERING]
    given = any(not c.implied and not c.is_result for c in question.conditions)
    if not rows or not given or question.reading.amounts or not asks_whether(question.reading.words):
        return found
    return _put_behind(found, rows, lambda c: isinstance(c.result, LimitResult))


def _verdict_first(found: list[Candidate], question: Question, know: Knowledge) -> list[Candidate]:
    """Put a limit on the very reading that says a state before the state: "accumulator 1,700 psi, park on it?"."""
    verdicts = [
        c.score
        for c in found
        if isinstance(c.result, CheckResult) and c.score >= ANSWERING and c.match and c.match.open
        if limit_rules.limits_a_reading(c.result.checks[0], question, know)
    ]
    if not verdicts:
        return found

    def follows(c: Candidate) -> bool:
        return isinstance(c.result, (TableResult, TablesResult)) and not _tells_more(c.result, question)

    return _put_behind(found, verdicts, follows)


def _tells_more(result: TableResult | TablesResult, question: Question) -> bool:
    """Return whether a state is asked for that rests on more than a reading: "System 1 lost, accumulator 1,700"."""
    if not isinstance(result, TableResult) or not result.asked or question.reading.has("rely"):
        return False
    read = {a.start for a in question.reading.amounts}
    return any(read.isdisjoint(c.where) for row in result.rows for c in row.conditions)
