"""A verdict on an amount that a turn puts another in the place of is no answer to it: the new one is judged.

"Three minutes then", after ten were too many, is not told that ten are.
"""

from __future__ import annotations

from assistant.resolving import limits as limit_rules
from assistant.resolving.amounts_for import fits
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Check, CheckResult, Result

_FEW = 6
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


def _judged(check: Check, alone: Question, knowledge: Knowledge) -> Check | None:
    """Return the check of a turn's amount against the limit of another check, where it has that limit's unit."""
    amount = alone.reading.amounts[0]
    value = fits(amount, check.unit, knowledge.units)
    if value is None or (amount.unit is None and not check.given / _TIMES <= value <= check.given * _TIMES):
        return None
    return limit_rules.check(check.limit, amount, alone, knowledge)
