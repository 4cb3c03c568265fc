"""A turn that says of which of two things a reading is, after the verdicts on both: "the nose one"."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BandResult, BothResult, Result

_MOST_WORDS = 5


def one_of_both(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the one verdict of the two told last that is on the thing which a turn names."""
    told = context.result
    if not isinstance(told, BothResult) or context.asked is None or len(alone.reading.words) > _MOST_WORDS:
        return None
    first, second = told.first, told.second
    if not isinstance(first, BandResult) or not isinstance(second, BandResult) or first.given != second.given:
        return None
    if alone.reading.amounts or alone.conditions or not {"where", "why", "who"}.isdisjoint(alone.reading.words):
        return None
    named = [m.concepts for m in knowledge.matcher.telling(alone.reading)]
    of = [knowledge.phrase(each.bands.of).concepts for each in (first, second)]
    mine = [bool(named) and all(not concepts.isdisjoint(own) for concepts in named) for own in of]
    if mine[0] == mine[1]:
        return None
    return context.asked.with_text(alone.reading.text), first if mine[0] else second
