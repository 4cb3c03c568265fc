"""The delivered knowledge, and a marker that remembers what each question needs."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.marking.mark import Marker


@pytest.fixture(scope="session")
def marker(knowledge: Knowledge) -> Marker:
    return Marker(knowledge)
