"""The calculation whose result was judged last: what a turn changes of it, it changes before the verdict."""

from __future__ import annotations

from assistant.conversation.context import Context, Earlier
from assistant.resolving.results import BandResult, CheckResult, ModelResult, Result


def calculation_judged(context: Context) -> Earlier | None:
    """Return the turn whose calculation gave what the verdict told last was given on, or None."""
    past = context.earlier[0] if context.earlier else None
    if past is None or not isinstance(past.result, ModelResult):
        return None
    given = {round(each, 1) for each in _judged(context.result)}
    return None if given.isdisjoint(round(value.value, 1) for value in past.result.values) else past


def _judged(result: Result | None) -> list[float]:
    """Return what a verdict was given on."""
    if isinstance(result, CheckResult):
        return [check.given for check in result.checks]
    return [result.given] if isinstance(result, BandResult) else []
