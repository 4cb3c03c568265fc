"""Tiller and pedal limits by speed: breakpoints exact, straight between them, forward and inverse one."""

from __future__ import annotations

from collections.abc import Callable

import numpy
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.answering.answer import ANSWER, Answer
from assistant.conversation.opening import Knowledge
from assistant.physics.schedule import value_at

Ask = Callable[[str], Answer]

# AOM 32.50.2 and 32.50.3, and AOM 32.01.3 for the long body
TILLER = ([0, 15, 50, 80], [68, 68, 20, 0])
TILLER_LONG = ([0, 15, 50, 80], [72, 72, 20, 0])
PEDALS = ([0, 30, 110], [8, 8, 0])
SCHEDULES = [
    ("tiller limit at {} kt", TILLER, "32.50.2"),
    ("tiller limit at {} kt on the 120L", TILLER_LONG, "32.50.2"),
    ("pedal limit at {} kt", PEDALS, "32.50.3"),
    ("pedal limit at {} kt on the 120L", PEDALS, "32.50.3"),
]
Points = tuple[list[int], list[int]]


@pytest.mark.parametrize(("question", "points", "paragraph"), SCHEDULES)
def test_breakpoints_are_exact(ask: Ask, question: str, points: Points, paragraph: str) -> None:
    for speed, degrees in zip(*points, strict=True):
        answer = ask(question.format(speed))

        assert answer.outcome == ANSWER
        assert answer.values[0][1:] == (degrees, "deg"), speed
        assert paragraph in [s.paragraph for s in answer.sources]


@pytest.mark.parametrize(("question", "points", "paragraph"), SCHEDULES)
def test_between_breakpoints_it_is_straight(ask: Ask, question: str, points: Points, paragraph: str) -> None:
    """Against numpy.interp, which holds the last value beyond the ends."""
    for speed in range(0, 130, 7):
        value = ask(question.format(speed)).values[0].value
        assert value == pytest.approx(float(numpy.interp(speed, *points))), (speed, paragraph)


@pytest.mark.parametrize(
    ("question", "said"),
    [
        ("tiller limit at 80 kt", "no steering"),
        ("tiller limit at 95 kt", "no steering"),
        ("pedal limit at 110 kt", "rudder alone"),
        ("pedal limit at 140 kt", "rudder alone"),
    ],
)
def test_beyond_the_end_it_says_what_is_left(ask: Ask, question: str, said: str) -> None:
    answer = ask(question)

    assert answer.values[0].value == 0
    assert said in answer.text


@pytest.mark.parametrize("variant", ["120", "120L"])
def test_the_delivered_points_are_those_of_the_manual(knowledge: Knowledge, variant: str) -> None:
    tiller = knowledge.record("tiller-limit", variant).points
    pedals = knowledge.record("pedal-limit", variant).points

    speeds = [tenth / 10 for tenth in range(1_300)]
    expected = TILLER_LONG if variant == "120L" else TILLER
    assert [value_at(tiller, v) for v in speeds] == pytest.approx(list(numpy.interp(speeds, *expected)))
    assert [value_at(pedals, v) for v in speeds] == pytest.approx(list(numpy.interp(speeds, *PEDALS)))


TENTHS = st.integers(1, 799).map(lambda n: n / 10)


@settings(max_examples=40, deadline=None)
@given(speed=TENTHS.filter(lambda v: 15 < v < 80))
def test_tiller_inverse_gives_back_the_speed(ask: Ask, speed: float) -> None:
    degrees = ask(f"tiller limit at {speed} kt").values[0].value

    answer = ask(f"at what speed is the tiller limit {degrees:.6f} degrees")

    assert answer.values[0].unit == "kt"
    assert answer.values[0].value == pytest.approx(speed, abs=1e-4)


@settings(max_examples=40, deadline=None)
@given(speed=TENTHS.filter(lambda v: v > 30))
def test_pedal_inverse_gives_back_the_speed(ask: Ask, speed: float) -> None:
    degrees = ask(f"pedal limit at {speed} kt").values[0].value

    answer = ask(f"at what speed is the pedal limit {degrees:.6f} degrees")

    assert answer.values[0].unit == "kt"
    assert answer.values[0].value == pytest.approx(speed, abs=1e-4)


@pytest.mark.parametrize(
    ("question", "limit"),
    [
        ("at what speed is the tiller limit 75 degrees", "68"),
        ("at what speed is the pedal limit 9 degrees", "8"),
    ],
)
def test_more_than_the_most_is_never_reached(ask: Ask, question: str, limit: str) -> None:
    answer = ask(question)

    assert answer.text.startswith("Never")
    assert limit in answer.text


@pytest.mark.parametrize(("wanted", "said"), [(30, "10.0° less than 30°"), (10, "10.0° more than 10°")])
def test_an_output_that_is_given_is_compared(ask: Ask, wanted: int, said: str) -> None:
    assert said in ask(f"can the tiller give {wanted}° at 50 kt?").text


def test_two_schedules_named_are_both_read(ask: Ask) -> None:
    text = ask("both at 45 kt: tiller limit and pedal limit?").text

    assert "6.5°" in text
    assert "26.9°" in text


@pytest.mark.parametrize(("question", "speed"), [
    ("knots at pedal limit 2", 90),
    ("speed with pedal limit 6", 50),
    ("kt for tiller limit 20", 50),
    ("at tiller limit 44, kt?", 32.5),
    ("pedal limit 5, knots", 60),
])  # fmt: skip
def test_a_bare_number_behind_its_figure_is_read_the_other_way(ask: Ask, question: str, speed: float) -> None:
    answer = ask(question)

    assert answer.entry in ("pedal-limit", "tiller-limit")
    assert answer.values[0].unit == "kt"
    assert answer.values[0].value == pytest.approx(speed, abs=0.1)


@pytest.mark.parametrize("question", ["pedal limit at speed 40", "pedal limit speed 40", "pedal limit 40 kt"])
def test_a_number_behind_the_speed_is_the_speed(ask: Ask, question: str) -> None:
    assert ask(question).values[0][1:] == (7.0, "deg")
