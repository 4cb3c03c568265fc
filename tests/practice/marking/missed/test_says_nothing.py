"""What says nothing to the point is missed, and never wrong; what gives another thing in the place of it is wrong."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import MISSED, PARTLY, RIGHT, WRONG, Marker

ON_TARGET = "Why does the ON TARGET light not prove that the brakes are working?"
SHUT_OFF = "Why is the hydraulic supply to the gear shut off automatically some time after everything is locked up?"
SOUND = "What colour is GEAR NOT LOCKED, and what sound comes with it?"
DELAY = "After what delay does GEAR MISMATCH show, normally and once the free-fall lever has been pulled?"
RETRACTION = "GEAR MISMATCH on retraction: give the steps in order, with the speed."
FREE_FALL = "What is the maximum speed for a free-fall extension?"
PINS = (
    "Gear ground-lock pins: how many, what colour are the streamers, to whom are they shown, and where are they stowed?"
)
BARS = "What colour are the brake pressure bars in NORMAL, ALTERNATE and EMERGENCY?"
SYSTEMS = "Which hydraulic system runs the gear and which the normal brakes?"
PRE_CHARGE = (
    "What is the nitrogen pre-charge of the brake accumulator, at what temperature is it stated, "
    "and what is the pressure when fully charged?"
)
GRAVITY = "Talk me through gravity extension of the undercarriage from slowing down to the end of the landing run."
BURST = (
    "A tyre burst is suspected on take-off. What do you do below 100 kt, and what at 100 kt or above, "
    "including the gear?"
)
OFF = (
    "Everything is normal, then ANTI-SKID is put to OFF. Give the braking mode, anti-skid, autobrake and "
    "the pressure technique."
)
ORDER = (
    "Taxiing at 10 kt in an Aldermere 120, both tillers order 45° left, pedals centred. What is the total "
    "steering order: size and direction?"
)
PEDALS = "Pedal steering: up to what ground speed is the full 8° available, and at what speed does it reach zero?"
TYRE = "A nose tyre of an Aldermere 120 reads 124 psi cold. Is it acceptable as it is, and what must be done?"
SUM = (
    "Taxiing at 10 kt, one tiller orders 40° right and the other 25° left, pedals centred. What is the total "
    "steering order: size and direction?"
)
SET_BRAKE = (
    "The brakes read 410 °C at the stand. May you set the parking brake for 10 minutes? Yes or no, and give the limit."
)
STORED = (
    "Which hydraulic system works the gear and steering, which works the normal brakes, and which system's pressure "
    "does the brake accumulator store?"
)
FOLD = "Which way do the main legs fold, and which way the nose leg?"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (ON_TARGET, "never rely on just one indication", MISSED),
        (ON_TARGET, "you have to be careful with lights like that", MISSED),
        (ON_TARGET, "it's no proof of anything, they told us", MISSED),
        (ON_TARGET, "because it goes by the wheel speeds", WRONG),
        (ON_TARGET, "because the bulb can fail", WRONG),
        (SHUT_OFF, "For safety.", MISSED),
        (SHUT_OFF, "because it's designed that way", MISSED),
        (SHUT_OFF, "so that the brakes get more pressure", WRONG),
        (SOUND, "It says that some leg hasn't locked.", MISSED),
        (SOUND, "landing flaps keep you from silencing it", MISSED),
        (SOUND, "A bell.", WRONG),
        (SOUND, "it's green", WRONG),
        (DELAY, "well within a minute", MISSED),
        (DELAY, "not straight away", MISSED),
        (DELAY, "straight away", WRONG),
        (DELAY, "after over a minute", WRONG),
        (RETRACTION, "that's a checklist item I'd read it out", MISSED),
        (RETRACTION, "the steps are in the abnormal checklist", MISSED),
        (RETRACTION, "fly the aeroplane first and then do the checklist", MISSED),
        (FREE_FALL, "fairly slow, so the legs can drop", MISSED),
        (FREE_FALL, "no limit on it", WRONG),
        (PINS, "They keep the gear from folding.", MISSED),
    ],
)
def test_remarks_are_missed(marker: Marker, question: str, answer: str, mark: str) -> None:
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (BARS, "white in normal amber in alternate and with emergency they go blank", WRONG),
        (BARS, "white, amber, amber; blank only with no mode left", RIGHT),
        (BARS, "In EMERGENCY and in ALTERNATE mode they show amber; in NORMAL white.", RIGHT),
        (SYSTEMS, "two for the gear and one for the brakes", WRONG),
        (SYSTEMS, "system two for the gear and system one for the brakes", WRONG),
        (SYSTEMS, "one for the gear and two for the brakes", RIGHT),
        (SYSTEMS, "normal brakes on two and the gear on one", RIGHT),
        (PRE_CHARGE, "1,200 psi pre-charge at 20 degrees and 3,000 psi fully charged", RIGHT),
        (PRE_CHARGE, "3,000 psi pre-charge at 20 degrees and 1,200 psi fully charged", WRONG),
        (PRE_CHARGE, "pre-charge twelve hundred and three thousand when it's full", PARTLY),
        (BURST, "below 100 you reject, from 100 on carry on with it left down", RIGHT),
        (BURST, "reject below 100 kt, otherwise go on and don't raise it", RIGHT),
        (BURST, "below 100 kt continue and leave the gear down, from 100 on reject", WRONG),
        (ORDER, "capped at sixty eight", PARTLY),
        (ORDER, "capped at 68 to the right", WRONG),
    ],
)
def test_each_thing_has_its_own(marker: Marker, question: str, answer: str, mark: str) -> None:
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(
    ("end", "mark"),
    [
        ("stop straight ahead for a tow, and expect open doors and no steering", RIGHT),
        ("expect open doors and no steering, stop straight ahead and get towed", RIGHT),
    ],
)
def test_what_is_only_expected_has_no_place(marker: Marker, end: str, mark: str) -> None:
    steps = "190 kt or less, lever down, pull the free-fall lever and hold 5 s, wait 20 s, check three greens, "
    assert marker.mark(GRAVITY, steps + end).mark == mark
    assert marker.mark(GRAVITY, "check three greens, gear lever down, pull the free-fall lever").mark == WRONG


@pytest.mark.parametrize("slip", ["ani-skid", "anti skit", "anty-skid", "antiskid"])
def test_slips_in_a_name_of_two_words(marker: Marker, slip: str) -> None:
    assert marker.mark(OFF, f"ALTERNATE, no {slip}, no autobrake, 800 psi or less").mark == RIGHT


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (PEDALS, "nothing at 110 and all of it up to 30", RIGHT),
        (PEDALS, "it begins to drop past thirty, and none is left from one ten", RIGHT),
        (PEDALS, "it begins to drop past one ten, and none is left from thirty", WRONG),
        (PEDALS, "full at 110, none at 30", WRONG),
        (BARS, "amber unless it's NORMAL", PARTLY),
        (BARS, "white for the first two and amber for the last one", WRONG),
        (BARS, "white for the first one and amber for the last two", RIGHT),
        (PINS, "three, shown to the captain in the left seat", PARTLY),
        (TYRE, "No, 11 % low, so both it and its mate get replaced.", WRONG),
        (TYRE, "No, 11 % low, so it gets replaced.", RIGHT),
        (SUM, "fifteen is what's left over", PARTLY),
        (SUM, "fifteen left", WRONG),
        (FOLD, "mains inboard, the nose leg to the rear", RIGHT),
        (FOLD, "nose inboard, the mains to the rear", WRONG),
    ],
)
def test_all_of_it_none_and_the_rest(marker: Marker, question: str, answer: str, mark: str) -> None:
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (RETRACTION, "it's an amber caution", MISSED),
        (RETRACTION, "slow to 255 kt or less", WRONG),
        (SET_BRAKE, "chocks go in before anything else", MISSED),
        (SET_BRAKE, "fine for ten minutes", WRONG),
        (ON_TARGET, "never trust just one light, my captain used to say", MISSED),
        (STORED, "one, two, one", RIGHT),
        (STORED, "two, one, one", WRONG),
        (DELAY, "Fifteen seconds in normal use, double that after the free-fall lever", RIGHT),
    ],
)
def test_what_only_tells_how_it_is(marker: Marker, question: str, answer: str, mark: str) -> None:
    assert marker.mark(question, answer).mark == mark
