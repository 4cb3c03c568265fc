"""The figure of the quantity told last, of another thing that a turn only names: "and going up?", after a time.

Words that hold after what was told may fit a figure of another quantity there, a speed after a time. A turn that asks
no quantity itself wants the one that was asked for.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import OPEN_WORDS, carried, merged
from assistant.conversation.reading_turns.traits import begins_asking, names_unknown
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of, tells_quantity
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import FactResult, LimitResult, Result

_LONG = 7
_SURE = 0.95
_TOLD = (FactResult, LimitResult)


def of_the_same_quantity(
    alone: Question, result: Result, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the figure of the quantity told last that a short turn names another thing for, where what it would be
    answered with is of another quantity.
    """
    told = context.result
    if not isinstance(told, LimitResult) or not isinstance(result, _TOLD) or context.asked is None:
        return None
    words = alone.reading.words
    asks = not OPEN_WORDS.isdisjoint(words) and "about" not in words
    if asks or alone.reading.asked & QUANTITIES or alone.reading.amounts or len(words) > _LONG:
        return None
    if isinstance(result, FactResult) and begins_asking(alone):
        return None
    quantity = quantity_of(told, knowledge)
    if quantity is None or _gives(result, quantity, knowledge):
        return None
    whole, _ = merged(alone, context, knowledge, False)
    for question in (whole, carried(alone, context, context.asked.conditions, knowledge)):
        found = resolve_scored(question, knowledge)
        if not isinstance(found.result, LimitResult) or found.result.limits == told.limits:
            continue
        same = quantity_of(found.result, knowledge) == quantity
        if same and found.score >= _SURE and not names_unknown(found.record, alone, knowledge):
            return question, found.result
    return None


def _gives(result: Result, quantity: str, knowledge: Knowledge) -> bool:
    """Return whether a figure is of a quantity, or a statement tells one of it."""
    if isinstance(result, FactResult):
        return tells_quantity(result, frozenset({quantity}), knowledge)
    return quantity_of(result, knowledge) == quantity
