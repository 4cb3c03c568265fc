"""A circumstance told beside a question changes what is answered only as far as it bears on it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, DECLINE, Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("text", "entry"),
    [
        ("The gear supply is cut once it is locked up. What is that guarding against?", "gear-supply-shut-off-why"),
        ("Tyres get nitrogen. What does that protect us from?", "why-nitrogen"),
        ("Steering at 62 degrees. Should I help her round with the brakes on one side or not?", "tight-turn-brakes"),
        ("What would I see by the lever while a leg is in transit?", "lamp-white"),
    ],
)
def test_what_is_asked_of_what_is_told(talk: Talk, text: str, entry: str) -> None:
    (answer,) = talk(text)
    assert (answer.outcome, answer.entry) == (ANSWER, entry)


def test_the_reason_of_another_thing_is_not_told(talk: Talk) -> None:
    (answer,) = talk("The brakes are given no pressure until the wheels spin up. What is that saving us from?")
    assert answer.entry != "temperature-lag"


@pytest.mark.parametrize(("speed", "verdict"), [(245, "Within"), (262, "Outside")])
def test_an_amount_is_held_against_the_step_of_the_case_told(talk: Talk, speed: int, verdict: str) -> None:
    (answer,) = talk(f"The lever will not move to UP, so the gear stays down. Is {speed} knots all right?")
    assert answer.text.startswith(verdict)
    assert "255 kt" in answer.text


@pytest.mark.parametrize(
    "text",
    [
        "No bypass pin in, does the steering work?",
        "STEER is ON and no pin is fitted. Do the tillers steer?",
        "Nobody put a pin in. Does the tiller steer?",
    ],
)
def test_what_is_told_of_no_thing_is_not_so(talk: Talk, text: str) -> None:
    (answer,) = talk(text)
    assert "castor" not in answer.text


def test_no_fans_on_is_without_fans(talk: Talk) -> None:
    (answer,) = talk("No fans on, how long from 300 to 150 at 20 degrees outside?")
    assert "without fans" in answer.text


def test_a_bare_number_is_read_of_the_thing_that_it_is_said_of(talk: Talk) -> None:
    (answer,) = talk("The brakes are at 430, can I set the parking brake for ten minutes?")
    assert "400 °C" in answer.text
    (answer,) = talk("The accumulator is at 1,900, can I rely on the parking brake?")
    assert "2,000 psi" in answer.text


def test_a_bare_number_beyond_the_whole_is_no_share(talk: Talk) -> None:
    (answer,) = talk("Is 260 all right for the trip home?")
    assert "%" not in answer.text


@pytest.mark.parametrize(
    "text",
    [
        "both of us on full right pedal at 25 knots, hands off the tillers, how many degrees",
        "Full right pedal at 25 knots, nobody touching the tillers. How many degrees?",
    ],
)
def test_a_control_left_alone_orders_nothing(talk: Talk, text: str) -> None:
    (answer,) = talk(text)
    assert answer.text.startswith("8.0°")


def test_whether_a_quantity_is_well_asks_of_which_thing(talk: Talk) -> None:
    (answer,) = talk("Is the tyre pressure okay?")
    assert len(answer.choices) > 1


def test_that_setting_is_the_one_told(talk: Talk) -> None:
    *_, answer = talk("Which autobrake setting for a wet runway?", "What deceleration does that setting aim for?")
    assert "2.3 m/s²" in answer.text


def test_what_kind_of_thing_is_no_figure_of_it(talk: Talk) -> None:
    (answer,) = talk("What sort of valve sets the pressure of System 2?")
    assert answer.outcome != ANSWER
    (answer,) = talk("what sort of pump is it that makes the pressure in system two")
    assert answer.outcome == DECLINE


def test_what_only_sets_the_scene_bars_nothing(talk: Talk) -> None:
    (answer,) = talk("Tug is connected, beacon on, headset man ready, but the bypass pin is not in. May we push back?")
    assert "not allowed" in answer.text
