"""A turn of a figure on a calculation told lately, or on one that takes the figure just told.

"And the width at fifty?", after a side question, is asked of the pavement calculated before it; "sixteen hundred metres
becomes what?", after a factor, of the calculation that multiplies by it.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.conversation.context import LATELY, Context
from assistant.conversation.readings import merged, question_of
from assistant.conversation.traits import CLEAR, LONG, OPEN
from assistant.knowledge.records import Limit, Model, Schedule
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import (
    CheckResult,
    FactResult,
    LimitResult,
    ModelResult,
    ProcedureResult,
    Result,
    ScheduleResult,
)  # fmt: skip

_BETWEEN = (FactResult, ProcedureResult)
"""Side questions that take no figure themselves."""


def calculated_lately(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the calculation that a turn's figure is meant for, where the turn does not answer clearly by itself."""
    if not alone.reading.amounts or alone.conditions or len(alone.reading.words) > LONG:
        return None
    if first.score >= CLEAR and not isinstance(first.result, OPEN):
        return None
    return _lately(alone, first, context, knowledge) or _taking_the_figure(alone, first, context, knowledge)


def _lately(alone: Question, first: Scored, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the calculation before a side question, with the turn's figure in the place of its like."""
    if not isinstance(context.result, _BETWEEN):
        return None
    for past in context.earlier[:LATELY]:
        record = calculation_of(past.result)
        if record is None or not _knows_all(record.id, alone, knowledge):
            continue
        before = context._replace(asked=past.asked, result=past.result, answer=past.answer)
        question, whole = merged(alone, before, knowledge, False)
        found = resolve_scored(question, knowledge)
        again = calculation_of(found.result)
        if whole or first.score < found.score:
            return (question, found.result) if again and again.id == record.id else None
    return None


def _taking_the_figure(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the calculation that takes the figure told last, of the turn's amount."""
    told = {limit.id for limit in _limits(context.result)}
    fitting = (m for m in _models(told, knowledge) if _fitting(m, told, alone.reading.amounts, knowledge))
    for model in fitting:
        if not _knows_all(model.id, alone, knowledge):
            continue
        question = question_of(f"{model.of} , {' '.join(alone.reading.words)}", knowledge, alone.variant)
        found = resolve_scored(question, knowledge)
        again = calculation_of(found.result)
        if again and again.id == model.id and found.score > first.score:
            return question.with_text(alone.reading.text)._replace(context=True), found.result
    return None


def _limits(result: Result | None) -> Iterator[Limit]:
    if isinstance(result, LimitResult):
        yield from result.limits
    elif isinstance(result, CheckResult):
        yield from (check.limit for check in result.checks)


def _models(told: set[str], knowledge: Knowledge) -> Iterator[Model]:
    for name in knowledge.base.ids("models") if told else ():
        record = knowledge.base.records[name]
        if isinstance(record, Model) and any(item.default in told for item in record.inputs):
            yield record


def _fitting(model: Model, told: set[str], amounts: tuple[Amount, ...], knowledge: Knowledge) -> bool:
    """Return whether an amount has the unit of an input that a calculation lacks, and none that of the figure told."""
    lacking = [item.unit for item in model.inputs if not item.default and not item.choices]
    own = [item.unit for item in model.inputs if item.default in told]
    given = [a for a in amounts if a.unit is not None]
    fit = (fits(a, unit, knowledge.units) is not None for a in given for unit in lacking)
    return any(fit) and not any(a.unit == unit for a in given for unit in own)


def calculation_of(result: Result | None) -> Model | Schedule | None:
    """Return the calculation or the schedule that a result is of."""
    if isinstance(result, ModelResult):
        return result.model
    return result.schedule if isinstance(result, ScheduleResult) else None


def _knows_all(record: str, alone: Question, knowledge: Knowledge) -> bool:
    said = knowledge.matcher.vocabulary(record)
    things = (m for m in alone.reading.mentions if not knowledge.matcher.is_soft(m))
    return all(not said.isdisjoint(m.concepts | m.implied) for m in things)
