"""Schedules against numpy.interp, and every input of a value; the points here are invented for the test."""

from itertools import pairwise
from math import inf

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.physics.errors import OutOfRange
from assistant.physics.schedule import inputs_for, value_at

FALLING = [(0.0, 76.0), (20.0, 70.0), (40.0, 50.0), (60.0, 30.0), (80.0, 12.0), (100.0, 7.0), (130.0, 0.0)]
HUMP = [(0.0, 0.0), (10.0, 5.0), (20.0, 5.0), (30.0, 0.0)]

tables = st.lists(
    st.tuples(st.integers(0, 200), st.integers(-90, 90)), min_size=1, max_size=8, unique_by=lambda p: p[0]
).map(lambda points: [(float(x), float(y)) for x, y in sorted(points)])


@pytest.mark.parametrize(
    ("x", "y"),
    [*FALLING, (10, 73.0), (30, 60.0), (50, 40.0), (72.5, 18.75), (115, 3.5), (150, 0.0), (-5, 76.0)],
)
def test_value_at(x: float, y: float) -> None:
    assert value_at(FALLING, x) == y


@given(tables, st.floats(-50, 250))
def test_agrees_with_numpy_interp(points: list[tuple[float, float]], x: float) -> None:
    xs, ys = zip(*points, strict=True)
    assert value_at(points, x) == pytest.approx(float(np.interp(x, xs, ys)), abs=1e-9)


@given(tables)
def test_breakpoints_are_exact(points: list[tuple[float, float]]) -> None:
    for x, y in points:
        assert value_at(points, x) == y
        assert any(interval.low <= x <= interval.high for interval in inputs_for(points, y))


@given(tables, st.floats(-90, 90))
def test_every_input_found_gives_the_value(points: list[tuple[float, float]], y: float) -> None:
    intervals = inputs_for(points, y)

    for low, high in intervals:
        assert value_at(points, max(low, -1e3)) == pytest.approx(y, abs=1e-9)
        assert value_at(points, min(high, 1e3)) == pytest.approx(y, abs=1e-9)
    assert all(a.high < b.low for a, b in pairwise(intervals))


@given(tables, st.floats(0, 200))
def test_every_input_of_a_value_is_found(points: list[tuple[float, float]], x: float) -> None:
    intervals = inputs_for(points, value_at(points, x))
    steepest = 1e-6
    assert any(low - steepest <= x <= high + steepest for low, high in intervals) or _rounding(points, x)


def _rounding(points: list[tuple[float, float]], x: float) -> bool:
    """Whether the value at x rounds to an end of its piece, where no input can be told apart."""
    y = value_at(points, x)
    return any(abs(y - value) < 1e-9 for _, value in points)


def test_a_value_can_have_several_inputs() -> None:
    assert inputs_for(HUMP, 5) == [(10, 20)]
    assert inputs_for(HUMP, 2.5) == [(5, 5), (25, 25)]
    assert inputs_for(HUMP, 0) == [(-inf, 0), (30, inf)]
    assert inputs_for(HUMP, 0, below="refuse", above="refuse") == [(0, 0), (30, 30)]
    assert inputs_for(HUMP, 6) == []
    assert inputs_for([(3.0, 1.0)], 1, below="refuse", above="refuse") == [(3, 3)]


def test_beyond_the_ends() -> None:
    assert value_at(HUMP, -1) == 0
    assert value_at(HUMP, 99, below="refuse") == 0
    with pytest.raises(OutOfRange, match="0 to 30"):
        value_at(HUMP, 31, above="refuse")
    with pytest.raises(OutOfRange, match="0 to 30"):
        value_at(HUMP, -1, below="refuse")


def test_a_schedule_that_is_none_is_refused() -> None:
    with pytest.raises(OutOfRange, match="at least one"):
        value_at([], 1)
    with pytest.raises(OutOfRange, match="must rise"):
        inputs_for([(1.0, 1.0), (1.0, 2.0)], 1)
