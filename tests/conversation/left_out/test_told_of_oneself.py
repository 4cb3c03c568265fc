"""What people tell of themselves beside the question is no part of it; a state told there, or what it points at, is."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, DECLINE, Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("text", "entry"),
    [
        ("I came over from another type last month. tiller limit 30 kt", "tiller-limit"),
        ("We're still on the stand, boarding is slow. main tyre psi?", "main-tyre-pressure"),
        ("My wife, who is also a pilot, asked me yesterday. Where is the brake dial?", "brake-dial-location"),
        ("What is the wheelbase? Studying on the train here.", "wheelbase"),
        ("I failed this one in the written exam. How long does a free fall take?", "free-fall-time"),
    ],
)
def test_it_keeps_no_question_from_being_understood(talk: Talk, text: str, entry: str) -> None:
    (answer,) = talk(text)
    assert (answer.outcome, answer.entry) == (ANSWER, entry)
    assert answer.question == text


def test_a_variant_named_there_is_the_one_asked_of(talk: Talk) -> None:
    (answer,) = talk("I'm moving across to the long body next month. What do the main tyres run at?")
    assert answer.text.startswith("205 psi")


def test_a_state_named_there_counts(talk: Talk) -> None:
    (answer,) = talk("In the sim yesterday we lost System 2. Which braking mode?")
    assert answer.text.startswith("ALTERNATE braking")


def test_what_is_asked_of_something_told_there_is_not_of_the_aeroplane(talk: Talk) -> None:
    (answer,) = talk("My boss drives a bus. What does it weigh?")
    assert answer.outcome == DECLINE
