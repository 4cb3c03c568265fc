"""Short turns that were taken for something else: steps wanted singly, former figures, settings, what shows."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Talk = Callable[..., list[Answer]]

SINGLY = [
    ("read me the free-fall extension one step at a time", "^Speed 190 kt or less. Step 1 of 7"),
    ("give me steer lost one line at a time", "done. next", "^If STEER LOST comes back"),
    ("no braking on landing, one item at a time please", "done what next", "and then", "^Both pilots' pedals"),
    ("go through the pushback checklist item by item", "next", "^TOW PIN memo"),
    ("residual braking, the steps one by one", "done", "^Then ANTI-SKID OFF"),
]
FORMER = [
    ("what was the landing distance factor formerly", "and the accumulator minimum, what did it use to be", "1,800"),
    ("i learned 280 for take-off brakes, still right?", "what did the retraction speed use to be", "200 kt"),
    ("was the pedal fade speed changed", "and ON TARGET, what was that before", "90%"),
    ("what changed in SOP 12", "and what did LIM 7 change", "280 °C"),
]
SETTINGS = [
    ("compare steady and full", "^1.4 m/s².*3.2 m/s².*1.8 m/s² lower"),
    ("how much stronger is full than firm", "0.9 m/s² higher"),
    ("firm versus steady, which brakes harder", "0.9 m/s² higher"),
    ("which brakes more, full or rto", "^3.2 m/s².*RTO gives"),
    ("energy each brake, 46 t 130 kt, no reverse", "and full reverse", "which is hotter", "^The greater, by 6.4 MJ"),
    ("how long is the delay with FIRM", "and how hard does it brake", "^2.3 m/s²"),
    ("delay distance FULL at 140 kt", "how hard does that one slow us down", "^3.2 m/s²"),
    ("brake energy each, 47 t 135 kt, full reverse", "and without", "how much hotter does that make them", "rise"),
]
SHOWN = [
    ("does the push need the bypass pin", "what tells me it's in", "^TOW PIN"),
    ("what shows me that we are in emergency braking", "^The RESERVE BRAKE memo"),
    ("may a checklist item go over a limit", "only where it says so"),
    ("one bar is filled, what does that mean", "what light goes with that", "green"),
    ("which book wins when they differ", "and may an abnormal item exceed it", "only where it says so"),
]
SHARES = [
    ("which autobrake on a contaminated runway", "now dry, but we need 84% of what is available", "FULL"),
    ("required is 91% of available, autobrake?", "^FULL: 91%"),
    ("dry runway, we need 71 percent of the runway available. autobrake?", "^No setting is asked for"),
]


@pytest.mark.parametrize("turns", [*SINGLY, *FORMER, *SETTINGS, *SHOWN, *SHARES])
def test_the_last_turn_is_told(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, told = turns
    answer = talk(*said)[-1]
    assert answer.outcome == ANSWER
    assert re.search(told, answer.text), answer.text
