"""Each clause of a question has its own points: what is exchanged is wrong, and a half is never the whole."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import PARTLY, RIGHT, WRONG, Marker

FOLD = "In which direction do the main legs fold, and in which the nose leg?"
COOLING = "What is the brake cooling time constant without fans, and what is it with fans?"
SLUSH = "Slush on the runway at take-off: how long is the gear left down, and why?"
LEFT = "Both hydraulic systems are lost and the accumulator is empty. What is left to slow you down?"
MODE = "System 1 is lost, System 2 and everything else normal. Which braking mode have you, and does autobrake work?"
AWAY = "Does a free-fall extension take the brakes away, and does it take the steering away?"
BURST = "You suspect a tyre burst on the take-off run. What do you do at 90 kt, and what do you do at 110 kt?"
SIDES = "What do you do when a tyre burst is suspected below 100 kt, and what at 100 kt or above?"
STOPS = "What stops the nose wheels after retraction, and what stops the main wheels?"
SPEEDS = "What is the difference between VLO and VLE?"
WEAR = "In general, where does a tyre's tread wear most when it is under-inflated, and where when over-inflated?"
LAMPS = "Give the four things a leg lamp can show, and what each one means."
BRIEF = "What does the landing brief always state under the operator's policy?"
SYSTEMS = "Which hydraulic system feeds the normal brakes, and which feeds the nose-wheel steering?"
EXTENDING = "What is the maximum speed for extending the gear?"
QUARTER = "How much pressure does each quarter of the parking brake lever's travel send to the brakes?"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (FOLD, "mains in, nose aft", RIGHT),
        (FOLD, "The mains go inwards to the belly.", PARTLY),
        (FOLD, "mains inboard. nose goes forward", WRONG),
        (COOLING, "forty-five minutes without, twelve with", RIGHT),
        (COOLING, "it's twelve minutes with nothing on and forty five with the fans on", WRONG),
        (COOLING, "With fans, 12 minutes. I'd only be guessing at the other.", PARTLY),
        (SLUSH, "1 min", PARTLY),
        (SLUSH, "a minute so the snow gets thrown off the wheels", RIGHT),
        (SLUSH, "one minute because the brakes they must become cold before", WRONG),
        (LEFT, "only reverse thrust and um aerodynamic braking", RIGHT),
        (LEFT, "reversers", PARTLY),
        (MODE, "NORMAL, yes", RIGHT),
        (AWAY, "no, yes", RIGHT),
        (AWAY, "yes, no", WRONG),
        (BURST, "ninety is below a hundred so you you reject um and the other one i'm not sure", PARTLY),
        (SIDES, "reject, above go on with the gear left down", RIGHT),
        (SIDES, "below a hundred you keep going and above you stop", WRONG),
        (STOPS, "rubbing strip nose, brake pulse mains", RIGHT),
        (STOPS, "a brake pulse for the nose wheels and the strip in the bay for the mains", WRONG),
        (SPEEDS, "v l o is when it's locked down and v l e is while it's travelling", WRONG),
        (WEAR, "too soft it wears in the middle. too hard on the edges", WRONG),
        (LAMPS, "green down and locked flashing amber for moving dark for up white if it disagrees with the lever",
         WRONG),
        (BRIEF,
         "The braking mode, the autobrake setting, the exit, and the cooling plan if the turnaround is longer "
         "than 45 min.", WRONG),
        (SYSTEMS, "brakes 2, steering 1", RIGHT),
        (SYSTEMS, "brakes 1, steering 2", WRONG),
        (EXTENDING, "um two hundred and and thirty knots", RIGHT),
        (EXTENDING, "230 ... 205 is the one for retracting", RIGHT),
        (EXTENDING, "205 kt IAS; 230 is for retraction.", WRONG),
        (QUARTER, "six hundred p s i a quarter so if you pull the whole thing it's twenty four hundred", RIGHT),
        (QUARTER, "six hundred p s i a quarter so the whole thing is eighteen hundred", WRONG),
    ],
)  # fmt: skip
def test_each_clause_is_held_by_its_own(marker: Marker, question: str, answer: str, mark: str) -> None:
    assert marker.mark(question, answer).mark == mark


def test_a_part_that_nothing_answers_leaves_an_answer_open(marker: Marker) -> None:
    got = marker.mark("How do you silence the gear horn, and when can it not be silenced?", "with the HORN button")

    assert got.mark == PARTLY
