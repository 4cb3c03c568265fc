"""Small talk around a turn, and a turn whose own words ask of what was spoken of."""

from __future__ import annotations

import pytest

from assistant.conversation.context import Context
from assistant.conversation.turn import answer_turn
from assistant.resolving.knowing import Knowledge

ASIDES = (
    "right while im stuck in traffic {}",
    "fair enough, {}",
    "hang on my phone's ringing. ok {}",
    "let me write that down. {}",
    "{} my mate wants to know",
)


@pytest.mark.parametrize("aside", ASIDES)
@pytest.mark.parametrize("turn", ["where do i read that up", "what about 210"])
def test_small_talk_changes_nothing(aside: str, turn: str, knowledge: Knowledge) -> None:
    _, context = answer_turn("can I raise the gear at 200", Context(), knowledge)
    plain, _ = answer_turn(turn, context, knowledge)
    beside, _ = answer_turn(aside.format(turn), context, knowledge)
    assert beside.text == plain.text


SOURCES = ("where's all that laid down", "who wants that", "wheres it written", "whos rule is that")


@pytest.mark.parametrize("turn", SOURCES)
def test_a_source_is_asked_for_in_many_words(turn: str, knowledge: Knowledge) -> None:
    _, context = answer_turn("max speed for free fall extension", Context(), knowledge)
    answer, _ = answer_turn(turn, context, knowledge)
    assert answer.text.startswith("LIM 3.1")
