"""No question holds its own answer, and each says clearly what it asks for."""

from __future__ import annotations

import re

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.making import make_questions
from assistant.practice.making.proving import counts_otherwise
from assistant.practice.making.question import CALCULATION, CHECK, FIGURE, INVERSE, READING, STATE, Expected, Key
from assistant.practice.making.told_state import tells_result
from assistant.practice.making.wording import Wording

COUNT = (Expected("count", 3, "count"),)


@pytest.mark.parametrize(
    ("table", "output", "state", "told"),
    [
        ("braking", "anti_skid", (("anti_skid_switch", "off"),), True),
        ("braking", "anti_skid", (("system_1", "lost"), ("anti_skid_switch", "off")), True),
        ("braking", "anti_skid", (("system_1", "lost"), ("system_2", "lost")), False),
        ("braking", "autobrake", (("anti_skid_switch", "off"),), False),
        ("braking", "mode", (("brake_controller", "failed"),), False),
        ("gear_operation", "extension", (("free_fall_lever", "pulled"),), True),
        ("gear_operation", "extension", (("system_1", "lost"),), False),
        ("gear_operation", "retraction", (("free_fall_lever", "pulled"),), False),
        ("steering", "steering", (("steer_switch", "off"),), True),
        ("steering", "steering", (("free_fall_lever", "pulled"),), False),
    ],
)
def test_what_is_switched_off_is_not_asked_for(
    knowledge: Knowledge, table: str, output: str, state: tuple[tuple[str, str], ...], told: bool
) -> None:
    record = knowledge.base.records[table]
    of = next(each for each in record.outputs if each.id == output)

    assert tells_result(state, record, of, knowledge) == told


def test_no_scenario_asks_for_what_it_has_switched_off(knowledge: Knowledge) -> None:
    asked = [each.text for each in make_questions(knowledge, 3, forms=[STATE])]

    assert not [text for text in asked if "ANTI-SKID switch OFF" in text and "have anti-skid" in text]
    assert not [text for text in asked if "ree-fall lever pulled" in text and "how does the gear extend" in text]


@pytest.mark.parametrize(
    ("text", "says", "values", "otherwise"),
    [
        ("How many codes are there?", "One code is given for each third, such as 4/3/3.", COUNT, True),
        ("How many codes are there?", "There are three codes.", COUNT, False),
        ("Say how many codes there are.", "3 codes in all.", COUNT, False),
        ("How many lamps are there with one lost?", "The lamps are as before.", (), True),
        ("How many pins may be left in?", "Not one pin may be left in: all three are removed.", COUNT, False),
        ("How long do you wait?", "Wait 3 s.", (), False),
        ("How many wheels are there?", "", COUNT, False),
    ],
)
def test_how_many_is_asked_only_of_what_the_statement_counts(
    text: str, says: str, values: tuple[Expected, ...], otherwise: bool
) -> None:
    assert counts_otherwise(text, Key(says=says, values=values)) == otherwise


def test_a_figure_is_asked_for_without_what_holds_in_its_place(knowledge: Knowledge) -> None:
    for question in make_questions(knowledge, 3, forms=[FIGURE]):
        assert " or what " not in question.text


def test_what_is_given_is_not_named_again_by_what_is_sought(knowledge: Knowledge) -> None:
    every = set(knowledge.base.order)
    for question in make_questions(knowledge, 3, forms=[CALCULATION, READING, INVERSE], entries=every):
        assert not re.search(r"airspeed of a |number of a |rules by weight", question.text), question.text


def test_an_act_is_not_asked_of_a_case_that_names_it(knowledge: Knowledge) -> None:
    for question in make_questions(knowledge, 3, forms=[CHECK]):
        assert not re.search(r"\bturn at .* in a turn\b|in a turn of .*, may you turn\b", question.text)
        assert " a time of " not in question.text


def test_two_captions_are_no_heading(knowledge: Knowledge) -> None:
    found = Wording(knowledge.base).asked("VREF VSR0")

    assert found is None or not found.natural


@pytest.mark.parametrize(
    ("title", "measure"),
    [
        ("the length of an inch", True),
        ("the standard lapse rate", True),
        ("the kinds of skidding", False),
        ("the parking brake after a stop", False),
        ("how a time is counted", False),
    ],
)
def test_only_a_quantity_is_asked_for_as_one(knowledge: Knowledge, title: str, measure: bool) -> None:
    assert Wording(knowledge.base).is_measure(title) == measure
