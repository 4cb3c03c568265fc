"""What a figure was before, since when it holds, what somebody believes: of the figure told last."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer
from assistant.conversation.control_words.controls_of_changes import asks_former, asks_since, believes

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize("text", ["and what was it before", "what did that replace", "the old figure?"])
def test_what_it_was_before(text: str) -> None:
    assert asks_former(text)


@pytest.mark.parametrize("text", ["since when is it the new one", "when did they bring that in"])
def test_since_when(text: str) -> None:
    assert asks_since(text)


@pytest.mark.parametrize("text", ["what do I do before that", "when do I lower the gear", "what was the brake doing"])
def test_no_change_is_asked(text: str) -> None:
    assert not asks_former(text)
    assert not asks_since(text)


@pytest.mark.parametrize("text", ["thought that was twelve", "could have sworn it was 280", "sure it's not 12"])
def test_what_somebody_believes(text: str) -> None:
    assert believes(text)


@pytest.mark.parametrize(
    ("turns", "opening"),
    [
        (("taxi speed in a 45 degree turn", "and eighty", "thought that was twelve"), "10 kt"),
        (("what was the retraction speed before", "and the brake temperature"), "Brake temperature, maximum"),
        (("landing distance factor without anti-skid", "what was it before"), "Landing distance factor"),
        (("speed at which the pedals fade to nothing", "i had a hundred for that"), "110 kt"),
        (("FIRM selected, deceleration for ON TARGET", "got ninety percent written in my notes"), "ON TARGET lights"),
        (("maximum speed to raise the gear", "was 200 okay then"), "Within"),
        (("gear extension speed", "what was it before"), "Nothing loaded says"),
    ],
)
def test_it_is_of_the_figure_told_last(talk: Talk, turns: tuple[str, ...], opening: str) -> None:
    assert talk(*turns)[-1].text.startswith(opening)
