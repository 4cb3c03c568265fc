"""Answers in the very words of the books: right as they stand, whatever single words of them might be taken for.

Somebody who knows the statement by heart, or reads out the points, says nothing that could contradict.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.practice.marking.points import Need

_LEAST = 3
"""Words that must be said for them to be the words of the books."""
_MOST_OF_IT = 0.7
"""Share of the full answer that is all of it, but for what is told besides."""
_JOINING = frozenset(("and", "then", "also", "the", "a"))


def verbatim(need: Need, answer: str, told: bool) -> bool:
    """Return whether an answer is the full one word for word, or its points. told: whether it holds all of them."""
    words, full = _words(answer), _words(need.expected)
    if len(words) < _LEAST:
        return False
    if _at(words, full) >= 0 and (told or len(words) >= _MOST_OF_IT * len(full)):
        return True
    points = [_words(p.text) for p in need.points if not p.optional]
    return len(points) > 1 and not need.ordered and _is_made_of(words, points)


def _words(text: str) -> list[str]:
    return re.findall(r"[\w%°.]*[\w%°]", text.lower())


def _at(words: Sequence[str], full: Sequence[str]) -> int:
    """Return where words stand in a row in others, -1 if nowhere."""
    size = len(words)
    return next((i for i in range(len(full) - size + 1) if list(full[i : i + size]) == list(words)), -1)


def _is_made_of(words: list[str], points: Sequence[list[str]]) -> bool:
    """Return whether words are those of all the points and what joins them, and nothing else."""
    left = list(words)
    for point in sorted(points, key=len, reverse=True):
        at = _at(point, left)
        if not point or at < 0:
            return False
        left[at : at + len(point)] = []
    return _JOINING.issuperset(left)
