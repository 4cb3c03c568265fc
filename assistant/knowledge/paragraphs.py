"""The paragraphs that a document lists, read without what checks them: a question may name one."""

from __future__ import annotations

import re

_MOST_IN_RANGE = 1000
"""Paragraphs that one range may stand for."""
_RANGE = r"(.*?)(\d+) to (.*?)(\d+)"


def paragraphs_of(listed: tuple[str, ...]) -> dict[str, None]:
    """The paragraphs that a document lists, ranges spelt out, in order."""
    return dict.fromkeys(paragraph for each in listed for paragraph in spelt_out(each))


def holds(listed: dict[str, None], paragraph: str) -> bool:
    """Whether a paragraph is one of those listed, or a section that holds some."""
    return paragraph in listed or any(each.startswith(f"{paragraph}.") for each in listed)


def listed_shown(listed: dict[str, None]) -> str:
    """The paragraphs of a document in short, as advice."""
    names = list(listed)
    shown = ", ".join(names[:8]) + (f" … {names[-1]}" if len(names) > 8 else "")
    return f"its paragraphs are {shown}"


def spelt_out(listed: str) -> list[str]:
    """The paragraphs of one item: itself, or each from the first of a range to the last; none of a bad range."""
    found = re.fullmatch(_RANGE, listed)
    if not found:
        return [listed]
    section, first, same, last = found[1], int(found[2]), found[3], int(found[4])
    if section != same or not first < last < first + _MOST_IN_RANGE:
        return []
    return [f"{section}{number}" for number in range(first, last + 1)]
