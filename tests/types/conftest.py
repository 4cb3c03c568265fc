"""Types of the tests' own, each opened beside the project's language and without its principles."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from assistant.answering.answer import Answer
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge, open_knowledge
from assistant.conversation.turn import answer_turn
from assistant.knowledge.location import knowledge_root

HERE = Path(__file__).parent
Ask = Callable[..., Answer]


@pytest.fixture(scope="session")
def open_type(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Knowledge]:
    """Open one of the small types from a root of its own."""

    def opened(name: str) -> Knowledge:
        root = tmp_path_factory.mktemp(name)
        shutil.copytree(Path(knowledge_root()) / "language", root / "language")
        shutil.copytree(HERE / name, root / name)
        knowledge, problems = open_knowledge(str(root), name, cache_dir="")
        assert knowledge is not None, "\n".join(map(str, problems))
        return knowledge

    return opened


def asking(knowledge: Knowledge) -> Ask:
    """A function that asks turns of one conversation and returns the last answer."""

    def ask(*turns: str) -> Answer:
        context = Context()
        answer = None
        for turn in turns:
            answer, context = answer_turn(turn, context, knowledge)
        assert answer is not None
        return answer

    return ask


@pytest.fixture(scope="session")
def second(open_type: Callable[[str], Knowledge]) -> Ask:
    return asking(open_type("second"))


@pytest.fixture(scope="session")
def trade(open_type: Callable[[str], Knowledge]) -> Ask:
    return asking(open_type("trade"))
