"""Figures often met in the trade, held against no document: common practice, no source.

Two tillers of 75° either way whose orders sum; pedals of 6° that fade to nothing at 130 kt, where the rudder
alone steers; a deceleration light at 80% of the selected rate; 1,000 psi at most when anti-skid is lost.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Ask = Callable[..., Answer]


def _cites_common_practice(answer: Answer) -> bool:
    return {source.document for source in answer.sources} == {"CP"}


@pytest.mark.parametrize(
    ("orders", "total", "side"),
    [
        ("left tiller 50 right and right tiller 50 right", 75, "right"),
        ("left tiller 50 left and right tiller 50 left", 75, "left"),
        ("left tiller 40 left and right tiller 20 right", 20, "left"),
        ("left tiller 40 right and right tiller 20 left", 20, "right"),
        ("left tiller 30 right and right tiller 30 left", 0, "straight ahead"),
    ],
)
def test_two_tillers_sum(trade: Ask, orders: str, total: float, side: str) -> None:
    """Common practice, no source."""
    answer = trade(f"{orders} at 10 kt, total order")

    assert answer.values[0].value == pytest.approx(total)
    assert side in answer.text
    assert _cites_common_practice(answer)


def test_a_tiller_turns_75_degrees_either_way(trade: Ask) -> None:
    """Common practice, no source."""
    answer = trade("maximum tiller deflection")

    assert answer.values[0][1:] == (75, "deg")
    assert _cites_common_practice(answer)


@pytest.mark.parametrize(
    ("speed", "degrees"), [(5, 6), (20, 6), (42, 4.8), (75, 3), (97, 1.8), (119, 0.6), (130, 0), (150, 0)]
)
def test_pedals_fade_to_nothing_at_130_kt(trade: Ask, speed: int, degrees: float) -> None:
    """Common practice, no source."""
    answer = trade(f"pedal limit at {speed} kt")

    assert answer.values[0].value == pytest.approx(degrees)
    assert ("the rudder alone steers" in answer.text) == (speed >= 130)
    assert _cites_common_practice(answer)


def test_pedals_never_gain_with_speed(trade: Ask) -> None:
    """Common practice, no source."""
    limits = [trade(f"pedal limit at {speed} kt").values[0].value for speed in range(0, 150, 10)]

    assert limits == sorted(limits, reverse=True)


@pytest.mark.parametrize("rate", [1.5, 2, 3])
def test_the_light_comes_on_at_80_percent_of_the_rate(trade: Ask, rate: float) -> None:
    """Common practice, no source."""
    answer = trade(f"deceleration light with a selected rate of {rate} m/s2")

    assert answer.values[0].value == pytest.approx(0.8 * rate)
    assert _cites_common_practice(answer)


@pytest.mark.parametrize(("pressure", "verdict"), [(999, "Within"), (1000, "Within"), (1001, "Outside")])
def test_1000_psi_at_most_without_anti_skid(trade: Ask, pressure: int, verdict: str) -> None:
    """Common practice, no source."""
    answer = trade(f"anti-skid lost, is {pressure} psi brake pressure ok?")

    assert answer.text.startswith(f"{verdict} CP 4")
    assert _cites_common_practice(answer)
