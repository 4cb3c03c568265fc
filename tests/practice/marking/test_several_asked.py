"""Questions for several things at once: each is to be said, and nothing else."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import MISSED, PARTLY, RIGHT, WRONG, Marker

LAMPS = "Leg lamps: what do they show down and locked, moving, and up and locked?"
DELAYS = "Name the autobrake settings for landing with their delays after touchdown."
SYSTEMS = "Which hydraulic system do the gear, the steering and the normal brakes run on?"
SPEEDS = "What are the maximum speeds for gear extension, retraction, gear down and free fall?"
FILLS = "What are the accumulator's pre-charge, full pressure and empty pressure?"
LIMIT = "A limit of the limitations section was exceeded. Which three things do you do?"
HOT = "The hottest brake reads 330 °C at the gate. Are chocks asked for and the parking brake released? Give the limit."
COOL = HOT.replace("330", "300")
STEER = "STEER LOST while taxiing: give the steps in order, with the speed."
SWITCH = "What does the STEER switch do at OFF, and where is it?"
STATE = "System 1 is lost, all else normal. What is the braking mode, and what does the nose-wheel steering do?"
PULLED = "Ground, free-fall lever pulled, System 1 normal. What does the steering do, and do the pedals steer?"
EMERGENCY = (
    "Both systems are lost, accumulator charged. What is the mode, how many applications are there, "
    "and how do you press the pedals?"
)
PUSHBACK = "What must be done before pushback: bypass pin, memo and parking brake?"
TAXI = "What are the operator's taxi speed limits: straight, in turns up to 60°, and in sharper turns?"
ARMING = "What does the autobrake need to arm?"
LEVERS = "Not three green after a free-fall extension: give the steps."
PIN = "What blocks the gear lever on the ground, when does it withdraw, and what releases it if it sticks?"
TIMES = "How many seconds do a retraction, a normal extension and a free-fall extension last?"
TILLER = "Tillers: up to what ground speed is the full deflection available, and at what speed do they give nothing?"
LAMP = "What colour is a leg lamp when the leg is down and locked, in transit, and in disagreement with the lever?"
CHARGE = (
    "What is the nitrogen pre-charge of the accumulator, at what temperature is it stated, "
    "and what is the pressure when fully charged?"
)
CHROME = "Nose strut chrome: what is the least and what is the most that may show?"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        # the cases of one statement
        (LAMPS, "green, then flashing white, then dark", RIGHT),
        (LAMPS, "green down and locked, dark up and locked", PARTLY),
        (LAMPS, "amber when it's down and locked, flashing white moving, dark up and locked", WRONG),
        (PUSHBACK, "pin in, tow pin memo showing, park brake off when the ground crew say so", RIGHT),
        (PUSHBACK, "pin out, tow pin memo showing, parking brake released on the ground crew's word", WRONG),
        # the settings called by their kind
        (DELAYS, "STEADY 3 s, FIRM 2 s, FULL 1 s", RIGHT),
        (DELAYS, "steady firm and full", PARTLY),
        (DELAYS, "steady one second firm two and full three", WRONG),
        # each thing of a list
        (SYSTEMS, "gear and steering on system one, the normal brakes on system two", RIGHT),
        (
            SPEEDS,
            "two thirty out, two oh five in, two fifty five or mach point six down, one ninety free fall",
            RIGHT,
        ),
        (SPEEDS, "230 kt, 205 kt", PARTLY),
        (FILLS, "1,200, 3,000 and 1,400 psi", RIGHT),
        (FILLS, "1,200 psi and empty below 1,400 psi", PARTLY),
        (TAXI, "twenty five straight fifteen in turns to sixty degrees and ten in anything tighter", RIGHT),
        (TAXI, "25 straight, 15 in turns to 60 and 12 in anything tighter", WRONG),
        (CHROME, "90 mm and 160 mm", RIGHT),
        (CHROME, "60 mm and 110 mm", WRONG),
        # what is to be done
        (LIMIT, "get back inside it, write it up in the tech log and have it inspected before it flies again", RIGHT),
        (LIMIT, "not my department", MISSED),
        (STEER, "STEER switch OFF then ON once below 30 kt", PARTLY),
        (HOT, "Yes, above 320 °C.", RIGHT),
        (HOT, "No, the limit is 320 °C.", WRONG),
        (COOL, "No, only above 320 °C.", RIGHT),
        # a part that means what stands before it by "it"
        (SWITCH, "it takes the pressure off the steering and the nose wheels castor, it's on the left console", RIGHT),
        (SWITCH, "depressurises the steering, the wheels castor freely", PARTLY),
        # a thing off that must work, or put back that stays pulled; an everyday verb of moving
        (ARMING, "normal mode, antiskid working and both leg sensors agreeing", RIGHT),
        (ARMING, "normal mode, antiskid off and both leg sensors agreeing", WRONG),
        (ARMING, "normal braking, a failed anti-skid, the leg sensors agreeing", WRONG),
        (LEVERS, "gear lever stays down, free-fall lever stays out, display against lamps", PARTLY),
        (LEVERS, "free-fall lever back in, gear lever down, check the display against the lamps", WRONG),
        (PIN, "a solenoid pin that comes out at lift-off", PARTLY),
        # results of a state, and another one in the place of its own
        (STATE, "Normal, and the nose wheels castor.", RIGHT),
        (PULLED, "castoring, and no", RIGHT),
        (PULLED, "tillers only, the pedals do not steer", WRONG),
        (EMERGENCY, "emergency, six applications, 800 psi or less and steady", RIGHT),
        (EMERGENCY, "emergency, six", PARTLY),
        # things of a list that are figures of their own, and clauses that leave their subject out
        (TIMES, "nine down, eleven up, eighteen by gravity", RIGHT),
        (TIMES, "eleven down, nine up, eighteen by gravity", WRONG),
        (TIMES, "9 s for extension and 18 s by free fall", PARTLY),
        (TILLER, "all of it to 15 kt, none from 80", RIGHT),
        (TILLER, "all of it to 15 kt", PARTLY),
        (TILLER, "all of it to 30 kt, none from 80", WRONG),
        (LAMP, "green when down and locked, flashing white on the way, amber if it disagrees", RIGHT),
        (LAMP, "green when down and locked, flashing white on the way", PARTLY),
        (LAMP, "amber when down and locked, flashing white on the way, green if it disagrees", WRONG),
        # a name before its figure, and one behind it
        (CHARGE, "pre-charge 1,200 psi and 3,000 psi when full", PARTLY),
        (CHARGE, "pre-charge 1,200 psi at 20 °C and 3,000 psi when full", RIGHT),
        (CHARGE, "pre-charge 3,000 psi at 20 °C and 1,200 psi when full", WRONG),
    ],
)
def test_each_of_several_things_is_marked(question: str, answer: str, mark: str, marker: Marker) -> None:
    marked = marker.mark(question, answer)

    assert marked.mark == mark, (marked.missing, marked.wrong)
