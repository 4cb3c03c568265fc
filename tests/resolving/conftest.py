"""The delivered knowledge, opened once, and a function that asks it single questions."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge, open_knowledge
from assistant.conversation.turn import answer_turn


@pytest.fixture(scope="session")
def knowledge() -> Knowledge:
    found, problems = open_knowledge(type_id="aldermere_120", cache_dir="")
    assert found is not None, "\n".join(map(str, problems))
    return found


@pytest.fixture(scope="session")
def ask(knowledge: Knowledge) -> Callable[[str], Answer]:
    return lambda text: answer_turn(text, Context(), knowledge)[0]
