"""The delivered knowledge, opened once for all tests that ask it."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge, open_knowledge


@pytest.fixture(scope="session")
def knowledge() -> Knowledge:
    found, problems = open_knowledge(type_id="aldermere_120", cache_dir="")
    assert found is not None, "\n".join(map(str, problems))
    return found
