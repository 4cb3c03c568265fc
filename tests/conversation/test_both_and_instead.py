"""Failures told of one after the other: both together, or one in the place of the others."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("turns", "opening"),
    [
        (("system 1 lost, braking mode?", "system two lost instead", "both"), "EMERGENCY braking."),
        (("system 1 lost, steering?", "system 2 lost instead", "what if both are lost"), "The nose wheels castor"),
        (("brake controller failed, mode", "system 1 lost instead"), "NORMAL braking."),
        (("brake controller failed, mode", "system 1 lost instead", "both together"), "EMERGENCY braking."),
    ],
)
def test_what_holds_then(talk: Talk, turns: tuple[str, ...], opening: str) -> None:
    assert talk(*turns)[-1].text.startswith(opening)


@pytest.mark.parametrize(
    ("turns", "entry"),
    [
        (("gear retraction speed limit", "taxi speed straight", "the retraction one again"), "vlo-retraction"),
        (("nose tyre pressure", "tow angle limit", "remind me of the tyre one again"), "nose-tyre-pressure"),
        (("energy at 50 tonnes from 120 knots", "per brake in an RTO"), "brake-energy"),
    ],
)
def test_a_topic_or_a_calculation_is_come_back_to(talk: Talk, turns: tuple[str, ...], entry: str) -> None:
    assert talk(*turns)[-1].entry == entry
