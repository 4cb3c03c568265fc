"""What was told stays told: a procedure under way, a setting that does not work, a label of other fleets, a reading."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]

TURNS = [
    ("free fall extension", "done, only two green", "which leg", "what now", "^Not three green"),
    ("gear mismatch on extension", "speed?", "so what do I do", "^GEAR MISMATCH on extension"),
    ("no braking on landing", "m2", "^ANTI-SKID OFF"),
    ("no braking on landing", "and M3?", "^Both pilots' pedals"),
    ("system 2 lost", "stopping distance", "125", "steady", "^No autobrake"),
    ("stopping distance FULL from 140 kt", "with antiskid off", "^No autobrake"),
    ("autobrake 2", "medium", "low", "has no"),
    ("medium", "autobrake medium", "has no"),
    ("medium", "firm", r"^2\.3 m/s²"),
    ("strut 55 mm", "main", "^Outside .* main"),
    ("parking brake", "2 quarters", "half", "^1,200 psi"),
    ("parking brake 3 quarters", "one quarter", "^600 psi, one quarter: "),
    ("free fall extension", "can I retract it after", "^Only on the ground, by maintenance"),
    ("free fall extension", "how long does it take", "^18 s"),
    ("system 1 lost", "can i steer", "can i park", "^The parking brake holds"),
    ("captain full right at 20 kt", "and first officer half left", "pedals full right", r"^38\.6°, right"),
    ("brake temp after landing", "48 t", "130", "idle reverse", "60 degrees", "^404 °C"),
]


@pytest.mark.parametrize("turns", TURNS)
def test_what_was_told_is_gone_on_with(talk: Talk, turns: tuple[str, ...]) -> None:
    answer = talk(*turns[:-1])[-1]
    assert re.search(turns[-1], answer.text), answer.text


def test_a_failure_that_empties_what_is_left_is_not_told_with_what_would_hold(talk: Talk) -> None:
    answer = talk("both systems lost", "accumulator empty")[-1]
    assert "1,400 to 2,000" not in answer.text
