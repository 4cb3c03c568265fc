"""Tests for what follows from a reading, said in a word."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import mark_answer
from assistant.resolving.knowing import Knowledge

_PEDAL = "Pedal travel with the autobrake armed: {}%. What follows?"
_CHECK = "Rudder check, at {} kt. What does the book say?"
_NOSE = "Chrome visible on the nose shock strut: you find {} mm. What follows?"
_TYRE = "Main tyre pressure, cold: you find {} psi. What follows?"
_QUARTER = "A further quarter of the parking brake lever, with no braking on landing, at {} kt. What does the book say?"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (_PEDAL.format(31), "nothing", "right"),
        (_PEDAL.format(31), "it stays armed", "right"),
        (_PEDAL.format(31), "it will disarm", "wrong"),
        (_PEDAL.format(55), "it disarms", "right"),
        (_PEDAL.format(55), "it stays armed", "wrong"),
        (_PEDAL.format(55), "nothing", "wrong"),
        (_CHECK.format(8), "that is allowed", "right"),
        (_CHECK.format(8), "too fast", "wrong"),
        (_CHECK.format(17), "too fast", "right"),
        (_CHECK.format(17), "too slow", "wrong"),
        (_CHECK.format(17), "okay", "wrong"),
        (_NOSE.format(120), "nothing", "right"),
        (_NOSE.format(170), "it's fine", "wrong"),
        (_TYRE.format(188), "nothing", "right"),
        (_TYRE.format(168), "nothing", "wrong"),
        (_QUARTER.format(50), "you may take another one", "right"),
        (_QUARTER.format(71), "you may take another one", "wrong"),
        (_QUARTER.format(71), "too fast", "right"),
        ("Depth of slush 2 mm: what follows?", "nothing", "wrong"),
        ("Chocks, brake temperature: 310 °C. What follows?", "request chocks, release the parking brake", "wrong"),
    ],
)
def test_what_follows_is_marked_by_what_happens_in_the_band(
    knowledge: Knowledge, question: str, answer: str, mark: str
) -> None:
    assert mark_answer(question, answer, knowledge).mark == mark
