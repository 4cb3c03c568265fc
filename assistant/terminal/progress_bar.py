"""How far a long task is, on one line that is written over: only where somebody watches."""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import TextIO

from assistant.terminal.screen import is_terminal

_CELLS = 20
_EVERY_S = 0.1
_SURE_S = 1.0
"""Seconds after which the time left is told: before, it would be a guess."""


class ProgressBar:
    """A bar with the time left; silent where its stream is no terminal."""

    def __init__(self, name: str, out: TextIO, clock: Callable[[], float] = time.monotonic) -> None:
        self._name = name
        self._out = out
        self._clock = clock
        self._watched = is_terminal(out)
        self._began = clock()
        self._last = -1.0
        self._length = 0

    def show(self, share: float) -> None:
        """Show that so much is done, 0 to 1."""
        now = self._clock()
        if not self._watched or (now - self._last < _EVERY_S and share < 1):
            return
        self._last = now
        self._write(self.line(share, now - self._began))

    def line(self, share: float, passed_s: float) -> str:
        """Return the line that tells of a share done after so many seconds."""
        full = round(_CELLS * share)
        bar = f"[{'#' * full}{'-' * (_CELLS - full)}] {100 * share:3.0f}%"
        if passed_s < _SURE_S or not 0 < share < 1:
            return bar
        left = round(passed_s * (1 - share) / share)
        return f"{bar}, {left // 60}:{left % 60:02} left"

    def clear(self) -> None:
        """Take the bar off the screen."""
        if self._watched and self._length:
            self._write("")
            self._out.write("\r")
            self._out.flush()

    def _write(self, line: str) -> None:
        self._out.write("\r" + line.ljust(self._length))
        self._out.flush()
        self._length = len(line)
