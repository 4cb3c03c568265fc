"""What a question asks of a whole statement: one case as a yes or no, one step, the manner, the colour, the person."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import PARTLY, RIGHT, WRONG, Marker

LOST = "System 1 lost: how do you extend the gear?"
SKID = "Does anti-skid work in EMERGENCY?"
NONE = "Does autobrake work in emergency?"
EXTENDS = "With System 1 lost, does the gear extend?"
FIRST = "What is the first memory item of no braking on landing?"
THIRD = "What is step 3 of free-fall extension?"
AFTER = "What is after lever UP in GEAR MISMATCH on extension?"
HATCHED = "What does “hatched” mean?"
HOLLOW = "What does a hollow bar mean?"
TAXIES = "Who taxis?"
DOOR = "GEAR DOOR: when does it show?"
STOPPED = "What stops the nose wheels after retraction?"
BAND = "What colour is the red band?"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (LOST, "free fall", RIGHT),
        (LOST, "by gravity, 190 kt or less", RIGHT),
        (LOST, "free fall at 230", WRONG),
        (SKID, "no", RIGHT),
        (SKID, "nope, neither does autobrake", RIGHT),
        (SKID, "I doubt it", RIGHT),
        (SKID, "yes", WRONG),
        (SKID, "yes... no", WRONG),
        (SKID, "it's not inoperative", WRONG),
        ("Does anti-skid work in NORMAL?", "yes", RIGHT),
        ("Does anti-skid work in NORMAL?", "no", WRONG),
        (NONE, "there is none", RIGHT),
        (NONE, "yes", WRONG),
        (EXTENDS, "yes", RIGHT),
        (EXTENDS, "only by free fall", RIGHT),
        (EXTENDS, "no", WRONG),
        (EXTENDS, "yes, normally", WRONG),
        ("System 2 lost: does the gear extend?", "yes", RIGHT),
        ("System 2 lost: does the gear extend?", "no", WRONG),
        (FIRST, "full reverse", RIGHT),
        (FIRST, "antiskid off", WRONG),
        (THIRD, "pull and hold the free fall lever 5 seconds", RIGHT),
        (THIRD, "pull the lever for 10 s", WRONG),
        ("What is the last step of free-fall extension?", "stop straight ahead and be towed", RIGHT),
        (AFTER, "wait 15 s", RIGHT),
        (AFTER, "wait 20 s", WRONG),
        (HATCHED, "leg moving", RIGHT),
        (HOLLOW, "locked up", RIGHT),
        (HOLLOW, "locked down", WRONG),
        (TAXIES, "pilot in the left seat", RIGHT),
        ("Who taxies, and with what?", "the pilot in the left seat", PARTLY),
        (BAND, "red", RIGHT),
        (BAND, "white", WRONG),
        ("Which way does the nose leg fold?", "aft", RIGHT),
        ("Which way does the nose leg fold?", "forward", WRONG),
        ("How do you steer castoring?", "diff braking and rudder above 50", RIGHT),
        ("The rubbing strip: where is it?", "nose wheel well", RIGHT),
        ("The rubbing strip: where is it?", "main wheel well", WRONG),
        (DOOR, "a door still open 10 seconds after the legs locked", RIGHT),
        (DOOR, "a door closed 10 s after the legs lock", WRONG),
        (STOPPED, "a rubbing strip", RIGHT),
        (f"{STOPPED[:-1]}, and where?", "a rubbing strip", PARTLY),
        ("At 125 kt, what is the pedal limit?", "nil", RIGHT),
        ("At 90 kt, what is the pedal limit?", "none", WRONG),
    ],
)
def test_as_much_as_is_asked_for(marker: Marker, question: str, answer: str, mark: str) -> None:
    assert marker.mark(question, answer).mark == mark
