"""A turn goes on from what was calculated last to another calculation, and what was held against it stays so."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Talk = Callable[..., list[Answer]]

_STOP = "rejected take-off at 50 tonnes from 120 kt with the brakes at 100, how hot do they get"
_PAVEMENT = "how wide a pavement for a 180 at 60 degrees"
_FIRM = "stopping distance FIRM from 140 kt"


@pytest.mark.parametrize(
    "turns",
    [
        (_STOP, "how long from there to 250 with fans at 20", r"^8\.\d min with fans"),
        (_STOP, "how long to cool to 150 from that, fans off, 15 outside", r"^5\d min without fans"),
        ("tiller limit at 40 kt", "what radius is that", "^23 m"),
        ("tiller limit at 40 kt", "and what pavement does that need", "^53 m"),
        ("captain 40 right and copilot 20 left at 10 kt total order", "what radius is that", "^39 m"),
        ("nose radius at 60 degrees", "and the outer legs", "^11 m"),
        ("kinetic energy 50 tonnes 130 kt", "how much of that do the brakes take in an RTO", r"^111\.8 MJ"),
        (_FIRM, "is 1200 m enough", "what if i use full", "^Yes"),
        (_FIRM, "is 1200 m enough", "and steady", "^No"),
        (_FIRM, "and from 120", "the gentle one", "^1,550 m, STEADY"),
        (_FIRM, "and steady", "back to firm", "^1,270 m, FIRM"),
        (_PAVEMENT, "what clearance did you use", "2 m then", "^30 m"),
        (
            "tyre ground speed at 165 kt at 4,000 ft and 30 degrees", "with 10 kt tailwind", "and headwind", "no wind",
            "^182 kt",
        ),
    ],
    ids=lambda turns: turns[-2],
)  # fmt: skip
def test_what_came_out_goes_on(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, pattern = turns
    answer = talk(*said)[-1]
    assert answer.outcome == ANSWER
    assert re.search(pattern, answer.text)


def test_what_is_lacking_is_asked_for_on_the_value_that_came_out(talk: Talk) -> None:
    answers = talk(_STOP, "how long to cool from that to 250 with fans", "20 outside")
    assert "outside temperature" in answers[1].text
    assert re.search(r"^8\.\d min", answers[2].text)
