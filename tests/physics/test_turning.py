"""Turning radii and pavement against a worked table, and the laws between them."""

from collections.abc import Callable
from math import degrees, pi, radians, tan

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import brentq  # type: ignore[import-untyped]

from assistant.physics import turning
from assistant.physics.errors import OutOfRange

# Plane geometry, worked independently. m, m, degrees, then m: main, nose, inner, outer, width.
TABLE = [
    (15, 7, 30, 25.981, 30.000, 22.481, 29.481, 59.481),
    (15, 7, 45, 15.000, 21.213, 11.500, 18.500, 39.713),
    (15, 7, 60, 8.660, 17.321, 5.160, 12.160, 29.481),
    (15, 7, 75, 4.019, 15.529, 0.519, 7.519, 23.048),
    (15, 7, 90, 0.000, 15.000, -3.500, 3.500, 18.500),
    (20, 9, 65, 9.326, 22.068, 4.826, 13.826, 35.894),
]


@pytest.mark.parametrize(("base", "track", "angle", "main", "nose", "inner", "outer", "width"), TABLE)
def test_worked_table(
    base: float,
    track: float,
    angle: float,
    main: float,
    nose: float,
    inner: float,
    outer: float,
    width: float,
) -> None:
    assert turning.radii(base, track, radians(angle)) == pytest.approx((main, nose, inner, outer), abs=0.001)
    assert turning.pavement_width(base, track, radians(angle)) == pytest.approx(width, abs=0.001)
    assert turning.pavement_width(base, track, radians(angle), 3) == pytest.approx(width + 6, abs=0.001)


def test_a_wide_gear_turns_on_its_outer_main_legs() -> None:
    """Where the outer main radius is the larger one, it counts on both sides."""
    turn = turning.radii(5, 12, radians(60))

    assert turn.outer > turn.nose
    assert turning.pavement_width(5, 12, radians(60)) == pytest.approx(2 * turn.outer)


@given(st.floats(2, 40), st.floats(0, 15), st.floats(1, 89))
def test_nose_and_main_radius_make_a_right_angle(base: float, track: float, angle: float) -> None:
    turn = turning.radii(base, track, radians(angle))
    assert turn.nose**2 == pytest.approx(base**2 + turn.main**2)
    assert turning.angle_for_radius(base, turn.main) == pytest.approx(radians(angle))


@given(st.floats(2, 40), st.floats(0, 15), st.floats(1, 89), st.floats(0.01, 1))
def test_more_steering_needs_less_width(base: float, track: float, angle: float, more: float) -> None:
    wide = turning.pavement_width(base, track, radians(angle))
    assert turning.pavement_width(base, track, radians(angle + more)) < wide


@given(st.floats(2, 40), st.floats(0, 15), st.floats(2, 89), st.floats(0, 5))
def test_angle_for_width_is_the_inverse(base: float, track: float, angle: float, clearance: float) -> None:
    width = turning.pavement_width(base, track, radians(angle), clearance)
    assert degrees(turning.angle_for_width(base, track, width, clearance)) == pytest.approx(angle, abs=1e-6)


def test_angle_for_width_agrees_with_brentq() -> None:
    theirs = brentq(lambda a: turning.pavement_width(15, 7, a, 3) - 40, 0.01, pi / 2)
    assert turning.angle_for_width(15, 7, 40, 3) == pytest.approx(theirs, abs=1e-9)


def test_a_pavement_too_narrow_is_refused_with_the_width_needed() -> None:
    with pytest.raises(OutOfRange, match=r"29\.5 m"):
        turning.angle_for_width(15, 7, 29, maximum=radians(60))


def test_any_angle_turns_on_an_endless_pavement() -> None:
    assert turning.angle_for_width(15, 7, 1e9) <= 1e-6


@pytest.mark.parametrize("angle", [0, -0.1, radians(91)])
def test_an_angle_that_does_not_turn_is_refused(angle: float) -> None:
    with pytest.raises(OutOfRange, match="steering angle"):
        turning.radii(15, 7, angle)


def test_lateral_acceleration() -> None:
    """10 kt on a radius of 20 m is 0.135 g; mechanics."""
    assert turning.lateral_acceleration(10 * 1852 / 3600, 20) / 9.80665 == pytest.approx(0.135, abs=0.0005)
    with pytest.raises(OutOfRange):
        turning.lateral_acceleration(10, 0)


@given(st.floats(2, 40), st.floats(0, 15), st.floats(0.1, 89))
def test_main_radius_is_the_wheelbase_over_the_tangent(base: float, track: float, angle: float) -> None:
    turn = turning.radii(base, track, radians(angle))
    assume(turn.main > 0)
    assert tan(radians(angle)) == pytest.approx(base / turn.main)
    assert turn.outer - turn.inner == pytest.approx(track)


def test_impossible_sizes_are_refused() -> None:
    calls: list[Callable[[], object]] = [
        lambda: turning.radii(0, 7, 1),
        lambda: turning.radii(15, -1, 1),
        lambda: turning.pavement_width(15, 7, 1, -1),
        lambda: turning.angle_for_radius(15, -1),
    ]
    for call in calls:
        with pytest.raises(OutOfRange):
            call()
