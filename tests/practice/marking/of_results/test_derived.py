"""What follows from an answer's statement without being said in it, and what takes an answer back."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import MISSED, RIGHT, WRONG, Marker

AMBER = "The amber bars: what do they mean?"
WHITE = "The white bars: what do they mean?"
BLANK = "Why are the brake pressure bars blank?"
OVERRIDE = "When do you press the override button?"
PINS_LEFT = "How many ground-lock pins are left in flight?"
TOW = "At 95°, may you tow?"
EMERGENCY = "Both hydraulic systems lost, accumulator charged: do you have brakes?"
NO_BRAKES = "Both hydraulic systems lost, accumulator empty: do you have brakes?"
ONE_LOST = "System 2 lost: do the brakes still work?"
TAXI = "Can you taxi to the stand after free-fall?"
AFFECTED = "System 1 lost: do you have anti-skid, and does that affect autobrake?"
MEANING = "What does “anti-skid” mean?"
SOUND = "What colour is GEAR NOT LOCKED, and what sound comes with it?"
FREE_FALL = "What is the maximum speed for a free-fall extension?"
ADDS = "Do the tiller orders and pedal orders add?"
BETWEEN = "Do pedal orders add between pilots?"
EFFECTS = "What are the free-fall effects?"
BARS = "What colour are the brake pressure bars in NORMAL, ALTERNATE and EMERGENCY?"
USE = "How do you use the emergency brakes?"
TILLER = "The tiller: what is it for?"
EMPTY = "Below what pressure does the brake accumulator count as empty?"
MEMO = "What colour is the TOW PIN memo, and what brings it up?"


@pytest.mark.parametrize(
    ("question", "answer"),
    [
        (WHITE, "the brakes are in normal mode"),
        (BLANK, "there is no braking mode left"),
        (OVERRIDE, "when the gear lever won't move to UP after take-off"),
        (OVERRIDE, "once a positive climb is confirmed"),
        (PINS_LEFT, "zero"),
        (PINS_LEFT, "not one"),
        (TOW, "no"),
        (TOW, "yes, if the torque link is disconnected"),
        (TOW, "only with the torque link disconnected"),
        (EMERGENCY, "yes"),
        (EMERGENCY, "yes, emergency braking"),
        (NO_BRAKES, "no"),
        (ONE_LOST, "yes, in alternate"),
        (TAXI, "no"),
        (TAXI, "no, a tug tows you in"),
        (TAXI, "you stop straight ahead and are towed"),
        (AFFECTED, "yes, and the autobrake is unaffected"),
        (MEANING, "it releases the brake of a wheel that slows faster than the others, then brakes it again"),
        (SOUND, "red and a continuous horn which cannot be silenced with landing flap"),
        (ADDS, "yes, they do"),
        (BETWEEN, "no"),
        (EFFECTS, "the doors hang open, no steering, can't retract in flight, brakes are ok"),
        (USE, "steady, not pumping, 800 at most, and look at the bars"),
        (TILLER, "to steer the nose wheels"),
    ],
)
def test_what_follows_is_right(marker: Marker, question: str, answer: str) -> None:
    """A yes or no, a case or a purpose that follows from what is told says it."""
    assert marker.mark(question, answer).mark == RIGHT


@pytest.mark.parametrize(
    ("question", "answer"),
    [
        (AMBER, "normal braking"),
        (WHITE, "alternate braking"),
        (OVERRIDE, "on the ground before taxi"),
        (PINS_LEFT, "three"),
        (TOW, "yes"),
        (TOW, "yes, with the torque link connected"),
        (EMERGENCY, "no, none at all"),
        (NO_BRAKES, "yes"),
        (ONE_LOST, "no"),
        (ONE_LOST, "yes, in emergency"),
        (TAXI, "yes, at walking pace"),
        (AFFECTED, "anti-skid works, autobrake affected"),
        (AFFECTED, "no anti-skid, autobrake not affected"),
        (MEANING, "it releases the brake of a wheel that slows slower than the others and puts it back on"),
        (SOUND, "red, a horn you can silence at any time"),
        (SOUND, "red and a continuous horn which may always be cancelled"),
        (FREE_FALL, "190 kt but only if System 2 is lost"),
        (ADDS, "no, only the tiller counts"),
        (BETWEEN, "yes"),
        (EFFECTS, "doors stay open, no steering, you can retract it in flight, brakes ok"),
        (BARS, "white in all modes"),
        (BARS, "amber in all three"),
    ],
)
def test_the_contrary_is_wrong(marker: Marker, question: str, answer: str) -> None:
    """What goes against it is wrong, and so is a restriction or a freedom that nothing bears out."""
    assert marker.mark(question, answer).mark == WRONG


@pytest.mark.parametrize(
    ("question", "answer"),
    [
        (EMPTY, "with a pressure gauge"),
        (FREE_FALL, "you look at the airspeed indicator"),
        (MEMO, "you see it on a display"),
        (EMPTY, "same way as any other bottle, with a meter"),
    ],
)
def test_where_it_is_seen_is_no_answer(marker: Marker, question: str, answer: str) -> None:
    """What a thing is measured with or seen on says nothing of what is asked."""
    assert marker.mark(question, answer).mark == MISSED
