"""What one sees of what was just told, and whether the gear goes up or stays down after it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("before", "words", "entry"),
    [
        ("who inserts the bypass pin", "how will I know that it is in", "tow-pin-memo"),
        ("does stowing the spoilers disarm the autobrake", "any message?", "autobrake-off-caption"),
        ("biggest towing angle with the link connected", "how do they see it", "towing-limit-shown"),
        ("brake controller failed, which braking mode", "is there a caution for that", "anti-skid-lost-meaning"),
    ],
)
def test_what_shows_a_thing_told_is_told(talk: Talk, before: str, words: str, entry: str) -> None:
    assert talk(before, words)[-1].entry == entry


def test_no_light_is_told_of_a_thing_that_none_shows(talk: Talk) -> None:
    assert "TOW PIN" not in talk("cold pressure of the main tyres", "what will I see")[-1].text


@pytest.mark.parametrize(
    "words", ["and the wheels, up or down after that", "and the gear, raise it?", "so gear up or not"]
)
def test_the_gear_after_a_verdict_is_that_verdicts(talk: Talk, words: str) -> None:
    told = talk("tyre burst on the take-off roll at 115, stop or go", words)
    assert told[-1].text.startswith("Do not retract")


@pytest.mark.parametrize(
    ("before", "words", "entry"),
    [
        ("when does RTO brake", "how long does it wait", "autobrake-delays"),
        ("free-fall extension speed", "what about the doors", "free-fall-doors"),
        ("STEER LOST, taxiing, what now", "how fast can I be rolling when I do that", "steer-lost-procedure"),
    ],
)
def test_a_turn_on_the_thing_told_is_asked_of_it(talk: Talk, before: str, words: str, entry: str) -> None:
    assert talk(before, words)[-1].entry == entry


def test_more_than_the_limit_is_needed(talk: Talk) -> None:
    told = talk("biggest nose-wheel angle on a tow", "the tug needs to turn further than that")
    assert told[-1].text.startswith("Towing above 85")


@pytest.mark.parametrize(
    ("before", "words"),
    [("tyre pressures", "who does that"), ("edge clearance", "any light for that"), ("gas spring", "what next")],
)
def test_what_knows_nothing_of_the_thing_told_is_not_told(talk: Talk, before: str, words: str) -> None:
    told, after = talk(before, words)
    assert after.outcome != ANSWER or after.entry == told.entry
