"""Answers in which every word asked for stands, and which are wrong all the same; each beside one that is right."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import MISSED, PARTLY, RIGHT, WRONG, Marker

HORN = "Where is the HORN button?"
HATCH = "Where is the free-fall lever?"
DIAL = "Where is the brake dial?"
BAND = "Where is the red band?"
TILLER = "Where is the tiller?"
PINS = "Where are the ground-lock pins fitted?"
PEDAL = "Who holds the PEDAL button?"
TAXIES = "Who taxis?"
LEVER = "Name the gear lever positions."
SETTINGS = "What are the autobrake settings?"
HEAT = "When does BRAKE HEAT show?"
RETRACT = "May you retract at 204 kt?"
BARS = "What colour are the bars in ALTERNATE?"
REVERSE = "What leads to this: “Use reverse thrust and aerodynamic braking only”?"
NO_SKID = "What leads to this: “No anti-skid”?"


LAMPS = "What do the gear lamps mean?"
MODES = "Name the braking modes."
SUPPLY = "What opens the gear's hydraulic supply again?"
ALTERNATE = "Does autobrake work in ALTERNATE?"
BOTH_LOST = "Both systems lost: what happens?"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        # another thing of the kind
        (HORN, "next to the landing gear lever", RIGHT),
        (HORN, "by the spoiler lever", WRONG),
        (HORN, "by the parking brake lever", WRONG),
        (HORN, "on the gear lever", WRONG),
        (HATCH, "beneath the hatch behind the pedestal", RIGHT),
        (HATCH, "under the escape hatch behind the pedestal", WRONG),
        (HATCH, "on a hatch behind the pedestal", WRONG),
        (DIAL, "left of the gear handle", RIGHT),
        (DIAL, "left of the flap lever", WRONG),
        (BAND, "nose gear doors", RIGHT),
        (BAND, "on the cargo doors", WRONG),
        # each of several
        (TILLER, "at both side windows", RIGHT),
        (TILLER, "only at the captain's side window", WRONG),
        (TILLER, "two at each side window", WRONG),
        (PINS, "one on each leg", RIGHT),
        (PINS, "two per leg", WRONG),
        (PINS, "one at each main leg", WRONG),
        # which pilot
        (PEDAL, "whoever is taxiing", RIGHT),
        (PEDAL, "pilot in the left seat", RIGHT),
        (PEDAL, "the pilot who isn't taxiing", WRONG),
        (PEDAL, "monitoring pilot", WRONG),
        (PEDAL, "the pilot in the right seat", WRONG),
        (PEDAL, "both pilots", WRONG),
        (TAXIES, "the pilot in the left seat with the tiller", RIGHT),
        (TAXIES, "the pilot flying with the tiller", WRONG),
        # a list with too much in it
        (LEVER, "two: up and down", RIGHT),
        (LEVER, "up, down and off", WRONG),
        (LEVER, "up, middle, down", WRONG),
        (SETTINGS, "steady, firm, full, and RTO for take-off", RIGHT),
        (SETTINGS, "low, steady, firm, full, RTO", WRONG),
        # the side of a figure
        (HEAT, "at 350 or more", RIGHT),
        (HEAT, "at or below 350", WRONG),
        # both of yes and no
        (RETRACT, "yes, no problem", RIGHT),
        (RETRACT, "no, wait, yes", RIGHT),
        (RETRACT, "yes. no. yes", WRONG),
        (RETRACT, "yes and no", WRONG),
        # another colour
        (BARS, "amber, not yellow", RIGHT),
        (BARS, "yellow", WRONG),
        (BARS, "blue", WRONG),
        # what one case has, told of another
        (
            LAMPS,
            "green down and locked, flashing white in transit, dark up and locked, amber disagrees with lever",
            RIGHT,
        ),
        (LAMPS, "green down and unlocked, flashing white in transit, dark up and locked, amber disagrees", WRONG),
        (LAMPS, "green down and locked, flashing white in transit, dark up and locked, green disagrees", WRONG),
        (LAMPS, "green up, dark down", WRONG),
        (LAMPS, "amber in transit, white flashing disagree", WRONG),
        (MODES, "NORMAL on System 2, ALTERNATE on System 1, EMERGENCY on the accumulator", RIGHT),
        (MODES, "NORMAL on System 1, ALTERNATE on System 2, EMERGENCY on the accumulator", WRONG),
        (SUPPLY, "moving the gear lever to DN", RIGHT),
        (SUPPLY, "moving the flap lever down", WRONG),
        (ALTERNATE, "it does not work in ALTERNATE", RIGHT),
        (ALTERNATE, "it does not work in NORMAL", WRONG),
        (BOTH_LOST, "free-fall retraction and EMERGENCY brakes", WRONG),
        # what follows, said back as what leads there
        (REVERSE, "no wheel brakes", WRONG),
        (REVERSE, "System 1 lost, accumulator empty and the brake controller failed", PARTLY),
        (NO_SKID, "anti-skid is lost", MISSED),
        (NO_SKID, "the brake controller failed", PARTLY),
    ],
)
def test_what_leaves_nothing_right(marker: Marker, question: str, answer: str, mark: str) -> None:
    assert marker.mark(question, answer).mark == mark
