"""Readings of one answer count together, and of two that sound nearly alike the one that says more was meant."""

from __future__ import annotations

import pytest

from assistant.answering.answer import ANSWER
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn
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
