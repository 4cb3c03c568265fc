"""The root finder against scipy's."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq  # type: ignore[import-untyped]

from assistant.physics.errors import OutOfRange
from assistant.physics.solve import solve_monotonic


@given(st.floats(-7.9, 7.9))
def test_agrees_with_brentq(target: float) -> None:
    ours = solve_monotonic(lambda x: x**3, target, -2, 2)
    assert ours == pytest.approx(brentq(lambda x: x**3 - target, -2, 2, xtol=1e-12), abs=1e-8)


@given(st.floats(0.01, 100))
def test_a_falling_function_is_solved_too(x: float) -> None:
    assert solve_monotonic(lambda v: 1 / v, 1 / x, 0.001, 1000) == pytest.approx(x, abs=1e-6)


def test_the_ends_count() -> None:
    assert solve_monotonic(lambda x: x, 0, 0, 1) == 0
    assert solve_monotonic(lambda x: x, 1, 0, 1) == 1


def test_a_tolerance_finer_than_floats_ends() -> None:
    assert solve_monotonic(lambda x: x, 1e9 + 0.3, 0, 1e10, tolerance=0) == pytest.approx(1e9 + 0.3)


@pytest.mark.parametrize("target", [-1, 2, float("nan")])
def test_a_target_outside_the_bracket_is_refused(target: float) -> None:
    with pytest.raises(OutOfRange, match="between 0 and 1"):
        solve_monotonic(lambda x: x, target, 0, 1)


def _ending(x: float) -> float:
    if x > 3:
        raise OutOfRange("it ends at three")
    return x**2


@given(st.floats(0.01, 8.99))
def test_a_function_that_ends_before_the_bracket_is_solved_up_to_there(target: float) -> None:
    assert solve_monotonic(_ending, target, 0, 400) == pytest.approx(target**0.5, abs=1e-6)


def test_what_lies_beyond_the_end_of_a_function_is_out_of_range() -> None:
    with pytest.raises(OutOfRange, match="ends at three"):
        solve_monotonic(_ending, 10, 0, 400)
