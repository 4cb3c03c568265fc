"""A result of the state tables that a turn asks for is told under the states that the scenario has given."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    "turns",
    [
        ("System 2 has failed, mode?", "ok so can I steer with the pedals", "pedals steer"),
        ("PEDAL button held, do the pedals steer", "so what colour bars", "bars are white"),
        ("system 1 lost, anti-skid?", "when is lunch", "right, back to it, bar colour?", "bars are white"),
        ("free-fall lever pulled, gear up?", "is the anti-skid alive", "Anti-skid works"),
        ("hyd 1 out, park brake", "ok does the parking brake hold", "^The parking brake holds"),
        ("System 2 lost, autobrake?", "everything is working again", "^Autobrake works"),
        ("the brake controller is dead, bars?", "now all is well again", "are the bars white", "bars are white"),
        ("hyd 1 gone, does the gear extend", "sys 1 is working again", "extends normally"),
        ("brake computer dead, autobrake?", "forget the brake computer failure", "^Autobrake works"),
        ("number two hydraulics out, autobrake?", "ok and now sys 1 out", "EMERGENCY"),
        ("STEER switch OFF, pedal steering?", "i put it back ON", "^The pedals steer"),
        ("System 2 out, mode?", "System 1, i mean", "^NORMAL"),
        ("system two out, mode?", "actually number one hydraulics", "^NORMAL"),
        ("System 2 out, autobrake?", "same question, the brake controller", "^No autobrake.*controller failed"),
        ("System 2 out, mode?", "swap it for system one", "^NORMAL"),
    ],
    ids=lambda turns: " / ".join(turns[:-1]),
)
def test_what_holds_under_the_states_given(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, pattern = turns

    last = talk(*said)[-1]

    assert last.outcome == ANSWER
    assert re.search(pattern, last.text), last.text


def test_what_a_thing_does_is_no_result(talk: Talk) -> None:
    last = talk("System 2 has failed, mode?", "what does anti-skid do")[-1]

    assert "slows faster than the others" in last.text


@pytest.mark.parametrize(
    ("question", "pattern"),
    [
        ("what does the parking brake need to work", "System 1 or accumulator"),
        ("what has to be working for autobrake", "NORMAL mode available"),
        ("loss of which system makes me lose retraction", "System 1"),
        ("which system failure makes me lose autobrake", "System 2"),
        ("sys 1 dropped to 2100 psi. can we get the gear up?", "^The gear retracts normally"),
        ("we free fell the gear, everything else is healthy. what braking mode", "NORMAL braking"),
        ("System 2 gone, ANTI-SKID switch off on top of that, anti-skid?", "^No anti-skid"),
    ],
)
def test_what_a_result_needs(talk: Talk, question: str, pattern: str) -> None:
    last = talk(question)[-1]

    assert last.outcome == ANSWER
    assert re.search(pattern, last.text), last.text
