"""What is said in place of an answer is missed; what is contrary in a point's own clause is wrong."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import MISSED, PARTLY, RIGHT, WRONG, Marker

BARS = "What colour are the brake pressure bars in NORMAL, ALTERNATE and EMERGENCY?"
MISMATCH_DELAY = "After what delay does GEAR MISMATCH show, normally and once the free-fall lever has been pulled?"
FREE_FALL = "What is the maximum speed for a free-fall extension?"
TOW = "The accumulator reads 1,900 psi. May the aeroplane be towed? Yes or no, and give the limit."
SPREAD = (
    "Before departure the brakes read 80, 110, 95 and 240 °C. Does that meet the operator's rule on spread? "
    "Yes or no, and give the rule."
)
WHO = "Where is the free-fall lever, and where and by whom can the gear be retracted after a free-fall extension?"
TYRE = "A nose tyre of an Aldermere 120 reads 124 psi cold. Is it acceptable as it is, and what must be done?"
UNLOCKED = "When does GEAR NOT LOCKED come on? Give both cases."
SET = "PARK BRAKE SET memo: what colour is it, and what two conditions together bring it up?"
STUCK = "The gear lever will not move to UP after take-off: give the steps in order, with the speed."
STEER_LOST = "STEER LOST: what do you do with the STEER switch, how often and below what speed, and if it comes back?"
BAY = "What do you check in the wheel bay?"
MISMATCH = "What do you do for GEAR MISMATCH?"
STEER_SHOWS = (
    "On the ground System 1 fails with STEER ON. What does the nose wheel do, do the pedals steer, "
    "and does STEER LOST show?"
)
PINS = (
    "Gear ground-lock pins: how many, what colour are the streamers, to whom are they shown, "
    "and where are they stowed?"
)
STRUTS = "What length of chrome must be visible on the main and on the nose shock struts?"
HOTTEST = "How does the gear display mark the hottest brake, and when?"
SOUND = "What colour is GEAR NOT LOCKED, and what sound comes with it?"
SWITCH_OFF = "Everything is normal, then ANTI-SKID is put to OFF. Give the braking mode, anti-skid and autobrake."
RISE = (
    "An Aldermere 120 lands at 50,000 kg and 130 kt ground speed with idle reverse, all four brakes working. "
    "By about how many degrees does each brake heat up, for planning?"
)
HEAT = "At what brake temperature does BRAKE HEAT show?"
HEIGHT = "Below what radio height on approach does the gear display come up by itself?"
WEAR = "What do under-inflation and over-inflation each wear?"
MEMO = "What colour is the TOW PIN memo, and what brings it up?"
TAKE_OFF = (
    "Aldermere 120: the hottest brake reads 240 °C, properly read with the fans off, and the others 200 °C. "
    "May take-off begin? Yes or no, and give the limit."
)


@pytest.mark.parametrize("question", [BARS, MISMATCH_DELAY, FREE_FALL, TOW, TYRE, UNLOCKED, STUCK, SWITCH_OFF])
@pytest.mark.parametrize(
    "remark",
    [
        "that's one for the dispatchers to decide",
        "the commander decides that",
        "I'd need to look in the handbook first",
        "I would follow the drill card",
        "there's a chart for that in the handbook",
        "I never got the hang of this chapter",
        "we skipped that lesson",
        "it's an important limit",
        "it all depends on the conditions",
        "hmm, tricky",
    ],
)
def test_what_says_nothing_is_missed(marker: Marker, question: str, remark: str) -> None:
    assert marker.mark(question, remark).mark == MISSED


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        # a remark beside an answer changes nothing
        (FREE_FALL, "I always muddle these up, but 190 knots", RIGHT),
        (FREE_FALL, "I always muddle these up, but 230 knots", WRONG),
        # who it is left to is an answer where that is asked
        (WHO, "under a hatch behind the pedestal, and the captain does it in flight", WRONG),
        # a yes or no left short, one told by its bound, and a rule that holds neither
        (SPREAD, "160 against 120 permitted, so they don't", RIGHT),
        (SPREAD, "the spread is over the 120 limit", RIGHT),
        (SPREAD, "the rule is no more than 120 between any two", PARTLY),
        (TAKE_OFF, "250 allowed, so it can", RIGHT),
        (TAKE_OFF, "it isn't over the 250 limit", RIGHT),
        (TAKE_OFF, "250 is the limit, so it can't", WRONG),
        (TOW, "no, but I forget the limit", PARTLY),
        (TOW, "yes, but I forget the limit", WRONG),
        (TOW, "no clue what the limit is", MISSED),
        (TOW, "no, it must be at least 1,900", WRONG),
        # a number reckoned from the one before it
        (MISMATCH_DELAY, "15 s, and double that with the lever pulled", RIGHT),
        (MISMATCH_DELAY, "15 s, and half that with the lever pulled", WRONG),
        # everyday ways of saying what is done
        (MEMO, "white, once the bypass pin has been put in", RIGHT),
        (TYRE, "no, it must be topped up", WRONG),
        (TYRE, "no, it is more than a tenth low so it has to go", RIGHT),
        (STUCK, "Leave it at DN, 255 max; positive climb, override, a single try; no luck: stay down, return", RIGHT),
        (STUCK, "leave it down, 255 or less, after positive climb press the override button and try once", PARTLY),
        # a figure of all as one of one thing, or as another thing's limit
        (FREE_FALL, "190 for the nose, 205 for the mains", WRONG),
        (HEAT, "350, the maximum for take-off", WRONG),
        (HEAT, "350, and 250 is the maximum for take-off", RIGHT),
        (RISE, "358 degrees split between the four brakes", WRONG),
        (STRUTS, "main 60 to 160, nose 90 to 110", WRONG),
        (STRUTS, "nose 90 to 160, main 60 to 110", RIGHT),
        # the contrary in the point's own clause
        (UNLOCKED, "every leg not locked down, under 700 ft with both levers near idle, or landing flap", WRONG),
        (UNLOCKED, "not all legs locked down, below 700 ft with both levers near idle, or landing flap", RIGHT),
        (UNLOCKED, "a leg not locked, below 700 ft with both levers at climb power, or landing flap", WRONG),
        (SET, "red, with the parking brake off and thrust above idle", WRONG),
        (STUCK, "the lever stays at UP, 255 or less, positive climb, override once, stuck: stay down, return", WRONG),
        (STEER_LOST, "OFF and ON once, below 30 kt; if it comes back, put it ON and clear the runway", WRONG),
        (PINS, "four, one on each leg, red, left-seat pilot, behind the right-hand seat", WRONG),
        (PINS, "three, red, the pilot in the right seat, behind the left seat", WRONG),
        (PINS, "three, red, the captain in the left-hand seat, kept behind the right-hand one", RIGHT),
        (HOTTEST, "underlined above the maximum to begin take-off", WRONG),
        (HOTTEST, "inverse video, whatever the temperature", WRONG),
        (SOUND, "red with a horn that comes and goes", WRONG),
        (SWITCH_OFF, "ALTERNATE, no anti-skid and autobrake FULL", WRONG),
        (HEIGHT, "1,200 ft on the climb", WRONG),
        (WEAR, "under-inflation the centre, over-inflation the shoulders", WRONG),
        (WEAR, "under-inflation the shoulders, over-inflation the centre", RIGHT),
        (UNLOCKED, "a leg not locked down, below 700 ft with both levers near idle and flaps at landing", WRONG),
        (UNLOCKED, "a leg not locked down: below 700 ft with both levers near idle, and with landing flap", RIGHT),
        (FREE_FALL, "190 is the slowest", WRONG),
        (FREE_FALL, "190 is the fastest", RIGHT),
        (TOW, "negative, two thousand is the minimum", RIGHT),
        (TOW, "negative two thousand is the minimum", RIGHT),
        # what is absent that is a fault itself, and a lever moved one way in one drill and the other way in the next
        (BAY, "no leaks, pipes secure, no rubber marks, doors ok, read the accumulator gauge", RIGHT),
        (BAY, "there is a leak, pipes secure, no rubber marks, doors ok, accumulator gauge", WRONG),
        (BAY, "no leak, no loose pipe, no tyre contact marks, doors undamaged", PARTLY),
        (MISMATCH, "On exetnsion: slow to 205 kt, lever UP, wait 15 s, lever down; still amber, free fall at 190 kt "
         "or less. On retraction: slow to 230 kt, lever down", RIGHT),
        (MISMATCH, "extension: slow to 205, lever up, 15 s, lever down, free fall. Retraction: 230, lever up", WRONG),
        # a label that is asked about besides a state
        (STEER_SHOWS, "they castor, the pedals do not steer, STEER LOST does not show", RIGHT),
        (STEER_SHOWS, "they castor, the pedals do not steer, and STEER LOST comes on", WRONG),
        (STEER_SHOWS, "they castor and the pedals do not steer", PARTLY),
    ],
)
def test_a_turn_of_speech(marker: Marker, question: str, answer: str, mark: str) -> None:
    given = marker.mark(question, answer)

    assert given.mark == mark, given
