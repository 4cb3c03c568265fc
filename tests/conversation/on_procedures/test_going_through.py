"""Turns of a procedure that is gone through, of a scenario, and of what was told: short, and without their subject."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Talk = Callable[..., list[Answer]]

PROCEDURES = [
    ("free fall extension", "next", "how long do I hold it", "then?", "^Wait 20 s"),
    ("free fall steps", "how long do I wait", "^Wait 20 s"),
    ("free fall steps", "how long does free fall take", "takes 18 s"),
    ("free fall steps", "how long do I hold the free-fall lever", "^Free-fall lever pull and hold 5 s"),
    ("gear mismatch on extension, first step?", "then the lever goes where", "^Lever UP"),
    ("gear mismatch on extension, first step?", "next", "wait for how long?", "and then the lever?", "^Lever DN"),
    ("gear mismatch on extension", "next", "still amber", "^If still amber"),
    ("free fall steps", "step 2", "did that", "^Free-fall lever pull"),
    ("before pushback steps", "step 1", "that's done", "^TOW PIN memo"),
    ("STEER LOST what do I do", "tried that, no change", "^If STEER LOST comes back"),
    ("gear lever stuck after take off", "anything I can press", "override button"),
    ("gear lever stuck after take off", "is there a button?", "how many goes?", "try once"),
    ("no brakes on landing", "how many accumulator applications are there", "next", "^Full reverse thrust"),
    ("BRAKE HEAT in the climb what do I do", "how long down", "and what speed then", "^Then up at 205 kt"),
    ("no brakes landing memory items", "where is the parking brake lever", "behind the thrust levers"),
]
RESULTS = [
    ("ANTI-SKID switch OFF, nothing failed. Mode?", "bars?", "^The brake pressure bars are amber"),
    ("system 2 lost, brakes?", "max pressure", "^2,600 psi"),
    ("ANTI-SKID switch OFF, which mode?", "bars?", "max pressure", "^800 psi"),
    ("system 1 lost and system 2 lost", "which memo?", "RESERVE BRAKE"),
    ("free-fall lever pulled, steering?", "doors?", "doors stay open"),
    ("system 1 lost, how do I get the gear down", "how fast", "^190 kt"),
    ("system 2 lost and brake controller failed, mode?", "parking brake?", "^Still so, not affected"),
    ("pin out and steer switch off?", "and pedals?", "^The pedals do not steer"),
]
FAILURES = [
    ("sys 2 reading 1,300 psi, sys 1 fine: brakes?", "sys 1 down to 1,250 too", "^EMERGENCY"),
    ("system 2 lost, mode?", "now the brake controller fails, anti-skid?", "plus sys 1 at 1,200", "EMERGENCY"),
    ("System 1 failed, autobrake?", "next the ANTI-SKID switch is put OFF. Mode?", "^EMERGENCY"),
    ("which hydraulic system runs the steering?", "say it fails, what do the nose wheels do?", "castor"),
    ("what stops me moving the gear lever up on the ground", "and if that sticks", "override button"),
]
UNDONE = [
    ("system 1 lost, steering?", "it comes back", "^The tillers and the pedals steer"),
    ("bypass pin in, steering?", "pulled out again", "^The tillers and the pedals steer"),
    ("free-fall lever pulled, steering?", "and stowed?", "pedals?", "^The pedals steer"),
    ("BRAKE HEAT comes on at what temperature", "what do I do about it in flight", "and on the ground", "[Ff]ans"),
]
SOURCES = [
    ("taxi speed in a 90 degree turn", "whose rule", r"^SOP B\.2"),
    ("taxi speed straight", "is that the manual or the airline?", r"^SOP B\.2"),
    ("maximum towing angle", "where's that limit written down", "^LIM"),
    ("free fall extension", "next", "whose procedure is that", r"^ABN 32\.4"),
]
TURNED_ROUND = [
    ("cooling time constant with the fans", "and without", "^45 min"),
    ("cooling from 400 to 250 with fans, 15 outside", "at zero?", "^5.6 min"),
    ("pre-charge at 30 degrees", "at zero?", "^1,117 psi"),
    ("captain's tiller 20 right, first officer 30 left, 10 kt, total?", "make the first officer 30 right", r"^50\.0°"),
    ("left tiller 40 right, right tiller 15 left, 10 knots. total?", "both to the left", r"^55\.0°, left"),
    ("time for a normal retraction", "ok and to come down?", "^9 s"),
    ("parking brake, one quarter pressure?", "and the lot", "^2,400 psi"),
    ("time for a free-fall extension", "and the ordinary way", "^9 s"),
    ("main strut chrome 57 mm ok?", "nose then", "^90 mm to 160 mm"),
]
OTHERS = [
    ("where is the gear lever", "and the brake dial", "left of the gear lever"),
    ("accumulator minimum for a tow", "biggest nose wheel angle", "^85°"),
    ("how long does a full accumulator hold the parking brake", "fourteen hours here, do I leave it on", "^Outside"),
    ("chocks above what temperature", "we read 340", "^Outside"),
    ("accumulator empty below what", "and when is a hydraulic system lost", "below 1,500 psi"),
]


@pytest.mark.parametrize(
    "turns",
    [*PROCEDURES, *RESULTS, *FAILURES, *UNDONE, *SOURCES, *TURNED_ROUND, *OTHERS],
    ids=lambda turns: " / ".join(turns[:-1]),
)
def test_a_turn_without_its_subject(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, pattern = turns

    last = talk(*said)[-1]

    assert last.outcome == ANSWER
    assert re.search(pattern, last.text, re.MULTILINE), last.text


def test_hours_are_asked_of_no_step_that_tells_seconds(talk: Talk) -> None:
    answer = talk("no brakes landing memory items", "how many hours does a full accumulator hold it")[-1]

    assert "10 h" in answer.text


def test_the_place_of_a_thing_is_no_step(talk: Talk) -> None:
    answer = talk("free fall extension", "where is the free-fall lever")[-1]

    assert "hatch" in answer.text
