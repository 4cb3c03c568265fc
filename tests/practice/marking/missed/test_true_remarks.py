"""True words that nobody asked for are beside the point; what is called a limit is held to it."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import MISSED, PARTLY, RIGHT, WRONG, Marker

SPREAD = (
    "Before departure the brakes read 70, 95, 90 and 250 °C. Does that meet the operator's rule on spread? "
    "Yes or no, and give the rule."
)
TOWED = "The accumulator reads 1,900 psi. May the aeroplane be towed? Yes or no, and give the limit."
STRUTS = "What length of chrome must be visible on the main and on the nose shock struts?"
BARS = "What colour are the brake pressure bars in NORMAL, ALTERNATE and EMERGENCY?"
HORN = "What colour is GEAR NOT LOCKED, and what sound comes with it?"
BURST = (
    "You suspect a burst tyre on the take-off run. What do you do below 100 kt, what at 100 kt or above, "
    "and what about the gear then?"
)
HOTTEST = "How does the gear display mark the hottest brake, and when?"
SWITCHED = (
    "Everything is normal, then ANTI-SKID is put to OFF. Give the braking mode, anti-skid, autobrake and the "
    "pressure technique."
)
EMPTY = "Below what pressure does the brake accumulator count as empty?"
DIAL = "Where is the brake dial?"
PINS = "Who shows the ground-lock pins to whom before flight, and how many are there?"
FREE = "What is the maximum speed for a free-fall extension?"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (EMPTY, "It stores System 1 pressure.", MISSED),
        (EMPTY, "It is empty at 1,200 psi.", WRONG),
        (DIAL, "It has one needle.", MISSED),
        (DIAL, "It shows accumulator pressure.", MISSED),
        (DIAL, "It is right of the gear lever.", WRONG),
        (PINS, "They have red streamers.", MISSED),
        (SPREAD, "The hottest is shown in inverse video.", MISSED),
        (SPREAD, "It is fine.", WRONG),
        (FREE, "it's any speed you like", WRONG),
        (FREE, "It is 205 kt.", WRONG),
        (SPREAD, "No, the rule is 180 °C.", WRONG),
        (SPREAD, "No, it is 180 °C apart and the rule is 120.", RIGHT),
        (TOWED, "No, 2,000 psi is the maximum.", WRONG),
        (TOWED, "No, 2,000 psi is the minimum.", RIGHT),
        (FREE, "190 kt is the minimum.", WRONG),
        (STRUTS, "Mains from 60 up to 110, nose from 90 up to 160 millimetres.", RIGHT),
        (STRUTS, "main up to 60, nose up to 90 mm", WRONG),
        (BARS, "Amber everywhere except NORMAL, which has white.", RIGHT),
        (BARS, "White everywhere except NORMAL, which has amber.", WRONG),
        (BARS, "amber in all but normal, there they're white", RIGHT),
        (HORN, "a horn that never stops", PARTLY),
        (HORN, "red and a horn that stops after a while", WRONG),
        (BURST, "under a hundred you stop from a hundred up you keep going and leave the wheels hanging", RIGHT),
        (BURST, "from a hundred up you stop under a hundred you keep going and leave the gear down", WRONG),
        (HOTTEST, "Reversed colours once it passes the take-off limit of 250.", RIGHT),
        (HOTTEST, "Inverse video while it is under the maximum of 250 °C.", WRONG),
        (SWITCHED, "Drops to alternate, skid protection gone, auto gone, no more than 800 on the bars.", RIGHT),
        (SWITCHED, "alternate, anti-skid gone, auto stays, 800 or less", WRONG),
    ],
)
def test_marks(marker: Marker, question: str, answer: str, mark: str) -> None:
    assert marker.mark(question, answer).mark == mark
