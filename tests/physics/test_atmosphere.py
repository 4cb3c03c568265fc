"""The standard atmosphere against the published table and the ambiance library."""

import pytest
from ambiance import Atmosphere  # type: ignore[import-untyped]
from hypothesis import given
from hypothesis import strategies as st

from assistant.physics import atmosphere
from assistant.physics.errors import OutOfRange

FOOT = 0.3048

# U.S. Standard Atmosphere 1976 / ISO 2533:1975; values computed with ambiance 1.3.1 and fluids 1.3.1 at
# geopotential height. Feet, K, hPa, delta, kg/m3, sigma, m/s.
TABLE = [
    (0, 288.150, 1013.250, 1.000000, 1.225000, 1.000000, 340.294),
    (5_000, 278.244, 843.073, 0.832048, 1.055546, 0.861670, 334.394),
    (10_000, 268.338, 696.816, 0.687704, 0.904637, 0.738479, 328.387),
    (20_000, 248.526, 465.632, 0.459543, 0.652694, 0.532811, 316.032),
    (30_000, 228.714, 300.896, 0.296961, 0.458312, 0.374132, 303.174),
    (36_089.24, 216.650, 226.320, 0.223360, 0.363917, 0.297075, 295.069),
    (40_000, 216.650, 187.539, 0.185086, 0.301558, 0.246169, 295.069),
]


@pytest.mark.parametrize(("feet", "kelvin", "hpa", "delta", "rho", "sigma", "sound"), TABLE)
def test_published_table(
    feet: float, kelvin: float, hpa: float, delta: float, rho: float, sigma: float, sound: float
) -> None:
    altitude = feet * FOOT

    assert atmosphere.temperature(altitude) == pytest.approx(kelvin, abs=0.01)
    assert atmosphere.pressure(altitude) / 100 == pytest.approx(hpa, rel=1e-5)
    assert atmosphere.pressure_ratio(altitude) == pytest.approx(delta, rel=1e-5)
    assert atmosphere.density(altitude) == pytest.approx(rho, rel=1e-5)
    assert atmosphere.density_ratio(altitude) == pytest.approx(sigma, rel=1e-5)
    assert atmosphere.speed_of_sound(kelvin) == pytest.approx(sound, abs=0.01)


@given(st.floats(-4_900, 19_900))
def test_agrees_with_ambiance_at_geopotential_height(altitude: float) -> None:
    theirs = Atmosphere(Atmosphere.geop2geom_height(altitude))

    assert atmosphere.temperature(altitude) == pytest.approx(theirs.temperature[0], abs=1e-6)
    # Its stratosphere starts from the printed 22,632.1 Pa, rounded by 2 in a million.
    assert atmosphere.pressure(altitude) == pytest.approx(theirs.pressure[0], rel=3e-6)
    assert atmosphere.density(altitude) == pytest.approx(theirs.density[0], rel=3e-6)
    assert atmosphere.speed_of_sound(atmosphere.temperature(altitude)) == pytest.approx(
        theirs.speed_of_sound[0], rel=1e-6
    )


@given(st.floats(-5_000, 20_000))
def test_pressure_altitude_is_the_inverse(altitude: float) -> None:
    assert atmosphere.pressure_altitude(atmosphere.pressure(altitude)) == pytest.approx(altitude, abs=1e-5)


@given(st.floats(-5_000, 19_999), st.floats(1e-3, 1))
def test_pressure_falls_with_altitude(altitude: float, step: float) -> None:
    assert atmosphere.pressure(altitude + step) < atmosphere.pressure(altitude)


def test_the_layers_meet() -> None:
    below, above = atmosphere.pressure(11_000), atmosphere.pressure(11_000 + 1e-9)
    assert below == pytest.approx(above, rel=1e-12)


@pytest.mark.parametrize("altitude", [-5_001, 20_001])
def test_outside_the_layers_is_refused(altitude: float) -> None:
    with pytest.raises(OutOfRange, match="-5 km to 20 km"):
        atmosphere.pressure(altitude)


def test_absolute_values_must_be_above_zero() -> None:
    with pytest.raises(OutOfRange):
        atmosphere.pressure_altitude(0)
    with pytest.raises(OutOfRange):
        atmosphere.speed_of_sound(0)
    with pytest.raises(OutOfRange):
        atmosphere.density_ratio(0, 0)
