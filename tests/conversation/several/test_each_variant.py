"""A calculation, a schedule or a verdict asked for on two variants named together is told of each."""

from __future__ import annotations

import pytest

from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn


@pytest.mark.parametrize(
    ("question", "one", "other"),
    [
        ("tiller limit at 30 kt on the 120 vs the 120L", "On the 120: 47.4°", "On the 120L: 49.7°"),
        ("smallest pavement 180 turn at 60 degrees 120 vs 120L", "On the 120: 32 m", "On the 120L: 36 m"),
        ("is 240 too hot for takeoff on the 120 and on the 120L", "On the 120: Within", "On the 120L: Outside"),
        ("pedal limit at 60 on the 120 and the 120L", "On the 120: 5.0°", "On the 120L: 5.0°"),
    ],
)
def test_each_is_told(knowledge: Knowledge, question: str, one: str, other: str) -> None:
    answer, _ = answer_turn(question, Context(), knowledge)

    assert answer.text.startswith(one)
    assert other in answer.text


def test_a_variant_only_likened_to_is_not_asked_of(knowledge: Knowledge) -> None:
    text = "I thought the 120L could depart with brakes at 240, the same as the short one, is that right"

    assert answer_turn(text, Context(), knowledge)[0].text.startswith("Outside AOM 32.01.6")
