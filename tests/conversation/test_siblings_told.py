"""A turn that only names another case of what was told, which stands beside it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("turns", "entry"),
    [
        (("company taxi speed on a straight", "seventy degrees?"), "taxi-sharp-turn"),
        (("company taxi speed on a straight", "hm, forty degrees"), "taxi-turn"),
        (("flashing white gear lamp, what does it mean", "now it's amber"), "lamp-amber"),
        (("a gear lamp is amber", "it's gone green now"), "lamp-green"),
        (("max brake pressure without anti-skid", "and in normal"), "braking-pressure-normal"),
        (("where is the gear lever", "max speed to lower the gear"), "vlo-extension"),
    ],
)
def test_it_is_told_of_the_other_case(talk: Talk, turns: tuple[str, ...], entry: str) -> None:
    assert talk(*turns)[-1].entry == entry
