"""Speed at which dynamic hydroplaning can begin, from tyre pressure: three published constants.

All are ground speeds, V in kt over the square root of the inflation (gauge) pressure in psi:
  rotating      9.0  full dynamic hydroplaning of a rolling tyre; NASA TN D-2056 (Horne and Dreher, 1963)
  non-rotating  7.7  a tyre not yet spun up at touchdown; NASA TM-85652
  handbook      8.6  minimum speed as FAA-H-8083-3, Airplane Flying Handbook, gives it
They mark the onset: once begun, hydroplaning can persist at lower speeds.
"""

from math import sqrt

from assistant.physics.errors import OutOfRange

_KNOT = 1852 / 3600  # m/s
_PSI = 4.4482216152605 / 0.00064516  # Pa

KNOTS_PER_ROOT_PSI = {"rotating": 9.0, "non-rotating": 7.7, "handbook": 8.6}


def hydroplaning_speed(pressure: float, basis: str = "rotating") -> float:
    """Return the speed in m/s for a gauge pressure in Pa. Raises OutOfRange for a basis not listed above."""
    if pressure < 0:
        raise OutOfRange("a tyre pressure is not below zero")
    return _constant(basis) * sqrt(pressure / _PSI) * _KNOT


def pressure_for_speed(speed: float, basis: str = "rotating") -> float:
    """Return the gauge pressure in Pa whose hydroplaning speed this is: the inverse."""
    if speed < 0:
        raise OutOfRange("a speed is not below zero")
    return (speed / _KNOT / _constant(basis)) ** 2 * _PSI


def _constant(basis: str) -> float:
    try:
        return KNOTS_PER_ROOT_PSI[basis]
    except KeyError:
        raise OutOfRange(f"no hydroplaning constant '{basis}': {', '.join(KNOTS_PER_ROOT_PSI)}") from None
