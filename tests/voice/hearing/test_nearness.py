"""Readings of one answer count together, and of two that sound nearly alike the one that says more was meant."""

from __future__ import annotations

import pytest

from assistant.answering.answer import ANSWER
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn
from assistant.voice.hearing.ear import fuller_beside
from assistant.voice.hearing.nearness import said_more
from assistant.voice.hearing.repairing import Repairer
from assistant.voice.hearing.shares import Reading, answers_of, by_fit
from assistant.voice.hearing.sounds import Sounding


@pytest.fixture(scope="module")
def repairer(knowledge: Knowledge, sounding: Sounding) -> Repairer:
    return Repairer(knowledge, sounding)


def reading(text: str, knowledge: Knowledge, fit: float, explained: float = 1.0) -> Reading:
    answer, after = answer_turn(text, Context(), knowledge)
    return Reading(text, -0.2, 0.0, explained, answer, after, (), fit)


def test_readings_with_one_answer_count_together_whatever_leads_there(knowledge: Knowledge) -> None:
    texts = ("what is the maximum landing weight", "whats the max landing mass", "what is the maximum take off weight")
    landing, again, take_off = answers_of([reading(text, knowledge, -1.0) for text in texts])

    assert landing == again
    assert landing != take_off


def test_equal_texts_join_what_numbers_and_records_keep_apart(knowledge: Knowledge) -> None:
    one = reading("which system are the normal brakes on", knowledge, -1.0)
    two = one._replace(answer=one.answer._replace(entry="another"))

    assert one.leads_to != two.leads_to
    assert len(set(answers_of([one, two]))) == 1


@pytest.mark.parametrize(("heard", "meant"), [
    ("anti skits which offer nothing else wrong which braking mode",
     "anti skid switch off nothing else wrong which braking mode"),
    ("does the stirring work with the accumulator empty", "does the steering work with the accumulator empty"),
])  # fmt: skip
def test_the_nearly_equal_sound_that_says_more_was_meant(
    knowledge: Knowledge, repairer: Repairer, heard: str, meant: str
) -> None:
    readings = [reading(heard, knowledge, -4.0), reading(meant, knowledge, -7.0)]
    assert len(set(answers_of(readings))) == 2
    weighed = said_more(by_fit(readings), readings, repairer, knowledge)

    assert weighed.reading.text == meant
    assert weighed.sureness > 0.9


def test_another_sound_is_left_to_the_sound(knowledge: Knowledge, repairer: Repairer) -> None:
    readings = [
        reading("what is the maximum landing weight", knowledge, -4.0),
        reading("what is the maximum speed to extend the gear at the lowest altitude", knowledge, -7.0),
    ]
    weighed = by_fit(readings)

    assert weighed.reading.answer.outcome == ANSWER
    assert said_more(weighed, readings, repairer, knowledge) == weighed


def test_a_name_that_is_only_broken_apart_says_no_more(knowledge: Knowledge, repairer: Repairer) -> None:
    readings = [
        reading("gear door message came on what is it telling me", knowledge, -4.0),
        reading("gear a door message came on what is it telling me", knowledge, -7.0),
    ]
    weighed = by_fit(readings)

    assert said_more(weighed, readings, repairer, knowledge).reading == readings[0]


def test_one_table_may_tell_opposite_things(knowledge: Knowledge) -> None:
    texts = ("system two is lost which mode", "both systems are lost which mode", "system two is lost what mode")
    two, both, again = answers_of([reading(text, knowledge, -1.0) for text in texts])

    assert two == again
    assert two != both


def test_what_was_heard_and_fits_better_speaks_against_what_is_explained(knowledge: Knowledge) -> None:
    chosen = reading("what is the maximum landing weight", knowledge, -14.0)
    heard = reading("who won the match last night in the rain", knowledge, -2.0, explained=0.0)

    assert by_fit([chosen._replace(cost=0.1), heard]).outdone
    assert not by_fit([chosen._replace(cost=0.1), heard._replace(usual=-40.0)]).outdone
    assert not by_fit([chosen, heard._replace(fit=-13.0)]).outdone


def test_a_fuller_reading_that_leads_elsewhere_is_put_up_beside_the_chosen_one(knowledge: Knowledge) -> None:
    short, full = "can I take off with the brakes at 240", "can I take off on the 120L with the brakes at 240"
    weighed = by_fit([reading(short, knowledge, -2.0), reading(full, knowledge, -5.0, explained=0.9)])
    beside, shorter = fuller_beside(weighed, knowledge.lexicon.neutral)

    assert shorter
    assert [beside.reading.text, beside.rivals[0].text] == [short, full]
    assert not fuller_beside(by_fit([reading(full, knowledge, -2.0), reading(short, knowledge, -5.0)]), frozenset())[1]
