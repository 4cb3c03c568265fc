"""Help for who does not know what to say, and STANDBY as it is typed: neither is a question, nor loses one."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize("asked", ["help", "Help!", "what can you do", "what can I ask?", "help me please"])
@pytest.mark.parametrize("before", [(), ("pedal limit at 90 kt",)])
def test_help_is_told_at_any_time(talk: Talk, asked: str, before: tuple[str, ...]) -> None:
    told = talk(*before, asked)[-1]

    assert told.outcome == ANSWER
    assert told.text.startswith("Ask in any words about")


def test_what_was_spoken_of_stands_after_help(talk: Talk) -> None:
    assert talk("pedal limit at 90 kt", "help", "and at 60?")[-1].text.startswith("5.0°")


@pytest.mark.parametrize("said", ["stand by", "standby", "stand-by", "Stand by, please", "wait one"])
def test_standby_waits_and_loses_nothing(talk: Talk, said: str) -> None:
    first, waiting, on, again, more = talk("pedal limit at 90 kt", said, "go on", "say again", "and at 60?")

    assert waiting.text.startswith("Standing by.")
    assert on.text == "Ready for your next question."
    assert again.text == first.text
    assert more.text.startswith("5.0°")


def test_going_on_with_a_procedure_is_its_next_step(talk: Talk) -> None:
    told = talk("what are the steps for no braking on landing", "next", "go on")[-1]

    assert "Ready" not in told.text


@pytest.mark.parametrize("question", ["what does STANDBY mean", "what can you do about hot brakes"])
def test_a_question_on_it_stays_one(talk: Talk, question: str) -> None:
    assert not talk(question)[-1].text.startswith(("Standing by", "Ask in any words"))
