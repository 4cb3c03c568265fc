"""A turn on a sum of orders changes one order, all of them, the speed or the variant, and the rest stays."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]

_TWO = "captain 40 right, fo 10 right at 10 kt, total steering order"
_WITH_PEDALS = "tiller 30 right, pedals 6 right, 10 kt, total steering order"
_ONE_EACH = "one tiller 20 right, the other 5 left, ten knots. what do the wheels get"


@pytest.mark.parametrize(
    "turns",
    [
        (_TWO, "what if the first officer goes twenty left instead", "20.0°, right"),
        (_TWO, "both right, but at 40 knots", "33.7°, right"),
        (_TWO, "and if the fo lets go of his", "40.0°, right"),
        (_TWO, "ok so the captain turns 10 left, at 12 knots", "0.0°, straight ahead"),
        (_TWO, "at fifty", "on the 120L as well", "20.0°, right"),
        (_TWO, "and if the fo was pulling left", "30.0°, right"),
        (_WITH_PEDALS, "and no pedal", "30.0°, right"),
        (_WITH_PEDALS, "now he takes his feet off", "30.0°, right"),
        (_WITH_PEDALS, "pedals full left instead", "22.0°, right"),
        (_ONE_EACH, "and if the second one's 5 right", "25.0°, right"),
        ("captain's tiller 30 left, fo's centred, 10 kt, total order?", "fo adds 20 left", "50.0°, left"),
        ("captain 40 right, 10 kt, total steering order", "and if the fo helps with another ten right", "50.0°, right"),
        ("my tiller 30 right, his 10 left at 12 knots, total order?", "i come back to 20", "10.0°, right"),
        ("one tiller orders 45 left, the other 15 right, 10 kt. total order?", "which way", "30.0°, left"),
        (_WITH_PEDALS, "and which way does that go", "36.0°, right"),
        ("one tiller orders 45 left, the other 15 right, 10 kt. total order?", "the other way", "30.0°, right"),
    ],
    ids=lambda turns: turns[-2],
)
def test_orders_changed(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, begins = turns
    assert talk(*said)[-1].text.startswith(begins)


@pytest.mark.parametrize("turn", ["what's the pedal limit at 50", "and the taxi speed for that turn"])
def test_a_turn_on_something_else(talk: Talk, turn: str) -> None:
    assert talk(_TWO, turn)[-1].entry != "total-steering-order"
