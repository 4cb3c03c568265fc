"""Cooling against a table confirmed by integration, and its own inverses."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp  # type: ignore[import-untyped]

from assistant.physics.cooling import start_for, temperature_after, time_to_reach
from assistant.physics.errors import OutOfRange

# Newton's law of cooling; computed with scipy.integrate.solve_ivp. degC, degC, degC, min, min.
TABLE = [
    (400, 150, 15, 40, 41.919),
    (500, 150, 15, 45, 57.549),
    (300, 100, 30, 30, 40.498),
    (600, 200, 0, 60, 65.917),
]


@pytest.mark.parametrize(("start", "target", "outside", "constant", "time"), TABLE)
def test_time_to_reach(start: float, target: float, outside: float, constant: float, time: float) -> None:
    ours = time_to_reach(start, target, outside, constant)
    run = solve_ivp(lambda _t, y: -(y - outside) / constant, (0, ours), [start], rtol=1e-10, atol=1e-10)

    assert ours == pytest.approx(time, abs=0.001)
    assert run.y[0][-1] == pytest.approx(target, abs=1e-5)


@given(st.floats(-40, 40), st.floats(1, 900), st.floats(0.01, 0.99), st.floats(1, 90))
def test_time_and_temperature_are_inverses(
    outside: float, excess: float, part: float, constant: float
) -> None:
    start, target = outside + excess, outside + excess * part
    assume(start > target > outside)

    time = time_to_reach(start, target, outside, constant)

    assert temperature_after(start, outside, constant, time) == pytest.approx(target, abs=1e-6)
    assert start_for(target, outside, constant, time) == pytest.approx(start, abs=1e-6)


@given(st.floats(50, 900), st.floats(0, 500), st.floats(0.1, 100))
def test_cooling_never_passes_the_outside_temperature(start: float, time: float, more: float) -> None:
    earlier, later = (temperature_after(start, 20, 12, t) for t in (time, time + more))
    assert start >= earlier >= later >= 20


def test_a_cold_mass_warms_the_same_way() -> None:
    assert time_to_reach(-20, 10, 20, 45) == pytest.approx(time_to_reach(60, 30, 20, 45))


def test_no_time_is_needed_where_nothing_changes() -> None:
    assert time_to_reach(250, 250, 20, 45) == 0
    assert temperature_after(250, 20, 45, 0) == 250


@pytest.mark.parametrize(
    ("start", "target", "outside"),
    [(300, 20, 20), (300, 10, 20), (200, 250, 20), (20, 250, 20), (-10, -20, 20), (-10, 30, 20)],
)
def test_a_target_never_reached_is_refused(start: float, target: float, outside: float) -> None:
    with pytest.raises(OutOfRange, match="outside temperature"):
        time_to_reach(start, target, outside, 45)


def test_impossible_times_are_refused() -> None:
    with pytest.raises(OutOfRange, match="time constant"):
        time_to_reach(300, 200, 20, 0)
    with pytest.raises(OutOfRange, match="below zero"):
        temperature_after(300, 20, 45, -1)
    with pytest.raises(OutOfRange, match="below zero"):
        start_for(300, 20, 45, -1)
