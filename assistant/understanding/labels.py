"""What a label that shows tells of things that nobody names: "STEER LOST is on" says that the controller has failed.

A label that is asked about tells nothing ("does STEER LOST show?"), nor does one that is said not to show.
"""

from __future__ import annotations

from collections.abc import Collection

from assistant.understanding.clauses import STOPS, believed
from assistant.understanding.condition import Condition, StateWords
from assistant.understanding.reading import Mention, Reading

_DENYING = frozenset({"no", "not", "never", "without", "nor", "neither", "cannot"})
_DARK = frozenset({"dark", "out", "absent", "missing", "blank", "off", "disappeared", "cleared", "gone", "unlit"})
_SHOWING = frozenset({
    "on", "lit", "up", "showing", "shows", "show", "shown", "showed", "shining", "comes", "came", "come", "appears",
    "appeared", "appear", "burning", "illuminated", "lights", "glowing", "flashes", "caption", "caution", "memo",
    "message", "light", "warning", "amber", "white", "red", "see", "have", "got", "get", "there", "displayed", "pops",
    "popped", "visible", "stays", "remains", "persists", "sits",
})  # fmt: skip
_AUXILIARY = frozenset({
    "does", "do", "did", "is", "are", "was", "has", "have", "will", "would", "still", "the", "a", "an",
})  # fmt: skip
_NEAR = 4


def labels_shown(
    reading: Reading, known: StateWords, asks: Collection[int], found: Collection[Condition]
) -> list[Condition]:
    """Return what holds since a label is told to show, of things of which nothing else is said."""
    named = [(m, c) for m in reading.mentions for c in m.concepts if c in known.shows]
    if not named or believed(reading.words):
        return []
    taken = {c.input for c in found}
    result: list[Condition] = []
    for mention, concept in named:
        label, pairs = known.shows[concept]
        if mention.start in asks or not _is_told(reading, mention, label):
            continue
        for name, value in pairs:
            if name not in taken:
                result.append(Condition(name, value, implied=True, where=mention.taken))
    return result


def _is_told(reading: Reading, mention: Mention, label: str) -> bool:
    """Return whether a label is told to show: it is written as it stands there, or a word beside it says so."""
    words = reading.words
    before = _until_stop(words[max(0, mention.start - _NEAR) : mention.start][::-1])
    after = _until_stop(words[mention.end : mention.end + _NEAR])
    if _DENYING.intersection(before[:2]) or (_DENYING | _DARK).intersection(after[:3]):
        return False
    beside = {*before, *after} - _AUXILIARY
    return bool(_SHOWING.intersection(beside)) or label in reading.text


def _until_stop(words: tuple[str, ...]) -> tuple[str, ...]:
    end = next((i for i, word in enumerate(words) if word in STOPS or word in ("and", "but")), len(words))
    return words[:end]
