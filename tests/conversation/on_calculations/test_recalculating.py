"""A turn that changes what the last calculation was made from changes that, and leaves the rest as it was."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Talk = Callable[..., list[Answer]]

_COOLING = "how long for a brake at 400 to reach 200 with fans, 20 outside"
_RISE = "landing at 48 tonnes and 130 knots with full reverse, temperature rise per brake?"
_TYRE = "tyre ground speed at 150 kias, 6,000 ft, 30 degrees"


@pytest.mark.parametrize(
    "turns",
    [
        (_COOLING, "ok and with them off", "^34 min without"),
        (_COOLING, "with 30 outside", "starting at 450", "^11 min with fans"),
        (_COOLING, "what if it only needs to get to 250", r"^6\.\d min with fans"),
        (_RISE, "with idle reverse", "and if only three brakes are working", "^459 °C, landing with idle"),
        ("brake at 420, fans on, 25 outside, what will it read after ten minutes", "after twenty?", "^100 °C"),
        ("brake at 420, fans on, 25 outside, what will it read after ten minutes", "twenty minutes, no fans", "^278"),
        ("energy of a 54 tonne aeroplane at 110 knots", "at 130?", r"^120\.8 MJ"),
        ("turn radius of the outer main legs at 45 degrees", "120L, same angle", "^19 m"),
        (_RISE, "three brakes", "all four again, but 50 tonnes", "^291 °C"),
        (_RISE, "they were at 90 °C beforehand, where do they end up", "^370 °C"),
        (_RISE, "brakes already at 120, so where do we finish up", "^400 °C"),
        ("brake's at 310, can we take off", "how long till we can, fans on, 15 out", "^2.7 min to the maximum"),
        ("brake 248 on the 120L, ok to go?", "how long to get down to that, fans on, 12 outside", "^1.0 min"),
        (_TYRE, "with 10 knots tailwind", "make that a headwind", "^162 kt"),
        (_TYRE, "with 10 knots headwind", "at 8,000 ft", "^168 kt"),
    ],
    ids=lambda turns: turns[-2],
)
def test_what_a_turn_changes(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, pattern = turns
    answer = talk(*said)[-1]
    assert answer.outcome == ANSWER
    assert re.search(pattern, answer.text)


def test_a_turn_on_something_else_stands_by_itself(talk: Talk) -> None:
    assert talk(_COOLING, "maximum speed for retracting")[-1].text.startswith("205 kt")


def test_no_wind_is_not_assumed_beside_a_headwind(talk: Talk) -> None:
    assert "no wind" not in talk(f"{_TYRE} 10 kt headwind")[-1].text
