"""Answers in other words, which the knowledge names beside a point, and answers that claim nothing."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.marking.mark import MISSED, RIGHT, WRONG, mark_answer

_LINKS = "In general, what do the torque links of a shock strut do?"
_TOW = "Why may the aeroplane not be towed or pushed with the accumulator below 2,000 psi?"
_NITROGEN = "Why are tyres filled with nitrogen rather than with air?"
_PLUGS = "A brake reads acceptable at the stand. Why can it still melt its fuse plugs?"


@pytest.mark.parametrize(
    ("question", "answer", "mark"),
    [
        (_LINKS, "they stop the wheel twisting", RIGHT),
        (_LINKS, "hold the wheel straight", RIGHT),
        (_LINKS, "they don't stop the wheel from twisting", WRONG),
        (_LINKS, "They stop the strut from sliding out too fast.", WRONG),
    ],
)
def test_what_is_also_said_of_a_point_says_it(knowledge: Knowledge, question: str, answer: str, mark: str) -> None:
    assert mark_answer(question, answer, knowledge).mark == mark


@pytest.mark.parametrize(
    ("question", "answer"),
    [
        (_LINKS, "it has a pin with a flag, you look at it on the walk round"),
        (_LINKS, "that's the scissor shaped thing, you see it on the walk-round"),
        (_NITROGEN, "that's what's in the bottle the mechanic brings"),
        (_TOW, "because it's not allowed"),
        (_TOW, "out of limits"),
        (_TOW, "no"),
    ],
)
def test_what_tells_of_people_or_of_the_rule_claims_nothing(knowledge: Knowledge, question: str, answer: str) -> None:
    assert mark_answer(question, answer, knowledge).mark == MISSED


@pytest.mark.parametrize(
    ("question", "answer"),
    [
        (_NITROGEN, "Because nitrogen does not expand when it gets hot."),
        (_TOW, "the steering would not work"),
    ],
)
def test_a_false_reason_stays_wrong(knowledge: Knowledge, question: str, answer: str) -> None:
    assert mark_answer(question, answer, knowledge).mark == WRONG


def test_a_rough_figure_inside_a_range_says_it(knowledge: Knowledge) -> None:
    said = mark_answer(_PLUGS, "the plugs peak about twenty minutes after the stop", knowledge)
    outside = mark_answer(_PLUGS, "the plugs peak about forty minutes after the stop", knowledge)

    assert said.mark == RIGHT
    assert outside.mark == WRONG
