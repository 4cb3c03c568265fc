"""Turns that lean on the last: what was told is not told again, but another side, setting or reading of it."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Talk = Callable[..., list[Answer]]

ASPECTS = [
    ("maximum towing angle", "and past it?", "torque link"),
    ("maximum towing angle", "how's that marked", "red band"),
    ("free-fall lever, where is it", "how long's it pulled for", "^5 s"),
    ("where's the free-fall lever", "how long do I hold it", "max speed for that", "^190 kt"),
    ("which needle is on the brake dial", "where is it", "left of the gear lever"),
    ("do the pedals knock the autobrake out", "what else does", "spoilers"),
    ("what is GEAR DOOR", "after how many seconds", "colour", "^Amber"),
    ("at what speed does pedal steering fade to nothing", "what do I steer with above that", "rudder"),
    ("how many ground-lock pins are there", "what have they got on them", "streamers"),
]
LIKES = [
    ("braking action for code 5", "and 3?", "^Code 3"),
    ("braking action for code 5", "zero", "^Code 0"),
    ("parking brake pressure at one quarter", "half", "1,200 psi"),
    ("hydroplaning speed on the main tyres of the 120", "nose tyres?", "^106 kt"),
    ("main tyre at 184 psi cold, leave it?", "and another's 169", "replace it"),
    ("nose tyre at 130 psi cold", "the other one is 124", "replace it"),
    ("share of the energy that the brakes take with full reverse", "idle?", "^0.8"),
    ("maximum take-off mass on the 120", "we're at 57", "^Outside"),
    ("pavement width for a 180 at full tiller, 120?", "and the 120L", "^30 m"),
    ("at 20 kt, tiller 50 right and pedals full right, total order?", "and with the pedals neutral", r"^50\.0°"),
]
STEPS = [
    ("BRAKE HEAT after take-off, what do I do", "not faster than what while lowering it", "^Gear down at 230 kt"),
    ("BRAKE HEAT after take-off, what do I do", "and when I bring it back up", "^Then up at 205 kt"),
    ("not three green after free fall, what now", "use autobrake for the landing?", "without autobrake"),
    ("no braking on landing, actions?", "the pedals part", "^Both pilots' pedals"),
    ("gear mismatch on extension, steps?", "retraction?", "^GEAR MISMATCH on retraction"),
]
CHANGES = [
    ("maximum speed for retracting", "hm, I had 200 in my head", "no longer holds"),
    ("maximum speed for retracting", "since when?", "changed with LIM 7"),
    ("taxi speed in a sharp turn", "when did that change", "changed with SOP 12"),
    ("what does ON TARGET mean", "it was 90 once, no?", "no longer holds"),
    ("does a free fall cost me the brakes", "where is all that written", r"^AOM 32\.30\.6"),
]
NORMAL = [
    ("ANTI-SKID switch OFF, which mode?", "and with everything back to normal", "^NORMAL"),
    ("system 2 failed, brakes?", "everything restored: autobrake?", "^Autobrake works"),
]


@pytest.mark.parametrize("turns", [*ASPECTS, *LIKES, *STEPS, *CHANGES, *NORMAL], ids=lambda turns: turns[-2])
def test_a_turn_that_leans_on_the_last(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, pattern = turns

    last = talk(*said)[-1]

    assert last.outcome == ANSWER
    assert re.search(pattern, last.text, re.MULTILINE), last.text


@pytest.mark.parametrize("turn", ["are you sure?", "say again", "is that still so"])
def test_what_is_only_confirmed_may_be_told_again(talk: Talk, turn: str) -> None:
    before, after = talk("maximum towing angle", turn)

    assert "85°" in after.text
    assert after.entry == before.entry


def test_everything_else_normal_keeps_what_failed(talk: Talk) -> None:
    answer = talk("system 2 failed, brakes?", "autobrake, everything else normal?")[-1]

    assert "No autobrake" in answer.text
