"""Several readings at once after a limit that holds for each: "ours are 110, 120, 115 and 240", after one of a brake.

Where a rule on how far such readings may be apart has the same limit for each, both are held against; else the reading
nearest to the limit, or furthest beyond it, is.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_verdicts.figures_nearby import limits_told
from assistant.conversation.reading_turns.readings import things_named
from assistant.knowledge.records import Bands, Limit
from assistant.resolving.amounts_for import fits
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limit_candidates import with_each
from assistant.resolving.limits import bound_value, check, judge
from assistant.resolving.readings_compared import APART, FEWEST
from assistant.resolving.results import BandResult, BothResult, CheckResult, Result


def several_readings(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the verdict on the readings of a turn that names nothing else, by the limit spoken of last."""
    amounts = alone.reading.amounts
    if context.asked is None or len(amounts) < FEWEST or alone.conditions:
        return None
    variant = alone.variant if alone.named_variant else context.asked.variant
    limit = _limit(context.result, variant, knowledge)
    figure = bound_value(limit) if limit else None
    if limit is None or figure is None or figure.unit == APART:
        return None
    if any(fits(a, figure.unit, knowledge.units) is None for a in amounts):
        return None
    known = knowledge.matcher.vocabulary(limit.id) | {figure.quantity}
    named = any(known.isdisjoint(m.concepts | m.implied) for m in things_named(alone.reading, knowledge))
    if named or not alone.reading.asked & QUANTITIES <= known:
        return None
    result = _apart(limit, alone._replace(variant=variant), knowledge) or _furthest(limit, alone, knowledge)
    question = context.asked.with_text(alone.reading.text)._replace(variant=variant, context=True)
    return (question, result) if result else None


def _limit(told: Result | None, variant: str, knowledge: Knowledge) -> Limit | None:
    """Return the one limit that was told or judged by last, or that holds for each of the readings compared."""
    if isinstance(told, BothResult):
        told = next((each for each in (told.first, told.second) if isinstance(each, CheckResult)), told)
    names = [limit.id for limit in limits_told(told, knowledge)]
    if isinstance(told, BandResult):
        names = [told.bands.each] if told.bands.each else []
    if len(names) != 1:
        return None
    record = knowledge.record(names[0], variant)
    return record if isinstance(record, Limit) and (record.maximum or record.minimum) else None


def _apart(limit: Limit, alone: Question, knowledge: Knowledge) -> Result | None:
    """Return the verdict by the rule on how far readings may be apart that has a limit for each."""
    for name in knowledge.base.ids("bands"):
        bands = knowledge.base.records[name]
        if isinstance(bands, Bands) and bands.each == limit.id:
            judged = judge(bands, alone, knowledge, alone.reading.amounts)
            return with_each(bands, judged, alone, knowledge) if judged else None
    return None


def _furthest(limit: Limit, alone: Question, knowledge: Knowledge) -> Result | None:
    """Return the verdict on the reading that is nearest to a limit, or furthest beyond it."""
    found = [each for a in alone.reading.amounts if (each := check(limit, a, alone, knowledge))]
    if not found:
        return None
    return CheckResult(((max if limit.maximum else min)(found, key=lambda each: each.given),))
