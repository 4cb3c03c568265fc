"""What is wrong with a knowledge file, as a value: problems are gathered and shown together, never raised."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.frozen import NamedTuple

SHORTEST = 4
"""Letters that a name must have to be taken for a misspelling of another."""


class Problem(NamedTuple):
    """Something wrong in a file, and what to do about it. Line 0 stands for the file or folder as a whole."""

    file: str
    line: int
    message: str
    advice: str

    def __str__(self) -> str:
        place = f"{self.file}:{self.line}" if self.line else self.file
        return " ".join(f"{place}: {self.message}; {self.advice}".split())


def nearest(name: str, known: Iterable[str]) -> str:
    """The known name most like a mistaken one, or nothing."""
    import difflib  # only ever needed once something is wrong

    if len(name) < SHORTEST:
        return ""
    found = difflib.get_close_matches(name, list(known), n=1, cutoff=0.6)
    return found[0] if found else ""


def suggestion(name: str, known: Iterable[str], otherwise: str) -> str:
    """Advice naming the nearest known name, or else the advice given."""
    found = nearest(name, known)
    return f"did you mean '{found}'?" if found else otherwise
