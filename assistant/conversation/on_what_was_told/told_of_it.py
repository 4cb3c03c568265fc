"""What else is known of what was told last, for a turn that would only be told the same again."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_what_was_told.preferring import (
    asks_manner,
    asks_other,
    of_the_quantity,
    told,
    told_in_all,
)
from assistant.conversation.reading_turns.readings import carried, pointed_at
from assistant.conversation.reading_turns.traits import OPEN, leaves_out
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.leaning import of_spoken
from assistant.resolving.results import CheckResult, Declined, LimitResult, Needed, Result

_SURE, _AHEAD = 0.9, 0.05
_LEANING, _EXPLAINED = 0.66, 0.6
"""From these scores something else of what was told is meant, and where all things named are explained."""


def told_of_it(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return what else is known of what was told last, or what a turn asks by itself."""
    assert context.asked is not None
    given = context.asked.conditions or (context.scenario if alone.conditions else ())
    question = carried(alone, context, given, knowledge)
    figure = isinstance(context.result, (LimitResult, CheckResult))
    more = asks_other(alone) or (figure and asks_manner(alone))
    past = told_in_all(context, knowledge) if asks_other(alone) else told(context)
    third = of_the_quantity(question, resolve_scored(question, knowledge, avoid=past), knowledge)
    same = resolve_scored(question, knowledge)
    if isinstance(same.result, Needed) and same.result.record.id in past:
        return question, same.result
    answers = not isinstance(third.result, OPEN) and third.result != context.result
    if not more and same.record in past and same.score >= max(_SURE, third.score + _AHEAD):
        if same.result != context.result:
            return question, same.result  # what was told says that too
        return (question, third.result) if answers and third.score >= _SURE else None
    least = _EXPLAINED if not leaves_out(alone, third, knowledge) else _LEANING
    own = first_of(alone, first, third, context, knowledge)
    if answers and third.score >= max(least, own.score):
        return question, third.result
    if not isinstance(own.result, OPEN):
        return alone, own.result
    return None


def told_again(
    alone: Question, first: Scored, whole: Question, second: Scored, knowledge: Knowledge
) -> tuple[Question, Result]:
    """Return what was told last again, unless the turn names a thing that it does not know: that is not loaded."""
    if not isinstance(first.result, OPEN) or not leaves_out(alone, second, knowledge):
        return whole, second.result
    return alone, first.result if isinstance(first.result, Declined) else Declined(())


def first_of(alone: Question, first: Scored, third: Scored, context: Context, knowledge: Knowledge) -> Scored:
    """Return what a turn gives by itself, worth less where it points at a thing that this does not speak of."""
    spoken = pointed_at(alone, context, knowledge)
    if not spoken or third.score < _LEANING:
        return first
    return first._replace(score=first.score * of_spoken(first.record, spoken, knowledge))
