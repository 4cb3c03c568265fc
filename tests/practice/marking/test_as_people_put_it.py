"""Numbers of a working, two run together, lists by lines, and remarks that claim nothing, as people put them."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import MISSED, PARTLY, RIGHT, WRONG, Marker

HEAT = (
    "An Aldermere 120 lands at 48,000 kg and 128 kt ground speed with full reverse, all four brakes working. "
    "By about how many degrees does each brake heat up, for planning?"
)
WIDTH = (
    "What is the smallest pavement width for a 180° turn of an Aldermere 120 at 60° of steering, no wheel slip, "
    "including 3 m of clearance at each side?"
)
TILLERS = (
    "Taxiing at 12 kt, one tiller orders 30° right and the other 10° left, pedals centred. "
    "What is the total steering order: size and direction?"
)
MISMATCH = "After what delay does GEAR MISMATCH show, normally and once the free-fall lever has been pulled?"
STRUTS = "What length of chrome must be visible on the main and on the nose shock struts?"
MASSES = "What are the maximum take-off mass and the maximum landing mass of the Aldermere 120?"
HOT = (
    "The brakes read 430 °C at the stand. May you set the parking brake for 12 minutes? Yes or no, and give the limit."
)
PEDALS = "Pedal steering: up to what ground speed is the full 8° available, and at what speed does it reach zero?"
WHY = "Why does ON TARGET not prove that the brakes are working?"
PLUG = "When a fuse plug melts, how does the tyre deflate, and what does that prevent?"
LOST_1 = (
    "System 1 is lost, System 2 is lost and the accumulator is charged. "
    "Give the braking mode, anti-skid, autobrake and the colour of the bars."
)
LOST_2 = (
    "System 2 is lost, everything else normal. Give the braking mode, anti-skid, autobrake and the colour of the bars."
)
TOW = "A towing crew wants to tow with 1,900 psi in the accumulator. Allowed? Yes or no, and give the limit."
SPREAD = (
    "Before departure the brakes read 90, 100, 95 and 230 °C. "
    "Does that meet the operator's rule on spread? Yes or no, and give the rule."
)
NOSE_TYRE = "A nose tyre of an Aldermere 120 reads 125 psi cold. Is it acceptable as it is, and what must be done?"
CAPTION = "What colour is GEAR NOT LOCKED, and what sound comes with it?"
MEMO = "PARK BRAKE SET memo: what colour is it, and what two conditions together bring it up?"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (HEAT, "the energy is about a hundred and four then sixty five percent gives sixty eight so seventeen a "
               "brake and that is two hundred and seventy degrees", RIGHT),
        (HEAT, "roughly a hundred megajoules, a third lost to reverse, the rest over four, so 410 degrees", WRONG),
        (HEAT, "104 MJ, so 270 or 340 degrees", WRONG),
        (HEAT, "270 °C of the whole, so 68 °C each", WRONG),
        (WIDTH, "26 m without the clearance, 32 m with it", RIGHT),
        (WIDTH, "with no margins 26, with them 32", RIGHT),
        (WIDTH, "32 m without the clearance, 38 m with it", WRONG),
        (WIDTH, "with the clearances 26 m, without them 20 m", WRONG),
        (WIDTH, "without the clearances 24 m, with them 32 m", WRONG),
        (TILLERS, "subtract them and you have twenty degrees", PARTLY),
        (TILLERS, "they subtract so 20° left", WRONG),
        (TILLERS, "the difference, so 40°", WRONG),
        ("At what temperature does BRAKE HEAT come on?", "not 250 that's for take-off, 350", RIGHT),
        (MISMATCH, "the ordinary one is a quarter of a minute and with free fall half a minute", RIGHT),
        (MISMATCH, "half a minute normally, a quarter of a minute after free fall", WRONG),
        ("How long must you wait from pulling the free-fall lever before you check for three green?",
         "a third of a minute", RIGHT),
        (STRUTS, "Main min 60 mm max 110 mm, nose min 90 mm max 160 mm", RIGHT),
        (STRUTS, "main: min 60, max 110 mm / nose: min 90, max 160 mm", RIGHT),
        (STRUTS, "mains: min 90, max 160 mm / nose: min 60, max 110 mm", WRONG),
        (STRUTS, "the main ones sixty to one hundred and ten millimetres and the nose a bit more", PARTLY),
        (MASSES, "MTOM is 56,000 kg, the landing one I don't have.", PARTLY),
        (MASSES, "50,000 kg is the take-off one, the landing one I never learned", WRONG),
        (HOT, "no twelve minutes is too much above four hundred five minutes at most", RIGHT),
        (HOT, "no if they are above three hundred five minutes", WRONG),
        (PEDALS, "8° flat from rest to 30 kt and then falling to nothing at 110 kt", RIGHT),
        (PEDALS, "full from zero to thirty, nothing from one ten", RIGHT),
        (PEDALS, "constant from 30 to 110 kt, zero above", WRONG),
    ],
)  # fmt: skip
def test_numbers_are_heard_as_people_say_them(marker: Marker, question: str, answer: str, mark: str) -> None:
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (LOST_1, "Mode: EMERGENCY\nAnti-skid: no\nAutobrake: no\nBars: amber", RIGHT),
        (LOST_1, "Mode: EMERGENCY\nAnti-skid: yes\nAutobrake: no\nBars: amber", WRONG),
        (LOST_2, "* mode - alternate\n* anti-skid - yes\n* autobrake - no\n* bars - amber", RIGHT),
        (LOST_2, "Mode: ALTERNATE\nAnti-skid: no\nAutobrake: yes\nBars: amber", WRONG),
        (TOW, "N. Min 2,000 psi.", RIGHT),
        (TOW, "Y. Min 2,000 psi.", WRONG),
        (SPREAD, "a hundred and forty apart and only one twenty allowed so it's a no", RIGHT),
        (SPREAD, "140 and that is allowed so that's a yes", WRONG),
        (NOSE_TYRE, "more than ten percent low so not acceptable change it", RIGHT),
        (NOSE_TYRE, "don't replace it", WRONG),
        (CAPTION, "red and an unbroken horn", RIGHT),
        (CAPTION, "red and a broken horn", WRONG),
        (MEMO, "red, lever set while there is more thrust than idle", RIGHT),
        (MEMO, "red, lever set and the thrust levers out of idle", RIGHT),
        (PLUG, "the air goes out slowly and so the tyre does not burst", PARTLY),
        (PLUG, "It comes down slowly, by design.", PARTLY),
        ("What colour is STEER LOST, and what do the nose wheels do while it shows?", "amber, castering", RIGHT),
        ("STEER LOST: what colour, and does it show when System 1 is lost?",
         "Amber, and it stays away with System 3 gone.", WRONG),
    ],
)  # fmt: skip
def test_words_are_heard_as_people_say_them(marker: Marker, question: str, answer: str, mark: str) -> None:
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (WHY, "you look at more than one thing in the cockpit", MISSED),
        (WHY, "No lamp proves much, one always looks twice.", MISSED),
        (WHY, "because it measures brake pressure", WRONG),
        ("Why is the parking brake released when a brake shows over 320 °C?",
         "A hot brake is never a good thing to have.", MISSED),
        ("Why is the parking brake released when a brake shows over 320 °C?",
         "because the fans need the pressure", WRONG),
        ("Why do you stop straight ahead after a free-fall extension?", "It's what the checklist wants.", MISSED),
        ("Why do you stop straight ahead after a free-fall extension?", "because the tyres are flat", WRONG),
        ("What is the nose tyre pressure of the Aldermere 120?", "less than the main tyres", MISSED),
        ("What is the main tyre pressure of the Aldermere 120?", "the same as the nose", WRONG),
        (PEDALS, "Above a certain speed you have the rudder only.", MISSED),
        (PEDALS, "it is there at any speed", WRONG),
        (TILLERS, "The captain in the left seat steers, the other keeps his hands off", MISSED),
        (TILLERS, "the left one wins", WRONG),
        (LOST_2, "I think I'd have to see the chart for that one", MISSED),
    ],
)  # fmt: skip
def test_a_remark_is_no_wrong_answer(marker: Marker, question: str, answer: str, mark: str) -> None:
    assert marker.mark(question, answer).mark == mark
