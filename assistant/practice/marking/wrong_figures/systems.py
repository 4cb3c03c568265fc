"""Systems that an answer names by a number that none has: "System 3"."""

from __future__ import annotations

import re

from assistant.practice.marking.reading.said import Said

_NUMBERED = re.compile(r"system \w+", re.IGNORECASE)


def systems(said: Said) -> list[str]:
    """Return the systems that do not exist."""
    words = said.reading.words
    named = [m for m in said.reading.mentions if _NUMBERED.fullmatch(m.text)]
    unknown = [m.text for m in named if m.concepts and all(c[0] == "!" for c in m.concepts)]
    places = (i for i, w in enumerate(words[:-1]) if w == "system" and i + 1 in said.numbered)
    return unknown + [" ".join(words[i : i + 2]) for i in places]
