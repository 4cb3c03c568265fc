"""Piecewise-linear schedules: the value at an input, and every input that gives a value.

Breakpoints come out exactly as given, because steering limits are quoted at them.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from itertools import pairwise

from assistant.frozen import NamedTuple
from assistant.physics.errors import OutOfRange

Point = tuple[float, float]


class Interval(NamedTuple):
    """Inputs from low to high, both included; equal for a single input, infinite where an end is held."""

    low: float
    high: float


def value_at(points: Sequence[Point], x: float, below: str = "hold", above: str = "hold") -> float:
    """Return the value at x, straight between breakpoints (x rising).

    below, above: what lies beyond the first and last breakpoint: "hold" keeps the end value, "refuse" raises
    OutOfRange.
    """
    _check(points)
    if x < points[0][0] or x > points[-1][0]:
        end, rule = (points[0], below) if x < points[0][0] else (points[-1], above)
        if rule == "hold":
            return end[1]
        raise OutOfRange(f"{x:g} is outside the schedule, {points[0][0]:g} to {points[-1][0]:g}")
    place = bisect_left(points, x, key=lambda point: point[0])
    x1, y1 = points[place]
    if x == x1:
        return y1
    x0, y0 = points[place - 1]
    return y0 + (y1 - y0) * (x - x0) / (x1 - x0)


def inputs_for(points: Sequence[Point], y: float, below: str = "hold", above: str = "hold") -> list[Interval]:
    """Return every input whose value is y, in rising order, none when it is never taken.

    A flat piece gives an interval; with "hold" the end values reach to minus or plus infinity.
    """
    _check(points)
    found: list[Interval] = []
    if below == "hold" and points[0][1] == y:
        found.append(Interval(float("-inf"), points[0][0]))
    for start, end in pairwise(points):
        if piece := _piece(start, end, y):
            found.append(piece)
    if len(points) == 1 and points[0][1] == y:
        found.append(Interval(points[0][0], points[0][0]))
    if above == "hold" and points[-1][1] == y:
        found.append(Interval(points[-1][0], float("inf")))
    return _merged(found)


def _piece(start: Point, end: Point, y: float) -> Interval | None:
    (x0, y0), (x1, y1) = start, end
    if y0 == y1:
        return Interval(x0, x1) if y == y0 else None
    if not min(y0, y1) <= y <= max(y0, y1):
        return None
    x = x0 if y == y0 else x1 if y == y1 else x0 + (x1 - x0) * (y - y0) / (y1 - y0)
    return Interval(x, x)


def _merged(intervals: list[Interval]) -> list[Interval]:
    """Join intervals that share an end: a breakpoint belongs to two pieces."""
    joined: list[Interval] = []
    for interval in intervals:
        if joined and interval.low <= joined[-1].high:
            joined[-1] = Interval(joined[-1].low, max(joined[-1].high, interval.high))
        else:
            joined.append(interval)
    return joined


def _check(points: Sequence[Point]) -> None:
    if not points:
        raise OutOfRange("a schedule needs at least one breakpoint")
    if any(not a[0] < b[0] for a, b in pairwise(points)):
        raise OutOfRange("the inputs of a schedule must rise")
