"""Two controls told of one after the other, and both at once: "tiller limit at 40?", "pedals", "both together"."""

from __future__ import annotations

from assistant.conversation.context import LATELY, Context
from assistant.conversation.reading_turns.readings import question_of
from assistant.knowledge.records import Model
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import ModelResult, Result, ScheduleResult

_TOGETHER = frozenset({"both", "together", "combined", "total", "sum", "altogether", "added"})
_BESIDE = _TOGETHER | frozenset({
    "and", "so", "what", "about", "with", "at", "once", "of", "them", "the", "two", "all", "in", "if", "i", "we", "use",
    "used", "then", "is", "are", "give", "add", "s", "how", "much", "up", "full", "that", "there", "speed", "same",
    "time", "gives", "do", "get", "have", "it", "make", "a", "go",
})  # fmt: skip
_SUM = "total_order"


def both_at_once(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the sum of what two controls told lately give in full at one input, where a turn asks for both."""
    words = {w for w in alone.reading.words if w[0].isalpha()}
    told = context.result
    if words.isdisjoint(_TOGETHER) or not words <= _BESIDE or alone.reading.amounts:
        return None
    if not isinstance(told, ScheduleResult) or told.value is None or context.asked is None:
        return None
    other = next((past.result for past in context.earlier[:LATELY] if _is_other(past.result, told)), None)
    if not isinstance(other, ScheduleResult):
        return None
    named = {told.schedule.id, other.schedule.id}
    for name in knowledge.base.ids("models"):
        model = knowledge.base.records[name]
        if isinstance(model, Model) and model.function == _SUM and named <= {value for _, value in model.extra}:
            return _summed(alone, told, other, context.asked, knowledge)
    return None


def _is_other(result: Result | None, told: ScheduleResult) -> bool:
    """Return whether another schedule was read at the same input."""
    if not isinstance(result, ScheduleResult) or result.value is None:
        return False
    return result.schedule.id != told.schedule.id and result.given == told.given


def _summed(
    alone: Question, one: ScheduleResult, other: ScheduleResult, asked: Question, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the sum of all that two controls give to one side."""
    orders = " and ".join(f"{each.value:.10g} deg right {_control(each, knowledge)}" for each in (one, other))
    question = question_of(f"{orders} at {one.given:.10g} {one.schedule.input_unit}", knowledge, asked.variant)
    result = resolve_scored(question._replace(variant=asked.variant), knowledge).result
    if not isinstance(result, ModelResult):
        return None
    return question.with_text(alone.reading.text)._replace(context=True, variant=asked.variant), result


def _control(read: ScheduleResult, knowledge: Knowledge) -> str:
    """Return the control that a schedule is of: the thing that its name begins with."""
    mentions = knowledge.phrase(read.schedule.of).mentions
    return mentions[0].text if mentions else read.schedule.of
