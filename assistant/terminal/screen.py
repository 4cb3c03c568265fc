"""What is known of the place that is written to: its width, whether it shows colour, how to write there."""

from __future__ import annotations

import os
import sys
from typing import TextIO

from assistant.frozen import NamedTuple
from assistant.rendering.text import NARROWEST, wrap
from assistant.terminal.options import Parsed

_USUAL, _WIDEST = 80, 100
"""Columns where no terminal says otherwise, and those beyond which lines are hard to follow."""


_PLAIN = {
    "\u2212": "-", "\u2010": "-", "\u2011": "-", "\u2012": "-", "\u2013": "-", "\u2014": "-", "\u2018": "'",
    "\u2019": "'", "\u201c": '"', "\u201d": '"', "\u2026": "...", "\u2264": "<=", "\u2265": ">=", "\u00d7": "x",
    "\u00b7": "*", "\u221a": "root ", "\u00b0": " deg", "\u00b2": "2", "\u00b3": "3", "\u00bd": "1/2",
    "\u2192": "->", "\u2248": "about ", "\u00b1": "+/-", "\u00a0": " ", "\u202f": " ", "\u0394": "delta ",
    "\u03bc": "mu ", "\u00b5": "mu ", "\u03c0": "pi",
}  # fmt: skip
"""Signs of answers, as they are written where an encoding has none of them."""


class Screen(NamedTuple):
    """Where answers go, and how they are laid out there."""

    out: TextIO
    asked_width: int | None = None
    color: bool = False

    @property
    def width(self) -> int:
        """Columns to wrap at: those asked for, else those that the terminal has at this moment."""
        return self.asked_width or max(NARROWEST, min(_columns(self.out), _WIDEST))

    def say(self, text: str) -> None:
        """Write lines, and see them off at once."""
        self.out.write(f"{text}\n")
        self.out.flush()


def screen_for(parsed: Parsed, out: TextIO) -> Screen:
    """Return the screen of a command's output."""
    return Screen(out, parsed.width, not parsed.has("--plain") and shows_color(out))


def shows_color(out: TextIO) -> bool:
    """Return whether a stream is a terminal that shows colour, and nobody asked for none."""
    if os.environ.get("NO_COLOR") or not is_terminal(out) or is_dumb():
        return False
    return sys.platform != "win32" or "WT_SESSION" in os.environ


def is_terminal(stream: TextIO) -> bool:
    """Return whether a stream is a terminal; one that is closed is none."""
    try:
        return stream.isatty()
    except (AttributeError, ValueError):
        return False


def is_dumb() -> bool:
    """Return whether the terminal says that it can place no cursor."""
    return os.environ.get("TERM", "").lower() in ("dumb", "unknown")


def complain(message: str, width: int | None = None) -> None:
    """Write what is wrong where it does not mix with answers. width: the columns that were asked for."""
    remark(f"downlock: {message}", width)


def remark(text: str, width: int | None = None) -> None:
    """Write a text there: one line where a program may read it, else within the width asked for or of the terminal."""
    if width or is_terminal(sys.stderr):
        text = "\n".join(wrap(text, width or max(NARROWEST, _columns(sys.stderr)), "  "))
    sys.stderr.write(f"{text}\n")
    sys.stderr.flush()


def prepare(out: TextIO, json: bool) -> None:
    """Make a stream take every sign: JSON is always UTF-8, text replaces what its encoding lacks."""
    reconfigure = getattr(out, "reconfigure", None)
    if reconfigure is not None and json:
        reconfigure(encoding="utf-8", errors="replace")
    elif reconfigure is not None:
        reconfigure(errors=_plain_signs() if _lacks_signs(out) else "replace")


def _lacks_signs(out: TextIO) -> bool:
    return (getattr(out, "encoding", "") or "").lower().replace("-", "") not in ("utf8", "utf8sig", "utf16")


def _plain_signs() -> str:
    """Return the name of what to do with a sign that an encoding lacks: one of ASCII for it, or a question mark.

    A minus that became a question mark would make another number of the one behind it.
    """
    import codecs

    def replaced(error: UnicodeError) -> tuple[str | bytes, int]:
        if not isinstance(error, UnicodeEncodeError):
            raise error
        before, text = error.object[: error.start][-1:], error.object[error.start : error.end]
        plain = "".join(_PLAIN.get(sign, "?") for sign in text)
        return (plain.lstrip(" ") if before in ("", " ") else plain), error.end

    codecs.register_error("downlock", replaced)
    return "downlock"


def stand_in() -> None:
    """Put an empty input and a place for complaints where the program was started with these closed.

    Python then has none at all, and the first file opened would take the number that belongs to them. They stay
    open as long as the program runs.
    """
    if sys.stdin is None:
        sys.stdin = open(os.devnull, encoding="utf-8")  # noqa: SIM115
    if sys.stderr is None:
        sys.stderr = open(os.devnull, "w", encoding="utf-8")  # noqa: SIM115


def let_go(out: TextIO) -> None:
    """Send what is left to nowhere: the reader of a pipe has gone, and the program's end would complain."""
    try:
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, out.fileno())
    except (OSError, ValueError):
        return


def _columns(out: TextIO) -> int:
    try:
        return os.get_terminal_size(out.fileno()).columns or _USUAL
    except (OSError, ValueError, AttributeError):
        given = os.environ.get("COLUMNS", "")
        written = given.isascii() and given.isdigit() and len(given) < 6
        return (int(given) if written else 0) or _USUAL
