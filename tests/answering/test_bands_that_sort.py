"""A rule whose sides each say what to do has no side outside it; one that bounds something has."""

import pytest

from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn


@pytest.mark.parametrize(
    ("question", "begins"),
    [
        ("tyre burst suspected on the take-off roll at 72 kt", "Tyre burst suspected on take-off at 72 kt: below 100"),
        ("I think a tyre went at 118 knots on take-off", "Tyre burst suspected on take-off at 118 kt: at 100 kt or"),
        ("main tyre cold at 160 psi", "Outside AOM 32.05.7: main tyre pressure"),
        ("STEER switch recycled at 44 kt", "Outside ABN "),
    ],
)
def test_what_an_answer_on_a_reading_opens_with(knowledge: Knowledge, question: str, begins: str) -> None:
    answer, _ = answer_turn(question, Context(), knowledge)

    assert answer.text.startswith(begins)
