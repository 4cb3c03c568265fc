"""One figure asked for in two cases that a question joins is told for both."""

from __future__ import annotations

import pytest

from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn


@pytest.mark.parametrize(
    ("question", "figures"),
    [
        ("cooling time constant fans on / off", {12.0, 45.0}),
        ("time constant with fans and without", {12.0, 45.0}),
        ("with or without fans, what are the two time constants", {12.0, 45.0}),
        ("taxi speed straight and in turns", {25.0, 15.0}),
        ("gear times up and down", {11.0, 9.0}),
        ("tyre pressure main or nose", {190.0, 140.0}),
    ],
)
def test_both_are_told(knowledge: Knowledge, question: str, figures: set[float]) -> None:
    answer, _ = answer_turn(question, Context(), knowledge)

    assert {value.value for value in answer.values} == figures


def test_one_case_alone_is_told_alone(knowledge: Knowledge) -> None:
    answer, _ = answer_turn("cooling time constant with the fans on", Context(), knowledge)

    assert [value.value for value in answer.values] == [12.0]
