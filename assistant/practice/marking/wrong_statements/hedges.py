"""Answers that say both: "yes. no. yes" to a question that wants one of them."""

from __future__ import annotations

from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import word_set

_YES = word_set("yes yep yeah yup aye affirm affirmative")
_NO = word_set("no nope nah negative")
_CUTS = word_set(". , ; : ? ! - – — ... … and or then but")


def both_said(need: Need, said: Said) -> list[str]:
    """Return a bare yes beside a bare no, where one of them is asked for."""
    if not need.polar:
        return []
    words = said.reading.words
    bare = [words[piece[0]] for piece in said.pieces(_CUTS) if len(piece) == 1]
    given = [word for word in bare if word in _YES | _NO]
    if 1 < len(given) <= sum(1 for p in need.points if (p.state or p.verdict) and not p.optional):
        return []  # each answers a part of its own
    return [" ".join(given)] if _YES.intersection(given) and _NO.intersection(given) else []
