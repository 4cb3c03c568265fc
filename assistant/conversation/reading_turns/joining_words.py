"""Words that go with a name which takes its like's place: "on FIRM instead", "a 45 degree turn"."""

from __future__ import annotations

from assistant.conversation.reading_turns.turned_round import Places
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.mentions import Mention, Reading

_TURN = "turn"
_LONGER = 2
_BEFORE_NAMES = frozenset({"on", "in", "with", "for", "under", "using"})
"""Words that only join a name to what was asked before, where a turn opens with them: "on FIRM instead"."""


def measured_by(before: Question, old: Mention, reading: Reading) -> set[int]:
    """Return the places of an angle that went with the turn which gives way: "a 45 degree turn"."""
    if reading.amounts or not old.holds(_TURN):
        return set()
    places = {k for a in before.reading.amounts if a.unit == "deg" for k in range(a.start, a.end)}
    return places | {k - 1 for k in places if before.reading.words[k - 1 : k] == ("a",)}


def use_joining(reading: Reading, places: Places, lead: frozenset[str]) -> None:
    """Take the word that joins a name to the question before for used, where that name took its like's place.

    lead: words by which a turn may open before it.
    """
    at = next((k for k, word in enumerate(reading.words) if word not in lead - _BEFORE_NAMES), len(reading.words))
    after = at + 2 if reading.words[at + 1 : at + 2] == ("the",) else at + 1
    if at < len(reading.words) and reading.words[at] in _BEFORE_NAMES and after in places.used:
        places.used.update(range(at, after))


def in_full(mention: Mention, old: Mention, before: Question, know: Knowledge) -> list[str]:
    """Return a name of one word with the rest of the longer one whose place it takes: "dry runway", for "dry?"."""
    if len(mention.taken) != 1 or len(old.taken) < _LONGER:
        return []
    words = [*mention.text.split(), *(before.reading.words[k] for k in old.taken[1:])]
    named = know.phrase(" ".join(words)).mentions
    return words if len(named) == 1 and named[0].concepts & mention.concepts else []
