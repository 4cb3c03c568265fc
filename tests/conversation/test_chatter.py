"""A greeting or an excuse beside the question is no part of it; what names another subject is."""

from __future__ import annotations

import pytest

from assistant.answering.answer import ANSWER, DECLINE
from assistant.conversation.context import Context
from assistant.conversation.turn import answer_turn
from assistant.resolving.knowing import Knowledge


@pytest.mark.parametrize(
    "text",
    [
        "Greetings from Oslo. How long does the gear need to retract?",
        "My oral is on Friday, be gentle! How long does the gear need to retract?",
        "hi my name is bob and im a bit rusty on all this how many seconds does the gear take to come up",
    ],
)
def test_what_is_said_beside_the_question_does_not_keep_it_from_being_understood(
    text: str, knowledge: Knowledge
) -> None:
    answer, _ = answer_turn(text, Context(), knowledge)
    assert answer.outcome == ANSWER
    assert answer.entry == "retraction-time"
    assert answer.question == text


@pytest.mark.parametrize(
    "text",
    ["My catering truck is late. How fast can it drive?", "my boss wants a yacht, max speed with gear down"],
)
def test_a_sentence_that_the_question_speaks_of_is_no_chatter(text: str, knowledge: Knowledge) -> None:
    assert answer_turn(text, Context(), knowledge)[0].outcome == DECLINE
