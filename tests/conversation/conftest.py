"""The delivered knowledge, opened once, and a function that holds conversations with it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn


@pytest.fixture(scope="session")
def talk(knowledge: Knowledge) -> Callable[..., list[Answer]]:
    """Ask some turns of one fresh conversation; return all answers."""

    def talked(*turns: str) -> list[Answer]:
        context, answers = Context(), []
        for turn in turns:
            answer, context = answer_turn(turn, context, knowledge)
            answers.append(answer)
        return answers

    return talked
