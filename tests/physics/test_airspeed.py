"""Airspeeds against tables computed three independent ways, and against aerocalc3."""

from collections.abc import Callable

import pytest
from aerocalc3 import airspeed as aerocalc  # type: ignore[import-untyped]
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq  # type: ignore[import-untyped]

from assistant.physics import airspeed, atmosphere
from assistant.physics.errors import OutOfRange

KNOT = 1852 / 3600
FOOT = 0.3048
MPH = 0.44704

# NASA RP-1046 (Gracey, 1980) relations; values computed with ambiance, openap 2.6.2 and aerocalc3 0.10.
CAS_TABLE = [
    (255, 0, 0.38550, 255.00),
    (255, 5_000, 0.42112, 273.73),
    (255, 10_000, 0.46119, 294.39),
    (255, 20_000, 0.55740, 342.42),
    (255, 25_000, 0.61514, 370.29),
    (250, 10_000, 0.45228, 288.70),
    (300, 20_000, 0.65129, 400.10),
    (300, 30_000, 0.79064, 465.94),
    (280, 35_000, 0.82135, 473.44),
    (140, 5_000, 0.23177, 150.65),
]
CROSSOVERS = [
    (255, 0.60, 23_747.6),
    (250, 0.60, 24_694.1),
    (235, 0.60, 27_596.5),
    (270, 0.65, 25_051.4),
    (280, 0.70, 27_069.3),
    (300, 0.78, 29_314.1),
    (320, 0.82, 28_858.0),
]


@pytest.mark.parametrize(("cas", "feet", "mach", "tas"), CAS_TABLE)
def test_mach_and_true_airspeed(cas: float, feet: float, mach: float, tas: float) -> None:
    assert airspeed.mach_from_cas(cas * KNOT, feet * FOOT) == pytest.approx(mach, abs=1e-5)
    assert airspeed.tas_from_cas(cas * KNOT, feet * FOOT) / KNOT == pytest.approx(tas, abs=0.01)
    assert airspeed.cas_from_mach(mach, feet * FOOT) / KNOT == pytest.approx(cas, abs=0.01)


@pytest.mark.parametrize(("cas", "mach", "feet"), CROSSOVERS)
def test_crossover_altitude(cas: float, mach: float, feet: float) -> None:
    ours = airspeed.crossover_altitude(cas * KNOT, mach) / FOOT

    assert ours == pytest.approx(feet, abs=0.1)
    assert ours == pytest.approx(aerocalc.cas_mach2alt(cas, mach), abs=0.5)
    assert ours == pytest.approx(
        brentq(lambda f: airspeed.mach_from_cas(cas * KNOT, f * FOOT) - mach, 0, 35_000), abs=1e-3
    )


# "255 kt or M 0.60, whichever is lower"; computed as above.
@pytest.mark.parametrize(
    ("feet", "expected"),
    [
        (20_000, 255),
        (23_700, 255),
        (23_800, 254.72),
        (25_000, 248.40),
        (28_000, 232.95),
        (30_000, 222.96),
        (35_000, 199.04),
    ],
)
def test_the_lower_of_a_speed_and_a_mach_number(feet: float, expected: float) -> None:
    assert airspeed.lower_limit(255 * KNOT, 0.60, feet * FOOT) / KNOT == pytest.approx(expected, abs=0.05)


# Ground speed of a take-off run; compressible, computed with ambiance and aerocalc3.
# kt, ft, degC, kt of tailwind.
@pytest.mark.parametrize(
    ("cas", "feet", "celsius", "tailwind", "expected"),
    [
        (150, 0, 15, 0, 150.00),
        (150, 0, 35, 0, 155.12),
        (150, 5_000, 5.094, 0, 161.39),
        (150, 5_000, 30, 10, 178.45),
        (160, 6_000, 35, 10, 194.50),
        (170, 8_000, 30, 0, 201.76),
    ],
)
def test_ground_speed(cas: float, feet: float, celsius: float, tailwind: float, expected: float) -> None:
    speed = airspeed.ground_speed(cas * KNOT, feet * FOOT, celsius + 273.15, -tailwind * KNOT)

    assert speed / KNOT == pytest.approx(expected, abs=0.01)
    assert airspeed.cas_for_ground_speed(
        speed, feet * FOOT, celsius + 273.15, -tailwind * KNOT
    ) / KNOT == pytest.approx(cas, abs=1e-6)


def test_a_true_airspeed_without_compressibility_is_close_at_low_speed() -> None:
    """The common CAS over root sigma: 184.83 kt for 160 kt at 6,000 ft and 35 degC (from ambiance)."""
    sigma = atmosphere.density_ratio(6_000 * FOOT, 35 + 273.15)
    assert 160 / sigma**0.5 == pytest.approx(184.83, abs=0.01)


@given(st.floats(60, 330), st.floats(0, 35_000))
def test_agrees_with_aerocalc3(cas: float, feet: float) -> None:
    mach = aerocalc.cas_alt2mach(cas, feet)
    if mach > 0.95:
        return
    assert airspeed.mach_from_cas(cas * KNOT, feet * FOOT) == pytest.approx(mach, abs=2e-4)
    assert airspeed.tas_from_cas(cas * KNOT, feet * FOOT) / KNOT == pytest.approx(
        aerocalc.cas2tas(cas, feet), abs=0.1
    )


@given(st.floats(0, 0.99), st.floats(-1_000, 19_000))
def test_mach_there_and_back(mach: float, altitude: float) -> None:
    cas = airspeed.cas_from_mach(mach, altitude)
    assert airspeed.mach_from_cas(cas, altitude) == pytest.approx(mach, abs=1e-7)


@given(st.floats(20, 150), st.floats(0, 4_000), st.floats(230, 320), st.floats(-15, 15))
def test_ground_speed_there_and_back(cas: float, altitude: float, air: float, wind: float) -> None:
    speed = airspeed.ground_speed(cas, altitude, air, wind)
    assert airspeed.cas_for_ground_speed(speed, altitude, air, wind) == pytest.approx(cas, abs=1e-4)


@given(st.floats(80, 150), st.floats(0.4, 0.85))
def test_at_the_crossover_both_limits_are_the_same(cas: float, mach: float) -> None:
    try:
        altitude = airspeed.crossover_altitude(cas, mach)
    except OutOfRange:
        return
    assert airspeed.cas_from_mach(mach, altitude) == pytest.approx(cas, abs=1e-6)


def test_what_the_relations_do_not_cover_is_refused() -> None:
    calls: list[Callable[[], object]] = [
        lambda: airspeed.mach_from_cas(-1, 0),
        lambda: airspeed.mach_from_cas(400, 0),
        lambda: airspeed.cas_from_mach(1.1, 0),
        lambda: airspeed.crossover_altitude(0, 0.6),
        lambda: airspeed.crossover_altitude(10, 0.9),
    ]
    for call in calls:
        with pytest.raises(OutOfRange):
            call()


@pytest.mark.parametrize(
    ("cas", "altitude", "eas"),
    [(255, 20_000, 249.95), (255, 25_000, 247.88), (300, 30_000, 285.00), (140, 5_000, 139.84)],
)
def test_equivalent_airspeed(cas: float, altitude: float, eas: float) -> None:
    assert airspeed.eas_from_cas(cas * KNOT, altitude * FOOT) / KNOT == pytest.approx(eas, abs=0.05)
