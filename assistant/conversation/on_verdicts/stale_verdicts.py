"""A verdict on an amount that a turn puts another in the place of is no answer to it: the new one is judged.

"Three minutes then", after ten were too many, is not told that ten are.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.resolving import limits as limit_rules
from assistant.resolving.amounts_for import fits
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BandResult, Check, CheckResult, Result

_FEW = 6
_POINTING = frozenset({"it", "that", "this", "one", "them", "found", "another", "other"})
_TIMES = 4.0
"""How many times larger or smaller a bare number is, at most, that takes the place of another."""


def with_the_new_amount(alone: Question, result: Result, knowledge: Knowledge) -> Result:
    """Return a verdict told again with the one amount of a turn judged in the place of its like, else the result."""
    amounts = alone.reading.amounts
    if not isinstance(result, CheckResult) or len(amounts) != 1 or len(alone.reading.words) > _FEW:
        return result
    if any(abs(check.given - (fits(amounts[0], check.unit, knowledge.units) or 0.0)) < 1e-6 for check in result.checks):
        return result
    judged = (_judged(check, alone, knowledge) for check in result.checks)
    found = tuple(check for check in judged if check is not None)
    return CheckResult(found[:1]) if found else result


def by_the_bands(alone: Question, result: Result, context: Context, knowledge: Knowledge) -> Result:
    """Return the band of a bare reading that points at what was judged last, where it would be a verdict on another
    quantity: "found at 150 after we taxied in on it", of a tyre, is no speed; else the result.
    """
    told, amounts = context.result, alone.reading.amounts
    if not isinstance(told, BandResult) or not isinstance(result, CheckResult) or not told.reference:
        return result
    if len(amounts) != 1 or amounts[0].unit or _POINTING.isdisjoint(alone.reading.words):
        return result
    if result.checks[0].unit == told.bands.unit or not told.reference / 2 <= amounts[0].value <= told.reference * 2:
        return result
    measured = amounts[0]._replace(unit=told.bands.unit)
    variant = context.asked.variant if context.asked and not alone.named_variant else alone.variant
    return limit_rules.judge(told.bands, alone._replace(variant=variant), knowledge, (measured,)) or result


def _judged(check: Check, alone: Question, knowledge: Knowledge) -> Check | None:
    """Return the check of a turn's amount against the limit of another check, where it has that limit's unit."""
    amount = alone.reading.amounts[0]
    value = fits(amount, check.unit, knowledge.units)
    if value is None or (amount.unit is None and not check.given / _TIMES <= value <= check.given * _TIMES):
        return None
    return limit_rules.check(check.limit, amount, alone, knowledge)
