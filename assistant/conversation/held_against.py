"""A bare reading after a limit: "we're at 57", after the maximum take-off mass, is held against it."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.controls import believes
from assistant.conversation.traits import names_thing
from assistant.quantities.amounts import Amount
from assistant.resolving import limits as limit_rules
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CheckResult, LimitResult, Result

_MOST_WORDS = 6
_TIMES = 3.0
"""How many times larger or smaller than a limit a bare figure may be that is held against it."""
_TONNE = 1000.0


def held_against(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the check of a turn's one amount against the limit told last, where the turn says nothing else."""
    told, amounts = context.result, alone.reading.amounts
    if not isinstance(told, LimitResult) or len(told.limits) != 1 or len(amounts) != 1 or context.asked is None:
        return None
    long = len(alone.reading.words) > _MOST_WORDS
    if long or alone.conditions or believes(alone.reading.text) or alone.reading.asked & QUANTITIES:
        return None
    if names_thing(alone, knowledge):
        return None
    limit = told.limits[0]
    amount = _in_unit(amounts[0], limit_rules.bound_value(limit), limit.maximum is None and limit.minimum is None)
    found = limit_rules.check(limit, amount, alone, knowledge) if amount else None
    if found is None:
        return None
    before = context.asked
    reading = before.reading._replace(text=alone.reading.text)
    return before._replace(reading=reading, variant=alone.variant), CheckResult((found,))


def _in_unit(amount: Amount, figure: object, stated: bool) -> Amount | None:
    """Return an amount in the unit of a limit, a bare one where it is of its size; tonnes may go without saying."""
    unit, value = getattr(figure, "unit", ""), getattr(figure, "value", 0.0)
    if stated or not unit or not value:
        return None
    if amount.unit is not None:
        return amount
    if unit == "kg" and amount.value * _TONNE < value * _TIMES and amount.value > value / _TONNE / _TIMES:
        return amount._replace(value=amount.value * _TONNE, unit=unit)
    return amount._replace(unit=unit) if value / _TIMES <= amount.value <= value * _TIMES else None
