"""Tests for answers that are right in other words: kept as before, none left, labels of variants, causes."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import MISSED, PARTLY, RIGHT, WRONG, Marker

_MARKS = {"right": RIGHT, "partly": PARTLY, "wrong": WRONG, "missed": MISSED}
_MATRIX = """
what is lost with system 1? | no steering, free fall needed. Normal brakes still work, autobrake too. | right
what is lost with system 1? | steering gone, free-fall extension. you keep normal brakes and autobrake | right
what is lost with system 1? | no steering, free fall, normal brakes carry on with autobrake | right
what is lost with system 1? | no steering, free fall. autobrake is lost too | wrong
what is lost with system 1? | no steering, free fall, normal brakes continue but autobrake goes | wrong
both systems lost, accumulator empty: which braking mode? | nothing left, just reversers and aero drag | right
both systems lost, accumulator empty: which braking mode? | none | right
both systems lost, accumulator empty: which braking mode? | no wheel brakes at all | right
both systems lost, accumulator empty: which braking mode? | no brakes left | right
both systems lost, accumulator empty: which braking mode? | nothing | right
both systems lost, accumulator empty: which braking mode? | emergency | wrong
both systems lost, accumulator empty: which braking mode? | alternate, none of the others | wrong
both systems lost, accumulator charged: which braking mode? | none | wrong
both systems lost, accumulator charged: which braking mode? | nothing left | wrong
When are the brake bars amber? | in alternate and emergency | right
When are the brake bars amber? | when System 1 is lost | wrong
What does the brake controller do? | it takes the electrical pedal orders in NORMAL, meters each brake and \
does the anti-skid; if it fails you go to ALTERNATE or EMERGENCY without anti-skid | right
What does the brake controller do? | it takes the pedals' electrical orders and meters each brake | right/partly
What does the brake controller do? | it meters each brake or the autobrake, not sure | partly/missed/wrong
What is the wheelbase on the 120L? | 120L: 15.4 m; 120: 13.2 m | right
What is the wheelbase on the 120L? | 15.4 m against 13.2 m on the 120 | right
What is the wheelbase on the 120L? | 120: 13.2 m; 120L: 15.4 m | right
What is the wheelbase on the 120L? | 120L: 13.2 m; 120: 15.4 m | wrong
What is the main tyre pressure of the 120L? | 120 - 190 psi, 120L - 205 psi | right
What is the main tyre pressure of the 120L? | 120L: 205 | right
What is the main tyre pressure of the 120L? | 120L: 190 psi; 120: 205 psi | wrong
What is the maximum tiller angle on the 120? | 120: 68; 120L: 72 | right
What happens to anti-skid below 12 kt? | it stops working | right
What happens to anti-skid below 12 kt? | it is inactive | right
What happens to anti-skid below 12 kt? | it switches off | right
What happens to anti-skid below 12 kt? | it keeps working | wrong
What happens to anti-skid below 12 kt? | it stops below 15 kt | wrong
When does the autobrake disarm? | pedals past 40 percent, a thrust lever pushed up after landing, spoilers \
put away, the button pressed a second time, or losing something needed for arming | right
When does the autobrake disarm? | pedals past 40 percent | partly
how much does the parking brake lever give per quarter? | 800 psi each quarter | wrong
Free-fall extension: what are the steps? | 190 kt max, gear lever down, pull the free fall lever and hold 10, \
correction 5 seconds, wait 20 sec, check three green, expect open doors and no steering, stop straight ahead \
and be towed | right
Free-fall extension: what are the steps? | 190 kt max, gear lever down, pull the free fall lever and hold 5 \
seconds, wait 15 sec, correction 20 sec, check three green | partly
Free-fall extension: what are the steps? | 190 kt max, correction 205 kt, gear lever down | wrong
STEER LOST: what do you do, step by step? | turn STEER off and on once | partly
VLO retraction? | 205 or 230, not sure | wrong
System 1 lost: do the tillers steer? | no idea | missed
What is the wheelbase on the 120L? | on the 120L 13.2 m; on the 120 15.4 m | wrong
What is the wheelbase on the 120L? | 13.2 m on the 120L and 15.4 m on the 120 | wrong
"""


@pytest.mark.parametrize("case", [line for line in _MATRIX.splitlines() if line])
def test_an_answer_in_other_words_is_marked_as_it_is_meant(marker: Marker, case: str) -> None:
    question, answer, marks = case.split(" | ")
    assert marker.mark(question, answer).mark in {_MARKS[name] for name in marks.split("/")}


def test_of_a_step_that_is_said_without_its_figure_the_figure_alone_is_missing(marker: Marker) -> None:
    given = marker.mark("STEER LOST: what do you do, step by step?", "turn STEER off and on once")
    assert given.missing[0] == "at less than 30 kt"
