"""The delivered knowledge, and a marker that remembers what each question needs."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge, open_knowledge
from assistant.practice.marking.mark import Marker


@pytest.fixture(scope="session")
def knowledge() -> Knowledge:
    found, problems = open_knowledge(type_id="aldermere_120", cache_dir="")
    assert found is not None, "\n".join(map(str, problems))
    return found


@pytest.fixture(scope="session")
def marker(knowledge: Knowledge) -> Marker:
    return Marker(knowledge)
