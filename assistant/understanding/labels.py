"""What a label that shows tells of things that nobody names: "STEER LOST is on" says that the controller has failed.

A label that is asked about tells nothing ("does STEER LOST show?"), nor does one that is said not to show.
"""

from __future__ import annotations

from collections.abc import Collection

from assistant.understanding.clauses import STOPS, believed
from assistant.understanding.condition import Condition, StateWords, is_result
from assistant.understanding.mentions import Mention, Reading

_DENYING = frozenset({"no", "not", "never", "without", "nor", "neither", "cannot"})
_DARK = frozenset({
    "dark", "out", "absent", "missing", "blank", "off", "disappeared", "cleared", "clear", "clears", "gone", "unlit",
    "extinguish", "extinguished", "disappear", "disappears", "vanish", "vanished",
})  # fmt: skip
_SHOWING = frozenset({
    "on", "lit", "up", "showing", "shows", "show", "shown", "showed", "shining", "comes", "came", "come", "appears",
    "appeared", "appear", "burning", "illuminated", "lights", "glowing", "flashes", "caption", "caution", "memo",
    "message", "light", "warning", "amber", "white", "red", "see", "got", "get", "there", "displayed", "pops",
    "popped", "visible", "stays", "remains", "persists", "sits",
})  # fmt: skip
_GOING = frozenset({
    "taxiing", "taxying", "taxied", "taxi", "way", "rolling", "pushing", "pushed", "backing", "heading",
})  # fmt: skip
_NEAR = 4


def labels_shown(
    reading: Reading, known: StateWords, asks: Collection[int], found: Collection[Condition]
) -> list[Condition]:
    """Return what holds since a label is told to show, or to be out, of things of which nothing else is said."""
    named = [(m, c) for m in reading.mentions for c in m.concepts if c in known.shows]
    if not named or believed(reading.words):
        return []
    taken = {c.input for c in found}
    result: list[Condition] = []
    for mention, concept in named:
        label, pairs = known.shows[concept]
        shows = None if mention.start in asks else _shows(reading, mention, label)
        for name, value in pairs:
            held = value if shows else None if shows is None or is_result(name) else known.normal(name)
            if held is not None and name not in taken:
                result.append(Condition(name, held, implied=True, where=mention.taken))
    return result


def _shows(reading: Reading, mention: Mention, label: str) -> bool | None:
    """Return whether a label is told to show or to be out, or None where nothing is told of it.

    It shows where it is written as it stands there, or a word beside it says so.
    """
    words = reading.words
    before = _until_stop(words[max(0, mention.start - _NEAR) : mention.start][::-1])
    after = _until_stop(words[mention.end : mention.end + _NEAR])
    denied = bool(_DENYING.intersection(before[:2]) or _DENYING.intersection(after[:3]))
    if _DARK.intersection(_without_ways(after)):
        return denied  # "does not go out" shows
    told = not _SHOWING.isdisjoint((*before, *after)) or label in reading.text
    return not denied if told else None


def _without_ways(words: tuple[str, ...]) -> tuple[str, ...]:
    """Return words without an "out" that says where the aeroplane goes: "came on taxiing | out |", "on the way out"."""
    return tuple(w for i, w in enumerate(words) if not (w == "out" and i and words[i - 1] in _GOING))


def _until_stop(words: tuple[str, ...]) -> tuple[str, ...]:
    end = next((i for i, word in enumerate(words) if word in STOPS or word in ("and", "but")), len(words))
    return words[:end]
