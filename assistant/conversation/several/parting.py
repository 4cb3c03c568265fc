"""Where a turn may hold more than one question, by its words alone: "how many pins, and where are they kept?"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

_MARKS = frozenset(",;:.?&")
_OPENED = 3
"""Words more, at most, that a text has when its contractions are opened: with others, it is read with another."""
_READ = 400
"""Characters of a turn in which a further question is looked for."""
_HALVES = (
    r"\s*(?:[,;.?]\s*(?:and|but)?|\band)\s+"
    r"(?=(?:and\s+)?(?:where|how|what|which|who|why|when|to whom|below|above|does|do|is|are|can|may|at|in)\b)"
)
_HELPING = r"(?:does|do|is|are|am|can|may|will|should|must|did|was)"
_ASKING = (
    r"(?:^|[.:,;?!]\s)\W*(?:(?:so|and|ok|then|now|please|tell me|say)\s+)*(?:(?:at|in|from|to|by|on|for|with) (?=wh))?"
    rf"(?:where|how|what|what.?s|which|who|why|whom|{_HELPING}|when {_HELPING})\b"
)


def may_join(text: str) -> bool:
    """Return whether a text may hold several things at all: none without a mark or an "and" does."""
    return not _MARKS.isdisjoint(text) or "and" in text.lower()


def halves(text: str) -> Iterator[tuple[str, str]]:
    """Yield each way of parting a text in two where a second question may begin."""
    for found in re.finditer(_HALVES, text[:_READ], re.IGNORECASE) if may_join(text) else ():
        yield text[: found.start()], text[found.end() :]


def all_parts(text: str, most: int) -> Iterator[list[str]]:
    """Yield a text parted everywhere that a further question may begin, where those are more than two."""
    if not may_join(text):
        return
    parts = [part for part in re.split(_HALVES, text[:_READ], flags=re.IGNORECASE) if part.strip()]
    if 2 < len(parts) <= most:
        yield parts


def asks_outright(text: str) -> bool:
    """Return whether a clause of a text begins with a word that asks: one of two questions in one turn."""
    return re.search(_ASKING, text[:_READ], re.IGNORECASE) is not None


def mended_text(text: str, words: Sequence[str]) -> str:
    """Return a text as it is read, where it has two halves so: "how many pins r there n wich pilot do u show them to".

    words: how it is read; no text is returned where they are not of it alone.
    """
    mended = " ".join("and" if word == "n" else word for word in words)
    alone = len(words) <= len(re.findall(r"\w+|[^\w\s]", text)) + _OPENED
    return mended if alone and any(halves(mended)) else ""
