"""A turn on the last calculation, schedule or verdict itself: it gives what was asked back, or changes what went in."""

from __future__ import annotations

from assistant.conversation.choosing.before_refined import with_or_without
from assistant.conversation.context import Context
from assistant.conversation.on_calculations.enough_for_it import enough_for_it
from assistant.conversation.on_calculations.from_the_result import from_the_result
from assistant.conversation.on_calculations.larger_calculation import larger_calculation
from assistant.conversation.on_calculations.on_the_same import on_the_same
from assistant.conversation.on_calculations.orders_again import orders_again
from assistant.conversation.on_calculations.recalculating import recalculated
from assistant.conversation.on_calculations.supplied import supplied
from assistant.conversation.on_figures.counterparts import counterpart
from assistant.conversation.on_figures.on_the_schedule import on_the_schedule
from assistant.conversation.on_figures.schedule_again import schedule_again
from assistant.conversation.on_figures.schedule_ends import schedule_end
from assistant.conversation.on_verdicts.judged_again import judged_again
from assistant.conversation.on_verdicts.judged_before import calculation_judged
from assistant.conversation.on_verdicts.judged_result import judged_result
from assistant.conversation.on_verdicts.limit_spoken import limit_spoken
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_inputs import cued_parts
from assistant.resolving.results import ModelResult, Result


def amended(alone: Question, first: Scored, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the calculation or the schedule spoken of with what a turn gives or changes, or None."""
    found = counterpart(alone, context, knowledge) or schedule_again(alone, context, knowledge)
    found = found or schedule_end(alone, context, knowledge) or limit_spoken(alone, context, knowledge)
    found = found or judged_result(alone, context, knowledge) or enough_for_it(alone, context, knowledge)
    found = found or from_the_result(alone, first, context, knowledge)
    found = found or on_the_schedule(alone, first, context, knowledge) or supplied(alone, first, context, knowledge)
    found = found or judged_again(alone, context, knowledge)
    found = found or larger_calculation(alone, first, context, knowledge)
    found = found or orders_again(alone, first, context, knowledge)
    found = found or recalculated(alone, first, context, knowledge) or on_the_same(alone, first, context, knowledge)
    found = found or _before_its_verdict(alone, first, context, knowledge)
    return found or with_or_without(alone, context, knowledge)


def _before_its_verdict(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the calculation whose result was judged last with what a turn changes of it by name: "20 kt headwind"."""
    past = calculation_judged(context)
    if past is None or not isinstance(past.result, ModelResult):
        return None
    cued = cued_parts(past.result.model, alone, knowledge)
    if len(cued) < len(alone.reading.amounts):
        return None  # a bare figure is another reading of the limit
    before = context._replace(asked=past.asked, result=past.result, answer=past.answer)
    return recalculated(alone, first, before, knowledge)
