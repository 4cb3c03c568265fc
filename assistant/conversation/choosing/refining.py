"""What was asked back, and the turn that says it: "is 210 ok?" may be of many things, "for raising the gear" tells."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.control_words.controls import follows
from assistant.conversation.reading_turns.readings import question_of
from assistant.conversation.reading_turns.traits import OPEN, begins_asking, names_unknown
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import bound_value
from assistant.resolving.offering import offered
from assistant.resolving.results import Choices, Declined, LimitResult, Result

_LONG, _MOST = 8, 3
_SURE = 0.7
_NEAR = 1.25
"""How many times larger or smaller than a figure a bare number may be that is held against it."""
_OPENING = frozenset({
    "for", "to", "of", "on", "in", "with", "when", "at", "during", "while", "before", "after", "as", "by", "from", "if",
    "i", "mean", "meant", "talking", "about",
})  # fmt: skip
_JUDGING = frozenset({"ok", "okay", "fine", "alright", "right", "allowed", "legal", "enough", "within", "good"})


def refined(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the question that was asked back, with the part of it that a turn gives: "how long does it take?", "to get
    the gear up". first: what the turn gives by itself, which says what limit is meant.
    """
    before, words = context.asked, alone.reading.words
    if before is None or before.context or not isinstance(context.result, Choices) or not 1 < len(words) <= _LONG:
        return None
    of_figure = bool(before.reading.amounts) and not begins_asking(alone)
    begins = words[0] in _OPENING or follows(alone.reading.text) or of_figure
    if not begins or alone.reading.amounts or not knowledge.matcher.telling(alone.reading):
        return None
    text = f"{' '.join(before.reading.words).rstrip('?. ')} , {' '.join(words)}"
    question = question_of(text, knowledge, alone.variant if alone.named_variant else before.variant)
    found = resolve_scored(question, knowledge)
    if isinstance(found.result, OPEN) or found.score < _SURE:
        return None
    if isinstance(first.result, LimitResult) and found.record not in (first.record, ""):
        return None
    if found.record and names_unknown(found.record, alone, knowledge):
        return None
    return question.with_text(alone.reading.text)._replace(context=True), found.result


def which_figure(alone: Question, result: Result, knowledge: Knowledge) -> Choices | None:
    """Return what a bare number may be meant for, where a turn asks whether it is all right and says of what in no
    word: the figures that it comes nearest.
    """
    amounts, words = alone.reading.amounts, alone.reading.words
    if not isinstance(result, Declined) or len(amounts) != 1 or amounts[0].value <= 0:
        return None
    if len(words) > _LONG or _JUDGING.isdisjoint(words) or result.words:
        return None
    far: dict[str, float] = {}
    for name in knowledge.base.ids("limits"):
        limit = knowledge.record(name, alone.variant)
        bound = bound_value(limit) if limit.maximum or limit.minimum else None
        if bound and bound.value > 0 and amounts[0].unit in (None, bound.unit):
            far[name] = max(bound.value / amounts[0].value, amounts[0].value / bound.value)
    near = sorted((name for name, ratio in far.items() if ratio <= _NEAR), key=lambda name: far[name])
    options = {offered(knowledge, name): name for name in reversed(near[:_MOST])}
    return Choices(tuple((name, said) for said, name in reversed(options.items()))) if options else None
