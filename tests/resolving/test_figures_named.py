"""The question turned round: what a figure is the figure of."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, DECLINE, Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    ("question", "record"),
    [
        ("What is 85 degrees the limit of?", "towing-angle"),
        ("tell me what 85 degrees is the limit of", "towing-angle"),
        ("which limit is 205 knots", "vlo-retraction"),
        ("What does 1,400 psi stand for?", "accumulator-empty-pressure"),
        ("195 knots is the limit for what", "tyre-speed"),
        ("what is one hundred and ten knots the figure of", "pedal-zero-speed"),
        ("what's so special about 20,000 ft?", "extension-altitude"),
        ("15 kt is the top speed for what on the taxiway", "taxi-turn"),
    ],
)
def test_a_figure_is_told_of_what_it_is(ask: Ask, question: str, record: str) -> None:
    answer = ask(question)
    assert (answer.outcome, answer.entry) == (ANSWER, record)


def test_a_figure_that_nothing_states_is_declined(ask: Ask) -> None:
    assert ask("what is 333 knots the limit of").outcome == DECLINE


def test_a_unit_wanted_is_no_question_what_a_figure_is_of(ask: Ask) -> None:
    assert ask("what is 85 psi in bar").entry == "conversion"
