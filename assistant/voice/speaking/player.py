"""Playing sound without waiting for it: the interface, and the sound card behind a process of its own."""

from __future__ import annotations

import base64
import threading
from typing import Protocol

from assistant.voice.speaking.child import Child, Message
from assistant.voice.speaking.sounds import Sound, sound_bytes

_MODULE = "assistant.voice.speaking.player_worker"
_PATIENCE_S = 8.0


class Player(Protocol):
    """What plays sounds, one after the other."""

    def play(self, sound: Sound) -> None:
        """Queue a sound behind those that wait, and return at once. Raises VoiceProblem."""
        ...

    def stop(self) -> None:
        """Fall silent at once, and forget what waits."""
        ...

    def wait(self) -> None:
        """Return once nothing is being played."""
        ...

    def close(self) -> None:
        """Let go of the sound card; it may be asked to play again."""
        ...


class CardPlayer:
    """The sound card of this machine, opened when the first sound comes."""

    def __init__(self, module: str = _MODULE) -> None:
        self._child = Child(module, called="the sound card", on_message=self._heard)
        self._changed = threading.Condition()
        self._sent = 0
        self._silent_after = 0
        """Number of the last sound sent, and of the one after which all was silent."""

    def play(self, sound: Sound) -> None:
        """Queue a sound behind those that wait. Raises VoiceProblem."""
        with self._changed:
            self._sent += 1
            number = self._sent
        samples = base64.b64encode(sound_bytes(sound)).decode("ascii")
        try:
            self._child.ask({"samples": samples, "rate": sound.rate, "number": number}, _PATIENCE_S)
        except BaseException:
            self._fell_silent(number)
            raise

    def stop(self) -> None:
        """Fall silent at once, and forget what waits."""
        with self._changed:
            sounding = self._silent_after < self._sent
        self._fell_silent(self._sent)
        if sounding and self._child.running:
            self._child.send({"stop": True})

    def wait(self) -> None:
        """Return once nothing is being played."""
        with self._changed:
            self._changed.wait_for(lambda: self._silent_after >= self._sent)

    def close(self) -> None:
        """End the process, and with it whatever sounds."""
        self._child.end()
        self._fell_silent(self._sent)

    def _heard(self, message: Message) -> None:
        """Note what the process tells by itself: that nothing is left to play, or that it has ended."""
        self._fell_silent(int(message.get("number", self._sent)))

    def _fell_silent(self, number: int) -> None:
        with self._changed:
            self._silent_after = max(self._silent_after, number)
            self._changed.notify_all()
