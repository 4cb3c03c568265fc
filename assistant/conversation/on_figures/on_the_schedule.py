"""A turn that asks how much there is at an amount, after a figure of a schedule: "and what's left at eighty?".

Such a figure is where a schedule begins, bends or ends. What is asked at another amount is what the schedule gives
there, and no verdict on that amount.
"""

from __future__ import annotations

from itertools import pairwise

from assistant.answering.answer import Answer
from assistant.conversation.context import LATELY, Context
from assistant.conversation.reading_turns.readings import question_of, things_named
from assistant.conversation.reading_turns.traits import ASKING, LONG, OPEN
from assistant.knowledge.records import Schedule
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import LimitResult, Needed, Result, ScheduleResult
from assistant.resolving.schedules import is_point, resolve_schedule

_CLEAR = 0.9
_LEFT = frozenset({"left", "remains", "remain", "remaining", "still", "available", "leaves"})
_HAVING = frozenset({"have", "get", "got", "gives", "give"})
_LEADING = frozenset({"?", ".", ",", "and", "so", "then", "ok", "or", "say", "what", "about", "how", "it"})
_TO = frozenset({"to", "down", "up", "of"})
_AT = frozenset({"at", "doing", "about", "for"})


def on_the_schedule(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return what a schedule gives at a turn's one amount, after it or a figure of it was told."""
    if context.asked is None or len(alone.reading.amounts) > 1 or len(alone.reading.words) > LONG:
        return None
    if not alone.reading.amounts:
        return _on_another_variant(alone, context, knowledge)
    if (first.score >= _CLEAR and not isinstance(first.result, OPEN)) or alone.conditions:
        return None
    schedule = _schedule(context, knowledge)
    amount = alone.reading.amounts[0]
    if schedule is None or fits(amount, schedule.input_unit, knowledge.units) is None:
        return None
    meant = _asks_how_much(alone, amount, schedule) or _goes_on(alone, amount, schedule, context, knowledge)
    if not meant or not _is_about(alone, schedule, knowledge):
        return None
    variant = alone.variant if alone.named_variant else context.asked.variant
    return at_amount(schedule, amount, alone.reading.text, variant, knowledge)


def at_amount(
    schedule: Schedule, amount: Amount, text: str, variant: str, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return what a schedule gives at an amount, with the question that asks for it outright; text: what was said."""
    unit = amount.unit or schedule.input_unit
    question = question_of(f"{schedule.of} at {amount.value:.10g} {unit}", knowledge, variant)
    result = resolve_schedule(knowledge.record(schedule.id, variant), question, knowledge)
    return (question.with_text(text), result) if isinstance(result, ScheduleResult) else None


def _on_another_variant(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the schedule told last at the same amount, for a turn that names a variant and nothing else: "back to
    the short one, same speed".
    """
    told = context.result
    if not alone.named_variant or not isinstance(told, ScheduleResult) or told.value is None:
        return None
    if not (alone.reading.asked & QUANTITIES) <= {told.schedule.input} or things_named(alone.reading, knowledge):
        return None
    amount = Amount(0, 0, told.given, told.schedule.input_unit, "", False, False)
    return at_amount(told.schedule, amount, alone.reading.text, alone.variant, knowledge)


def _asks_how_much(alone: Question, amount: Amount, schedule: Schedule) -> bool:
    """Return whether a turn asks what there is at an amount: "how much at 60?", "so at 50 I have?"."""
    words = alone.reading.words
    if not (alone.reading.asked & QUANTITIES) <= {schedule.input, schedule.output}:
        return False
    if "by" in words[max(0, amount.start - 1) : amount.start]:
        return False
    much = any(one == "how" and other in ("much", "far", "many") for one, other in pairwise(words))
    at = bool(amount.start) and words[amount.start - 1] in _AT
    return much or not _LEFT.isdisjoint(words) or (at and not _HAVING.isdisjoint(words))


def _goes_on(
    alone: Question, amount: Amount, schedule: Schedule, context: Context, knowledge: Knowledge
) -> bool:
    """Return whether a turn only says another amount: "and if I slow to sixty", after what there is at 75."""
    told, words = context.result, alone.reading.words
    forward = isinstance(told, ScheduleResult) and told.value is not None
    top = isinstance(told, LimitResult) and any(
        limit.id == schedule.top or is_point(limit, schedule) for limit in told.limits
    )
    said = {word for k, word in enumerate(words) if not amount.start <= k < amount.end}
    bare = top and said <= _LEADING
    leads = bare or (bool(amount.start) and words[amount.start - 1] in _AT | _TO)
    asks = words[0] in ASKING or bool(alone.reading.asked & QUANTITIES)
    return (forward or top) and leads and not asks and not things_named(alone.reading, knowledge)


def _is_about(alone: Question, schedule: Schedule, knowledge: Knowledge) -> bool:
    """Return whether a turn names nothing that the schedule does not speak of, but that something is left."""
    said = knowledge.matcher.vocabulary(schedule.id)
    things = knowledge.matcher.telling(alone.reading)
    return all(said & (m.concepts | m.implied) or not _LEFT.isdisjoint(m.text.split()) for m in things)


def _schedule(context: Context, knowledge: Knowledge) -> Schedule | None:
    """Return the schedule spoken of: told or asked about, or of the paragraph of a figure that was told."""
    past = ((each.result, each.answer) for each in context.earlier[:LATELY])
    for result, answer in ((context.result, context.answer), *past):
        if isinstance(result, ScheduleResult):
            return result.schedule
        if isinstance(result, Needed) and isinstance(result.record, Schedule):
            return result.record
        limits = {limit.id for limit in result.limits} if isinstance(result, LimitResult) else set()
        paragraphs, units = _told(answer)
        for name in knowledge.base.ids("schedules"):
            found = knowledge.base.records[name]
            if isinstance(found, Schedule) and (
                found.top in limits
                or (found.input_unit in units and any((s.document, s.paragraph) in paragraphs for s in found.sources))
            ):
                return found
    return None


def _told(answer: Answer | None) -> tuple[set[tuple[str, str]], set[str]]:
    """Return the paragraphs that an answer rests on, and the units of its figures."""
    if answer is None:
        return set(), set()
    return {(s.document, s.paragraph) for s in answer.sources}, {value.unit for value in answer.values}
