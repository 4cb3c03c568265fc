"""Dates for the ear: "2026-08-01" is one August twenty twenty-six."""

from __future__ import annotations

import re

from assistant.quantities.show import number_words

_DATE = r"\b(\d{4})-(\d\d)-(\d\d)\b"
_DAY_FIRST = r"(?<![\d/])(\d\d)/(\d\d)/(\d{4})(?![\d/])"
MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
    "November", "December",
)  # fmt: skip
_NAMED_DATE = rf"\b(\d{{1,2}}) ({'|'.join(MONTHS)}) (\d{{4}})\b"


def slashed_dates(text: str) -> str:
    """A date in figures, the day first, as the one form of dates that is said."""
    return re.sub(_DAY_FIRST, r"\3-\2-\1", text) if text.count("/") > 1 else text


def dates_kept(text: str) -> str:
    """The text with marks in its dates that no range has, until they are said."""
    return re.sub(_DATE, r"\1_\2_\3", text)


def dates_in_words(text: str) -> str:
    """Say the dates that were kept, and those with the name of a month."""

    def said(match: re.Match[str]) -> str:
        year, month, day = map(int, match.groups())
        if not 1 <= month <= len(MONTHS) or year % 100 < 10:
            return match[0].replace("_", " ")
        name = MONTHS[month - 1]
        return f"{number_words(day)} {name} {number_words(year // 100)} {number_words(year % 100)}"

    text = re.sub(_NAMED_DATE, lambda m: f"{m[3]}_{MONTHS.index(m[2]) + 1:02}_{int(m[1]):02}", text)
    return re.sub(r"\b(\d{4})_(\d\d)_(\d\d)\b", said, text) if "_" in text else text
