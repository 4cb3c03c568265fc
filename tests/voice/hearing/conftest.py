"""The delivered knowledge, opened once, with what hears it."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.voice.hearing.ear import Ear
from assistant.voice.hearing.endpoint import Judge, voice_judge
from assistant.voice.hearing.opening import open_ear
from assistant.voice.hearing.sounds import Sounding, dictionary


@pytest.fixture(scope="session")
def ear(knowledge: Knowledge) -> Ear:
    opened, lacks = open_ear(knowledge)
    assert lacks == "", "these tests need the first recogniser"
    return opened


@pytest.fixture(scope="session")
def sounding() -> Sounding:
    return Sounding(dictionary())


@pytest.fixture
def judge() -> Judge:
    return voice_judge()
