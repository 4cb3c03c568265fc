"""A rule with two sides of one number, both of which a question names: "what below 100 kt, and what above it?".

The number need not be said again; what is done is held by the side that it is said of.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.practice.marking.finding.elements import point
from assistant.practice.marking.points import Element, Point
from assistant.practice.marking.reading.said import plain
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import Reading

_BELOW, _ABOVE = plain("below"), plain("above")
_SIDES = {"lower": _BELOW, "max": _BELOW, "higher": _ABOVE, "min": _ABOVE}
_NAMED = 1.5
_TWO = 2


def with_sides(points: Sequence[Point], reading: Reading, know: Knowledge) -> list[Point]:
    """Return the two points of a rule without the one number of both, each with its side for a name."""
    figures = [p.figures for p in points]
    if len(points) != _TWO or any(len(each) != 1 for each in figures) or any(p.figures_suffice for p in points):
        return list(points)
    (one,), (two,) = figures
    given = {(a.value, a.unit or "") for a in reading.amounts}
    sides = [_SIDES.get(f.sense, "") for f in (one, two)]
    if one[:2] != two[:2] or one[:2] not in given or set(sides) != {_BELOW, _ABOVE}:
        return list(points)
    plainly = [point(p.text.rpartition(": ")[2], know) for p in points]  # without the title of the rule
    return [
        p._replace(
            figures=(),
            case=figure,
            elements=tuple(e for e in p.elements if e.words not in ((_BELOW,), (_ABOVE,))),
            labels=(Element(frozenset(), (side,), _NAMED),),
        )
        for p, side, figure in zip(plainly, sides, (one, two), strict=True)
    ]
