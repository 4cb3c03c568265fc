"""A state told of what was spoken of last by no more than "it": "fine, call it lost. What brakes?"."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import question_of
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.binding import value_meant
from assistant.understanding.mentions import STATE

_IT = frozenset({"it", "that"})
_HELPING = frozenset({"is", "was", "has", "does", "did", "can", "will", "would", "do", "are", "could", "should", "s"})
_BETWEEN = frozenset({"s", "is", "has", "as", "be", "to", "been", "had", "now", "then", "was", "go", "goes"})
_STATING = frozenset({
    "call", "treat", "say", "assume", "count", "take", "suppose", "consider", "reckon", "imagine", "if", "once", "when",
    "now", "fine", "well", "right", "ok", "okay", "and", "then", "so", "oh", "but", "until", "after",
})  # fmt: skip
_FAR = 4
"""Words from "it" to the word that says its state."""


def with_the_last(alone: Question, context: Context, knowledge: Knowledge) -> Question | None:
    """Return a turn with the one thing whose state was given last in the place of "it", of which it tells a state."""
    before, words = context.asked, alone.reading.words
    if before is None or _IT.isdisjoint(words) or any(not c.is_result for c in alone.conditions):
        return None
    given = {c.input: c.value for c in before.conditions if not c.is_result}
    at = next((k for k, word in enumerate(words) if word in _IT and _is_told(alone, k)), None)
    if at is None or len(given) != 1:
        return None
    item = knowledge.base.inputs[name := next(iter(given))]
    state = next((m for m in alone.reading.mentions if at < m.start <= at + _FAR and _says(m.concepts)), None)
    normal = knowledge.states.normal(name)
    if state is None or given[name] != normal or value_meant(name, state, knowledge.states) in (None, normal):
        return None  # only what was found well is told to have failed after all
    if not _BETWEEN.issuperset(words[at + 1 : state.start]):
        return None
    text = " ".join((*words[:at], knowledge.base.terms[item.term].names[0], *words[at + 1 :]))
    return question_of(text, knowledge, before.variant).with_text(alone.reading.text)


def _says(concepts: frozenset[str]) -> bool:
    return any(c.startswith(STATE) for c in concepts)


def _is_told(alone: Question, at: int) -> bool:
    """Return whether "it" stands where something is told of it, and not asked."""
    before = alone.reading.words[at - 1] if at else ","
    return before not in _HELPING and (before in _STATING or not before.isalpha())
