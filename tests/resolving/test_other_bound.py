"""A maximum is no answer to a question for the minimum, nor what holds for one act an answer for another."""

from __future__ import annotations

import pytest

from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn

OTHER = ["min speed for gear extension", "lowest brake temp for take off", "minimum tyre speed", "the minimum VLE"]
OWN = [("max towing angle", "85°"), ("min chrome nose", "90 mm"), ("minimum accumulator to park", "2,000 psi")]


@pytest.mark.parametrize("text", OTHER)
def test_the_other_bound_is_not_told(knowledge: Knowledge, text: str) -> None:
    answer = answer_turn(text, Context(), knowledge)[0]
    assert answer.outcome == "decline"
    assert "No minimum of that is stated" in answer.text


@pytest.mark.parametrize(("text", "figure"), OWN)
def test_the_own_bound_is(knowledge: Knowledge, text: str, figure: str) -> None:
    assert figure in answer_turn(text, Context(), knowledge)[0].text


def test_what_holds_for_extending_is_not_told_for_retracting(knowledge: Knowledge) -> None:
    answer = answer_turn("maximum altitude for retracting", Context(), knowledge)[0]
    assert answer.outcome != "answer"
