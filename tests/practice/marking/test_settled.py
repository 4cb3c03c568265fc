"""Verdicts that lie in what is done, numbers that are no figures, and what comes last told first."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import Marker
from assistant.resolving.knowing import Knowledge

_TAXI = "Is 24 kt straight an allowed taxi speed? Yes or no, and give the limit."
_BRAKE = "The hottest brake of an Aldermere 120 reads 270 °C, fans off. May take-off begin? Give the limit too."
_TYRE_SPEED = "What is the maximum tyre ground speed?"
_RESIDUAL = "Residual braking: give the steps in order, with the speed."


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (_TAXI, "one knot in hand, 25 is the limit", "right"),
        (_TAXI, "limit of 25 is respected", "right"),
        (_BRAKE, "Twenty over the 250, take-off has to wait.", "right"),
        (_BRAKE, "250 is the limit: stay where you are", "right"),
        (_BRAKE, "limit 250 °C, take-off may begin", "wrong"),
        (_TYRE_SPEED, "It's on page twelve of the manual", "missed"),
        (_TYRE_SPEED, "Twenty years of flying and I never needed it", "missed"),
        ("What is the pedal steering limit at 90 kt?", "less than at fifty, can't say more", "missed"),
        ("What is the tiller limit at 40 kt?", "34 degrees, less than at fifteen", "right"),
        (_RESIDUAL, "ANTI-SKID OFF then ON below 20 kt, but before that press and release the pedals.", "right"),
        (_RESIDUAL, "Press and release the pedals, but before that ANTI-SKID OFF then ON below 20 kt.", "wrong"),
    ],
)
def test_marks(question: str, answer: str, mark: str, knowledge: Knowledge) -> None:
    assert Marker(knowledge).mark(question, answer).mark == mark
