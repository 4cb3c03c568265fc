"""The measure of a thing that a question is after is told, and no other one in its place."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    "question",
    [
        "tiller breakout force",
        "nose tyre life",
        "what is the range of the accumulator",
        "brake probe range",
        "brake fan speed",
        "length of the red band",
        "shock strut stiffness",
        "what is the temperature of the uplock",
        "parking brake lever length",
        "gear door thickness",
        "brake disc count",
        "wear pin load",
        "what is the fastest the tug may tow us",
        "the fastest they can pull the aeroplane on the tow bar",
        "how hot may the brake fans get",
        "how many days may we fly with one brake deactivated",
        "for how many flights may the gear stay down",
        "how many sectors can be flown with the nose steering off",
    ],
)
def test_a_measure_that_is_not_had_is_not_answered_with_another(ask: Ask, question: str) -> None:
    assert ask(question).outcome != ANSWER


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("nose tyre pressure", "140 psi"),
        ("temperature of the fuse plugs", "185 °C"),
        ("brake fan time constant", "12 min"),
        ("tow angle", "85°"),
        ("streamer colour", "Red"),
        ("brake material", "carbon"),
        ("mass of a brake's heat sink", "48 kg"),
    ],
)
def test_a_measure_that_is_had_is_told(ask: Ask, question: str, told: str) -> None:
    answer = ask(question)
    assert answer.outcome == ANSWER
    assert told in answer.text
