"""An amount of the turn before that a turn points at by its kind: "and lower it at that speed?"."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.like_amounts import unit_word
from assistant.conversation.reading_turns.readings import question_of
from assistant.knowledge.records import Schedule
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CheckResult, LimitResult, ModelResult, Result

_POINTING = frozenset({"that", "this", "the"})
_SAME = "same"
_FEW = 7
_ALIKE = {"altitude": "length", "height": "length", "weight": "mass", "duration": "time"}
"""The dimension in which a quantity is measured, where that has another name."""


def with_that_amount(alone: Question, context: Context, knowledge: Knowledge) -> Question | None:
    """Return a turn with the amount that it points at, or None where it points at none."""
    words = alone.reading.words
    if context.asked is None or alone.reading.amounts:
        return None
    for i in range(1, len(words) - 1):
        end = i + 2 if words[i + 1] == _SAME else i + 1
        points = words[i - 1] == "at" and words[i] in _POINTING and end < len(words)
        if not points or (words[i] == "the" and end == i + 1):
            continue
        for quantity in knowledge.phrase(words[end]).concepts & QUANTITIES:
            told = _told(quantity, context, knowledge)
            if told:
                question = question_of(" ".join((*words[:i], told, *words[end + 1 :])), knowledge, alone.variant)
                return question.with_text(alone.reading.text)
    return _with_there(alone, context, knowledge)


def _with_there(alone: Question, context: Context, knowledge: Knowledge) -> Question | None:
    """Return a turn on a schedule with the input that a sum read it at: "what is the pedal limit there"."""
    words = alone.reading.words
    if words[-1:] not in (("there",), ("then",)) or not isinstance(context.result, ModelResult):
        return None
    for name in knowledge.base.ids("schedules"):
        schedule = knowledge.base.records[name]
        if isinstance(schedule, Schedule) and knowledge.phrase(schedule.of).concepts <= alone.reading.concepts:
            told = _told(schedule.input, context, knowledge)
            question = question_of(" ".join((*words[:-1], "at", told)), knowledge, alone.variant)
            return question.with_text(alone.reading.text) if told else None
    return None


def with_its_condition(alone: Question, context: Context, knowledge: Knowledge) -> Question | None:
    """Return a turn with the unit of the amount that decides which limit applies, where its one bare number takes the
    place of that amount: "and for ninety", after the speed in a turn of 70 degrees.
    """
    before, told = context.asked, context.result
    words, amounts = alone.reading.words, alone.reading.amounts
    if before is None or not isinstance(told, LimitResult) or len(amounts) != 1 or amounts[0].unit is not None:
        return None
    if len(words) > _FEW or "at" in words:
        return None
    units = {unit for limit in told.limits for _, _, _, unit in limit.applies}
    given = [a for a in before.reading.amounts if a.unit in units]
    if len(given) != 1 or not given[0].unit or len(before.reading.amounts) != 1:
        return None
    end = amounts[0].end
    question = question_of(
        " ".join((*words[:end], unit_word(given[0].unit), *words[end:])), knowledge, alone.variant
    )
    return question.with_text(alone.reading.text)


def _told(quantity: str, context: Context, knowledge: Knowledge) -> str:
    """Return the one amount of a quantity that the turn before gave, in words, or the one before where that one was
    left open or gave none.
    """
    told = _given(quantity, context.asked, context.result, knowledge)
    past = context.earlier[0] if context.earlier else None
    if told or past is None or (context.asked and context.asked.reading.amounts):
        return told
    return _given(quantity, past.asked, past.result, knowledge)


def _given(quantity: str, asked: Question | None, result: Result | None, knowledge: Knowledge) -> str:
    found = {(a.value, a.unit) for a in asked.reading.amounts if a.unit} if asked else set()
    if isinstance(result, CheckResult):
        found = {(check.given, check.unit) for check in result.checks}
    dimension = _ALIKE.get(quantity, quantity)
    fitting = [(value, unit) for value, unit in found if knowledge.units.get(unit).dimension == dimension]
    return f"{fitting[0][0]:.10g} {unit_word(fitting[0][1])}" if len(fitting) == 1 else ""
