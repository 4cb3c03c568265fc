"""What counts in an answer, one rule a case: each with an answer that keeps it and one that breaks it."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.marking.mark import MISSED, PARTLY, RIGHT, UNMARKED, WRONG, Marker, mark_answer
from assistant.practice.marking.reading.spoken import written

FREE_FALL = "What is the maximum speed for a free-fall extension?"
TAKE_OFF = "Aldermere 120: the hottest brake reads 260 °C. May take-off begin? Yes or no, and give the limit."
STRUTS = "What length of chrome must be visible on the main and on the nose shock struts?"
RISE = (
    "An Aldermere 120 lands at 50,000 kg and 130 kt ground speed with idle reverse, all four brakes working. "
    "By about how many degrees does each brake heat up, for planning?"
)
SWITCH_OFF = "Everything is normal, then ANTI-SKID is put to OFF. Give the braking mode, anti-skid and autobrake."
HOTTEST = "How does the gear display mark the hottest brake, and when?"
UNLOCKED = "When does GEAR NOT LOCKED come on? Give both cases."
MISMATCH_UP = "GEAR MISMATCH on retraction: give the steps in order, with the speed."
PLUGS = "At about what temperature do the fuse plugs melt, and is that the brake's temperature or the plug's?"
BUTTON = "On the ground, everything normal, a pilot holds the PEDAL button. What steers, and do the pedals steer?"
ON_TARGET = "Why does the ON TARGET light not prove that the brakes are working?"
SOUND = "What colour is GEAR NOT LOCKED, and what sound comes with it?"
HATCH = "Where is the free-fall lever, and where and by whom can the gear be retracted after a free-fall extension?"
HEIGHT = "Below what radio height on approach does the gear display come up by itself?"
BARS = "What colour are the brake pressure bars in NORMAL, ALTERNATE and EMERGENCY?"
LONG_TYRE = "What is the main tyre pressure of the Aldermere 120L?"
LOWERING = "Talk me through gravity extension of the undercarriage from slowing down to the end of the landing run."
PRESSURE = "What is the maximum braking pressure without anti-skid?"
MISMATCH = "GEAR MISMATCH on extension: give the steps in order, with speeds and times."


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        # a documented figure exactly, in any unit
        (FREE_FALL, "190 kt", RIGHT),
        (FREE_FALL, "one hundred and ninety knots", RIGHT),
        (FREE_FALL, "97.7 m/s", RIGHT),
        (FREE_FALL, "191 kt", WRONG),
        (FREE_FALL, "190 mph", WRONG),
        # a computed one within 3 %
        (RISE, "350 degrees", RIGHT),
        (RISE, "340 degrees", WRONG),
        # the sense of a bound
        (FREE_FALL, "at most 190 kt", RIGHT),
        (FREE_FALL, "at least 190 kt", WRONG),
        # a hedge between two answers, and an extra that is wrong
        (FREE_FALL, "190 or maybe 200 kt", WRONG),
        (FREE_FALL, "190 kt, and 230 kt with the doors open", WRONG),
        # the former value, told as such and as the present one
        (TAKE_OFF, "No; it was 280 °C, and it is 250 °C now.", RIGHT),
        (TAKE_OFF, "No; it was 250 °C, and it is 280 °C now.", WRONG),
        # yes or no, and the limit
        (TAKE_OFF, "No, the limit is 250 °C.", RIGHT),
        (TAKE_OFF, "No.", PARTLY),
        (TAKE_OFF, "Yes, the limit is 250 °C.", WRONG),
        # which figure belongs to which
        (STRUTS, "60 to 110 on the main, 90 to 160 mm on the nose", RIGHT),
        (STRUTS, "nose 90 to 160, main 60 to 110 mm", RIGHT),
        (STRUTS, "main 90 to 160, nose 60 to 110 mm", WRONG),
        (STRUTS, "main 60 to 110 mm", PARTLY),
        # a state, and its reverse
        (SWITCH_OFF, "ALTERNATE; anti-skid and autobrake are both gone", RIGHT),
        (SWITCH_OFF, "ALTERNATE; anti-skid still works, no autobrake", WRONG),
        (SWITCH_OFF, "EMERGENCY; no anti-skid, no autobrake", WRONG),
        (SWITCH_OFF, "ALTERNATE", PARTLY),
        # what is taken back, said in speech without a stop too
        (FREE_FALL, "205... no, scratch that, 190 kt", RIGHT),
        (FREE_FALL, "one ninety no sorry two oh five", WRONG),
        (STRUTS, "main 60 to 110, nose 90 to 150, I mean 160 mm", RIGHT),
        # what is not known claims nothing; a number within it does
        (STRUTS, "main 60 to 110 mm, but I can't remember the nose", PARTLY),
        (STRUTS, "60 to 110 on the main and I forget if the nose is 80 or 90", WRONG),
        # a number on the way, and one that is true of what is named beside it
        (RISE, "89.5 MJ for all four, 22.4 MJ each, so 358 K", RIGHT),
        (SWITCH_OFF, "ALTERNATE, no anti-skid, no autobrake, landing distance x 1.6", RIGHT),
        (SWITCH_OFF, "ALTERNATE, no anti-skid, no autobrake, landing distance x 1.5", WRONG),
        # the figure that a statement leaves to another paragraph
        (HOTTEST, "inverse video above 250 °C", RIGHT),
        (HOTTEST, "inverse video above the maximum to begin take-off", RIGHT),
        (HOTTEST, "inverse video above 230 °C on the L and 250 on the 120", RIGHT),
        (HOTTEST, "inverse video above 280 °C", WRONG),
        # what holds at any height, another thing done in the case, the lever turned round
        (
            UNLOCKED,
            "a leg not locked, below 700 ft with both levers near idle, or with landing flap below 700 ft",
            WRONG,
        ),
        (MISMATCH, "205 kt or less, lever UP, 15 s, lever DN; if still amber, carry on to the destination", WRONG),
        (MISMATCH_UP, "230 kt or less, lever DN, lever UP, nearest suitable airfield if not all green", WRONG),
        # which of two things it is
        (PLUGS, "185 °C, the plug's", RIGHT),
        (PLUGS, "185 °C", PARTLY),
        # the order of steps
        (MISMATCH, "205 kt or less, lever UP, wait 15 s, lever DN, still amber: free-fall at 190 kt or less", RIGHT),
        (MISMATCH, "205 kt or less, lever DN, wait 15 s, lever UP, still amber: free-fall at 190 kt or less", WRONG),
        (MISMATCH, "205 kt or less, lever UP, wait 15 s, lever DN", PARTLY),
        # what does it alone, what is out of it
        (BUTTON, "only the tillers steer, the pedals are cut out", RIGHT),
        (BUTTON, "only the pedals steer the tillers are cut out", WRONG),
        (SOUND, "red, and the horn comes on and off", WRONG),
        # half of a reason with what it is not; a claim that nothing bears out
        (ON_TARGET, "it only looks at deceleration, not at the brake pressure", PARTLY),
        (ON_TARGET, "it lights whatever the autobrake does", WRONG),
        # another place, another reference, the other thing, another state's value
        (HATCH, "under a cover next to the gear lever, by maintenance on the ground", WRONG),
        (HEIGHT, "1,200 ft radio", RIGHT),
        (HEIGHT, "when it passes 1,200 ft on the way down", RIGHT),
        (HEIGHT, "1,200 ft barometric", WRONG),
        (LONG_TYRE, "205 psi in the mains, the nose is 140", RIGHT),
        (LONG_TYRE, "nose 205 psi, main 190 psi", WRONG),
        (BARS, "white, amber, amber, and blank with no braking left", RIGHT),
        (BARS, "white, amber, and blank in EMERGENCY", WRONG),
        # the time of another step, a share of all, a way that is forbidden, halves made a choice
        (LOWERING, "190 kt or less, lever DN, pull and hold the free-fall lever for 20 s, three greens", WRONG),
        (RISE, "358 degrees between the four of them", WRONG),
        (PRESSURE, "800 psi, steady and not pumped", RIGHT),
        (PRESSURE, "800 psi, pumping the pedals", WRONG),
        (UNLOCKED, "a leg not locked below 700 ft or with both levers near idle, or with landing flaps", WRONG),
        # what a "no" between two numbers takes back
        (FREE_FALL, "two oh five no one ninety", RIGHT),
        (FREE_FALL, "one ninety no two oh five", WRONG),
        # what says nothing of the figure asked for is no claim; that there is none is one
        (FREE_FALL, "the lever is behind the pedestal", MISSED),
        (FREE_FALL, "you hold the lever for five seconds", MISSED),
        (FREE_FALL, "as fast as you like", WRONG),
        # no answer at all
        (FREE_FALL, "I don't know", MISSED),
        (FREE_FALL, "pass", MISSED),
        (FREE_FALL, "", MISSED),
        (SWITCH_OFF, "nice weather today", MISSED),
    ],
)
def test_a_rule(marker: Marker, question: str, answer: str, mark: str) -> None:
    given = marker.mark(question, answer)

    assert given.mark == mark, given


POINTS = "What does steady green mean?"
LOST = "With the brake controller failed, which braking mode?"
AVAILABLE = "System 2 lost: is autobrake available?"
RETRACTION = "What is the sequence of gear retraction?"
TIMES = "How long does the gear take to extend, to retract, and by free fall?"
COUNT = "How many ground lock pins are there?"
FACTOR = "By what factor do you multiply the normal landing distance when anti-skid is lost?"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        # a denial turns a point, as far as it reaches, and so does leaving one out
        (POINTS, "down and locked", RIGHT),
        (POINTS, "down and locked, not in transit", RIGHT),
        (POINTS, "not down and locked", WRONG),
        (POINTS, "down but not locked", WRONG),
        ("What colour is BRAKE HEAT?", "amber, not red", RIGHT),
        ("What colour is BRAKE HEAT?", "anything but amber", WRONG),
        ("What does GEAR DOOR mean?", "a door not closed 10 s after the legs lock", RIGHT),
        ("What does GEAR DOOR mean?", "a door not open 10 s after the legs lock", WRONG),
        ("What happens to the horn with landing flaps?", "it can't be silenced", RIGHT),
        ("What happens to the horn with landing flaps?", "it can be silenced", WRONG),
        # what is said beside the question is held against the whole state
        (LOST, "ALTERNATE", RIGHT),
        (LOST, "ALTERNATE, no anti-skid and no autobrake, amber bars", RIGHT),
        (LOST, "ALTERNATE, and autobrake works", WRONG),
        (LOST, "ALTERNATE with white bars", WRONG),
        (LOST, "ALTERNATE on System 2", WRONG),
        (AVAILABLE, "no", RIGHT),
        (AVAILABLE, "it's gone", RIGHT),
        (AVAILABLE, "negative", RIGHT),
        (AVAILABLE, "no, that needs NORMAL", RIGHT),
        (AVAILABLE, "no, that needs System 1", WRONG),
        (AVAILABLE, "no, but anti-skid is lost too", WRONG),
        # things exchanged between steps, and steps out of order
        (RETRACTION, "doors open, downlocks release, legs fold, uplocks engage, doors close", RIGHT),
        (RETRACTION, "doors open, uplocks release, legs fold, downlocks engage, doors close", WRONG),
        (RETRACTION, "doors close, downlocks release, legs fold, uplocks engage, doors open", WRONG),
        # which figure belongs to which, in everyday words
        (TIMES, "9 s down, 11 s up, 18 s free fall", RIGHT),
        (TIMES, "11 s down, 9 s up, 18 s free fall", WRONG),
        # the sense of a count and of a factor
        (COUNT, "three", RIGHT),
        (COUNT, "at most three", WRONG),
        (COUNT, "4, no, correction, 3", RIGHT),
        (FACTOR, "add 60 %", RIGHT),
        (FACTOR, "60 %", WRONG),
        (FACTOR, "divide by 1.6", WRONG),
        (STRUTS, "outside 60 to 110 on the main, 90 to 160 mm on the nose", WRONG),
        # numbers as they are spoken on the radio
        (FREE_FALL, "one niner zero", RIGHT),
        (FREE_FALL, "one niner five", WRONG),
        ("What is the maximum altitude for extending the gear?", "two zero thousand", RIGHT),
        # what stood before, told as such
        ("At what percentage of the target does ON TARGET light?", "85 % now, 90 % before revision 7", RIGHT),
        ("At what percentage of the target does ON TARGET light?", "90 %", WRONG),
        # an absolute, and one for both
        ("When may control change hands while taxiing?", "any time", WRONG),
        ("Who presses the pedals with no braking?", "both of us", RIGHT),
        ("Who presses the pedals with no braking?", "the captain only", WRONG),
    ],
)
def test_a_rule_of_sense(marker: Marker, question: str, answer: str, mark: str) -> None:
    given = marker.mark(question, answer)

    assert given.mark == mark, given


@pytest.mark.parametrize(
    ("spoken", "meant"),
    [
        ("two three zero", "230"),
        ("two oh five knots", "205 knots"),
        ("three two one", "three two one"),
        ("zero point nine", "zero point nine"),
        ("system 1 or 2", "system 1 or system 2"),
        ("4, no, correction, 3", "3"),
        ("1.5 -> 1.6", "1.5 to 1.6"),
    ],
)
def test_an_answer_is_written_as_it_is_meant(spoken: str, meant: str) -> None:
    assert written(spoken) == meant


def test_a_partial_answer_is_told_what_is_missing_and_the_full_answer_with_its_paragraph(marker: Marker) -> None:
    given = marker.mark(STRUTS, "Main: 60 to 110 mm.")

    assert given.mark == PARTLY
    assert given.share == 0.5
    (missing,) = given.missing  # worded as whichever record answers the question words it
    assert all(word in missing for word in ("nose", "90", "160"))
    assert not given.wrong
    assert all(figure in given.expected for figure in ("60", "110", "90", "160"))
    assert [(s.document, s.paragraph) for s in given.sources] == [("AOM", "32.05.3")]


def test_a_wrong_answer_is_told_what_is_wrong(marker: Marker) -> None:
    assert marker.mark(FREE_FALL, "230 kt").wrong == ("230 kt",)


@pytest.mark.parametrize("question", ["", "?", "How many passengers may it carry?", "What does fuel cost?", "zzz"])
def test_what_nothing_loaded_answers_is_not_marked(knowledge: Knowledge, question: str) -> None:
    assert mark_answer(question, "about 120", knowledge).mark == UNMARKED


@pytest.mark.parametrize(
    "answer",
    ["\x00\x1b[31m", "1" * 400, "1e999 kt", "no " * 300, "190 " * 200, "½ kt, ¼, ∞ °C", "kt kt kt", "- - -", "🛬" * 50],
)
def test_any_text_gets_a_mark(marker: Marker, answer: str) -> None:
    for question in (FREE_FALL, TAKE_OFF, STRUTS, SWITCH_OFF, MISMATCH, RISE):
        assert marker.mark(question, answer).mark in (RIGHT, PARTLY, WRONG, MISSED)


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        ("What does anti-skid do?", "A red band on the nose leg doors shows the towing limit.", MISSED),
        ("May you extend the gear at 200 kt?", "Within LIM 3.1: the limit is 230 kt.", RIGHT),
        ("What does the RESERVE BRAKE memo show, and in which mode?", "Applications left, in EMERGENCY.", RIGHT),
        ("Which has priority, anti-skid or autobrake?", "Anti-skid has priority over autobrake.", RIGHT),
        ("Which has priority, anti-skid or autobrake?", "Autobrake over anti-skid.", WRONG),
        ("May you turn at 10 kt in a turn of 61°?", "yes, the limit is 12 kt", WRONG),
        ("Does autobrake work in ALTERNATE?", "it doesn't fail to work", WRONG),
        ("Where is the gear lever?", "by the engine display", PARTLY),
        ("Residual braking: give the steps.", "Press and release the pedals, STEER OFF then ON, below 20 kt.", WRONG),
        ("STEER switch: where is it, and what does OFF do?", "Left console, it depressurises the steering.", PARTLY),
        ("Landing on a wet runway: which autobrake setting, and what does it aim at?", "no idea", MISSED),
        ("At what share of the target deceleration does ON TARGET light?", "85 percent now it used to be 90", RIGHT),
    ],
)  # fmt: skip
def test_true_remarks_contraries_and_two_things_of_one_subject(
    marker: Marker, question: str, answer: str, mark: str
) -> None:
    assert marker.mark(question, answer).mark == mark
