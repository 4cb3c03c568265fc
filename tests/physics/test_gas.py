"""Gas charges against the ideal-gas law, and how far real nitrogen (CoolProp) departs from it."""

from collections.abc import Callable

import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from assistant.physics.errors import OutOfRange
from assistant.physics.gas import STANDARD_PRESSURE, gauge_pressure_at, oil_delivered, temperature_for_gauge

PSI = 4.4482216152605 / 0.00064516

# Ideal-gas law, absolute; the last column computed with CoolProp 8.0 (nitrogen, constant density).
# psi gauge, degC, degC, psi gauge ideal, psi gauge real.
TABLE = [
    (1000, 20, -40, 792.32, 756.5),
    (1000, 20, 50, 1103.84, 1120.9),
    (1500, 15, -20, 1316.02, 1268.6),
    (200, 15, -40, 159.02, 157.4),
    (200, 15, 45, 222.35, 223.2),
    (200, 20, 70, 236.62, 237.9),
]


def at(gauge: float, start: float, end: float) -> float:
    return gauge_pressure_at(gauge * PSI, start + 273.15, end + 273.15) / PSI


@pytest.mark.parametrize(("gauge", "start", "end", "ideal", "real"), TABLE)
def test_pressure_follows_absolute_temperature(
    gauge: float, start: float, end: float, ideal: float, real: float
) -> None:
    assert at(gauge, start, end) == pytest.approx(ideal, abs=0.05)


@pytest.mark.parametrize(("gauge", "start", "end", "ideal", "real"), TABLE)
def test_real_nitrogen_is_within_five_per_cent(
    gauge: float, start: float, end: float, ideal: float, real: float
) -> None:
    density = PropsSI("D", "T", start + 273.15, "P", gauge * PSI + STANDARD_PRESSURE, "Nitrogen")
    theirs = (PropsSI("P", "T", end + 273.15, "D", density, "Nitrogen") - STANDARD_PRESSURE) / PSI

    assert theirs == pytest.approx(real, abs=0.1)
    assert at(gauge, start, end) == pytest.approx(theirs, rel=0.05)


def test_a_tyre_gains_about_one_per_cent_each_three_degrees() -> None:
    """Trade rule of thumb; 1.12 % of gauge pressure at 200 psi and 15 degC by the gas law."""
    assert at(200, 15, 18) / 200 == pytest.approx(1.0112, abs=0.0001)


@given(st.floats(0, 3e7), st.floats(200, 400), st.floats(200, 400))
def test_pressure_and_temperature_are_inverses(gauge: float, start: float, end: float) -> None:
    new = gauge_pressure_at(gauge, start, end)
    assert temperature_for_gauge(gauge, start, new) == pytest.approx(end)


# Isothermal, with 14.696 psi added; worked independently. Pre-charge, charged, minimum in psi gauge.
@pytest.mark.parametrize(
    ("precharge", "charged", "minimum", "part"),
    [
        (1000, 3000, 1500, 0.33332),
        (1000, 3000, 2000, 0.16706),
        (1500, 3000, 1800, 0.33225),
        (1000, 3000, 500, 0.66342),
    ],
)
def test_oil_of_an_accumulator(precharge: float, charged: float, minimum: float, part: float) -> None:
    assert oil_delivered(precharge * PSI, charged * PSI, minimum * PSI) == pytest.approx(part, abs=2e-5)


def test_impossible_charges_are_refused() -> None:
    calls: list[Callable[[], object]] = [
        lambda: gauge_pressure_at(0, 0, 300),
        lambda: gauge_pressure_at(-2e5, 300, 300),
        lambda: temperature_for_gauge(1e5, 300, -2e5),
        lambda: oil_delivered(2e6, 1e6, 1e6),
    ]
    for call in calls:
        with pytest.raises(OutOfRange):
            call()
