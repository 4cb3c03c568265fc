"""The rows of a list that a question passes over: "blank" of the bars, where it asks for NORMAL and the other two.

What such a row shows may be told beside, with when it does: "they only go blank with no mode left". Without that it is
given to one of the things asked for, and is another's.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.frozen import NamedTuple
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import CONTRASTS, STOPS, word_set


class _Row(NamedTuple):
    shown: str
    """What it shows, as its plainest word."""
    when: frozenset[str]
    """The words that tell when."""


_LED = re.compile(r"(?:^|(?<=\. ))([A-Z]\w+) (\w+): ([^.:]+)\.")
_COMMON = frozenset(map(plain, word_set("a and at in is it of on or the with")))
_CUTS = STOPS | CONTRASTS


def _rows(need: Need) -> Iterator[_Row]:
    """Yield the rows of the list that answers a question which none of its points holds."""
    led = _LED.findall(need.expected)
    heads = {head for _, head, _ in led}
    own = {w for p in need.points for e in p.elements for w in e.words}
    if len(led) < _LEAST or len(heads) > 1 or len(need.points) < _LEAST:
        return
    for shown, _, when in led:
        words = frozenset(plain(w) for w in re.findall(r"\w+", when.lower())) - _COMMON
        told = words - need.asked
        if told and plain(shown.lower()) not in own | need.asked and not words & own - {plain("mode")}:
            yield _Row(plain(shown.lower()), told)


_LEAST = 2


def without_other_rows(said: Said, need: Need) -> str:
    """Return an answer's words without what it rightly tells of the rows that nobody asks for; "" if it tells none."""
    rows = list(_rows(need)) if len(need.points) > 1 else []
    words = said.reading.words
    drop: set[int] = set()
    for piece in said.pieces(_CUTS) if rows else ():
        here = {said.words[i] for i in piece}
        if any(row.shown in here and row.when & here for row in rows):
            drop.update(piece)
    left = [w for i, w in enumerate(words) if i not in drop]
    return " ".join(left) if drop and any(w[0].isalnum() for w in left) else ""


def of_other_rows(need: Need, said: Said) -> list[str]:
    """Return what only a row shows that nobody asks for, where it is not told when it does: "EMERGENCY: blank"."""
    return [row.shown for row in _rows(need) if row.shown in said.words and not row.when & set(said.words)]
