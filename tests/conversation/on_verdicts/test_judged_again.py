"""A reading that was judged is held against what the next turn names, where that gives no figure of its own."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import CLARIFY, Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    "turns",
    [
        ("is 210 ok?", "for raising the gear", "Outside LIM 3.1: 210 kt is 5 kt above"),
        ("is 210 ok?", "for raising the gear", "and for flying with it down", "Within LIM 3.1: 210 kt"),
        ("brake at 380, ok to set the parking brake?", "and for takeoff?", "Outside LIM 3.2: 380 °C"),
        ("1,900 on the accumulator, good enough for the parking brake?", "and for a tow?", "Outside AOM 32.55.3"),
        ("taxi at 22 straight ok", "in a 50 degree turn", "Outside SOP B.2"),
    ],
    ids=lambda turns: turns[-2],
)
def test_held_against_what_is_named(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, begins = turns
    assert talk(*said)[-1].text.startswith(begins)


@pytest.mark.parametrize("text", ["is 210 ok?", "is 260 allowed", "210 alright?"])
def test_asked_back_of_what(talk: Talk, text: str) -> None:
    assert talk(text)[-1].outcome == CLARIFY


def test_a_figure_that_is_asked_for_is_told(talk: Talk) -> None:
    assert talk("200 kt ok to retract?", "and what is the extension limit")[-1].text.count("230 kt") == 1
