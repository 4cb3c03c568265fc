"""Words of sides and ways that tell nothing of one: "whoever is in the left seat", "either the flaps or the levers"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.practice.marking.points import Point
from assistant.practice.marking.reading.said import Said, plain

_SIDES = frozenset((plain("left"), plain("right")))
_EITHER = plain("either")
_EITHER_OR = re.compile(r"\beither (?!of\b|one\b|thrust\b|lever\b|pilot\b|side\b)\w+(?: \w+){0,7} or\b")
"""What only begins two cases: "either landing flap or below 700 ft with both levers near idle"."""


def told_of_none(points: Sequence[Point], said: Said) -> set[str]:
    """Return the plain words that an answer holds, and puts in the place of nothing that is asked for."""
    found = _of_seats(said) if any(p.text in ("left", "right") for p in points) else set()
    return found | {_EITHER} if _EITHER_OR.search(" ".join(said.reading.words)) else found


def _of_seats(said: Said) -> set[str]:
    """Return the sides that wherever they stand only name a seat: "whoever is in the left seat"."""
    followed = list(zip(said.words, (*said.reading.words[1:], ""), strict=True))
    return {side for side in _SIDES if all(behind == "seat" for each, behind in followed if each == side)}
