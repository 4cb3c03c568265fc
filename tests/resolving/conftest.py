"""The delivered knowledge, opened once, and a function that asks it single questions."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn


@pytest.fixture(scope="session")
def ask(knowledge: Knowledge) -> Callable[[str], Answer]:
    return lambda text: answer_turn(text, Context(), knowledge)[0]
