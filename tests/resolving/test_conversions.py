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
        ("how many litres in a US gallon", 3.785411784, "l"),
        ("psi to kPa", 6.894757293, "kPa"),
        ("convert bar to psi", 14.50377377, "psi"),
        ("a million foot pounds in megajoules", 1.355817948, "MJ"),
        ("he learned it in bar: what is 2,600 psi", 179.2637, "bar"),
    ],
)
def test_conversion(ask: Ask, question: str, value: float, unit: str) -> None:
    answer = ask(question)

    assert (answer.values[0].value, answer.values[0].unit) == (pytest.approx(value), unit), answer.text
