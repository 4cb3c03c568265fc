"""A microphone, a speaker and tones that are made of lists."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

import numpy as np

from assistant.voice.hearing.samples import to_pcm
from assistant.voice.sound import BLOCK, BLOCK_S, RATE


class FakeMicrophone:
    """Gives sounds block after block, as a card does; `then` is called when a sound has been given."""

    def __init__(self, sounds: Iterable[np.ndarray | Callable[[], None]]) -> None:
        self._blocks = self._cut(sounds)
        self.seconds = 0.0

    def read(self) -> bytes | None:
        self.seconds += BLOCK_S
        return next(self._blocks, None)

    def _cut(self, sounds: Iterable[np.ndarray | Callable[[], None]]) -> Iterator[bytes]:
        for sound in sounds:
            if callable(sound):
                sound()
                continue
            pcm = to_pcm(np.pad(sound, (0, -len(sound) % BLOCK)))
            for at in range(0, len(pcm), 2 * BLOCK):
                yield pcm[at : at + 2 * BLOCK]


class FakeSpeaker:
    """Says what it is told as long as the microphone gives `blocks` more blocks; notes all, and what was cut off."""

    def __init__(self, blocks: int = 0) -> None:
        self.said: list[str] = []
        self.stopped: list[str] = []
        self._blocks = blocks
        self._left = 0

    def say(self, text: str) -> None:
        self.said.append(text)
        self._left = self._blocks

    def stop(self) -> None:
        if self._left > 0:
            self.stopped.append(self.said[-1])
        self._left = 0

    def wait(self, timeout_s: float | None = None) -> bool:
        self._left = 0
        return True

    @property
    def speaking(self) -> bool:
        self._left -= 1
        return self._left > 0


class FakeTones:
    def __init__(self) -> None:
        self.given: list[str] = []

    def sound(self, tone: str) -> None:
        self.given.append(tone)


def silence(seconds: float) -> np.ndarray:
    return np.zeros(int(seconds * RATE), dtype=np.float32)
