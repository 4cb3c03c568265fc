"""Numbers and names as they stand in what is told of a class."""

from __future__ import annotations

import re
from collections.abc import Iterable

_NUMBERS = (
    "none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
)  # fmt: skip


def counted(number: int) -> str:
    """Return a number as it is written in a sentence."""
    return _NUMBERS[number] if number < len(_NUMBERS) else str(number)


def count(number: int, one: str, many: str = "") -> str:
    """Return how many there are of something: "1 question", "3 people"."""
    return f"{number} {one if number == 1 else many or f'{one}s'}"


def percent(share: float) -> str:
    """Return a share for display; only what is whole is 100 %, and only nothing is 0 %."""
    shown = round(share * 100)
    return f"{min(max(shown, 1), 99) if 0 < share < 1 else shown}%"


def without_names(text: str, names: Iterable[str]) -> str:
    """Return a text in which no person of the class is named: whatever was typed as an answer may hold a name."""
    parts = {part for name in names for part in (name, *name.split()) if len(part) > 1}
    for part in sorted(parts, key=len, reverse=True):
        text = re.sub(rf"(?<!\w){re.escape(part)}(?!\w)", "…", text, flags=re.IGNORECASE)
    return text
