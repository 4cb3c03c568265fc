"""What a thing of the trade costs, weighs or is made of is not given: no statement on it stands in for that."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import DECLINE, Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    "question",
    [
        "by what factor does the landing distance grow with a reverser locked",
        "landing distance factor with a tailwind of ten knots and one reverser out",
        "who calls for the gear to come up",
        "who orders gear down, left seat or right seat",
        "what load is the tow bar rated for",
        "how many miles out should the gear be down",
        "is the runway at home icy at the moment",
        "how deep may the slush be for landing",
        "are the nose tyres radials",
        "length of the pin when it is new",
        "my fmc has crashed, how do I reset it",
    ],
)
def test_what_is_only_near_is_declined(ask: Ask, question: str) -> None:
    assert ask(question).outcome == DECLINE


@pytest.mark.parametrize("thing", ["tiller", "accumulator", "gear lever", "rudder pedal", "bypass pin"])
@pytest.mark.parametrize(
    "question",
    [
        "What would we pay for a replacement {}?",
        "what thread does the {} have",
        "what is the {} diameter",
        "how long does it take to replace the {}",
        "what is the melting point of the {}",
        "how do I change a {}",
        "who makes the {}",
    ],
)
def test_what_is_not_given_is_declined(ask: Ask, question: str, thing: str) -> None:
    assert ask(question.format(thing)).outcome == DECLINE
