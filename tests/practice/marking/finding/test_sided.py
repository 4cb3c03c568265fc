"""Tests for the side of a figure, and for a question that lacks what it needs."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import UNMARKED, mark_answer
from assistant.resolving.knowing import Knowledge

_TWO_SIDES = "The captain holds 30 degrees of tiller left, the first officer 12 degrees right, at 20 kt: total order?"
_RIGHT = "Left tiller 25° right, pedals 6° left, 30 kt: what is the total steering order?"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (_TWO_SIDES, "18 degrees left", "right"),
        (_TWO_SIDES, "left 18", "right"),
        (_TWO_SIDES, "-18 degrees", "right"),
        (_TWO_SIDES, "minus eighteen", "right"),
        (_TWO_SIDES, "30 left less 12 right, that is 18 left", "right"),
        (_TWO_SIDES, "18 degrees", "partly"),
        (_TWO_SIDES, "18 degrees right", "wrong"),
        (_TWO_SIDES, "eighteen degrees to the right", "wrong"),
        (_TWO_SIDES, "+18", "wrong"),
        (_RIGHT, "19° right", "right"),
        (_RIGHT, "plus 19", "right"),
        (_RIGHT, "19° left", "wrong"),
        (_RIGHT, "minus 19 degrees", "wrong"),
    ],
)
def test_a_figure_with_a_side_is_right_on_its_side_alone(
    knowledge: Knowledge, question: str, answer: str, mark: str
) -> None:
    assert mark_answer(question, answer, knowledge).mark == mark


@pytest.mark.parametrize("answer", ["nothing", "use chocks", "300"])
def test_what_is_asked_back_is_not_marked(knowledge: Knowledge, answer: str) -> None:
    assert mark_answer("Brake temperature at the stand 300 °C: what follows?", answer, knowledge).mark == UNMARKED
