"""Hydroplaning speeds against the published constants and worked examples."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.physics.errors import OutOfRange
from assistant.physics.hydroplaning import KNOTS_PER_ROOT_PSI, hydroplaning_speed, pressure_for_speed

KNOT = 1852 / 3600
PSI = 4.4482216152605 / 0.00064516

# 9.0: NASA TN D-2056 (Horne and Dreher, 1963); 8.6: FAA-H-8083-3; 7.7: NASA TM-85652. psi, then kt of each.
# The row of 24 psi is the worked example of FAA-H-8083-3 (about 42 kt), that of 36 psi the one of
# FAA-H-8083-25 (54 kt).
TABLE = [
    (24, 44.09, 42.13, 37.72),
    (36, 54.00, 51.60, 46.20),
    (64, 72.00, 68.80, 61.60),
    (70, 75.30, 71.95, 64.42),
    (100, 90.00, 86.00, 77.00),
    (121, 99.00, 94.60, 84.70),
    (144, 108.00, 103.20, 92.40),
    (150, 110.23, 105.33, 94.31),
    (180, 120.75, 115.38, 103.31),
    (200, 127.28, 121.62, 108.89),
    (205, 128.86, 123.13, 110.25),
    (225, 135.00, 129.00, 115.50),
]


@pytest.mark.parametrize(("psi", "rotating", "handbook", "spin_up"), TABLE)
def test_published_constants(psi: float, rotating: float, handbook: float, spin_up: float) -> None:
    assert hydroplaning_speed(psi * PSI) / KNOT == pytest.approx(rotating, abs=0.01)
    assert hydroplaning_speed(psi * PSI, "handbook") / KNOT == pytest.approx(handbook, abs=0.01)
    assert hydroplaning_speed(psi * PSI, "non-rotating") / KNOT == pytest.approx(spin_up, abs=0.01)


def test_the_constant_in_other_units() -> None:
    """9 kt per root psi is 34.275 kt per root bar; from the definitions of the units."""
    assert hydroplaning_speed(1e5) / KNOT == pytest.approx(34.275, abs=0.001)


@given(st.floats(0, 3e6), st.sampled_from(sorted(KNOTS_PER_ROOT_PSI)))
def test_pressure_for_speed_is_the_inverse(pressure: float, basis: str) -> None:
    assert pressure_for_speed(hydroplaning_speed(pressure, basis), basis) == pytest.approx(pressure, abs=1e-6)


@given(st.floats(1, 1e6))
def test_four_times_the_pressure_is_twice_the_speed(pressure: float) -> None:
    assert hydroplaning_speed(4 * pressure) == pytest.approx(2 * hydroplaning_speed(pressure))


def test_impossible_values_are_refused() -> None:
    with pytest.raises(OutOfRange, match="viscous"):
        hydroplaning_speed(1e6, "viscous")
    with pytest.raises(OutOfRange):
        hydroplaning_speed(-1)
    with pytest.raises(OutOfRange):
        pressure_for_speed(-1)
