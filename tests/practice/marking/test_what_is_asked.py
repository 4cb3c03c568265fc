"""What each clause of a question asks is held, and no more: each verdict by its thing, each part by its points."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.marking.mark import PARTLY, RIGHT, WRONG, Marker
from assistant.practice.marking.requiring.required import required

MASS = "The load sheet gives a take-off mass of 58,000 kg. Is that within the limit on the 120, and on the 120L?"
DEPART = "A brake reads 240 °C. May a 120 depart, and may a 120L?"
MOVE = "You are at 215 kt and 18,000 ft. May you extend the gear, and may you retract it?"
GAUGE = "The brake accumulator reads 1,700 psi. Does it still brake, and may you rely on it to park?"
STRUTS = "The main shows 112 mm of chrome and the nose 90 mm. Is each acceptable, and what do you do?"
ONE_OUT = "The nose strut shows 85 mm and the main strut 100 mm. Which one is out, and what must you do?"
BURST = "On the take-off roll at exactly 100 kt you suspect a burst tyre. Reject or continue, and what about the gear?"
CENTRE = "What do the nose wheels do as you lift off, and what makes them do it?"
PEDAL = "What does holding the PEDAL button on the tiller do, and what is it there for?"
MELTS = "At about what plug temperature do the wheel fuse plugs melt, and what does the tyre then do?"
ENERGY = "You touch down ten per cent faster than planned. How much more energy have the brakes to deal with, and why?"
SLOW = "You cross the threshold five per cent slow. How much less energy must the brakes take?"
DRILL = "In the drill for no braking on landing, why do you put ANTI-SKID to OFF?"
CASES = "Parked, chocks in. In which two cases do you release the parking brake?"
BRIEF = "What does the landing brief always state, for a turnaround shorter than 45 min?"
PIN = "How must the parking brake be when you look at the wear pin, and at what reading is the brake replaced?"
ACT = "How do your pedals act on the brakes in NORMAL, and how in ALTERNATE?"
MODE = "In EMERGENCY, is there anti-skid, and what colour are the bars?"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (MASS, "no, yes", RIGHT),
        (MASS, "yes, no", WRONG),
        (MASS, "fine on the 120 but too heavy for the 120L", WRONG),
        (MASS, "Only the 120L may take it, 61,500.", RIGHT),
        (DEPART, "the 120 can, the L has to wait", RIGHT),
        (DEPART, "both may", WRONG),
        (MOVE, "down yes, up no", RIGHT),
        (MOVE, "You may extend it.", PARTLY),
        (MOVE, "You may retract it but not extend it.", WRONG),
        (GAUGE, "braking yes, parking no", RIGHT),
        (GAUGE, "no, yes", WRONG),
        (GAUGE, "neither", WRONG),
        (GAUGE, "It brakes with fewer applications, but I would not trust it to park.", RIGHT),
        (STRUTS, "main no, nose yes, call maintenance", RIGHT),
        (STRUTS, "both are out, call maintenance", WRONG),
        (STRUTS, "The main strut is out, its upper limit is 110 mm.", PARTLY),
        (ONE_OUT, "The nose, call maintenance.", RIGHT),
        (ONE_OUT, "the nose one", PARTLY),
        (ONE_OUT, "The main, call maintenance.", WRONG),
        (BURST, "continue", PARTLY),
        (BURST, "don't reject, go on and leave the gear down", RIGHT),
        (BURST, "reject you're not above a hundred", WRONG),
        (BURST, "continue and raise the gear", WRONG),
        (CENTRE, "they centre themselves a cam does that when the nose strut decompresses", RIGHT),
        (CENTRE, "they go to the middle straight ahead", PARTLY),
        (PEDAL, "it takes the tiller out so only the pedals steer that's for the rudder check", WRONG),
        (MELTS, "185 °C", PARTLY),
        (MELTS, "185, and then the tyre slowly goes flat", RIGHT),
        (ENERGY, "About a fifth more, it goes with the square of the speed.", RIGHT),
        (ENERGY, "twenty one percent", PARTLY),
        (ENERGY, "ten percent, because energy goes with speed", WRONG),
        (SLOW, "nearly ten percent less", RIGHT),
        (SLOW, "five percent", WRONG),
        (DRILL, "To take NORMAL away, so that the system gives you the next mode, without anti-skid.", RIGHT),
        (DRILL, "because the anti-skid computer overheats", WRONG),
        (CASES, "if any brake's above three twenty or you're staying more than ten hours", RIGHT),
        (CASES, "When the aeroplane stays there longer than ten hours.", PARTLY),
        (BRIEF, "exit, autobrake setting, braking mode and how the brakes get cooled", RIGHT),
        (PIN, "set, and at flush or below it", RIGHT),
        (ACT, "In NORMAL they send electrical orders to the brake controller.", PARTLY),
        (MODE, "no, amber", RIGHT),
    ],
)  # fmt: skip
def test_what_each_clause_asks_is_held(marker: Marker, question: str, answer: str, mark: str) -> None:
    given = marker.mark(question, answer)

    assert given.mark == mark, given


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("Brake cooling: what is the time constant without fans, and with fans?", 2),
        ("Name the things that disarm the autobrake.", 5),
        ("What two media work in an oleo strut, and into what is the landing energy turned?", 3),
        ("How large is the main track of the Aldermere 120, and between which points is it measured?", 2),
        (MODE, 2),
    ],
)
def test_no_more_is_required_than_is_asked(knowledge: Knowledge, question: str, told: int) -> None:
    need = required(question, knowledge)

    assert need is not None
    assert len([point for point in need.points if not point.optional]) == told
