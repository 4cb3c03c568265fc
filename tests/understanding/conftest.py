"""The delivered knowledge, opened once."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge, open_knowledge


@pytest.fixture(scope="session")
def knowledge(tmp_path_factory: pytest.TempPathFactory) -> Knowledge:
    opened, problems = open_knowledge(cache_dir=str(tmp_path_factory.mktemp("cache")))
    assert opened is not None, problems
    return opened
