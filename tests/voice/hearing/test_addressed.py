"""Other talk is told from questions of the trade, though it has words of the trade in it."""

from __future__ import annotations

import pytest

from assistant.answering.answer import DECLINE
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn
from assistant.voice.hearing.addressed import SURELY, goes_on, is_addressed
from assistant.voice.hearing.everyday import Everyday, open_everyday
from assistant.voice.hearing.usage import Usage


def addressed(text: str, knowledge: Knowledge) -> bool:
    answer, _ = answer_turn(text, Context(), knowledge)
    return answer.outcome != DECLINE and is_addressed(text, answer, knowledge) > 0


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

    assert (answer.outcome != DECLINE and goes_on(text, answer, before.answer, knowledge) > 0) is meant


@pytest.fixture(scope="module")
def everyday(knowledge: Knowledge) -> Everyday:
    found = open_everyday(Usage(knowledge.base.word_list("word_order").splitlines()))
    assert found is not None
    return found


IDLE = (
    "how long until we arrive", "did you lock the door", "can you pick up the kids at four", "stop it you two",
    "how do I get to the centre", "which way do I go now", "did it come down", "why are you braking",
    "what's the time difference to New York", "how do you turn this thing off", "can I turn here",
)


@pytest.mark.parametrize("text", IDLE)
def test_what_people_ask_one_another_is_not_for_this_listener(
    knowledge: Knowledge, everyday: Everyday, text: str
) -> None:
    answer, _ = answer_turn(text, Context(), knowledge)

    assert is_addressed(text, answer, knowledge, lean=everyday.lean(text)) < SURELY or answer.outcome == DECLINE


@pytest.mark.parametrize("text", [
    "why didn't you call me yesterday", "this lever doesn't work", "the pedal bin is full again", "what did he say",
    "could you pass me the charger", "have you seen the news", "in one hundred yards keep right",
    "do you want to stop for coffee", "how many people are coming on Saturday",
])  # fmt: skip
def test_nor_does_it_go_on_from_an_answer(knowledge: Knowledge, everyday: Everyday, text: str) -> None:
    _, before = answer_turn("max tyre speed", Context(), knowledge)
    answer, _ = answer_turn(text, before, knowledge)

    assert answer.outcome == DECLINE or goes_on(text, answer, before.answer, knowledge, everyday.lean(text)) < SURELY


@pytest.mark.parametrize("text", [
    "turn left here", "mind the lorry", "you're doing sixty", "how fast are you going", "which gear are you in",
    "a van is turning right", "turn the heating down", "lock the back doors", "brake brake brake", "close your door",
    "in three hundred yards turn right", "and 300 yards turn right", "keep left at the fork", "stay in the right lane",
    "what's the speed limit here", "give way to the right", "is your handbrake on",
])  # fmt: skip
def test_talk_of_the_road_is_never_answered(knowledge: Knowledge, everyday: Everyday, text: str) -> None:
    for asked in ("how much steering does the pedal give at 25 knots", "can I extend the gear at 240 knots"):
        _, before = answer_turn(asked, Context(), knowledge)
        answer, _ = answer_turn(text, before, knowledge)
        lean = everyday.lean(text)

        assert answer.outcome == DECLINE or not goes_on(text, answer, before.answer, knowledge, lean)


@pytest.mark.parametrize("text", ["the brakes are hot", "my brakes feel spongy", "our steering is stiff"])
def test_what_is_only_told_is_put_up_at_most(knowledge: Knowledge, everyday: Everyday, text: str) -> None:
    answer, _ = answer_turn(text, Context(), knowledge)

    assert answer.outcome == DECLINE or is_addressed(text, answer, knowledge, lean=everyday.lean(text)) < SURELY


@pytest.mark.parametrize("text", [
    "parking brake", "gear mismatch", "brake fans", "VLE", "V L E", "wheelbase", "tiller", "tow limit",
    "normal extension time", "what is the wheelbase", "how many wheels", "how do i steer",
])  # fmt: skip
def test_few_words_of_the_trade_are_a_question(knowledge: Knowledge, everyday: Everyday, text: str) -> None:
    answer, _ = answer_turn(text, Context(), knowledge)

    assert is_addressed(text, answer, knowledge, lean=everyday.lean(text)) == SURELY
