"""Slips of the finger that make other ordinary words, and a switch that is not named."""

from __future__ import annotations

import pytest

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn


def ask(text: str, knowledge: Knowledge) -> Answer:
    return answer_turn(text, Context(), knowledge)[0]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("would we sill be on NORMAL with the steering controller out", "NORMAL braking"),
        ("tre let go at eighty knots on the take off roll do we stop", "100 kt"),
        ("whre in the cokpit is the gear leaver", "engine display"),
        ("wen can controll of the tiler change hands while taxing", "stopped"),
        ("both hyds gon, accumlator chargd: are the bars amber or wite", "amber"),
        ("i haave two ten on the cock can i raise the gear", "205 kt"),
    ],
)
def test_a_slip_that_is_a_word_is_read_as_meant(knowledge: Knowledge, text: str, told: str) -> None:
    answer = ask(text, knowledge)

    assert answer.outcome == ANSWER
    assert told in answer.text


def test_a_digit_behind_twenty_is_mended_as_one(knowledge: Knowledge) -> None:
    answer = ask("how much tiller do i get at twenty fie knnots", knowledge)

    assert answer.values[1].value == 25


@pytest.mark.parametrize("text", ["max zero fuell weight of the 120", "how wide is the tred on the main tyres"])
def test_what_is_asked_of_nothing_loaded_is_no_slip(knowledge: Knowledge, text: str) -> None:
    assert ask(text, knowledge).outcome == DECLINE


@pytest.mark.parametrize(
    "text",
    ["somebody has left the switch off what have i lost", "with the switch off, which mode am I in"],
)
def test_a_switch_that_is_not_named_is_asked_back(knowledge: Knowledge, text: str) -> None:
    answer = ask(text, knowledge)

    assert answer.outcome == CLARIFY
    assert len(answer.choices) == 2


def test_which_switch_may_be_said_then(knowledge: Knowledge) -> None:
    _, context = answer_turn("what do i lose with the switch off", Context(), knowledge)
    answer, _ = answer_turn("the anti-skid one", context, knowledge)

    assert answer.outcome == ANSWER
    assert "ANTI-SKID" in answer.text


def test_what_is_given_of_a_calculation_is_not_asked_for(knowledge: Knowledge) -> None:
    answer = ask("What ground speed do the tyres see at 160 kt IAS, 5,000 ft, 25 °C, no wind", knowledge)

    assert abs(answer.values[0].value - 178.2) < 1


def test_a_reading_before_a_stop_is_no_rise(knowledge: Knowledge) -> None:
    answer = ask("landing at 47 t idle reverse, brakes at 100 before: which speed gives BRAKE HEAT", knowledge)

    assert answer.outcome == CLARIFY


def test_all_that_leads_to_a_state_may_be_listed(knowledge: Knowledge) -> None:
    answer = ask("List everything that leaves the nose wheels castoring on the ground.", knowledge)

    assert "free-fall lever pulled" in answer.text
    assert "STEER switch OFF" in answer.text


def test_what_two_parts_both_tell_is_told_once(knowledge: Knowledge) -> None:
    answer = ask("The brake controller failed. Which mode, which colour are the bars, how much pressure?", knowledge)

    assert answer.text.count("ALTERNATE braking") == 1
