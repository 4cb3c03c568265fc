"""Tests for a number alone where steps or statements are asked for."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import MISSED, PARTLY, WRONG, mark_answer
from assistant.resolving.knowing import Knowledge

_NONE = "No braking on landing: what do you do?"
_HEAT = "BRAKE HEAT: what is the procedure?"
_MISMATCH = "GEAR MISMATCH on extension: what do you do?"


@pytest.mark.parametrize(
    ("question", "answer", "marks"),
    [
        (_NONE, "two", (MISSED, WRONG)),
        (_NONE, "sixty", (MISSED, WRONG)),
        (_HEAT, "ten", (MISSED, WRONG)),
        (_MISMATCH, "fifteen", (MISSED, WRONG)),
        (_NONE, "full reverse", (PARTLY,)),
        (_NONE, "800 psi on the pedals", (PARTLY,)),
        (_MISMATCH, "wait fifteen seconds", (PARTLY,)),
    ],
)
def test_a_bare_number_tells_no_step(knowledge: Knowledge, question: str, answer: str, marks: tuple[str, ...]) -> None:
    assert mark_answer(question, answer, knowledge).mark in marks
