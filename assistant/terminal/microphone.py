"""The microphone of this machine, block by block, and the one key beside it."""

from __future__ import annotations

import queue
import sys
from collections.abc import Callable, Generator
from types import TracebackType
from typing import Any

from assistant.terminal.screen import is_terminal
from assistant.voice.hearing.recognising import HearingProblem
from assistant.voice.hearing.samples import HOW_TO_INSTALL, quietly
from assistant.voice.sound import BLOCK, RATE, Microphone

_BUFFER_MS = 64
_PATIENCE_S = 5.0
"""A microphone that gives nothing for so long has been taken away."""
_MOST_WAITING = 1000
"""Blocks kept while an utterance is being understood: half a minute."""


class CardMicrophone:
    """The microphone that the machine uses by default."""

    def __init__(self, otherwise: str = "leave out --hands-free") -> None:
        """Open the microphone. Raises HearingProblem when there is none, which tells what to do otherwise."""
        try:
            import miniaudio
        except (ImportError, OSError):
            raise HearingProblem(f"miniaudio is not installed: {HOW_TO_INSTALL}") from None
        self._blocks: queue.Queue[bytes] = queue.Queue(_MOST_WAITING)
        self._rest = b""
        taker = self._taker()
        next(taker)
        try:
            with quietly():
                self._device: Any = miniaudio.CaptureDevice(
                    miniaudio.SampleFormat.SIGNED16, nchannels=1, sample_rate=RATE, buffersize_msec=_BUFFER_MS
                )
                self._device.start(taker)
        except miniaudio.MiniaudioError:
            raise HearingProblem(f"no microphone can be opened: connect one, or {otherwise}") from None

    def _taker(self) -> Generator[None, bytes, None]:
        """Take what the card gives, and cut it into blocks; what nobody fetches for half a minute is dropped."""
        while True:
            self._rest += bytes((yield))
            size = 2 * BLOCK
            while len(self._rest) >= size:
                block, self._rest = self._rest[:size], self._rest[size:]
                try:
                    self._blocks.put_nowait(block)
                except queue.Full:
                    continue

    def read(self) -> bytes | None:
        """Return the next block; None once the microphone gives nothing any more."""
        try:
            return self._blocks.get(timeout=_PATIENCE_S)
        except queue.Empty:
            return None

    def close(self) -> None:
        """Let go of the microphone."""
        self._device.close()


class Key:
    """Any key of the terminal, seen without waiting; Ctrl-C still interrupts. Used in a `with`."""

    def __init__(self) -> None:
        self._before: Any = None
        self.works = is_terminal(sys.stdin)

    def __enter__(self) -> Key:
        if self.works and sys.platform != "win32":
            import termios
            import tty

            self._before = termios.tcgetattr(sys.stdin.fileno())
            tty.setcbreak(sys.stdin.fileno())
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._before is not None:
            import termios

            termios.tcsetattr(sys.stdin.fileno(), termios.TCSADRAIN, self._before)

    def pressed(self) -> bool:
        """Return whether a key was pressed since this was last asked."""
        if not self.works:
            return False
        return _pressed_windows() if sys.platform == "win32" else _pressed_elsewhere()


class Hushing:
    """A microphone beside which a key silences what is being said."""

    def __init__(self, microphone: Microphone, pressed: Callable[[], bool], hush: Callable[[], None]) -> None:
        self._microphone = microphone
        self._pressed = pressed
        self._hush = hush

    def read(self) -> bytes | None:
        """Return the next block, after a look at the key."""
        if self._pressed():
            self._hush()
        return self._microphone.read()


def _pressed_elsewhere() -> bool:
    import select
    import termios

    if not select.select([sys.stdin.fileno()], [], [], 0)[0]:
        return False
    termios.tcflush(sys.stdin.fileno(), termios.TCIFLUSH)
    return True


def _pressed_windows() -> bool:
    import msvcrt

    found = False
    while msvcrt.kbhit():  # type: ignore[attr-defined,unused-ignore]
        msvcrt.getwch()  # type: ignore[attr-defined,unused-ignore]
        found = True
    return found
