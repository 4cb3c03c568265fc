"""A figure told roughly that lies inside the range asked for: "something like twenty minutes", of 15 to 25."""

from __future__ import annotations

import re

from assistant.practice.marking.finding.equal import in_unit
from assistant.practice.marking.points import Need, Point
from assistant.practice.marking.reading.said import Claim, Said
from assistant.resolving.knowing import Knowledge

_ROUGHLY = re.compile(r"\b(?:about|around|approximately|roughly|maybe|some|say|like|near|nearly|perhaps|or so)\b")
_NEAR = 3
_BOUNDS = 2


def in_ranges(need: Need, said: Said, know: Knowledge) -> dict[tuple[int, int], int]:
    """Return the figures of ranges, as (point, figure), that a rough number inside one says, each with its place."""
    ranges = {i: p for i, p in enumerate(need.points) if _is_range(p)}
    return {
        (i, k): claim.amount.start
        for claim in (said.claims if ranges else ())
        if _is_rough(claim, said)
        for i, point in ranges.items()
        if _lies_in(claim, point, know)
        for k in range(_BOUNDS)
    }


def _is_range(point: Point) -> bool:
    return len(point.figures) == _BOUNDS and point.figures[0].unit == point.figures[1].unit and " to " in point.text


def _is_rough(claim: Claim, said: Said) -> bool:
    words = said.reading.words
    near = words[max(0, claim.amount.start - _NEAR) : claim.amount.start], words[claim.amount.end :][:2]
    return any(_ROUGHLY.search(" ".join(each)) for each in near)


def _lies_in(claim: Claim, point: Point, know: Knowledge) -> bool:
    low, high = sorted(figure.value for figure in point.figures)
    unit = point.figures[0].unit
    value = in_unit(claim.amount, unit, know.units) if claim.amount.unit and unit else None
    return value is not None and low < value < high
