"""A turn that only names a unit wants the figure just told in it: "in bar?", "what's that in feet", "and in yards"."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.conversation.context import Context
from assistant.quantities.units import Units
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import FactResult, LimitResult, ModelResult, Result, ScheduleResult
from assistant.understanding.asked_units import AskedUnit

_FIGURES = (FactResult, LimitResult, ModelResult, ScheduleResult)
_LONGEST = 10
_BESIDE = frozenset({
    "in", "into", "to", "as", "and", "or", "what", "whats", "is", "was", "that", "it", "this", "so", "please", "say",
    "said", "make", "how", "much", "many", "would", "be", "about", "the", "same", "ok", "okay", "now", "well", "give",
    "me", "tell", "then", "for", "us", "put", "can", "you", "i", "do", "have", "need", "want", "hm", "um", "uh",
    "sorry", "thanks", "those", "them", "figure", "number", "value", "rather", "convert", "?", ".", ",", "!",
})  # fmt: skip
"""Words that want a figure said otherwise, and name nothing."""


def in_another_unit(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the question answered last with the unit that a turn names, where it says nothing else."""
    before = context.asked
    if before is None or context.answer is None or not isinstance(context.result, _FIGURES):
        return None
    if alone.conditions or alone.named_variant or len(alone.reading.words) > _LONGEST:
        return None
    unit = _only_unit(alone.reading.words, knowledge.units)
    told = context.answer.values[0].unit if context.answer.values else ""
    if unit is None or not told or knowledge.units.get(told).dimension != knowledge.units.get(unit.symbol).dimension:
        return None
    return before._replace(reading=before.reading._replace(text=alone.reading.text, unit=unit)), context.result


def _only_unit(words: Sequence[str], units: Units) -> AskedUnit | None:
    """Return the unit that a turn names and nothing else."""
    for start, word in enumerate(words):
        if word in _BESIDE:
            continue
        found = units.match(words, start, glued=True)
        if found is None or not _BESIDE.issuperset(words[found[1] :]):
            return None
        return AskedUnit(found[0].symbol, start, found[1], (), True)
    return None
