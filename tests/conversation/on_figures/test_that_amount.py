"""A turn that points at the amount before, by its kind, is read with it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("first", "second", "opening"),
    [
        ("can I fly with the gear down at 240", "and lower it at that speed?", "Outside LIM 3.1: 240 kt"),
        ("may I retract at 200 knots", "and extend at the same speed", "Within LIM 3.1: 200 kt"),
        ("brake at 260, take off?", "can I set the park brake at that temperature", "Within LIM 3.2: 260 °C"),
        ("tiller limit at 60 kt", "what can the pedals do at that speed", "5.0°"),
        ("can we land at 51 tonnes", "take off at that weight?", "Within LIM 3.1: 51,000 kg"),
    ],
)
def test_the_amount_pointed_at_is_taken(talk: Talk, first: str, second: str, opening: str) -> None:
    assert talk(first, second)[-1].text.startswith(opening)
