"""A figure that the last calculation only mentions, asked about: "why the 2 min?", after a cooling time.

It is no new input, and the result is not held against it: where it is stated is told.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.knowledge.records import Model
from assistant.quantities.amounts import Amount
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import bound_value
from assistant.resolving.results import Declined, FactResult, LimitResult, ModelResult, Result

_LONG = 10
_ASKING = frozenset({"why", "what", "whats", "come"})
_GIVING = frozenset({"if", "about", "with", "would", "at", "after", "before", "when"})
_DUST = 1e-9


def figure_assumed(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return where a figure is stated that the last calculation only assumes, to a short turn that asks about it."""
    told, words = context.result, alone.reading.words
    if not isinstance(told, ModelResult) or len(words) > _LONG or len(alone.reading.amounts) != 1:
        return None
    if _ASKING.isdisjoint(words[:4]) or not _GIVING.isdisjoint(words):
        return None
    amount = alone.reading.amounts[0]
    mentioned = (a for text in told.model.assumes for a in knowledge.phrase(text).amounts)
    if amount.unit is None or not any(_same(amount, a) for a in mentioned):
        return None
    return alone._replace(context=True), _stated(amount, told.model, knowledge) or Declined(())


def _same(one: Amount, other: Amount) -> bool:
    return one.unit == other.unit and abs(one.value - other.value) < _DUST


def _stated(amount: Amount, model: Model, knowledge: Knowledge) -> Result | None:
    """Return the figure, or else the statement, of a paragraph that a calculation rests on which states an amount."""
    base = knowledge.base
    for name in base.ids("limits"):
        bound = bound_value(base.records[name])
        beside = set(base.records[name].sources) & set(model.sources)
        if beside and bound and bound.unit == amount.unit and abs(bound.value - amount.value) < _DUST:
            return LimitResult((base.records[name],))
    for name in base.ids("facts"):
        fact = base.records[name]
        beside = set(fact.sources) & set(model.sources)
        if beside and any(_same(amount, a) for a in knowledge.phrase(fact.says).amounts):
            return FactResult(fact)
    return None
