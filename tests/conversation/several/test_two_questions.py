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
        ("what does BRAKE HEAT mean and at what temperature does it show", ("take-off waits", "temperature at which")),
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


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("tiller limit at 20, 40 and 60 knots", ("61.1°", "33.7°", "13.3°")),
        ("pedal limit at 40 and 80", ("7.0°", "3.0°")),
        ("kinetic energy at 120 and 140 knots at 50 tonnes", ("At 120 kt: 95.3 MJ", "At 140 kt: 129.7 MJ")),
        ("hydroplaning speed at 140 and 190 psi", ("At 140 psi: 106 kt", "At 190 psi: 124 kt")),
    ],
)
def test_each_amount_listed_is_answered(question: str, told: tuple[str, ...], knowledge: Knowledge) -> None:
    text = answer_turn(question, Context(), knowledge)[0].text
    places = [text.find(part) for part in told]
    assert places == sorted(places)
    assert places[0] >= 0


def test_amounts_that_one_answer_needs_are_not_parted(knowledge: Knowledge) -> None:
    answer, _ = answer_turn("the brakes read 80, 110, 95 and 240, may we depart?", Context(), knowledge)
    assert "At 80" not in answer.text


def test_a_part_that_only_tells_something_is_not_answered_by_itself(knowledge: Knowledge) -> None:
    told = "I'm told to hang the gear out for hot brakes. What's the maximum IAS for lowering it first?"
    assert answer_turn(told, Context(), knowledge)[0].text.startswith("230 kt")


def test_when_a_normal_result_is_so_is_asked_for_itself(knowledge: Knowledge) -> None:
    assert "White bars: NORMAL" in answer_turn("when are the bars white", Context(), knowledge)[0].text
