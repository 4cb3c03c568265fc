"""Colours that people confuse with the one that is shown, though they ask for it by either name: yellow for amber."""

from __future__ import annotations

from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import word_set
from assistant.resolving.knowing import Knowledge

_OTHERS = {"amber": frozenset(("yellow", "yellowish", "gold"))}
"""For each colour those that are not it, when it is told."""
_UNNAMED = word_set("crimson grey gray blue purple violet magenta pink brown black cyan turquoise silver golden")
"""Colours that nothing has a name for."""


def other_shade(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the colours named that are near the one asked for, or no colour that anything has."""
    colours = {c for p in need.points for e in p.elements if not e.given for c in e.concepts}
    colours = {c for c in colours if know.lexicon.families.get(c) == "colour"}
    others = frozenset(w for c in colours for w in _OTHERS.get(c, ())) | (_UNNAMED if colours else frozenset())
    own = need.asked | frozenset(need.expected.lower().split())
    words = said.reading.words
    return [
        word for i, word in enumerate(words)
        if word in others - own and not {"not", "no", "never", "than"}.intersection(words[max(0, i - 2) : i])
    ]  # fmt: skip
