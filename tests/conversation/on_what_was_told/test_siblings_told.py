"""A turn that only names another case of what was told, which stands beside it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("turns", "entry"),
    [
        (("company taxi speed on a straight", "seventy degrees?"), "taxi-sharp-turn"),
        (("company taxi speed on a straight", "hm, forty degrees"), "taxi-turn"),
        (("flashing white gear lamp, what does it mean", "now it's amber"), "lamp-amber"),
        (("a gear lamp is amber", "it's gone green now"), "lamp-green"),
        (("max brake pressure without anti-skid", "and in normal"), "braking-pressure-normal"),
        (("where is the gear lever", "max speed to lower the gear"), "vlo-extension"),
    ],
)
def test_it_is_told_of_the_other_case(talk: Talk, turns: tuple[str, ...], entry: str) -> None:
    assert talk(*turns)[-1].entry == entry


@pytest.mark.parametrize(
    ("turns", "entry"),
    [
        (("BRAKE HEAT just after we got airborne", "and had we still been on the ground?"), "brake-heat-ground"),
        (("hottest brake 240, coolest 110, can we leave?", "so who do i ring"), "brake-spread-policy"),
        (("steady green by the gear lever", "nothing lit"), "lamp-dark"),
    ],
)
def test_a_phase_a_person_and_a_lamp(talk: Talk, turns: tuple[str, ...], entry: str) -> None:
    assert talk(*turns)[-1].entry == entry


@pytest.mark.parametrize("turn", ["and past that?", "oops, went over it", "what happens if we exceed that"])
def test_what_follows_if_it_is_exceeded(talk: Talk, turn: str) -> None:
    assert talk("maximum speed to lower the gear", turn)[-1].text.startswith("Return within the limit")


def test_a_thing_that_what_was_told_says_nothing_of(talk: Talk) -> None:
    assert talk("slushy runway, how long is the gear left down", "take-off flap for that?")[-1].outcome == "decline"


@pytest.mark.parametrize("turn", ["what's that out of", "out of which manual", "is that us or the maker"])
def test_the_source_by_other_words(talk: Talk, turn: str) -> None:
    assert talk("maximum speed to lower the gear", turn)[-1].text.startswith("LIM 3.1")


@pytest.mark.parametrize(
    ("turns", "said"),
    [
        (("we lowered the gear at 240", "does the aeroplane need an inspection", "what was the limit"), "240 kt"),
        (("what must the landing brief contain", "retraction time", "whose rule is the briefing one"), "SOP"),
    ],
)
def test_what_was_told_before_the_last_turn(talk: Talk, turns: tuple[str, ...], said: str) -> None:
    assert said in talk(*turns)[-1].text
