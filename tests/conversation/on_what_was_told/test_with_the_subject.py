"""A short turn is read with the thing spoken of before, where only what knows of both can be meant."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("turns", "entry"),
    [
        (("where is the brake accumulator gauge", "fully charged"), "accumulator-full-pressure"),
        (("the accumulator, what charges it", "what's it precharged to", "when full"), "accumulator-full-pressure"),
        (("tyre blew at 105 knots on take-off", "do we put the gear up"), "tyre-burst-gear"),
        (("what pressure do the hydraulics run at", "when do we call it lost"), "system-lost-pressure"),
        (("what is a shock strut filled with", "which is at the bottom"), "oleo-chambers"),
        (("who fits the bypass pin", "what do we see in the cockpit"), "tow-pin-memo"),
        (("free-fall speed limit", "can I get it back up afterwards"), "free-fall-retract"),
    ],
)
def test_what_knows_of_both_answers(talk: Talk, turns: tuple[str, ...], entry: str) -> None:
    assert talk(*turns)[-1].entry == entry


@pytest.mark.parametrize(
    ("turns", "entry"),
    [
        (("nose tyre pressure", "and the mains"), "main-tyre-pressure"),
        (("where is the gear lever", "VLE"), "vle"),
        (("accumulator pre-charge at 20 degrees", "at zero?"), "precharge-at-temperature"),
    ],
)
def test_a_part_put_in_the_place_of_its_like_is_no_new_question(
    talk: Talk, turns: tuple[str, ...], entry: str
) -> None:
    assert talk(*turns)[-1].entry == entry
