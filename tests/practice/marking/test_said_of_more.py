"""What an answer adds of another thing makes it wrong, and what it only says in other words does not."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import MISSED, PARTLY, RIGHT, WRONG, Marker

LOW = "A nose tyre of an Aldermere 120 reads 124 psi cold. Is it acceptable as it is, and what must be done?"
MAIN = "A main tyre of an Aldermere 120 reads 165 psi cold. Is it acceptable as it is, and what must be done?"
HORN = "When does GEAR NOT LOCKED come on? Give both cases."
CHARGE = (
    "What is the nitrogen pre-charge of the brake accumulator, at what temperature is it stated, and what is the "
    "pressure when fully charged?"
)
TARGET = "Why does the ON TARGET light not prove that the brakes are working?"
LONG = "What is the main tyre pressure of the Aldermere 120L?"
MISMATCH = "GEAR MISMATCH on extension: give the steps in order, with speeds and times."
BARS = "What colour are the brake pressure bars in NORMAL, ALTERNATE and EMERGENCY?"
OFF = (
    "Everything is normal, then ANTI-SKID is put to OFF. Give the braking mode, anti-skid, autobrake and the "
    "pressure technique."
)
HELD = "On the ground, everything normal, a pilot holds the PEDAL button. What steers, and do the pedals steer?"
MEMO = "PARK BRAKE SET memo: what colour is it, and what two conditions together bring it up?"
RAISING = "What is the maximum speed for retracting the gear?"
PIN = (
    "On the ground the bypass pin is inserted and everything else is normal. What do the nose wheels do, "
    "and do the pedals steer?"
)


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (LOW, "no, change it and its mate as well", WRONG),
        (LOW, "not acceptable, replace it, the other nose one goes too", WRONG),
        (LOW, "no, replace it; the other nose tyre can stay", RIGHT),
        (MAIN, "no new tyre, and the other one on that leg as well", WRONG),
        (MAIN, "no, replace it, but not the other one on that leg", RIGHT),
        (HORN, "any leg unlocked with thrust near idle below 700 ft, or landing flap, but only below 700", WRONG),
        (HORN, "a leg isn't locked and one, idle thrust under 700 feet radio, two, landing flap, likewise 700", WRONG),
        (HORN, "a leg not locked and landing flap never mind how low, or both levers near idle below 700 ft", RIGHT),
        (HORN, "a leg not locked down, and flaps at landing, or under 700 feet with both levers near idle", RIGHT),
        (HORN, "when something's not quite right with the wheels", MISSED),
        (HORN, "when a door is open", WRONG),
        (MISMATCH, "205, lever up, wait 15 s, lever down, still amber free fall which is also fine up to 205", WRONG),
        (MISMATCH, "205, lever up, wait 15 s, lever down, still amber free fall which is fine up to 190", RIGHT),
        (LONG, "205, i.e. 15 psi more than the 190 of the short one", RIGHT),
        (LONG, "205, 25 psi more than the 190 of the short one", WRONG),
        (LONG, "190, the short one has 205", WRONG),
        (LONG, "190, and 205 on the 120", WRONG),
        (LONG, "205 unlike the short one, 190", RIGHT),
        (RAISING, "it's in the same table as the extension one", MISSED),
        (RAISING, "it's the same as the extension speed", WRONG),
        (PIN, "it's what the tug crew use for pushing back", MISSED),
        (TARGET, "it's white and lights at 85% of the target", MISSED),
    ],
)
def test_what_is_said_of_another_thing(question: str, answer: str, mark: str, marker: Marker) -> None:
    marked = marker.mark(question, answer)

    assert marked.mark == mark, (marked.missing, marked.wrong)


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (CHARGE, "1200 at 20 °C; 3000 once it's been pumped up all the way", RIGHT),
        (CHARGE, "1,200 psi at 20 degrees, pumped fully up 2,600", WRONG),
        (TARGET, "reverse, spoilers and air resistance slow it too, so the brakes may be doing nothing", RIGHT),
        (TARGET, "it measures deceleration, the reversers count as well", PARTLY),
        (BARS, "NORM white, ALT amber, EMERG amber", RIGHT),
        (BARS, "NORM white, ALT amber, EMER red", WRONG),
        (OFF, "ALT, A/SKID none, A/BRK none, 800 psi max", RIGHT),
        (OFF, "ALTN / A-SKID nil / A-BRK available / max 800 psi", WRONG),
        (HELD, "tillers only, push the pedals as hard as you want and nothing happens", RIGHT),
        (HELD, "the tillers alone; you can stamp on the pedals all day and it won't turn", RIGHT),
        (HELD, "just the pedals work, you can turn the tiller all you like and the nose won't turn", WRONG),
        (MEMO, "the park brake is on and you push the levers past idle", PARTLY),
    ],
)
def test_the_same_in_other_words(question: str, answer: str, mark: str, marker: Marker) -> None:
    marked = marker.mark(question, answer)

    assert marked.mark == mark, (marked.missing, marked.wrong)
