"""Whether steps are wanted one by one: "take me through it one step at a time", whose first one is told alone."""

from __future__ import annotations

import re
from collections.abc import Sequence

_SINGLY = r"\b(?:(?:one|a|an|each|single)(?: \w+)? at a time|(one|item|line) by \1)\b"


def asks_singly(words: Sequence[str]) -> bool:
    """Return whether words ask for steps one at a time."""
    said = " ".join(words)
    return ("at a time" in said or " by " in said) and re.search(_SINGLY, said) is not None
