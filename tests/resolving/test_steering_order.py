"""Tillers and pedals sum: each held to its limit at the speed, the total to the maximum, both ways alike."""

from __future__ import annotations

from collections.abc import Callable

import numpy
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.answering.answer import Answer

Ask = Callable[[str], Answer]
OTHER = {"left": "right", "right": "left"}
SIGN = {"right": 1, "left": -1}


def tiller_limit(speed: float) -> float:
    return float(numpy.interp(speed, [0, 15, 50, 80], [68, 68, 20, 0]))


def pedal_limit(speed: float) -> float:
    return float(numpy.interp(speed, [0, 30, 110], [8, 8, 0]))


def held(value: float, limit: float) -> float:
    return max(-limit, min(limit, value))


def expected(left: float, right: float, pedals: float, speed: float) -> float:
    """AOM 32.50.4 and 32.50.5, right positive."""
    tillers = held(left + right, tiller_limit(speed))
    return held(tillers + held(pedals, pedal_limit(speed)), 68)


def side_of(total: float) -> str:
    return "straight ahead" if abs(total) < 1e-9 else "right" if total > 0 else "left"


SIDES = st.sampled_from(["left", "right"])


@settings(max_examples=60, deadline=None)
@given(st.integers(1, 68), SIDES, st.integers(1, 68), SIDES, st.integers(0, 79))
def test_two_tillers(ask: Ask, one: int, way: str, two: int, other: str, speed: int) -> None:
    answer = ask(f"total order: captain's tiller {one}° {way}, first officer's tiller {two}° {other}, {speed} kt")

    total = expected(SIGN[way] * one, SIGN[other] * two, 0, speed)
    assert answer.values[0].value == pytest.approx(abs(total), abs=1e-9)
    assert answer.values[0].unit == "deg"
    assert side_of(total) in answer.text


@settings(max_examples=60, deadline=None)
@given(st.integers(1, 68), SIDES, st.integers(1, 8), SIDES, st.integers(0, 109))
def test_a_tiller_and_the_pedals(ask: Ask, tiller: int, way: str, pedals: int, other: str, speed: int) -> None:
    answer = ask(f"total steering order with tiller {tiller}° {way} and pedals {pedals}° {other} at {speed} kt")

    total = expected(SIGN[way] * tiller, 0, SIGN[other] * pedals, speed)
    assert answer.values[0].value == pytest.approx(abs(total), abs=1e-9)
    assert side_of(total) in answer.text


@settings(max_examples=40, deadline=None)
@given(st.integers(1, 68), SIDES, st.integers(1, 68), SIDES, st.integers(0, 79))
def test_left_and_right_are_mirror_images(ask: Ask, one: int, way: str, two: int, other: str, speed: int) -> None:
    form = "total order: captain's tiller {}° {}, first officer's tiller {}° {}, {} kt"
    straight = ask(form.format(one, way, two, other, speed))
    mirrored = ask(form.format(one, OTHER[way], two, OTHER[other], speed))

    assert straight.values[0].value == pytest.approx(mirrored.values[0].value)
    assert swapped(straight.text.split(":")[0]) == mirrored.text.split(":")[0]


def swapped(text: str) -> str:
    return text.replace("left", "\0").replace("right", "left").replace("\0", "right")


def test_opposite_equal_orders_cancel(ask: Ask) -> None:
    answer = ask("total order: captain's tiller 30° left, first officer's tiller 30° right, 10 kt")

    assert answer.values[0].value == 0


@pytest.mark.parametrize(("variant", "maximum"), [("", 68), (" on the 120L", 72)])
def test_both_tillers_full_are_held_to_the_maximum(ask: Ask, variant: str, maximum: float) -> None:
    answer = ask(f"both tillers full right at 10 kt{variant}, total order")

    assert answer.values[0].value == pytest.approx(maximum)
    assert "right" in answer.text


def test_the_total_with_full_pedals_is_held_too(ask: Ask) -> None:
    answer = ask("total steering order with tiller full right and pedals full right at 10 kt")

    assert answer.values[0].value == pytest.approx(68)


@pytest.mark.parametrize(
    ("question", "tiller", "pedals", "speed"),
    [
        ("45 kt full left tiller full left rudder what does the nose wheel get", -90, -90, 45),
        ("full right tiller plus full right pedal at 45 kt", 90, 90, 45),
        ("full right tiller & full left pedal at 45 kt", 90, -90, 45),
        ("tiller full right pedal full left at 45 kt", 90, -90, 45),
        ("I hold 12 right on the tiller with 5 degrees of left pedal at 20 knots", 12, -5, 20),
        ("5 left pedal and 20 right tiller at 30 kt", 20, -5, 30),
        ("tiller and pedals both full right at 40", 90, 90, 40),
        ("total steering at 55 kt full tiller full pedals", 90, 90, 55),
    ],
)
def test_each_order_has_its_own_control(ask: Ask, question: str, tiller: float, pedals: float, speed: float) -> None:
    limits = tiller_limit(speed), pedal_limit(speed)
    total = held(held(tiller, limits[0]) + held(pedals, limits[1]), 68)

    assert ask(question).values[0].value == pytest.approx(abs(total)), ask(question).text


@pytest.mark.parametrize(
    "question",
    [
        "left tiller 30, right tiller 10 right, speed 10",
        "captain tiller 30 right and left pedal at 20 kt",
        "captain full right pedal, first officer full left pedal",
    ],
)
def test_no_order_is_left_out_or_made_up(ask: Ask, question: str) -> None:
    assert ask(question).outcome == "clarify"


def test_what_both_pilots_do_is_done_twice(ask: Ask) -> None:
    answer = ask("At 40 kt both pilots wind on 30° to the left. What does the tiller side of the order come to?")

    assert answer.values[0].value == pytest.approx(min(60, tiller_limit(40)))


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("system 1 lost, full left tiller at 8 kt and full left pedal, what angle do the nosewheels take", "castor"),
        ("bypass pin in, tiller 40 left and pedals full right at 10 kt: total steering order?", "castor"),
        ("in the air, full right tiller and full right pedals at 120 kt, how far do the nosewheels turn", "centred"),
    ],
)
def test_controls_that_have_no_effect_order_nothing(ask: Ask, question: str, says: str) -> None:
    answer = ask(question)

    assert says in answer.text
    assert not answer.values


def test_the_pedals_are_left_out_while_their_button_is_held(ask: Ask) -> None:
    answer = ask("pedal button held, tiller 20 right, pedals full right, 10 kt: total order?")

    assert answer.values[0].value == pytest.approx(20.0)
    assert "the pedals do not steer" in answer.text


@pytest.mark.parametrize(
    ("question", "total"),
    [
        ("tillers 25 left on each at 12 kt", -50),
        ("tillers, 20 left on each, 10 knots, and pedals 5 right", -35),
        ("tiller 30 right each side, 10 knots", 60),
        ("back to the tillers, 15 right on each at 10 knots", 30),
    ],
)
def test_an_order_on_each_tiller_is_two(ask: Ask, question: str, total: float) -> None:
    """Each tiller has its own order, and the orders are summed with their signs (AOM 32.50.4)."""
    assert ask(question).values[0].value == pytest.approx(abs(total))
    assert ("left" if total < 0 else "right") in ask(question).text


@pytest.mark.parametrize(("question", "sum_"), [
    ("one tiller 10 left, other 25 left, pedals full left, 12 kt", 43),
    ("pedals full left, one tiller 10 left, the other 25 left, at 12 kt", 43),
    ("captain's tiller 30 right, the other 12 right, pedals half right at 10 knots", 46),
    ("one tiller 10 right, other one 15 left, pedals 4 right at 14 knots", 1),
    ("tiller 20 left, the other pilot full left pedal, 10 kt", 28),
])  # fmt: skip
def test_the_other_tiller_beside_pedals(ask: Ask, question: str, sum_: float) -> None:
    assert ask(question).values[0].value == pytest.approx(sum_)
