"""Conversions asked in words: a difference of temperatures is none of their zero points; an "in" may be the inch."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    ("question", "value", "unit"),
    [
        ("50 F in C", 10, "degC"),
        ("difference of 90 F in C", 50, "degC"),
        ("difference of 100 C in F", 180, "degF"),
        ("12 in to mm", 304.8, "mm"),
        ("10 in in mm", 254, "mm"),
        ("12 mm in inches", 12 / 25.4, "in"),
    ],
)
def test_conversion(ask: Ask, question: str, value: float, unit: str) -> None:
    answer = ask(question)

    assert (answer.values[0].value, answer.values[0].unit) == (pytest.approx(value), unit), answer.text
