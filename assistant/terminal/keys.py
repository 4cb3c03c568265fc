"""Whether a key was pressed while something else goes on, without waiting for a whole line."""

from __future__ import annotations

import sys
from collections.abc import Callable

from assistant.terminal.screen import is_terminal

_MOST = 256
"""Bytes typed that are taken at one look."""
_LOOK_S = 0.05
"""Seconds between two looks at the keyboard where nothing tells of a key."""


def until_key(done: Callable[[float], bool], wanted: str = "") -> bool:
    """Call `done` with a few hundredths of a second until it is true or a key is pressed; whether a key was.

    wanted: the letters that count, large or small; any key where none is named. Where no keyboard is at hand, `done`
    alone decides.
    """
    if not is_terminal(sys.stdin):
        while not done(_LOOK_S):
            continue
        return False
    return _until_key_windows(done, wanted) if sys.platform == "win32" else _until_key_elsewhere(done, wanted)


def _counts(typed: str, wanted: str) -> bool:
    return not wanted or not set(wanted).isdisjoint(typed.lower())


def _until_key_elsewhere(done: Callable[[float], bool], wanted: str) -> bool:
    import os
    import select
    import termios
    import tty

    number = sys.stdin.fileno()
    before = termios.tcgetattr(number)
    try:
        tty.setcbreak(number)
        while not done(_LOOK_S):
            waits = bool(select.select([number], [], [], 0)[0])
            if waits and _counts(os.read(number, _MOST).decode("utf-8", "replace"), wanted):
                termios.tcflush(number, termios.TCIFLUSH)
                return True
        return False
    finally:
        termios.tcsetattr(number, termios.TCSADRAIN, before)


def _until_key_windows(done: Callable[[float], bool], wanted: str) -> bool:
    import msvcrt

    while not done(_LOOK_S):
        waits = msvcrt.kbhit()  # type: ignore[attr-defined,unused-ignore]
        if waits and _counts(msvcrt.getwch(), wanted):  # type: ignore[attr-defined,unused-ignore]
            return True
    return False
