"""Lines that are read from a file or from the input, each cut to a length that no question reaches."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import AbstractContextManager, nullcontext
from typing import BinaryIO

from assistant.rendering.text import clean
from assistant.terminal.options import UsageProblem

LONGEST_LINE = 1 << 16
"""Bytes of a line that are looked at; no question comes near, and what is longer must not fill the memory."""


def lines_of(file: BinaryIO, longest: int = LONGEST_LINE) -> Iterator[bytes]:
    """Yield the lines of a file without their ends, each cut to a length that no question reaches."""
    first = True
    while line := file.readline(longest):
        rest = line
        while not rest.endswith(b"\n") and len(rest) == longest:
            rest = file.readline(longest)
        yield (line.removeprefix(b"\xef\xbb\xbf") if first else line).rstrip(b"\r\n")
        first = False


def open_named(source: str) -> AbstractContextManager[BinaryIO]:
    """Open a file that a command line names; '-' is the input, which stays open. Raises UsageProblem."""
    if source == "-":
        return nullcontext(sys.stdin.buffer)
    try:
        return open(source, "rb")
    except OSError as error:
        raise UsageProblem(f"cannot read {clean(source)}: {error.strerror or 'unreadable'}") from None


class PromptedLines:
    """Lines of the input as text, after a prompt each where somebody sits at it; every line ends with Enter."""

    def __init__(self, shows_prompt: bool) -> None:
        self._shows_prompt = shows_prompt
        self._lines = lines_of(sys.stdin.buffer)

    def next(self, prompt: str) -> str:
        """Return a line, its spaces made single; raises EOFError at the end of the input."""
        if self._shows_prompt:
            sys.stdout.write(prompt)
            sys.stdout.flush()
        raw = next(self._lines, None)
        if raw is None:
            raise EOFError
        return " ".join(raw.decode("utf-8", "replace").split())
