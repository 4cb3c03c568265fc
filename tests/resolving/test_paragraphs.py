"""A paragraph that is named is where the answer is looked for."""

from __future__ import annotations

import pytest

from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn

TOLD = [
    ("what does LIM 3.2 say about towing", "85°"),
    ("read me ABN 32.2", "Slow to 205 kt or less"),
    ("AOM 32.44.6", "85%"),
    ("sop b4", "FIRM"),
    ("what does paragraph 32.30.1 say", "two detents"),
    ("what does LIM 3.2 say about the parking brake", "2,000 psi"),
    ("what changed in LIM 7", "formerly 200 kt"),
]


@pytest.mark.parametrize(("text", "says"), TOLD)
def test_what_stands_in_a_paragraph_is_told(knowledge: Knowledge, text: str, says: str) -> None:
    answer = answer_turn(text, Context(), knowledge)[0]
    assert answer.outcome == "answer"
    assert says in answer.text


def test_of_a_section_it_is_asked_back_which_paragraph(knowledge: Knowledge) -> None:
    answer = answer_turn("what is in AOM 32.47", Context(), knowledge)[0]
    assert answer.outcome == "clarify"
    assert "several paragraphs" in answer.text


@pytest.mark.parametrize("text", ["LIM 3.3", "what does AOM 32.99 say", "ABN 32.20 please"])
def test_a_paragraph_that_is_not_there_is_declined(knowledge: Knowledge, text: str) -> None:
    assert answer_turn(text, Context(), knowledge)[0].outcome == "decline"
