"""A bare name asks for the calculation, a figure's former value is told, what is crept past was exceeded."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, CLARIFY, Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    "question",
    [
        "how far till we stop on autobrake?",
        "stopping distance with the autobrake",
        "what was the energy in the brakes after my reject",
        "how much energy goes in the brakes in a reject",
    ],
)
def test_a_bare_name_asks_back_for_what_it_is_calculated_from(ask: Ask, question: str) -> None:
    assert ask(question).outcome == CLARIFY


@pytest.mark.parametrize(
    ("question", "entry"),
    [
        ("how is an autobrake stop planned", "autobrake-planning"),
        ("how is the autobrake stopping distance worked out", "autobrake-planning"),
        ("what share of energy do the brakes take in an RTO", "share-rto"),
        ("how is the pavement for a 180 worked out", "turn-formula"),
        ("what did the factor for no anti-skid use to be before the last checklist revision",
         "change-landing-distance-factor"),
        ("what did the pedal fade speed used to be before the last AOM revision", "change-pedal-limit"),
        ("we let the speed get past the retraction limit, what are we obliged to do", "limit-exceeded-procedure"),
        ("We let it creep past VLE. What are we obliged to do about it?", "limit-exceeded-procedure"),
        ("When do I have no brakes at all?", "braking"),
        ("The lever is stuck after lift-off. What have I got to free it?", "override-button"),
        ("how many wheels including the nose ones", "wheels-in-all"),
        ("the loader has to get to the main wheels with BRAKE HEAT on: which direction", "hot-brake-approach"),
        ("which way do the wheels retract", "gear-legs"),
    ],
)  # fmt: skip
def test_what_is_asked_in_few_words_is_told(ask: Ask, question: str, entry: str) -> None:
    answer = ask(question)

    assert answer.outcome == ANSWER
    assert answer.entry == entry


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("How long after up and locked does the gear lose its hydraulic supply, and what is that for?", "leak"),
        ("How long is the gear left down after slush, and what is that for?", "spin the slush"),
    ],
)
def test_what_something_is_for_is_told_beside_it(ask: Ask, question: str, says: str) -> None:
    assert says in ask(question).text


def test_a_label_that_comes_on_while_taxiing_out_shows(ask: Ask) -> None:
    assert "castor" in ask("STEER LOST came on taxiing out, what has the aeroplane lost").text
