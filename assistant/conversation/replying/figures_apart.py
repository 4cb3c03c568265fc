"""How far two figures told one after the other are apart: "how much more is that", "by how much", "the difference?".

The figures are of two records of one quantity, of one record on two variants, or of a change, formerly and now.
"""

from __future__ import annotations

import re

from assistant.answering.answer import Answer, Number
from assistant.answering.parts import difference_unit
from assistant.conversation.composing import composed
from assistant.conversation.context import Context
from assistant.knowledge.records import Limit
from assistant.quantities.show import exact_shown
from assistant.resolving.knowing import Knowledge
from assistant.resolving.limits import bound_value
from assistant.resolving.results import CompareResult, LimitResult

_MOST_WORDS = 12
_MORE = frozenset({
    "more", "less", "longer", "shorter", "higher", "lower", "heavier", "lighter", "faster", "slower",
    "quicker",
    "bigger", "smaller", "greater", "larger", "wider", "narrower", "hotter", "cooler", "tighter", "softer",
    "harder",
    "further", "above", "below", "over", "under", "extra",
})  # fmt: skip
_APART = frozenset({"difference", "differ", "differs", "apart", "gap", "different", "between"})
_SMALL = frozenset({
    "that", "thats", "is", "it", "its", "s", "what", "whats", "the", "so", "and", "how", "much", "many",
    "by", "than",
    "one", "normal", "standard", "short", "long", "other", "them", "two", "between", "in", "of", "which",
    "those",
    "these", "this", "do", "does", "they", "are", "was", "ok", "okay", "big", "large", "then", "right",
    "first", "a",
    "kilos", "kg", "tonnes", "knots", "kt", "metres", "meters", "degrees", "psi", "seconds", "body", "both",
    "has",
    "been", "um", "er", "hm", "well", "but", "far", "just", "lot", "get", "got", "have", "we", "i",
})  # fmt: skip
_PIECES = ("how", "much", "diff", "apart", "gap", "which", "separate", "between", "extra", "what")
"""Pieces of which every such turn holds one."""
_SAME = 1e-9


def apart_told(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return how figures told lately stand to each other, or a reading to where bands part, for such a turn."""
    lower = text.lower()
    if not any(piece in lower for piece in _PIECES):
        return None
    from assistant.conversation.on_verdicts.margin_told import margin_told
    from assistant.conversation.replying.greater_of_two import greater_of_two

    told = apart(text, context, knowledge) or greater_of_two(text, context, knowledge)
    return told or margin_told(text, context, knowledge)


def apart(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return how far the two figures told last are apart, where a turn asks no more."""
    if context.asked is None or context.answer is None or not asks_apart(text):
        return None
    changed = _change(text, context, knowledge)
    if changed:
        return changed
    told = _limits(context, knowledge)
    if not told:
        return None
    if len(told) == 1 or told[0].id == told[1].id:
        if all(o.record != told[0].id for o in knowledge.base.overrides):
            return None
        result = CompareResult(tuple((v, knowledge.record(told[0].id, v)) for v in knowledge.variants))
        return composed(text, context.asked.with_text(text), result, knowledge)
    return _between(text, told[0], told[1], context.answer, knowledge)


def asks_apart(text: str) -> bool:
    """Return whether a turn asks how far two things are apart, and no more."""
    words = re.findall(r"[a-z0-9]+", text[:120].lower())
    said = frozenset(words)
    asks = not said.isdisjoint(_APART) or " by how much" in f" {' '.join(words)}"
    asks = asks or (not said.isdisjoint(_MORE) and not said.isdisjoint(("much", "many", "what", "far")))
    return asks and 1 < len(words) <= _MOST_WORDS and said <= _SMALL | _MORE | _APART


def _limits(context: Context, knowledge: Knowledge) -> list[Limit]:
    """Return the figures told last and before it, one where the last stands alone."""
    results = (context.result, *(turn.result for turn in context.earlier[:1]))
    if isinstance(results[0], LimitResult) and len(results[0].limits) == 2:
        return list(results[0].limits)
    found = [limit for result in results if (limit := _only(result))]
    if _only(results[0]) is None:
        return []
    units = {bound.unit for limit in found if (bound := bound_value(limit))}
    return found if len(units) == 1 else found[:1]


def _only(result: object) -> Limit | None:
    """Return the one figure that was told; a verdict says itself how far a reading is from its limit."""
    if isinstance(result, LimitResult) and len(result.limits) == 1:
        return result.limits[0]
    return None


def _between(text: str, last: Limit, before: Limit, answer: Answer, knowledge: Knowledge) -> Answer | None:
    one, two = bound_value(before), bound_value(last)
    if one is None or two is None or one.unit != two.unit or abs(one.value - two.value) < _SAME:
        return None
    gap, unit, units = round(abs(one.value - two.value), 6), difference_unit(one.unit), knowledge.units
    figures = [f"{limit.of}, {exact_shown(value.value, value.unit, units)}" for limit, value in
               ((before, one), (last, two))]  # fmt: skip
    more = "less" if two.value < one.value else "more"
    words = f"{exact_shown(gap, unit, units)} {more}: {figures[1]}, against {figures[0]}."
    values = (Number(answer.values[0].quantity, gap, unit), *answer.values)
    return answer._replace(question=text, text=words, working="", values=values)


def _change(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return by how much a figure was changed, after it was told what it was before."""
    change = knowledge.base.changes.get(context.said.entry) if context.said else None
    if change is None or context.said is None:
        return None
    figures = [knowledge.phrase(words).amounts for words in (change.formerly, change.now)]
    if any(len(amounts) != 1 for amounts in figures):
        return None
    (before,), (now,) = figures
    gap, unit = round(abs(now.value - before.value), 6), difference_unit(now.unit or "factor")
    more = "less" if now.value < before.value else "more"
    shown = exact_shown(gap, unit, knowledge.units)
    words = f"{shown} {more}: {change.subject}, now {change.now}, formerly {change.formerly}."
    return context.said._replace(question=text, text=words, working="", values=(Number("", gap, unit),))
