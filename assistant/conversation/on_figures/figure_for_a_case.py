"""The figure beside the one told for a case that an amount names: "and for setting the parking brake more than five
minutes?", after the temperature for take-off.

The amount tells which figure is meant, and is not held against a limit of its own.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.traits import names_unknown
from assistant.knowledge.records import Limit
from assistant.quantities.amounts import Amount
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import bound_value
from assistant.resolving.results import LimitResult, Result

_LONG = 14
_LEADING = frozenset({"and", "or", "so", "but", "ok", "okay", "then"})
_FOR = frozenset({"for", "to"})


def figure_for_a_case(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the figure of the quantity told last whose name holds all amounts of a turn that asks "and for …"."""
    told, reading = context.result, alone.reading
    if not isinstance(told, LimitResult) or len(told.limits) != 1 or not reading.amounts:
        return None
    opening = next((w for w in reading.words if w not in _LEADING), "")
    if opening not in _FOR or len(reading.words) > _LONG or alone.conditions:
        return None
    variant = alone.variant if alone.named_variant or context.asked is None else context.asked.variant
    found = [limit for limit in _of_its_unit(told.limits[0], variant, knowledge) if _is_named(limit, alone, knowledge)]
    if len(found) != 1:
        return None
    return alone._replace(context=True, variant=variant), LimitResult((found[0],), ())


def _of_its_unit(told: Limit, variant: str, knowledge: Knowledge) -> list[Limit]:
    """Return the other limits in the unit of the one told."""
    figure = bound_value(told)
    limits: list[Limit] = [knowledge.record(n, variant) for n in knowledge.base.ids("limits") if n != told.id]
    return [x for x in limits if figure and (own := bound_value(x)) and own.unit == figure.unit]


def _is_named(limit: Limit, alone: Question, knowledge: Knowledge) -> bool:
    """Return whether the name of a limit holds all amounts of a turn, and the limit knows whatever else it names."""
    held = {(a.value, a.unit) for a in knowledge.phrase(limit.of).amounts}
    amounts: tuple[Amount, ...] = tuple(alone.reading.amounts)
    if not held or any((a.value, a.unit) not in held for a in amounts):
        return False
    return alone.reading.concepts.isdisjoint(QUANTITIES) and not names_unknown(limit.id, alone, knowledge)
