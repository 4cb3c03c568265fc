"""An examiner's questions in several parts, and what learners answer: each is marked, and none stops the marking."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.marking.mark import MISSED, PARTLY, RIGHT, WRONG, Marker
from assistant.practice.marking.requiring.required import required

STAY = "Chocks are in, the brakes read 150 °C and the stay will be 12 h. May the parking brake be left set? "
STAY += "Yes or no, and give the limit."
ORDER = "Normal retraction: give the five events in order, and the time."
EXACTLY = "At lift-off the ground speed is exactly 195 kt. Is the maximum tyre ground speed exceeded? Yes or no, "
EXACTLY += "and why."
SIDES = "BRAKE HEAT is shown at the stand. What must people keep clear of, and from where may they approach if it "
SIDES += "cannot wait?"
COLD = "Tyre pressures are set cold. Give the two conditions, either of which will do."
FANS = "For how long must the brake fans be off before a temperature is read for take-off?"
GROOVES = "When is a worn tyre changed?"
GRAVITY = "Talk me through gravity extension of the undercarriage from slowing down to the end of the landing run."
HOT = "The brakes read 410 °C at the stand. May you set the parking brake for 10 minutes? Yes or no, and give the "
HOT += "limit."
BARS = "What colour are the brake pressure bars in NORMAL, ALTERNATE and EMERGENCY?"
EVENTS = "doors open, downlocks release, legs fold, uplocks engage, doors close"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (STAY, "no, with a stay over 10 h it is released", RIGHT),
        (STAY, "no", PARTLY),
        (STAY, "yes, they are far below 400 °C", WRONG),
        (ORDER, f"{EVENTS}; 11 s", RIGHT),
        (ORDER, EVENTS, PARTLY),
        (ORDER, "doors open, downlocks release, legs fold, doors close, uplocks engage; 11 s", WRONG),
        (EXACTLY, "no, 195 kt is the limit itself", RIGHT),
        (EXACTLY, "yes, it is over the limit", WRONG),
        (SIDES, "the sides of the wheels; only from ahead or behind", RIGHT),
        (SIDES, "only from ahead or behind", PARTLY),
        (SIDES, "clear of the sides, and you come in from the side", WRONG),
        (COLD, "three hours after landing, or with the wheels at ambient temperature", RIGHT),
        (COLD, "three hours after landing", PARTLY),
        (FANS, "two minutes", RIGHT),
        (FANS, "at least two minutes", RIGHT),
        (GROOVES, "when any groove is worn to its bottom", RIGHT),
        (GROOVES, "when all the grooves are worn to their bottom", WRONG),
        (GROOVES, "no idea", MISSED),
        (GRAVITY, "slow to one ninety or less lever down pull the free fall hold it five seconds wait twenty from the "
         "pull check for three greens the doors stay open and there's no steering so stop dead ahead and get a tow",
         RIGHT),
        (HOT, "negative four ten's over the four hundred degree max for anything longer than five minutes", RIGHT),
        (BARS, "white normal amber alternate the emergency one i forget", PARTLY),
    ],
)  # fmt: skip
def test_exam_questions_are_marked(marker: Marker, question: str, answer: str, mark: str) -> None:
    given = marker.mark(question, answer)

    assert given.mark == mark, given


@pytest.mark.parametrize(
    "question",
    [
        "Pedal steering: what is its limit at 30 kt, at 110 kt, and which part of the schedule lies between?",
        "Could I hold the PEDAL button and check the rudder while going round a bend at 7 kt?",
        "Aldermere 120L: what is the tiller maximum, and up to what ground speed is it available?",
        "State the maximum take-off mass and the maximum landing mass, first of the Aldermere 120, then of the 120L.",
    ],
)
def test_no_question_stops_the_marking(knowledge: Knowledge, marker: Marker, question: str) -> None:
    required(question, knowledge)

    assert marker.mark(question, "Amber; no, above 400 °C; the ground crew; System 2, 15 s.").mark
