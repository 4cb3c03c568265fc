"""A turn that only supposes the thing spoken of to fail: "what if it fails?", after what the brake controller does.

What follows from that is told, and no figure or technique that a word of the turn would fit as well.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import question_of
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import FactResult, LossResult, Result, TableResult, TablesResult
from assistant.understanding.mentions import STATE, Mention

_LONG = 9
_FAIRLY = 0.8
_POINTING = frozenset({"it", "that", "this"})
_SUPPOSING = frozenset({"if", "say", "suppose", "supposing", "when", "should"})
_BESIDE = _SUPPOSING | _POINTING | {
    "and", "what", "so", "but", "then", "happens", "ok", "now", "is", "has", "were", "was", "well", "about", "s", "had",
}  # fmt: skip
_FOLLOWING = (FactResult, TableResult, TablesResult, LossResult)


def supposed_of_it(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what follows from the failure of the one thing that was asked of, where a turn supposes no more."""
    words, before = alone.reading.words, context.asked
    if before is None or not isinstance(context.result, FactResult) or len(words) > _LONG or alone.conditions:
        return None
    at = next((k for k, word in enumerate(words) if word in _POINTING), None)
    if at is None or _SUPPOSING.isdisjoint(words[:at]) or not _BESIDE.issuperset(_unsaid(alone)):
        return None
    things = [m for m in before.reading.mentions if _may_fail(m, knowledge)]
    if len({m.text for m in things}) != 1:
        return None
    text = " ".join((*words[:at], things[0].text, *words[at + 1 :]))
    question = question_of(text, knowledge, before.variant)
    found = resolve_scored(question, knowledge)
    if not question.conditions or found.score < _FAIRLY or not isinstance(found.result, _FOLLOWING):
        return None
    return question.with_text(alone.reading.text)._replace(context=True), found.result


def _unsaid(alone: Question) -> set[str]:
    """Return the words of a turn that say no state."""
    said = {k for m in alone.reading.mentions if any(c.startswith(STATE) for c in m.concepts) for k in m.taken}
    return {word for k, word in enumerate(alone.reading.words) if k not in said and word[0].isalpha()}


def _may_fail(mention: Mention, knowledge: Knowledge) -> bool:
    """Return whether a mention names a thing whose failure changes results."""
    inputs = {i for c in mention.concepts for i in knowledge.states.by_term.get(c, ())}
    return len(inputs) == 1 and inputs <= knowledge.states.failures
