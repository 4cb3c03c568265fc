"""A turn that only names a unit says the figure just told in it, and asks nothing else."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("turns", "said"),
    [
        (("main tyre pressure", "in bar?"), "13.1 bar"),
        (("main tyre pressure on the 120L", "how many bar is that", "and kilopascals?"), "1,413 kPa"),
        (("VLO extension", "kph?"), "426 km/h"),
        (("VLO extension", "in km/h", "and in mph please"), "265 mph"),
        (("stopping distance on FULL from 130 knots", "um what's that in feet"), "2,510 ft"),
        (("max take-off mass", "in pounds?"), "123,459 lb"),
    ],
)
def test_the_figure_told_is_said_in_the_unit(talk: Talk, turns: tuple[str, ...], said: str) -> None:
    assert talk(*turns)[-1].text.startswith(said)
