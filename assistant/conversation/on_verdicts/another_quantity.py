"""An amount of another quantity given after a verdict: "we're up at 21,000 feet though", after a speed for the gear.

The same action has a limit for each quantity; the turn gives no action, and the question before gives it.
"""

from __future__ import annotations

from assistant.conversation.context import LATELY, Context
from assistant.conversation.reading_turns.like_amounts import unit_word
from assistant.conversation.reading_turns.names_its_own import things_of_its_own
from assistant.conversation.reading_turns.readings import question_of
from assistant.quantities.amounts import Amount
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.leaning import ANSWERING
from assistant.resolving.results import Check, CheckResult, Result

_LONG, _MOST_BEFORE = 10, 14
_NEAR, _FAR = 1.5, 5.0
"""How many times larger or smaller a bare number is than a reading that it stands for, and than another."""
_WAYS = frozenset({"up", "down"})
"""Words of where one flies, which name no movement of the gear then: "up at 21,000 feet"."""
_OPEN = frozenset({"what", "which", "who", "where", "why", "when"})


def by_another_quantity(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the verdict on the action judged last by its limit of the quantity of which a turn gives an amount."""
    before, reading = context.asked, alone.reading
    if before is None or not isinstance(context.result, CheckResult) or len(reading.words) > _LONG:
        return None
    if alone.conditions or alone.named_variant or len(reading.amounts) != 1 or len(before.reading.amounts) != 1:
        return None
    amount, old = reading.amounts[0], before.reading.amounts[0]
    if not _OPEN.isdisjoint(reading.words[:2]) or _names_more(alone, amount, knowledge):
        return None
    check = context.result.checks[0]
    if amount.unit is None:
        return _by_its_size(alone, check, context, knowledge)
    if _dimension(amount.unit, knowledge) == _dimension(check.unit, knowledge):
        return None
    return _judged(alone, amount, before, old, check.limit.id, knowledge)


def _by_its_size(
    alone: Question, told: Check, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the verdict before the last with a bare number, which is of its size and nowhere near the last reading:
    "and if we were doing 232", after a speed and then a height.
    """
    amount = alone.reading.amounts[0]
    if amount.value <= 0 or _apart(amount.value, told.given) < _FAR:
        return None
    for past in context.earlier[:LATELY]:
        checks = past.result.checks if isinstance(past.result, CheckResult) else ()
        if len(checks) != 1 or len(past.asked.reading.amounts) != 1 or checks[0].unit == told.unit:
            continue
        if _apart(amount.value, checks[0].given) <= _NEAR:
            given = amount._replace(unit=checks[0].unit)
            return _judged(alone, given, past.asked, past.asked.reading.amounts[0], told.limit.id, knowledge)
    return None


def _apart(one: float, other: float) -> float:
    """Return how many times larger one figure is than the other."""
    return max(one / other, other / one) if one > 0 and other > 0 else _FAR


def _names_more(alone: Question, amount: Amount, knowledge: Knowledge) -> bool:
    """Return whether a turn names anything beside where its amount is."""
    words = alone.reading.words
    named = things_of_its_own(alone, knowledge)
    where = {k for k in range(len(words) - 1) if words[k] in _WAYS and k + 1 in (amount.start, amount.start - 1)}
    return any(where.isdisjoint(m.taken) for m in named)


def _dimension(unit: str, knowledge: Knowledge) -> str:
    return knowledge.units.get(unit).dimension


def _judged(
    alone: Question, amount: Amount, before: Question, old: Amount, told: str, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the verdict with a turn's amount in the place of the one before, by another limit than the one told."""
    words = before.reading.words
    if len(words) > _MOST_BEFORE:
        return None
    new = f"{amount.value:.10g} {unit_word(amount.unit or '')}"
    text = " ".join((*words[: old.start], new, *words[old.end :]))
    question = question_of(text, knowledge, before.variant)._replace(variant=before.variant)
    found = resolve_scored(question, knowledge)
    result = found.result
    if not isinstance(result, CheckResult) or found.score < ANSWERING:
        return None
    if any(check.limit.id == told or check.given != amount.value for check in result.checks):
        return None
    return question.with_text(alone.reading.text)._replace(context=True), result
