"""What a thing of the trade costs, weighs or is made of is not given: no statement on it stands in for that."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import DECLINE, Answer

Ask = Callable[[str], Answer]


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
