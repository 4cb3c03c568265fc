"""The thing that a question is after must be known to what answers it."""

from __future__ import annotations

import pytest

from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn

OUTSIDE = ["how heavy must the tug be", "turn radius of the tug", "how long is the bypass pin", "how thick is the leg"]
INSIDE = [("how long is the wheelbase", "13.2"), ("pressure of the nose tyres", "140")]


@pytest.mark.parametrize("text", OUTSIDE)
def test_the_size_of_a_thing_that_is_not_told_is_declined(knowledge: Knowledge, text: str) -> None:
    assert answer_turn(text, Context(), knowledge)[0].outcome == "decline"


@pytest.mark.parametrize(("text", "figure"), INSIDE)
def test_the_size_of_a_thing_that_is_told_is_answered(knowledge: Knowledge, text: str, figure: str) -> None:
    assert figure in answer_turn(text, Context(), knowledge)[0].text


COUNTED = ["how many uplocks are there", "how many fuse plugs are there", "how hot can the accumulator get"]


@pytest.mark.parametrize("text", COUNTED)
def test_what_is_counted_is_not_answered_by_what_it_belongs_to(knowledge: Knowledge, text: str) -> None:
    assert answer_turn(text, Context(), knowledge)[0].outcome == "decline"
