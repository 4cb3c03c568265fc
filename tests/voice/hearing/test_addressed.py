"""Other talk is told from questions of the trade, though it has words of the trade in it."""

from __future__ import annotations

import pytest

from assistant.answering.answer import DECLINE
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn
from assistant.voice.hearing.addressed import goes_on, is_addressed


def addressed(text: str, knowledge: Knowledge) -> bool:
    answer, _ = answer_turn(text, Context(), knowledge)
    return answer.outcome != DECLINE and is_addressed(text, answer, knowledge)


@pytest.mark.parametrize("text", [
    "this car pulls to the left when I brake", "the steering wheel is vibrating again", "my tyres need more air",
    "the brakes were making a funny noise this morning", "the light is green, you can go", "I have a flat tyre again",
    "we should lock the door before we go", "the lock on the back door is broken", "he is under a lot of pressure",
    "we land at nine and then get a taxi", "the temperature outside is 20 degrees", "you missed the turn",
    "the parking is free after eight", "both legs are tired after the run", "do not brake so hard, will you",
    "he steered the conversation away", "turn around when possible", "the doors open on the left",
    "check the tyres before the trip", "the switch is behind you", "easy on the brakes",
])  # fmt: skip
def test_talk_in_a_car_is_not_for_this_listener(knowledge: Knowledge, text: str) -> None:
    assert not addressed(text, knowledge)


@pytest.mark.parametrize("text", [
    "what is the wheelbase", "tiller limit at fifty knots", "maximum landing mass",
    "stopping distance from one thirty knots",
    "brake two eighty fans on thirty outside minutes to two fifty", "can I take off with the brakes at 255",
    "we think a tyre burst at ninety knots on the take off roll", "how many tillers are there",
    "one leg still not green after the free fall", "who is taxiing with the tiller",
])  # fmt: skip
def test_questions_of_the_trade_are(knowledge: Knowledge, text: str) -> None:
    assert addressed(text, knowledge)


@pytest.mark.parametrize(("text", "meant"), [
    ("and at fifty", True), ("and with fans on", True), ("on the one twenty L", True), ("ninety knots", True),
    ("what about the tiller", True), ("the kids want to go down to the beach", False),
    ("put it in reverse", False), ("we skidded on the ice", False),
])  # fmt: skip
def test_a_turn_may_go_on_from_the_one_before(knowledge: Knowledge, text: str, meant: bool) -> None:
    _, before = answer_turn("how much steering does the pedal give at twenty five knots", Context(), knowledge)
    answer, _ = answer_turn(text, before, knowledge)

    assert (answer.outcome != DECLINE and goes_on(text, answer, before.answer, knowledge)) is meant
