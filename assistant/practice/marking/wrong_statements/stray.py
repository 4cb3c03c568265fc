"""A number alone, where steps or statements are asked for: it tells of none of them, though it may stand in one."""

from __future__ import annotations

from assistant.practice.marking.finding.found import Held
from assistant.practice.marking.points import Need, Point
from assistant.practice.marking.reading.said import Said

_SEVERAL = 3
_TELLING = 0.7


def without_stray(held: tuple[Held, ...], need: Need, said: Said) -> tuple[Held, ...]:
    """Return points as held, those with words of their own not, where an answer is no more than one bare number."""
    words = [i for i, word in enumerate(said.reading.words) if word[0].isalnum()]
    bare = len(said.claims) == 1 and not said.claims[0].amount.unit and said.numbered.issuperset(words)
    if not bare or len(held) < _SEVERAL:
        return held
    return tuple(h._replace(share=0.0, places=()) if need.ordered or _has_words(h.point) else h for h in held)


def _has_words(point: Point) -> bool:
    return not point.figures_suffice and any(e.weight > _TELLING and not e.given for e in point.elements)
