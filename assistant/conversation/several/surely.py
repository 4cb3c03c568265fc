"""What surely answers one of several things that a turn asks: one statement, figure or value of a schedule."""

from __future__ import annotations

from assistant.conversation.reading_turns.readings import question_of
from assistant.frozen import NamedTuple
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BothResult, FactResult, LimitResult, Result, ScheduleResult

SURE = 0.8
"""How well each of several things must be answered."""


class Sure(NamedTuple):
    """One thing asked for, worded as a question of its own, with what answers it and how well."""

    text: str
    score: float
    record: str
    question: Question
    result: Result


def surely(text: str, knowledge: Knowledge, variant: str = "", least: float = SURE) -> Sure | None:
    """Return what answers a question at least so well, or None."""
    question = question_of(text, knowledge, variant)
    found = resolve_scored(question, knowledge)
    result = found.result.first if isinstance(found.result, BothResult) else found.result
    if found.score < least or not found.record or not _is_one(result):
        return None
    return Sure(text, found.score, found.record, question, result)


def _is_one(result: Result) -> bool:
    """Return whether a result tells one thing: a statement, a figure, a value of a schedule."""
    if isinstance(result, LimitResult):
        return len(result.limits) == 1
    return isinstance(result, FactResult) or (isinstance(result, ScheduleResult) and result.value is not None)
