"""A reason asked for without "why", and why an amount just at its limit is within it."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("turns", "pattern"),
    [
        (("gear supply shut off after retraction", "to what end"), "leak"),
        (("gear supply shut off after retraction", "for waht reason"), "leak"),
        (("is pushback allowed without the bypass pin", "why not"), "vents"),
        (("can i pump the brakes without anti-skid", "what's wrong with it"), "fluid"),
        (("205 kt for raising, is that ok", "how come, that's the limit"), "^Exactly the maximum"),
        (("exactly 250 degrees, may i take off", "why's that ok"), "^Exactly the maximum"),
        (("204 kt for raising, is that ok", "why is that ok"), "^(?!Exactly)"),
    ],
    ids=lambda value: value[-1] if isinstance(value, tuple) else "",
)
def test_the_reason(talk: Talk, turns: tuple[str, ...], pattern: str) -> None:
    answer = talk(*turns)[-1]
    assert re.search(pattern, answer.text)


def test_a_purpose_that_is_not_stated_is_no_refusal(talk: Talk) -> None:
    assert talk("PEDAL button in the rudder check", "what's the point of that")[-1].outcome == ANSWER
