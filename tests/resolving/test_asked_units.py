"""A figure is told in the unit that a whole sentence asks for, and what follows "in" there is no thing."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    ("question", "value", "unit"),
    [
        ("the 230 knot extension limit in km/h please", 230 * 1.852, "km/h"),
        ("what is the 20,000 ft gear extension ceiling in metres", 6096.0, "m"),
        ("how many pounds is the maximum landing mass", 50_000 / 0.45359237, "lb"),
        ("main tyre pressure in kilopascals", 190 * 6.894757, "kPa"),
        ("nose tyre presure in kilopascls", 140 * 6.894757, "kPa"),
        ("what altitude in metres may i put the gear down below", 6096.0, "m"),
        ("the 205 knots for raising gear in miles per hour", 205 * 1852 / 1609.344, "mph"),
        ("the 250 degree takeoff limit in fahrenheit", 482.0, "degF"),
        ("system pressure in bar", 3000 / 14.50377377, "bar"),
    ],
)
def test_a_figure_is_told_in_the_unit_asked_for(ask: Ask, question: str, value: float, unit: str) -> None:
    answer = ask(question)

    assert answer.outcome == ANSWER
    assert answer.values[0].unit == unit
    assert answer.values[0].value == pytest.approx(value, rel=1e-5)


@pytest.mark.parametrize(
    "question", ["white bars", "amber pressure bars", "what do the bars look like in alternate"]
)
def test_a_thing_called_like_a_unit_stays_a_thing(ask: Ask, question: str) -> None:
    assert "mber" in ask(question).text


def test_how_many_of_a_thing_asks_for_no_unit(ask: Ask) -> None:
    assert not any(value.unit == "bar" for value in ask("how many bars are amber in alternate").values)


@pytest.mark.parametrize(
    "question", ["pedal travel in mm", "what is the pedal deflection in cm", "parking brake lever travel in cm"]
)
def test_what_is_an_angle_is_told_in_no_length(ask: Ask, question: str) -> None:
    assert ask(question).outcome != ANSWER


def test_a_small_figure_keeps_its_places(ask: Ask) -> None:
    assert "1.15 mph" in ask("what is a knot in mph").text


def test_a_unit_is_not_told_in_itself(ask: Ask) -> None:
    assert ask("how many kg in a pound").text.startswith("A pound")
