"""Short turns that lean on what was just told: its paragraph, its steps, its cases come before other subjects."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("turns", "entry"),
    [
        (("tyre burst at 120 kt on take-off", "gear up after?"), "tyre-burst-gear"),
        (("how long do i hold the free-fall lever", "can i raise the gear again afterwards"), "free-fall-retract"),
        (("which autobrake on a wet runway", "what deceleration does that go for"), "autobrake-firm-deceleration"),
        (("autobrake FIRM aims for what", "and FULL", "RTO?"), "rto-gives"),
        (("gear lamp flashing white", "steady green?", "and amber"), "lamp-amber"),
        (("brakes at 330 at the stand", "and the park brake?"), "brake-temperature-parking-brake"),
    ],
)
def test_what_was_told_is_looked_into_first(talk: Talk, turns: tuple[str, ...], entry: str) -> None:
    assert talk(*turns)[-1].entry == entry


@pytest.mark.parametrize(
    ("turns", "said"),
    [
        (("STEER LOST procedure?", "how slow do i have to be for that"), "less than 30 kt"),
        (("STEER LOST procedure?", "and when it's back again"), "switch OFF"),
        (("gear mismatch on extension drill", "what if that doesn't help"), "free-fall extension"),
        (("gear mismatch on extension drill", "what if that doesn't help", "no faster than?"), "190 kt"),
        (("gear mismatch on extension drill", "it stays amber, what next"), "free-fall extension"),
        (("not three green after free fall", "where does the free-fall lever stay"), "pulled"),
        (("no braking on landing", "and if there's still nothing"), "parking brake lever"),
    ],
)
def test_a_step_or_a_case_of_what_was_told(talk: Talk, turns: tuple[str, ...], said: str) -> None:
    assert said in talk(*turns)[-1].text.partition(" That is step")[0]


@pytest.mark.parametrize(
    ("turns", "entry"),
    [
        (("is 210 ok?", "for raising the gear"), "vlo-retraction"),
        (("is 190 fine", "for free fall"), "free-fall-speed"),
        (("how long does it take?", "to get the gear up", "and down"), "extension-time"),
        (("is 12 okay?", "taxi speed in a tight turn"), "taxi-sharp-turn"),
    ],
)
def test_what_was_asked_back_is_told_by_the_next_turn(talk: Talk, turns: tuple[str, ...], entry: str) -> None:
    assert talk(*turns)[-1].entry == entry


def test_a_bare_number_is_asked_back_of_what_it_is(talk: Talk) -> None:
    (answer,) = talk("is 210 ok?")
    assert answer.outcome == "clarify" and "retracting the gear" in answer.text


def test_what_was_said_of_a_change_is_said_again(talk: Talk) -> None:
    turns = ("landing distance 1,200 normally, but anti-skid lost", "i thought it was one and a half times")
    *_, since, again = talk(*turns, "since when", "come again")
    assert "ABN 5" in since.text and again.text == since.text


@pytest.mark.parametrize(
    ("turns", "entry"),
    [
        (("hottest brake 300, can i take off", "how long do i wait"), "brake-cooling"),
        (("slush deeper than 13 mm, what then", "how long do i wait"), "slush-gear-down-time"),
    ],
)
def test_a_turn_that_names_nothing_stays_with_what_was_told(talk: Talk, turns: tuple[str, ...], entry: str) -> None:
    assert talk(*turns)[-1].entry == entry


@pytest.mark.parametrize("aside", ["did my team win last night", "towbar length", "how was your weekend"])
def test_what_is_no_part_of_the_subject_is_declined_and_leaves_it(talk: Talk, aside: str) -> None:
    *_, declined, back = talk("gear down speed limit", aside, "and for extending it")
    assert declined.outcome == "decline" and back.entry == "vlo-extension"
