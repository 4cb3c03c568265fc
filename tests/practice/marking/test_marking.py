"""What counts in an answer, one rule a case: each with an answer that keeps it and one that breaks it."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.marking.mark import MISSED, PARTLY, RIGHT, UNMARKED, WRONG, Marker, mark_answer

FREE_FALL = "What is the maximum speed for a free-fall extension?"
TAKE_OFF = "Aldermere 120: the hottest brake reads 260 °C. May take-off begin? Yes or no, and give the limit."
STRUTS = "What length of chrome must be visible on the main and on the nose shock struts?"
RISE = (
    "An Aldermere 120 lands at 50,000 kg and 130 kt ground speed with idle reverse, all four brakes working. "
    "By about how many degrees does each brake heat up, for planning?"
)
SWITCH_OFF = "Everything is normal, then ANTI-SKID is put to OFF. Give the braking mode, anti-skid and autobrake."
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
        # the order of steps
        (MISMATCH, "205 kt or less, lever UP, wait 15 s, lever DN, still amber: free-fall at 190 kt or less", RIGHT),
        (MISMATCH, "205 kt or less, lever DN, wait 15 s, lever UP, still amber: free-fall at 190 kt or less", WRONG),
        (MISMATCH, "205 kt or less, lever UP, wait 15 s, lever DN", PARTLY),
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
