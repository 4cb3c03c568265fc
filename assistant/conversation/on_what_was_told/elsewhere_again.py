"""A label of other fleets stays one when it is said again, or another after it: "medium", then "autobrake medium"."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import question_of
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Elsewhere, Result

_FEW = 2
_LEADING = frozenset({"and", "or", "so", "then", "what", "about", "how", "the", "ok"})


def elsewhere_again(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return that there is no such thing here, for a turn that names a label of other fleets, alone or with the thing
    that the label before was of.
    """
    if not isinstance(context.result, Elsewhere):
        return None
    first = resolve_scored(alone, knowledge).result
    if isinstance(first, Elsewhere):
        return alone, first
    said = [w for w in alone.reading.words if w.isalnum() and w not in _LEADING]
    if not said or len(said) > _FEW:
        return None
    thing = knowledge.phrase(context.result.fact.asks[0]).words[0]
    whole = question_of(" ".join((thing, *said)), knowledge, alone.variant)
    result = resolve_scored(whole, knowledge).result
    return (whole.with_text(alone.reading.text), result) if isinstance(result, Elsewhere) else None
