"""What is near another thing is not taken for it: the other way, a part of it, a number of something else."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer

Ask = Callable[[str], Answer]

SAID = [
    ("selector frozen in up", DECLINE, ""),
    ("the gear handle refuses to go to DN", DECLINE, ""),
    ("lever will not come up", ANSWER, "^Gear lever will not move to UP"),
    ("unable to lower the gear", ANSWER, "^GEAR MISMATCH on extension"),
    ("undercarriage lever jammed, cannot get the gear down", ANSWER, "^GEAR MISMATCH on extension"),
    ("gravity extension, 160 kt at FL230", ANSWER, "^Outside LIM 3.1: 23,000 ft .* Within LIM 3.1: 160 kt"),
    ("with System 1 lost can I free fall at 170 kt, 21,500 ft", ANSWER, "^Outside LIM 3.1: 21,500 ft"),
    ("may I pull the free-fall lever at 12,000 ft", ANSWER, "^Within LIM 3.1: .* at 190 kt IAS or less"),
    ("ground roll STEADY from 125 kt with the brake controller failed", ANSWER, "^No autobrake"),
    ("stopping distance FULL 120 kt, ANTI-SKID LOST", ANSWER, "^No autobrake"),
    ("strut 75 mm", ANSWER, "^Outside .* nose .* Within .* main"),
    ("chrome 130 mm", ANSWER, "^Outside .* main .* Within .* nose"),
    ("thirty degree corner coming up, 12 knots, ok?", ANSWER, "^Within SOP B.2"),
    ("a 45 degree bend ahead and we do 17 knots, all right?", ANSWER, "^Outside SOP B.2"),
    ("how do I file a complaint", DECLINE, ""),
    ("retraction time, hydraulics", ANSWER, "^11 s"),
    ("what could take my anti-skid away", ANSWER, "^No anti-skid, with any of these"),
    ("how hot may a fuse plug become before it melts", ANSWER, "^185"),
    ("tread worn most at the centre, what causes it", ANSWER, "^(Over-inflat|More wear|.*over-inflat)"),
    ("the fewest failures that leave no brakes at all: which?", ANSWER, "^No wheel brakes"),
    ("above which brake temperature is the parking brake not left on for over 5 minutes", ANSWER, "^400"),
    ("below which accumulator pressure may we not be towed for five minutes", ANSWER, "^2,000"),
    ("on a cold winter morning at -10 C, what should the accumulator pre-charge gauge read", ANSWER, "^1,076 psi"),
    ("how hot are the brakes after landing", CLARIFY, "brake temperature before the stop"),
]
COMPUTED = [
    ("captain 45 left and copilot 15 right plus pedals 6 right at 25 kt", 24.0, "deg"),
    ("half tiller at 45 kt", 13.43, "deg"),
    ("three quarters tiller at 30", 35.57, "deg"),
    ("tiller halfway at 40 kt", 16.86, "deg"),
    ("tiller at 35", 40.57, "deg"),
    ("inner main leg radius at 55", 6.14, "m"),
    ("middle of the main gear turn radius at 60 degrees", 7.62, "m"),
    ("mach 0.6 at 35000 in knots", 199.0, "kt"),
    ("hydroplaning speed with the nose tyre 10% low", 101.0, "kt"),
    ("tyre speed limit 225 mph at 150 kt sea level 15 C", 150.0, "kt"),
    ("brake temp after landing 48 t 130 idle reverse starting at 60", 404.0, "degC"),
    ("brake temp after landing at 130, 48 t, no reverse, brakes already at 90", 477.0, "degC"),
    ("applications left after 4", 2.0, "count"),
    ("tiller limit at 2e1 kt", 61.1, "deg"),
]


@pytest.mark.parametrize(("question", "outcome", "said"), SAID)
def test_another_thing_is_not_meant(ask: Ask, question: str, outcome: str, said: str) -> None:
    answer = ask(question)
    assert answer.outcome == outcome, answer.text
    assert re.search(said, answer.text), answer.text


@pytest.mark.parametrize(("question", "value", "unit"), COMPUTED)
def test_every_number_has_its_part(ask: Ask, question: str, value: float, unit: str) -> None:
    answer = ask(question)
    assert answer.outcome == ANSWER, answer.text
    assert answer.values[0].value == pytest.approx(value, abs=max(0.05, value / 200)), answer.text
    assert answer.values[0].unit == unit


@pytest.mark.parametrize("question", ["tiller limit at 1e400 kt", "tiller limit at 1/0 kt", "pedal limit at -20 kt"])
def test_what_is_no_speed_is_not_read_as_one(ask: Ask, question: str) -> None:
    assert ask(question).outcome != ANSWER
