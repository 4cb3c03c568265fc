"""Turns in words that hold only after what was told, and amounts that are meant for a step."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    "turns",
    [
        ("how many gear pins are there", "who gets to see them", "^The pilot in the left seat"),
        ("gear lock pins", "and they end up where", "^The gear ground-lock pins are stowed"),
        ("what do I look for in the wheel bay", "a hose hanging down", "^Wheel bay"),
        ("free fall procedure", "lever where first", "^Gear lever DN"),
        ("free fall procedure", "and if one stays amber", "^Not three green after free-fall"),
        ("GEAR MISMATCH on extension, what do I do", "if that's no good", "^If still amber"),
        ("GEAR MISMATCH on extension, what do I do", "and while raising it", "^GEAR MISMATCH on retraction"),
        ("gear lever stuck after take-off", "press it straight away?", "^Once a positive climb"),
        ("BRAKE HEAT after take-off", "and to bring it back in", "^Then up at 205"),
        ("who taxies the aeroplane", "swap while rolling slowly?", "^Only with the aeroplane stopped"),
        ("what does STEER LOST mean", "can I get her to the gate", "^Taxi by differential braking"),
        ("brake wear pin check", "so we'd fly it home and fix it", "^Flush with the housing"),
        ("why nitrogen in tyres", "how much oxygen is let in", "^At most 5%"),
    ],
    ids="/".join,
)
def test_what_a_turn_asks_of_what_was_told(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, pattern = turns
    answer = talk(*said)[-1]
    assert answer.outcome == ANSWER
    assert re.search(pattern, answer.text), answer.text


@pytest.mark.parametrize(
    ("turns", "verdict"),
    [
        (("GEAR MISMATCH on extension, what do I do", "is 220 slow enough"), "Outside ABN 32.2"),
        (("GEAR MISMATCH on retraction", "240, lever down now?"), "Outside ABN 32.3"),
        (("free fall procedure", "200 kt, ok?"), "Outside LIM 3.1"),
        (("STEER LOST what do I do", "25 ok?"), "Within ABN 32.5"),
        (("BRAKE HEAT after take-off", "five minutes do?"), "5 min is 5 min below"),
    ],
)
def test_an_amount_is_held_against_the_step_it_is_meant_for(
    talk: Talk, turns: tuple[str, ...], verdict: str
) -> None:
    assert talk(*turns)[-1].text.startswith(verdict)


def test_a_former_figure_of_the_paragraph_told_is_put_right(talk: Talk) -> None:
    assert "10 kt" in talk("maximum taxi speed in a tight turn", "12, he insists")[-1].text
