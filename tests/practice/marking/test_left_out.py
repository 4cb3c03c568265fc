"""What an answer leaves out, puts beside its contrary, or says in another order than the parts that were asked for."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import MISSED, RIGHT, WRONG, Marker

PROOF = "Why does the ON TARGET light not prove that the brakes are working?"
FOLD = "Which direction do the main legs fold?"
MEMO = "PARK BRAKE SET memo: what colour is it, and what two conditions together bring it up?"
LOST = (
    "ANTI-SKID LOST: which switch do you move and to where, what about autobrake, what pressure, and by what do you "
    "multiply the landing distance?"
)
PINS = "Gear ground-lock pins: how many are there?"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (PROOF, "deceleration also counts drag, spoilers and reverse thrust", RIGHT),
        (PROOF, "the deceleration leaves out drag, spoilers and reverse thrust", WRONG),
        (PROOF, "it ignores drag, spoilers and reverse thrust", WRONG),
        (PROOF, "drag, spoilers and reverse are excluded from it", WRONG),
        (PROOF, "it does not leave out drag, spoilers and reverse thrust", RIGHT),
        (PROOF, "drag, spoilers and reverse thrust count, brakes or no brakes", RIGHT),
        (FOLD, "inboard, into the belly", RIGHT),
        (FOLD, "inboard or outboard", WRONG),
        (MEMO, "red, lever set, thrust > idle", RIGHT),
        (MEMO, "red, lever set, thrust < idle", WRONG),
        (LOST, "times 1.6, 800 psi at most, forget about autobrake, and the ANTI-SKID switch goes to OFF", RIGHT),
        (LOST, "Autobrake OFF, no anti-skid, 800 psi or less, 1.6", WRONG),
        (PINS, "three, one for every leg", RIGHT),
        (PINS, "there's three one for every leg", RIGHT),
        (PINS, "thirty-one", WRONG),
        (PINS, "pass", MISSED),
    ],
)
def test_left_out_or_beside_its_contrary(marker: Marker, question: str, answer: str, mark: str) -> None:
    assert marker.mark(question, answer).mark == mark
