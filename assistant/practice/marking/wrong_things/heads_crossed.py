"""What a list says of each of several colours, said of another of them: "flashing amber for moving".

Spoken without a stop, a list holds only by its order: each colour is followed by what it means.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.practice.marking.finding.found import Held, element_said
from assistant.practice.marking.points import Element, Point
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import NEGATORS
from assistant.resolving.knowing import Knowledge

_COLOUR = "colour"
_TELLING = 0.7
_TWO = 2


def heads_crossed(held: Sequence[Held], said: Said, know: Knowledge) -> list[str]:
    """Return the points whose meaning stands behind the colour of another one, where colours lead."""
    points = [h.point for h in held if not (h.point.figures or h.point.verdict or h.point.state or h.point.labels)]
    heads = {n: at for n, point in enumerate(points) if (at := _head(point, know)) is not None}
    if len(heads) < _TWO:
        return []
    coloured = {
        i for n, at in heads.items() for i in element_said(points[n].elements[at], said)[1]
        if NEGATORS.isdisjoint(said.reading.words[max(0, i - _TWO) : i])
    }
    told = {
        i: n for n, at in heads.items() for e in points[n].elements[at + 1 :]
        if _is_own(e, points[n], points) for i in element_said(e, said)[1]
    }  # fmt: skip
    if not coloured or not told or min(coloured) > min(told):
        return []
    found = []
    for place, n in told.items():
        before = max((i for i in coloured if i < place), default=-1)
        own = element_said(points[n].elements[heads[n]], said)[1]
        if before >= 0 and before not in own and said.clauses[before] == said.clauses[place]:
            found.append(f"another's: {points[n].text}")
    return found


def _head(point: Point, know: Knowledge) -> int | None:
    """Return which element of a point is its colour, where something is said of that behind it."""
    families = know.lexicon.families
    at = next((n for n, e in enumerate(point.elements) if any(families.get(c) == _COLOUR for c in e.concepts)), None)
    return at if at is not None and at + 1 < len(point.elements) else None


def _is_own(element: Element, point: Point, points: Sequence[Point]) -> bool:
    """Return whether a word tells of one point alone."""
    others = [e for p in points if p is not point for e in p.elements]
    shared = any(element.words == e.words or element.concepts & e.concepts for e in others)
    return element.weight > _TELLING and not (shared or element.given)
