"""A turn on a calculation: another one on the same amounts, or what was asked back for."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.inheriting import with_amounts
from assistant.conversation.reading_turns.traits import FEW, names_thing
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.ranking import candidates
from assistant.resolving.results import ModelResult, Needed, Result

_CONSIDERED = 6


def with_its_amounts(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return a turn that lacks an amount with what the question before gave, where that serves it."""
    if not isinstance(first.result, Needed):
        return None
    question = with_amounts(alone, first.result, context, knowledge)
    given = resolve_scored(question, knowledge) if question else None
    if question is None or given is None or record_of(given.result) != first.result.record.id:
        return None
    fewer = not isinstance(given.result, Needed) or set(given.result.names) < set(first.result.names)
    return (question, given.result) if fewer else None


def other_calculation(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return another calculation than the last, which a turn asks for and the question before completes."""
    wanted = [first]
    if isinstance(context.result, ModelResult) and not names_thing(alone, knowledge):
        wanted += [Scored(c.result, c.score) for c in candidates(alone, knowledge)[:_CONSIDERED]]
    for scored in wanted:
        if isinstance(scored.result, Needed) and scored.result.record.id != record_of(context.result):
            found = with_its_amounts(alone, scored, context, knowledge)
            if found and not isinstance(found[1], Needed):
                return found
    return None


def record_of(result: Result | None) -> str:
    """Return the id of the calculation or the schedule that a result is of, or that lacks something."""
    for name in ("model", "schedule", "record"):
        found = getattr(result, name, None)
        if found is not None:
            return str(found.id)
    return ""


def supplies(asked: Result | None, given: Result, alone: Question) -> bool:
    """Return whether a short turn gives what was asked back for: the calculation runs, or lacks less."""
    if not isinstance(asked, Needed) or len(alone.reading.words) > 2 * FEW:
        return False
    if isinstance(given, Needed):
        return bool(given.record == asked.record and set(given.names) < set(asked.names))
    return bool(record_of(given) == asked.record.id)
