"""How many of a thing each of several has: "two at each leg" for one, "on the left side only" for each side."""

from __future__ import annotations

import re

from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said

_NUMBERS = ("one", "two", "three", "four", "five", "six")
_COUNTED = r"(one|two|three|four|five|six|a|1|2|3|4|5|6)"
_EACH = re.compile(
    rf"\b{_COUNTED}\b(?: [\w-]+){{0,3}}? (?:at|in|on|for|per|to|goes in|go in)(?: the)? "
    rf"(?:each|every|both)?((?: [\w-]+){{1,3}})"
)
_IN_EACH = re.compile(r"\b(at|in|on|to|for|by) (?:each|every|both) ([\w-]+?)s?\b")
_ALL = re.compile(r"\b(?:each|every|both)\b")
_PER = re.compile(r"\b(?:each|every|per|both)\b")
_ONE_ONLY = re.compile(
    r"\bonly (?:at |in |on |by )?(?:the )?(left|right|captain|nose|main)\b|"
    r"\b(left|right|captain|nose|main)(?: s)?(?: [\w-]+){0,3} (?:only|alone)\b"
)
_SORTS = ("left", "right", "main", "nose", "front", "rear")


def of_each(need: Need, said: Said) -> list[str]:
    """Return another number of things than each one has, and some that are named where each is meant."""
    if need.polar or not any(_ALL.search(p.text) and not p.figures for p in need.points):
        return []
    text = " ".join(said.reading.words)
    full = need.expected.lower()
    only = _ONE_ONLY.search(text)
    wrong = [only.group()] if only and (only.group(1) or only.group(2)) not in full else []
    told = _EACH.search(full)
    for found in _EACH.finditer(text):
        if told and _PER.search(found.group()) and _value(found.group(1)) != _value(told.group(1)):
            wrong.append(found.group())
    for found in _IN_EACH.finditer(full):
        if re.search(rf"\b{found.group(1)} (?:only )?(?:one|1|any|either) {found.group(2)}\b", text):
            wrong.append(f"one {found.group(2)}")
    for sort in _SORTS:
        if re.search(rf"\b(?:each|every|both|per) {sort}\b", text) and sort not in full and sort not in need.asked:
            wrong.append(f"each {sort}")
    return wrong


def _value(word: str) -> int:
    return int(word) if word.isdigit() else 1 if word == "a" else _NUMBERS.index(word) + 1
