"""From a text to sound: the one interface that all voices have, and the voice that an engine's process gives."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Mapping
from typing import Any, Protocol

from assistant.frozen import NamedTuple
from assistant.voice.speaking.child import Child
from assistant.voice.speaking.phrases import for_engine
from assistant.voice.speaking.problem import VoiceProblem
from assistant.voice.speaking.settings import VoiceSettings
from assistant.voice.speaking.sounds import Sound, read_sound

_PATIENCE_S, _PATIENCE_A_LETTER_S = 12.0, 0.05
"""Seconds to wait for a phrase: for a slow start, and for each letter of a slow voice."""
_ENGINE = "assistant.voice.speaking.engine_worker"
_HUMAN = "assistant.voice.speaking.human_worker"


class Synthesiser(Protocol):
    """What makes sound of a text."""

    def synthesise(self, text: str, settings: VoiceSettings) -> Sound:
        """Return a spoken text as sound. Raises VoiceProblem."""
        ...

    def close(self) -> None:
        """Let go of whatever it holds; it may be asked again."""
        ...


class VoiceName(NamedTuple):
    """A voice that may be chosen: the engine's name for it, the name that people read, its languages."""

    id: str
    name: str
    languages: tuple[str, ...]


class EngineSynthesiser:
    """A voice in a process of its own; one that hangs or ends is started anew, once, for the same phrase."""

    def __init__(
        self, respelt: Mapping[str, str], human: bool = False, module: str = "", patience_s: float = _PATIENCE_S
    ) -> None:
        self._respelt = respelt
        self._patience_s = patience_s
        called = "the more human voice" if human else "the voice"
        self._child = Child(module or (_HUMAN if human else _ENGINE), called=called)

    def synthesise(self, text: str, settings: VoiceSettings) -> Sound:
        """Return a spoken text as sound. Raises VoiceProblem."""
        said = for_engine(text, self._respelt)
        number, path = tempfile.mkstemp(prefix="downlock-", suffix=".wav")
        os.close(number)
        try:
            message = {"say": said, "file": path, "rate": settings.rate, "voice": settings.voice}
            self._asked(message, self._patience_s + _PATIENCE_A_LETTER_S * len(said))
            return read_sound(path)
        finally:
            os.remove(path)

    def voices(self) -> list[VoiceName]:
        """Return the voices that may be chosen. Raises VoiceProblem."""
        found = self._asked({"voices": True}, self._patience_s).get("voices", [])
        return [VoiceName(str(each[0]), str(each[1]), tuple(map(str, each[2]))) for each in found]

    def close(self) -> None:
        """End the process."""
        self._child.end()

    def _asked(self, message: dict[str, Any], timeout_s: float) -> dict[str, Any]:
        try:
            return self._child.ask(message, timeout_s)
        except VoiceProblem:
            if self._child.running:  # it answered: what it says holds
                raise
            return self._child.ask(message, timeout_s)


class ChosenSynthesiser:
    """The more human voice where the settings ask for it, else the engine's; each begun when first needed."""

    def __init__(self, respelt: Mapping[str, str]) -> None:
        self._respelt = respelt
        self._engine: EngineSynthesiser | None = None
        self._human: EngineSynthesiser | None = None

    @property
    def engine(self) -> EngineSynthesiser:
        """The engine's voice."""
        self._engine = self._engine or EngineSynthesiser(self._respelt)
        return self._engine

    def synthesise(self, text: str, settings: VoiceSettings) -> Sound:
        """Return a spoken text as sound. Raises VoiceProblem."""
        if not settings.human:
            return self.engine.synthesise(text, settings)
        self._human = self._human or EngineSynthesiser(self._respelt, human=True)
        return self._human.synthesise(text, settings)

    def close(self) -> None:
        """End the processes of both."""
        for each in (self._engine, self._human):
            if each is not None:
                each.close()
