"""The delivered knowledge, opened once for all tests that ask it."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, settings

from assistant.conversation.opening import Knowledge, open_knowledge

# What holds is asserted, and never how long it took: a busy machine fails no test.
settings.register_profile("at_any_pace", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("at_any_pace")


@pytest.fixture(scope="session")
def knowledge() -> Knowledge:
    found, problems = open_knowledge(type_id="aldermere_120", cache_dir="")
    assert found is not None, "\n".join(map(str, problems))
    return found
