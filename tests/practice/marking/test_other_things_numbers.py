"""Numbers that are another thing's, that are taken back, that lead up to a figure, or that are listed in one breath."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import Marker

HOTTEST = "How does the gear display mark the hottest brake, and when?"
RISE = (
    "An Aldermere 120 lands at 48,000 kg and 125 kt ground speed with idle reverse, all four brakes working. By about "
    "how many degrees does each brake heat up, for planning?"
)
NOSE = "A nose tyre of an Aldermere 120 reads 128 psi cold. Is it acceptable as it is, and what must be done?"
DELAYS = "How long after spoiler extension does braking begin with autobrake STEADY, FIRM and FULL?"
RETRACT = "What is the maximum speed for retracting the gear?"
OPPOSED = (
    "Taxiing at 10 kt, one tiller orders 35° right and the other 15° left, pedals centred. What is the total steering "
    "order: size and direction?"
)
HELD = (
    "Taxiing at 12 kt in an Aldermere 120, one tiller orders 45° left and the other 35° left, pedals centred. What is "
    "the total steering order: size and direction?"
)
BARS = "What colour are the brake pressure bars in NORMAL, ALTERNATE and EMERGENCY?"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (HOTTEST, "it goes to inverse video over three fifty, when BRAKE HEAT shows", "wrong"),
        (HOTTEST, "it goes to inverse video above four hundred", "wrong"),
        (HOTTEST, "inverse video, hotter than the maximum to begin take-off; BRAKE HEAT is above 350", "right"),
        (HOTTEST, "it goes to inverse video above two fifty", "right"),
        (RISE, "19.9 MJ for each, over 62.4 kJ for a degree, gives about 318", "right"),
        (RISE, "19.9 MJ for each, over 62.4 kJ for a degree, gives about 390", "wrong"),
        (RISE, "79.4 MJ over four is 19.9 each, by 62.4 kJ, 318 degrees", "right"),
        (NOSE, "no, that's eight and a bit percent down, pump it up again", "right"),
        (NOSE, "no, eight point something percent low so re-inflate it", "right"),
        (NOSE, "no, that's six and a bit percent down, pump it up again", "wrong"),
        (DELAYS, "three two one seconds in that order", "right"),
        (DELAYS, "full one firm two steady three", "right"),
        (DELAYS, "one second in full two in firm three in steady", "right"),
        (DELAYS, "one two three seconds in that order", "wrong"),
        (DELAYS, "steady one firm two full three", "wrong"),
        (RETRACT, "two thirty, no, that's for extending, two oh five", "right"),
        (RETRACT, "one ninety uh no that's the other one two oh five", "right"),
        (RETRACT, "two oh five no that's the other one two thirty", "wrong"),
        (RETRACT, "205, two hundred was the former", "right"),
        (RETRACT, "two oh five, two hundred as the old slides say", "right"),
        (RETRACT, "two hundred as the old slides say", "wrong"),
        ("May the gear be retracted at 210 kt?", "210, no that's too fast, 205 is the most", "right"),
        ("May the gear be retracted at 210 kt?", "210 no that's fine, 230 is the limit", "wrong"),
        ("What is the maximum landing mass of the Aldermere 120L?", "50,000, no that's the 120, 54,000 kg", "right"),
        ("What is the maximum landing mass of the Aldermere 120L?", "54,000 no that's the take-off, 50,000", "wrong"),
        (OPPOSED, "35 - 15 = 20 deg", "partly"),
        (OPPOSED, "35 minus 15 makes 20", "partly"),
        (OPPOSED, "35 - 15 = 20 deg to the right", "right"),
        (OPPOSED, "minus 20 degrees", "wrong"),
        (HELD, "it gets held at sixty eight degrees", "partly"),
        (HELD, "45 + 35 = 80, cut to the tiller maximum of 68", "partly"),
        (HELD, "80, held to 68 left", "right"),
        (HELD, "it gets held at eighty degrees", "wrong"),
        (BARS, "white in normal, amber in alternate and emergency I don't remember", "partly"),
        (BARS, "white in normal and amber in alternate and for emergency no idea", "partly"),
        (BARS, "white in normal, amber in alternate and emergency", "right"),
    ],
)
def test_a_number_counts_for_what_it_is_said_of(marker: Marker, question: str, answer: str, mark: str) -> None:
    assert marker.mark(question, answer).mark == mark


LOST = (
    "ANTI-SKID LOST: which switch do you move and to where, what about autobrake, what pressure, and by what do you "
    "multiply the landing distance?"
)
CASES = "When does GEAR NOT LOCKED come on? Give both cases."
PIN = (
    "On the ground, everything else normal, the bypass pin is inserted. What do the nose wheels do, and do the pedals "
    "steer?"
)
TARGET = "Why does the ON TARGET light not prove that the brakes are working?"
SWITCH = "Where is the STEER switch?"
PINS = (
    "Gear ground-lock pins: how many, what colour are the streamers, to whom are they shown, and where are they stowed?"
)
DELAY = "After what delay does GEAR MISMATCH show, normally and once the free-fall lever has been pulled?"
PEDALS = "Pedal steering: up to what ground speed is the full 8° available, and at what speed does it reach zero?"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (LOST, "anti skid off you've lost autobrake 800 or less on the pedals and times one point six", "right"),
        (LOST, "a/skid OFF, no a/brake, max 800 psi, dist x1.6", "right"),
        (LOST, "antiskid off, you haven't lost autobrake, 800 psi or less, distance times 1.6", "wrong"),
        (LOST, "antiskid off, you never lose autobrake, 800 psi or less, distance times 1.6", "wrong"),
        (CASES, "leg unlocked + landing flaps, at any height", "partly"),
        (CASES, "an unlocked leg below 700 ft with both levers near idle + landing flaps at any height", "right"),
        (PIN, "it's so the tug can push you back", "missed"),
        (PIN, "it's for pushback", "missed"),
        (PIN, "so they castor", "partly"),
        (TARGET, "it's the white light that goes with autobrake", "missed"),
        (TARGET, "it's the drag and spoilers and reverse that count as well", "right"),
        (SWITCH, "it makes the wheels castor when it's off", "missed"),
        (SWITCH, "it's on the right console", "wrong"),
        (SWITCH, "by the tiller", "wrong"),
        (PINS, "I leave those to the ground crew", "missed"),
        (PINS, "three, red, they're shown to the ground crew and stowed in the bay", "wrong"),
        (DELAY, "it's amber, that's all I've got", "missed"),
        (PEDALS, "fast you just use the rudder", "missed"),
        (PEDALS, "it's full at any speed", "wrong"),
        ("What is the bypass pin for?", "it's so the pedals steer on their own", "wrong"),
    ],
)
def test_what_is_told_of_something_else_is_beside_the_point(
    marker: Marker, question: str, answer: str, mark: str
) -> None:
    assert marker.mark(question, answer).mark == mark
