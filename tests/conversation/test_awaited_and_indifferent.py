"""What is waited for is the last amount of it; a statement that holds at any angle minds none; of two of a family the
one that only comes after "before" is no case; the unit at the end behind a bound is asked for.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("Fans off, 14 °C outside: how long until a 320 °C brake reads 160?", 34.0),
        ("How many minutes until a 390 °C brake shows 190 °C, 18 °C outside, fans on?", 9.2),
        ("10 °C outside, no fans, how long till a brake reading 300 shows 200", 19.0),
    ],
)
def test_the_last_amount_of_what_is_waited_for_is_the_target(talk: Talk, text: str, minutes: float) -> None:
    (answer,) = talk(text)
    assert answer.outcome == ANSWER
    assert answer.values[0].value == pytest.approx(minutes, rel=0.05)


@pytest.mark.parametrize(
    "text",
    [
        "Pin's gone missing, may they push us back with the nose wheel under 4°?",
        "no bypass pin but just six degrees at most, can the push begin",
        "Pushback without the bypass pin at 12 degrees, allowed?",
    ],
)
def test_a_statement_at_any_angle_minds_none(talk: Talk, text: str) -> None:
    (answer,) = talk(text)
    assert answer.entry == "pushback-without-pin"


@pytest.mark.parametrize(
    ("text", "entry"),
    [
        ("GEAR MISMATCH as the gear comes down, what speed before I put the lever back up", "gear-mismatch-extension"),
        ("mismatch while the legs go up, slow to what before I put the lever back down", "gear-mismatch-retraction"),
    ],
)
def test_what_only_comes_after_before_is_no_case(talk: Talk, text: str, entry: str) -> None:
    (answer,) = talk(text)
    assert answer.entry == entry


def test_a_unit_behind_a_bound_at_the_end_is_asked_for(talk: Talk) -> None:
    (answer,) = talk("request chocks + park brake off above degC")
    assert (answer.values[0].value, answer.values[0].unit) == (320, "degC")


def test_a_consonant_said_once_is_no_other_word(talk: Talk) -> None:
    (answer,) = talk("full reverse landing 47 tonnes 120 kt, how much hoter does each brake get")
    assert answer.entry == "brake-temperature-rise"


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("A nose tyre shows 130 psi cold: leave it, pump it up or change it?", "re-inflate"),
        ("sys 1 + sys 2 gone, gear?", "free fall only"),
        ("what was the ON TARGET share before, its now 85 percent", "formerly 90%"),
        ("I had 100 kt in the back of my mind for where pedal steering ends, right?", "110 kt"),
    ],
)
def test_what_is_judged_or_was_before_is_told(talk: Talk, text: str, told: str) -> None:
    (answer,) = talk(text)
    assert told in answer.text


def test_what_goes_in_a_system_is_no_loss_of_it(talk: Talk) -> None:
    (answer,) = talk("what type of fluid goes in system two")
    assert answer.outcome != ANSWER
