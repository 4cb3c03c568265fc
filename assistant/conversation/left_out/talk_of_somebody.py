"""Talk of somebody after an answer, which asks nothing of what is loaded: "the FO is happy with it", "is he an idiot".

Every word of such a turn speaks of persons, of their saying or thinking, or of what is thought of them or of the
answer. Completed from the question before, it would be told something of persons that nobody asked for.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.resolving.knowing import Question
from assistant.resolving.results import Declined, Result

_PERSONS = frozenset({
    "he", "she", "they", "him", "her", "them", "captain", "capt", "skipper", "fo", "copilot", "mate", "boss",
    "instructor", "examiner", "engineer", "mechanic", "colleague", "friend", "everyone", "everybody", "nobody",
    "somebody", "someone", "guy", "bloke",
})  # fmt: skip
_SAYING = frozenset({
    "says", "say", "said", "saying", "reckons", "reckon", "thinks", "think", "agrees", "agree", "disagrees", "disagree",
    "happy", "unhappy", "sure", "told", "tells", "insists", "knows", "know", "laughs", "laughing", "sleeping", "asleep",
})  # fmt: skip
_THOUGHT_OF_IT = frozenset({
    "fine", "ok", "okay", "alright", "good", "great", "nice", "bad", "funny", "problem", "worry",
    "worries", "idiot", "fool", "stupid", "clever", "mad", "crazy", "joking", "kidding", "useless", "rubbish", "angry",
})  # fmt: skip
_SMALL = frozenset({
    "is", "are", "was", "s", "it", "its", "that", "this", "the", "a", "an", "my", "our", "your", "with", "about", "of",
    "and", "but", "so", "well", "all", "just", "very", "quite", "no", "not", "me", "to", "be", "?", ".", ",", "!",
    "i", "we", "you", "do", "does", "am", "has", "have",
})  # fmt: skip


def talk_of_somebody(alone: Question, context: Context) -> tuple[Question, Result] | None:
    """Return a turn that only talks of somebody as declined, or None for any other."""
    words = frozenset(alone.reading.words)
    if context.asked is None or words.isdisjoint(_PERSONS) or alone.reading.amounts:
        return None
    if words.isdisjoint(_SAYING | _THOUGHT_OF_IT) or not words <= _PERSONS | _SAYING | _THOUGHT_OF_IT | _SMALL:
        return None
    return alone, Declined(())
