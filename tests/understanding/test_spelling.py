"""Misspelt words are read as what they were meant to be, and never as something of another meaning."""

from __future__ import annotations

import pytest

from assistant.understanding.spelling import allowed_distance, mend

KNOWN = ["accumulator", "activated", "brake", "pressure", "retract", "spread", "sped", "narrow", "tyre"]


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("acumulator", "accumulator"),
        ("presure", "pressure"),
        ("retrct", "retract"),
        ("spred", "spread"),
        ("braek", "brake"),
    ],
)
def test_a_slip_is_mended(typed: str, meant: str) -> None:
    assert mend(typed, KNOWN)[0].word == meant


@pytest.mark.parametrize("word", ["deactivated", "marlow", "t1re", "ty", "zzzzzzz"])
def test_what_is_another_word_is_left_alone(word: str) -> None:
    assert mend(word, KNOWN) == []


@pytest.mark.parametrize(("length", "most"), [(2, 0), (3, 1), (5, 1), (6, 2), (8, 2), (9, 3), (20, 3)])
def test_longer_words_may_be_farther_off(length: int, most: int) -> None:
    assert allowed_distance("x" * length) == most
