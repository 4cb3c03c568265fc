"""Small numbers that are said one after another, one for each thing asked: "three two one seconds in that order".

A reader of questions takes them for one number, or for no number at all. They are a list where just as many figures of
one unit are asked for, and each of them is as small.
"""

from __future__ import annotations

import re

from assistant.practice.marking.points import Need

_DIGITS = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
}  # fmt: skip
_DIGIT = "|".join(_DIGITS)
_SMALL = re.compile(rf"(?<![\w-])({_DIGIT})(?![\w-])(?! (?:point|hundred|thousand|of|more|at a)\b)", re.IGNORECASE)
_LEAST = 2
_TEN = 10
_SAID = {"s": "seconds?|secs?", "min": "minutes?|mins?", "h": "hours?"}
"""How the units of such lists are said."""


def listed(answer: str, need: Need) -> str:
    """Return an answer with a unit behind each of the small numbers that it lists, as many as are asked for."""
    figures = [f for p in need.points for f in p.figures]
    units = {f.unit for f in figures}
    if len(figures) < _LEAST or len(units) != 1 or need.ordered or any(c.isdigit() for c in answer):
        return answer
    unit = units.pop()
    small = all(0 < f.value < _TEN and f.value == int(f.value) for f in figures)
    if unit not in _SAID or not small or len(_SMALL.findall(answer)) != len(figures):
        return answer
    bare = re.sub(rf"(?<=[a-z]) (?:{_SAID[unit]})\b", "", answer, flags=re.IGNORECASE)
    said = _SMALL.sub(lambda found: f"{_DIGITS[found[1].lower()]} {unit}", bare)
    return re.sub(rf"(?<=\d {unit}) (?=\d)", ", ", said)
