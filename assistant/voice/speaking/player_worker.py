"""The process that plays: the only one that opens a sound card, since drivers hang and print as they like.

Sounds are queued and played without a gap. `stop` empties the queue at once: what is still heard after it is the
card's own buffer, a few hundredths of a second.
"""

from __future__ import annotations

import base64
import threading
from collections import deque
from collections.abc import Generator
from typing import Any

from assistant.voice.speaking.worker import Message, Pipes

NO_CARD = "there is no sound card to play on; the text goes on"
NO_LIBRARY = "playing needs the extra speech (python3 scripts/start.py has it); the text goes on"
_BUFFER_MS = 60
_IDLE_S = 2.0
"""Seconds of nothing to play after which the card is given back to others."""


class _Card:
    """A sound card at one rate, and what is yet to be played on it."""

    def __init__(self, rate: int, pipes: Pipes) -> None:
        import miniaudio

        self.rate = rate
        self._pipes = pipes
        self._waiting: deque[bytes] = deque()
        self._busy = False
        self._number = 0
        self._lock = threading.Lock()
        self._device = miniaudio.PlaybackDevice(
            output_format=miniaudio.SampleFormat.SIGNED16, nchannels=1, sample_rate=rate, buffersize_msec=_BUFFER_MS
        )
        if str(self._device.backend).lower() == "null":
            self._device.close()
            raise miniaudio.MiniaudioError("nothing but silence to play on")
        stream = self._stream()
        next(stream)
        self._device.start(stream)

    @property
    def busy(self) -> bool:
        return self._busy

    def play(self, samples: bytes, number: int) -> None:
        with self._lock:
            self._waiting.append(samples)
            self._busy, self._number = True, number

    def stop(self) -> None:
        with self._lock:
            self._waiting.clear()

    def close(self) -> None:
        self._device.close()

    def _stream(self) -> Generator[bytes, int, None]:
        wanted = yield b""
        while True:
            wanted = yield self._next(2 * wanted)

    def _next(self, size: int) -> bytes:
        """So many bytes of what waits, with silence where nothing does."""
        with self._lock:
            taken = bytearray()
            while self._waiting and len(taken) < size:
                head = self._waiting.popleft()
                part, rest = head[: size - len(taken)], head[size - len(taken) :]
                taken += part
                if rest:
                    self._waiting.appendleft(rest)
            ended = self._busy and not taken
            self._busy = self._busy and not ended
            number = self._number
        if ended:
            self._pipes.answer(event="silent", number=number)
        return bytes(taken) + bytes(size - len(taken))


def main(arguments: tuple[str, ...] = ()) -> None:
    """Play what comes until whoever started this process is gone."""
    pipes = Pipes()
    card: Any = None
    while True:
        message = pipes.next_message(_IDLE_S)
        if message is None:
            if card is not None and not card.busy:
                card.close()
                card = None
            continue
        try:
            card = _obeyed(message, card, pipes)
        except ImportError:
            pipes.answer(problem=NO_LIBRARY)
        except Exception:  # the library raises what its backend gives it: no card, a busy one, one unplugged
            card = None
            pipes.answer(problem=NO_CARD)


def _obeyed(message: Message, card: Any, pipes: Pipes) -> Any:
    if message.get("stop"):
        if card is not None:
            card.stop()
        return card
    rate = int(message["rate"])
    if card is None or card.rate != rate:
        if card is not None:
            card.close()
        card = _Card(rate, pipes)
    card.play(base64.b64decode(message["samples"]), int(message["number"]))
    pipes.answer(playing=True)
    return card
