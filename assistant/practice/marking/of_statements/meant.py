"""A list of names and what each means, of which a question gives one meaning: that one's name is asked for."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.practice.marking.points import Point

_TWO = 2
_LIST = 3


def meant(points: Sequence[Point]) -> Point | None:
    """Return the one of a list of names and their meanings of which a question gives the meaning: how it is drawn."""
    paired = all(len(p.elements) == _TWO and is_named_first(p) for p in points)
    given = [p for p in points if p.elements and p.elements[-1].given]
    if len(points) < _LIST or not paired or len(given) != 1:
        return None
    others = (e for p in points for e in p.elements if p is not given[0] or e is p.elements[0])
    return None if any(e.given for e in others) else given[0]


def is_named_first(point: Point) -> bool:
    """Return whether a point is one name, without "and" or figures before what is said of it."""
    return len(point.elements) > 1 and not (point.figures or point.verdict or point.state or point.way or point.kept)
