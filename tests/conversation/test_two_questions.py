"""Two questions in one turn are both answered, in their order; what is one question stays one."""

from __future__ import annotations

import pytest

from assistant.conversation.context import Context
from assistant.conversation.turn import answer_turn
from assistant.resolving.knowing import Knowledge


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("where is the horn button and what does it do", ("by the gear lever", "silences the horn")),
        ("how fast may I extend the gear and how high", ("230 kt", "20,000 ft")),
        ("what does BRAKE HEAT mean and at what temperature does it come on", ("take-off waits", "temperature at which")),
        ("System 2 has failed: can I use autobrake, and what's the max pressure", ("No autobrake", "2,600 psi")),
        ("is the steering available after free fall and why not", ("steering is lost", "same valve")),
    ],
)
def test_both_are_answered_in_order(question: str, told: tuple[str, str], knowledge: Knowledge) -> None:
    text = answer_turn(question, Context(), knowledge)[0].text
    assert 0 <= text.find(told[0]) < text.find(told[1])


@pytest.mark.parametrize(
    ("question", "once"),
    [
        ("Once the free-fall lever is pulled, how long before GEAR MISMATCH can come on?", "30 s"),
        ("The gear lever is stuck down after lift-off. Which button frees it?", "override button"),
        ("What colour is GEAR NOT LOCKED and what noise comes with it?", "GEAR NOT LOCKED"),
    ],
)
def test_one_question_is_answered_once(question: str, once: str, knowledge: Knowledge) -> None:
    assert answer_turn(question, Context(), knowledge)[0].text.count(once) == 1
