"""What a figure of the paragraphs told lately was before: "what did the factor use to be", after a distance by it."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.paragraphs_told import paragraphs_of, told_lately
from assistant.resolving.changes import asks_what_was
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import ChangeResult, Result

_LONG = 11
_CHANGED = "changed"


def former_of_told(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the change of the one figure of the paragraphs told lately that a short turn asks of by its name."""
    if context.asked is None or context.answer is None or alone.reading.amounts or alone.conditions:
        return None
    if len(alone.reading.words) > _LONG or not (alone.reading.has(_CHANGED) or asks_what_was(alone)):
        return None
    things = _named(alone, knowledge)
    if not things:
        return None
    changes = knowledge.base.changes.values()
    for told in told_lately(context, knowledge):
        own = [c for c in changes if not set(paragraphs_of(c)).isdisjoint(told)]
        known = {c.id: knowledge.phrase(c.subject).concepts for c in own}
        named = [c for c in own if all(not known[c.id].isdisjoint(thing) for thing in things)]
        if len(named) == 1:
            return alone._replace(context=True), ChangeResult((named[0],))
    return None


def _named(alone: Question, knowledge: Knowledge) -> list[frozenset[str]]:
    """Return the things that a turn names besides the change, or else the quantity in its words for that: "what was the
    factor".
    """
    telling = knowledge.matcher.telling(alone.reading)
    things = [m.concepts for m in telling if _CHANGED not in m.concepts]
    if things or not asks_what_was(alone):
        return things
    words = {alone.reading.words[k] for m in telling for k in m.taken}
    kinds = knowledge.lexicon.kinds
    named = (frozenset(c for c in knowledge.phrase(word).concepts if kinds.get(c) == "quantity") for word in words)
    return [concepts for concepts in named if concepts]
