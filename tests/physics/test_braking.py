"""Energy, heat and distance of a stop against rule formulas, worked tables and integration."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp  # type: ignore[import-untyped]

from assistant.physics import braking
from assistant.physics.errors import OutOfRange

KNOT = 1852 / 3600
POUND = 0.45359237
FOOT_POUND = 0.3048 * 4.4482216152605


# 14 CFR 23.735(a)(2), up to amendment 23-62: 0.0443 W V^2 / N; its constant is 0.067 % high. lb, kt, brakes.
@pytest.mark.parametrize(
    ("pounds", "knots", "brakes", "megajoules"),
    [
        (10_000, 100, 2, 3.0011),
        (50_000, 120, 4, 10.804),
        (66_000, 150, 4, 22.283),
        (100_000, 135, 4, 27.348),
        (140_000, 140, 4, 41.175),
    ],
)
def test_energy_per_brake_and_the_rule_formula(
    pounds: float, knots: float, brakes: int, megajoules: float
) -> None:
    energy = braking.energy_per_brake(pounds * POUND, knots * KNOT, 1.0, brakes)

    assert energy / 1e6 == pytest.approx(megajoules, abs=0.001)
    assert energy / FOOT_POUND == pytest.approx(0.0443 * pounds * knots**2 / brakes, rel=1e-3)


# The definition, half m v squared; kg, kt, MJ.
@pytest.mark.parametrize(
    ("mass", "knots", "megajoules"), [(50_000, 140, 129.680), (60_000, 130, 134.179), (40_000, 120, 76.220)]
)
def test_kinetic_energy(mass: float, knots: float, megajoules: float) -> None:
    assert braking.kinetic_energy(mass, knots * KNOT) / 1e6 == pytest.approx(megajoules, abs=0.01)


# The definition of heat capacity; MJ, kg, J/(kg K), K.
@pytest.mark.parametrize(
    ("energy", "mass", "heat", "rise"),
    [(20, 40, 1000, 500.0), (17.28, 45, 1100, 349.09), (10, 35, 500, 571.43)],
)
def test_temperature_rise(energy: float, mass: float, heat: float, rise: float) -> None:
    assert braking.temperature_rise(energy * 1e6, mass, heat) == pytest.approx(rise, abs=0.01)


# Constant deceleration (mechanics); the first two rates are those of 14 CFR 25.735(f), the first from memory.
# kt, m/s2, m, s, m with 2 s.
STOPS = [
    (140, 1.8288, 1418.20, 39.38, 1562.24),
    (140, 3.048, 850.92, 23.63, 994.96),
    (130, 3, 745.44, 22.29, 879.20),
    (120, 1.7, 1120.88, 36.31, 1244.35),
    (135, 0.31 * 9.80665, 793.29, 22.85, 932.19),
]


@pytest.mark.parametrize(("knots", "rate", "distance", "time", "delayed"), STOPS)
def test_stopping(knots: float, rate: float, distance: float, time: float, delayed: float) -> None:
    speed = knots * KNOT

    assert braking.stopping_distance(speed, rate) == pytest.approx(distance, abs=0.1)
    assert braking.stopping_time(speed, rate) == pytest.approx(time, abs=0.01)
    assert braking.stopping_distance(speed, rate, 2) == pytest.approx(delayed, abs=0.1)
    assert braking.delay_distance(speed, 2) == pytest.approx(2 * speed)
    assert braking.stopping_time(speed, rate, 2) == pytest.approx(time + 2, abs=0.01)


def test_stopping_agrees_with_numerical_integration() -> None:
    run = solve_ivp(lambda _t, y: [y[1], -2.3], (0, 65 / 2.3), [0.0, 65.0], rtol=1e-10, atol=1e-10)
    assert braking.stopping_distance(65, 2.3) == pytest.approx(run.y[0][-1], abs=1e-5)


def test_ten_per_cent_more_speed_takes_twenty_one_per_cent_more_distance() -> None:
    """FAA-H-8083-25, chapter 11; from memory."""
    assert braking.stopping_distance(77, 2) / braking.stopping_distance(70, 2) == pytest.approx(1.21)


@given(st.floats(0, 150), st.floats(0.1, 6), st.floats(0, 10))
def test_speed_for_distance_is_the_inverse(speed: float, rate: float, delay: float) -> None:
    distance = braking.stopping_distance(speed, rate, delay)
    assert braking.speed_for_distance(distance, rate, delay) == pytest.approx(speed, rel=1e-9, abs=1e-6)


@given(st.floats(1e3, 1e6), st.floats(0, 150), st.floats(0, 1), st.integers(1, 12))
def test_the_brakes_together_take_their_share(mass: float, speed: float, share: float, brakes: int) -> None:
    each = braking.energy_per_brake(mass, speed, share, brakes)
    assert each * brakes == pytest.approx(braking.kinetic_energy(mass, speed) * share)


def test_impossible_values_are_refused_by_name() -> None:
    calls: list[tuple[Callable[[], object], str]] = [
        (lambda: braking.energy_per_brake(1, 1, 1, 0), "one brake"),
        (lambda: braking.energy_per_brake(1, 1, 1.2, 4), "share"),
        (lambda: braking.kinetic_energy(-1, 1), "mass"),
        (lambda: braking.temperature_rise(1, 0, 1), "heat sink mass"),
        (lambda: braking.stopping_distance(1, 0), "deceleration"),
        (lambda: braking.stopping_time(1, 1, -1), "delay"),
        (lambda: braking.speed_for_distance(-1, 1), "distance"),
    ]
    for call, words in calls:
        with pytest.raises(OutOfRange, match=words):
            call()
