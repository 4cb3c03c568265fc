"""What a turn replaces is judged and calculated anew: no verdict on the amount before is told again."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]
PARKED = "hottest brake 410, can I leave the parking brake set for ten minutes?"
COOLING = "brakes at 380, fans running, 20 outside. How long to 250?"
STOPPED = "how hot do the brakes get after an RTO, 52 tonnes, 110 knots, they're at 60 now"


@pytest.mark.parametrize(
    ("turns", "told"),
    [
        ((PARKED, "three minutes then"), "Within"),
        ((PARKED, "3 min then", "and six"), "6 min is 1"),
        (("taxi speed in a 70 degree turn", "what would it be for ninety"), "10 kt: maximum taxi speed"),
        (("taxi speed in a 70 degree turn", "and fifty"), "15 kt: maximum taxi speed"),
        ((COOLING, "how long must the fans be off before I read a temperature", "from 450 to 250 then"), "7.5 min"),
        ((STOPPED, "starting at 120", "from 90 knots"), "343 °C"),
    ],
)
def test_what_is_replaced_is_worked_out_anew(talk: Talk, turns: tuple[str, ...], told: str) -> None:
    assert told in talk(*turns)[-1].text
