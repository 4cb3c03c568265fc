"""Figures near the one told that a turn's reading may be held against.

A statement or a change that was told gives a figure as well as a limit does. Two figures may bound each other ("400 °C
for more than 5 min"): a temperature after the time is the other's. And a reading that nothing in the last turn is of is
one of what was spoken of before a side question.
"""

from __future__ import annotations

from math import log

from assistant.conversation.context import LATELY, Context, Earlier
from assistant.knowledge.records import Fact, Limit
from assistant.quantities.amounts import Amount
from assistant.resolving import limits as limit_rules
from assistant.resolving.amounts_for import fits
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import bound_value
from assistant.resolving.results import (
    BandResult,
    ChangeResult,
    CheckResult,
    FactResult,
    LimitResult,
    ProcedureResult,
    Result,
    TableResult,
    TablesResult,
    limits_of,
)  # fmt: skip

_MOST_WORDS = 12
_NEAR = log(2.5)
_BESIDE = (FactResult, ProcedureResult, TableResult, TablesResult, LimitResult, CheckResult, BandResult)
"""Results that leave a reading of another kind to what was told before them."""


def limits_told(told: Result | None, knowledge: Knowledge) -> tuple[Limit, ...]:
    """Return the limits that a result tells or judges by, or whose figure it states or changes."""
    if isinstance(told, ChangeResult) and len(told.changes) == 1:
        changed = knowledge.base.records.get(told.changes[0].record)
        return (changed,) if isinstance(changed, Limit) else ()
    return _stated(told.fact, knowledge) if isinstance(told, FactResult) else limits_of(told)


def _stated(fact: Fact, knowledge: Knowledge) -> tuple[Limit, ...]:
    """Return the limit whose figure a statement gives, from the same paragraph."""
    figures = {(value.value, value.unit) for value in fact.values}
    limits = [knowledge.base.records[name] for name in knowledge.base.ids("limits")] if figures else []
    return tuple(
        limit for limit in limits
        if isinstance(limit, Limit) and (limit.maximum or limit.minimum) and set(limit.sources) & set(fact.sources)
        and (figure := bound_value(limit)) and (figure.value, figure.unit) in figures
    )  # fmt: skip


def of_the_pair(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the verdict on a turn's reading by the figure that bounds the one told, where it is of that: "at 380?",
    after how long the parking brake may be set above 400 °C.
    """
    told, before, amounts = context.result, context.asked, alone.reading.amounts
    if before is None or not isinstance(told, (LimitResult, CheckResult)) or not 1 <= len(amounts) <= 2:
        return None
    limit, *more = limits_told(told, knowledge)
    variant = alone.variant if alone.named_variant else before.variant
    other = _bounding(limit, variant, knowledge) if not more and limit.applies else None
    if other is None or alone.conditions or len(alone.reading.words) > _MOST_WORDS:
        return None
    pair = (limit, other)
    found = [(each, amount) for amount in amounts for each in pair if _is_of(amount, each, pair, knowledge)]
    if len(found) != len(amounts) or other not in (each for each, _ in found) or _names_else(alone, pair, knowledge):
        return None
    checks = [check for each, amount in found if (check := limit_rules.check(each, amount, alone, knowledge))]
    decisive = [check for check in checks if check.within or len(checks) == 1] or checks
    question = before.with_text(alone.reading.text)._replace(variant=variant, context=True)
    return (question, CheckResult((decisive[0],))) if decisive else None


def _bounding(limit: Limit, variant: str, knowledge: Knowledge) -> Limit | None:
    """Return the figure that holds where this one is exceeded, as this one does where it is."""
    mine = bound_value(limit)
    for name in knowledge.base.ids("limits"):
        other = knowledge.record(name, variant)
        if not isinstance(other, Limit) or not other.applies or not set(other.sources) & set(limit.sources):
            continue
        theirs = bound_value(other)
        if mine and theirs and (other.applies[0][3], limit.applies[0][3]) == (mine.unit, theirs.unit):
            return other if other.id != limit.id else None
    return None


def _is_of(amount: Amount, limit: Limit, pair: tuple[Limit, Limit], knowledge: Knowledge) -> bool:
    """Return whether an amount is of one of two figures: by its unit, a bare one by its size."""
    figure = bound_value(limit)
    if figure is None or amount.value <= 0:
        return False
    if amount.unit not in (None, "deg"):
        return fits(amount, figure.unit, knowledge.units) is not None
    if amount.unit == "deg" and figure.unit != "degC":
        return False
    apart = [abs(log(amount.value / bound.value)) for each in pair if (bound := bound_value(each))]
    return abs(log(amount.value / figure.value)) == min(apart) < _NEAR


def _names_else(alone: Question, limits: tuple[Limit, ...], knowledge: Knowledge) -> bool:
    """Return whether a turn names something that none of some figures speaks of."""
    known = frozenset().union(*(knowledge.matcher.vocabulary(limit.id) for limit in limits))
    return any(known.isdisjoint(m.concepts | m.implied) for m in knowledge.matcher.telling(alone.reading))


def before_the_side_question(alone: Question, context: Context, knowledge: Knowledge) -> Earlier | None:
    """Return the turn lately whose figure a turn's one reading is of, where the last one told none of its kind."""
    told, answer, amounts = context.result, context.answer, alone.reading.amounts
    if len(amounts) != 1 or answer is None or not isinstance(told, _BESIDE):
        return None
    units = {value.unit for value in answer.values} | {figure.unit for figure in _figures(told, knowledge)}
    for past in context.earlier[:LATELY]:
        limits = limits_of(past.result)
        figure = bound_value(limits[0]) if len(limits) == 1 else None
        if figure is not None and figure.unit not in units and _is_reading(amounts[0], figure.unit, knowledge):
            return past
    return None


def _figures(told: Result, knowledge: Knowledge) -> list[Amount]:
    bounds = (bound_value(limit) for limit in limits_told(told, knowledge))
    return [Amount(0, 0, bound.value, bound.unit, "", False, False) for bound in bounds if bound]


def _is_reading(amount: Amount, unit: str, knowledge: Knowledge) -> bool:
    return amount.unit is not None and fits(amount, unit, knowledge.units) is not None
