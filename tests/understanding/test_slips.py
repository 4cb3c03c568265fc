"""Slips of the finger in every word of a question: the words that all questions share, and those that make others."""

from __future__ import annotations

import pytest

from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn
from assistant.understanding.spelling import slips_of


@pytest.mark.parametrize(
    ("text", "record"),
    [
        ("hwo far apart are the main legs", "main-track"),
        ("how fast coud we be and still bring the gear up", "vlo-retraction"),
        ("what do I look for in the whel bays", "wheel-bay-inspection"),
        ("how wide a pavement for a 180 tern at 70 degrees", "pavement-width"),
        ("seed for 4° pedal limit", "pedal-limit"),
        ("what does doe mist", ""),
        ("what is the tyre pressure of a bycicle boat", ""),
    ],
)
def test_slip_is_read_as_what_is_meant(text: str, record: str, knowledge: Knowledge) -> None:
    answer, _ = answer_turn(text, Context(), knowledge)
    assert answer.entry == record


def test_number_is_never_guessed() -> None:
    assert "seven" not in slips_of("eeven", ["even"])


@pytest.mark.parametrize(
    ("word", "known", "meant"),
    [
        ("fat", ["flat", "fast"], ["flat", "fast"]),
        ("seed", ["speed", "seeds"], ["speed"]),
        ("mist", ["must", "most"], ["must", "most"]),
        ("wing", ["ring"], []),
        ("bolt", ["belt", "bolts"], []),
    ],
)
def test_slips_of_a_word(word: str, known: list[str], meant: list[str]) -> None:
    assert slips_of(word, known) == meant
