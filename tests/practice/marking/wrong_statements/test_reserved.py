"""Tests for a yes or no that is right with something behind it that is not."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import RIGHT, WRONG, mark_answer
from assistant.resolving.knowing import Knowledge

_LOW = "System 1 lost and the accumulator at 1,600 psi: does the parking brake hold?"
_GO = "Brake temperature 242 °C to begin take-off: may you go?"
_MOST = "What is the maximum brake temperature to begin take-off?"
_OFF = "STEER switch OFF: do the tillers steer?"
_HELD = "PEDAL button held: do the pedals steer?"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (_LOW, "yes, for now", RIGHT),
        (_LOW, "yes, but I would not trust it to park", RIGHT),
        (_LOW, "yes, and you can rely on it", WRONG),
        (_LOW, "yes, count on it", WRONG),
        (_LOW, "yes, no chocks needed", WRONG),
        (_GO, "yes", RIGHT),
        (_GO, "yes, but not on the 120L", RIGHT),
        (_GO, "yes, on the 120L as well", WRONG),
        (_GO, "yes, on both variants", WRONG),
        (_MOST, "250 °C, on the 120L 230", RIGHT),
        (_MOST, "250 °C on the 120L too", WRONG),
        (_OFF, "no, and neither do the pedals", RIGHT),
        (_OFF, "no, but the pedals do", WRONG),
        (_OFF, "no, only the pedals steer", WRONG),
        (_HELD, "no, but the tillers do", RIGHT),
        (_HELD, "no, but the tillers still steer", RIGHT),
    ],
)
def test_what_is_said_behind_a_verdict_counts(knowledge: Knowledge, question: str, answer: str, mark: str) -> None:
    assert mark_answer(question, answer, knowledge).mark == mark
