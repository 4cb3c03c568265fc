"""Radii of a turn and the pavement for a half turn, the wheels rolling without slip. Metres and radians.

Source: plane geometry of a tricycle gear turning about a point in line with the main legs. The angle is that
of the nose wheels; tyre scrub makes a real turn wider.
"""

from __future__ import annotations

from math import atan2, pi, sin, tan

from assistant.frozen import NamedTuple
from assistant.physics.errors import OutOfRange
from assistant.physics.solve import solve_monotonic

_RIGHT_ANGLE = pi / 2


class Radii(NamedTuple):
    """Radii in m from the turn centre; a negative inner radius means that the inner leg rolls backwards."""

    main: float
    nose: float
    inner: float
    outer: float


def radii(wheelbase: float, track: float, angle: float) -> Radii:
    """Return the radii at a steering angle above 0 up to 90 degrees (in radians).

    main: to the middle of the main legs, wheelbase / tan(angle); nose: wheelbase / sin(angle); inner, outer:
    main less and plus half the track, which is what the caller measures it to (leg centres or tyre edges).
    """
    _check(wheelbase, track)
    if not 0 < angle <= _RIGHT_ANGLE + 1e-12:
        raise OutOfRange("a steering angle above 0 and up to 90 degrees is needed")
    main = 0.0 if angle >= _RIGHT_ANGLE else wheelbase / tan(angle)
    return Radii(main, wheelbase / sin(angle), main - track / 2, main + track / 2)


def pavement_width(wheelbase: float, track: float, angle: float, clearance: float = 0.0) -> float:
    """Return the width in m of the smallest pavement for a 180 degree turn.

    The outer main radius, plus the larger of it and the nose radius, plus the edge clearance on both sides.
    """
    if clearance < 0:
        raise OutOfRange("a clearance is not below zero")
    turn = radii(wheelbase, track, angle)
    return turn.outer + max(turn.outer, turn.nose) + 2 * clearance


def angle_for_width(
    wheelbase: float, track: float, width: float, clearance: float = 0.0, maximum: float = _RIGHT_ANGLE
) -> float:
    """Return the smallest steering angle in radians that turns within a width: inverse of `pavement_width`.

    Raises OutOfRange when even the maximum angle needs more.
    """
    narrowest = pavement_width(wheelbase, track, maximum, clearance)
    if width < narrowest:
        raise OutOfRange(f"a half turn needs at least {narrowest:.1f} m at the maximum angle")
    least = 1e-6
    if width >= pavement_width(wheelbase, track, least, clearance):
        return least

    def width_at(angle: float) -> float:
        return pavement_width(wheelbase, track, angle, clearance)

    return solve_monotonic(width_at, width, least, maximum, 1e-12)


def angle_for_radius(wheelbase: float, radius: float) -> float:
    """Return the steering angle in radians at which the middle of the main legs turns on a radius in m."""
    _check(wheelbase, 0.0)
    if radius < 0:
        raise OutOfRange("a radius is not below zero")
    return atan2(wheelbase, radius)


def lateral_acceleration(speed: float, radius: float) -> float:
    """Return the acceleration in m/s2 towards the centre: speed squared over radius."""
    if not radius > 0:
        raise OutOfRange("the radius must be above zero")
    return speed * speed / radius


def _check(wheelbase: float, track: float) -> None:
    if not (wheelbase > 0 and track >= 0):
        raise OutOfRange("the wheelbase must be above zero, and the track not below it")
