"""Steps and choices for the ear: how many there are, and the number of each before it."""

from __future__ import annotations

import re

from assistant.quantities.show import number_words

_STEP = r"(?:(?<=^)|(?<=[:;,.?!]) )(\d{1,2})\. (?=\S)"
_MEMORY = r"(\d{1,2}\. )\(memory\) "
_MOST_COUNTED = 10
"""Steps from memory that a listener is told the number of."""
_TITLE = r"(?:^|(?<=[.?!] ))([^.:;?!]+): 1\. "
_CHOICES = "For example"


def steps_counted(text: str) -> str:
    """Say how many steps there are before the first of them, and which are from memory."""
    text = _memory_counted(text)
    return re.sub(_TITLE, _with_count, text) if ": 1. " in text else text


def _with_count(match: re.Match[str]) -> str:
    """The title of steps with their number, if there is more than one and they are not choices."""
    numbers = map(int, re.findall(_STEP, match.string[match.end(1) :]))
    count = 0
    while next(numbers, 0) == count + 1:
        count += 1
    if count < 2 or match[1].startswith(_CHOICES):
        return match[0]
    return f"{match[1]}: {number_words(count)} steps: 1. "


def _memory_counted(text: str) -> str:
    """Say once how many steps are from memory, where all are; else of each that it is."""
    if "(memory)" not in text:
        return text
    steps, memory = len(re.findall(r"(?:^|[:;,] )\d{1,2}\. (?=\S)", text)), len(re.findall(_MEMORY, text))
    if memory < 2 or steps != memory or memory > _MOST_COUNTED:
        return re.sub(_MEMORY, r"\1from memory, ", text)
    text = re.sub(_MEMORY, r"\1", text)
    return text.replace(": 1. ", f": {number_words(memory)} memory items: 1. ", 1)


def steps_numbered(text: str) -> str:
    """The number of a step or a choice is said before it, with a pause: "One, parking brake set. Two, …"."""
    if not re.search(r"(?:^|\W)1\. ", text):
        return text
    if not re.search(r"\W2\. ", text):
        return re.sub(r"(^|[:;,.?!] )1\. ", r"\1", text)
    text = re.sub(_STEP, lambda match: f" {match[1]}, ", text)
    return text.replace(": 1, ", ". 1, ").strip()
