"""Bare words of a record become sentences."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.making.limits import smooth, step_of
from assistant.practice.making.wording import BARE, Wording


@pytest.fixture(scope="module")
def wording(knowledge: Knowledge) -> Wording:
    return Wording(knowledge.base)


@pytest.mark.parametrize(
    ("ask", "form", "sentence"),
    [
        ("where gear lamps", "place", "Where are the gear lamps?"),
        ("STEER switch location", "place", "Where is the STEER switch?"),
        ("when solenoid pin withdraws", "fact", "When does the solenoid pin withdraw?"),
        ("what accumulator stores", "fact", "What does the accumulator store?"),
        ("what blocks gear lever", "fact", "What blocks the gear lever?"),
        ("how brakes cool", "fact", "How do the brakes cool?"),
        ("how extend gear system 2 lost", "fact", "How do you extend the gear with System 2 lost?"),
        ("how long hold free-fall lever", "fact", "How long do you hold the free-fall lever?"),
        ("why no autobrake in alternate", "reason", "Why is there no autobrake in alternate?"),
        ("why not pump brakes", "reason", "Why not pump the brakes?"),
        ("who inserts bypass pin", "who", "Who inserts the bypass pin?"),
        ("does anti-skid work alternate", "fact", "Does anti-skid work in alternate?"),
        ("how steer STEER LOST", "fact", "How do you steer with STEER LOST?"),
        ("how many wheels in all", "fact", "How many wheels are there in all?"),
        ("BRAKE HEAT colour", "shown", "What colour is BRAKE HEAT?"),
        ("BRAKE HEAT meaning", "meaning", "What does BRAKE HEAT mean?"),
        ("autobrake settings list", "fact", "List the autobrake settings."),
        ("accumulator empty what happens", "fact", "The accumulator empty: what happens?"),
    ],
)  # fmt: skip
def test_a_way_of_asking_becomes_a_sentence(wording: Wording, ask: str, form: str, sentence: str) -> None:
    asked = wording.asked(ask)
    assert asked is not None
    assert asked.form == form
    assert sentence in asked.sentences


@pytest.mark.parametrize("ask", ["which gauge accumulator", "how many needles brake dial"])
def test_what_is_no_sentence_comes_last(wording: Wording, ask: str) -> None:
    asked = wording.asked(ask)
    assert asked is not None and asked.rank == BARE


@pytest.mark.parametrize("ask", ["what colour lamp disagrees", "both tillers moved"])
def test_what_begins_with_no_word_of_a_question_is_left_alone(wording: Wording, ask: str) -> None:
    assert wording.asked(ask) is None


def test_a_bound_comes_before_what_it_bounds() -> None:
    assert smooth("tiller deflection, maximum either way") == "maximum tiller deflection either way"
    assert smooth("wheelbase") == "wheelbase"


NEAR = [(230, "kt", 5), (20_000, "ft", 500), (0.6, "Mach", 0.01), (8, "deg", 1)]


@pytest.mark.parametrize(("value", "unit", "step"), NEAR)
def test_amounts_near_a_limit_are_round(value: float, unit: str, step: float) -> None:
    assert step_of(value, unit) == step


@pytest.mark.parametrize(
    ("title", "form", "sentence"),
    [
        ("where the spare lamp is", "place", "Where is the spare lamp?"),
        ("what a spare lamp does", "fact", "What does a spare lamp do?"),
        ("the meaning of a dark lamp", "meaning", "What does a dark lamp mean?"),
        ("how to change the lamp", "fact", "How do you change the lamp?"),
        ("why there is a spare lamp", "reason", "Explain why there is a spare lamp."),
        ("who changes the lamp", "who", "Who changes the lamp?"),
        ("which lamp is changed first", "fact", "Say which lamp is changed first."),
        ("the colour of the lamp", "fact", "What is the colour of the lamp?"),
        ("the lamp with the power off", "fact", "What do you know of the lamp with the power off?"),
    ],
)
def test_a_title_becomes_a_sentence(wording: Wording, title: str, form: str, sentence: str) -> None:
    found, shapes = wording.titled(title)
    assert found == form
    assert sentence in shapes[0]
