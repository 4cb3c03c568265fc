"""What an answer says of not knowing the rest: "30 kt, but I don't know where it gets to zero" claims no zero."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import accumulate

from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import CONTRASTS, STOPS, UNKNOWING, word_set

_CONFESSED = re.compile(
    r"\b(?:(?:do|did|can|could|have|has|am|is) not|cannot|never) (?:even |really |quite |actually |ever |yet )?"
    r"(?:know|remember|recall|sure|tell|say|think of|certain)\b|\bnot (?:sure|certain)\b|\bno (?:idea|clue|memory)\b|"
    r"\b(?:forgot|forgotten|forget)\b|\bescapes? me\b|\bslipped my mind\b|"
    r"\bi (?:do|did) not (?:have|get|learn)$|\bi do not have(?= [.,;!])|\bi never (?:learned|learnt|knew|had)\b"
)
"""Words that only say that something is not known, and leave it to nobody."""
_LEADING = frozenset(
    ("i", "i'm", "and", "the", "other", "rest", "last", "one", "case", "others", "have", "am", "just", "it")
)


def confessed(said: Said) -> set[int]:
    """Return the places of the words that say that something is not known: "the other case escapes me"."""
    return {i for first, end in _spans(said, UNKNOWING) for i in range(first, end)}


def _spans(said: Said, pattern: re.Pattern[str]) -> Iterator[tuple[int, int]]:
    """Yield the places, from and to, of what a pattern finds in the words of an answer."""
    words = said.reading.words
    starts = list(accumulate((len(w) + 1 for w in words), initial=0))
    for found in pattern.finditer(" ".join(words)):
        yield starts.index(found.start()), next(i for i, at in enumerate(starts) if at >= found.end())


def _object_before(first: int, end: int, words: Sequence[str]) -> int:
    """Return where a confession begins with what it is of, said before it: "and emergency I don't remember"."""
    if end < len(words) and words[end] not in STOPS | CONTRASTS | {"and"}:
        return first  # what is not known is said behind
    start = first
    while start > 0 and words[start - 1] not in _PARTING:
        start -= 1
    own = words[start:first]
    return start if start > 1 and 0 < len(own) <= _SHORT and _VERBS.isdisjoint(own) else first


_NAMED = 2
_PARTING = STOPS | CONTRASTS | {"and"}
_SHORT = 3
_VERBS = word_set("are can do does goes has have is s shows was will works")


def without_confession(said: Said) -> str:
    """Return an answer's words without the clauses that say what is not known; "" where there are none.

    A clause with a number stays: "I don't know if it's 100 or 110".
    """
    words = said.reading.words
    drop: set[int] = set()
    for first, end in _spans(said, _CONFESSED):
        while first > 0 and words[first - 1] in _LEADING:
            first -= 1
        if words[first : first + 1] == ("one",) and words[max(0, first - _NAMED) : first - 1] == ("the",):
            first -= _NAMED  # "the emergency one I forget"
        first = _object_before(first, end, words)
        while end < len(words) and words[end] not in STOPS | CONTRASTS | {"and"}:
            end += 1
        if said.numbered.isdisjoint(range(first, end)):
            drop.update(range(first, end))
    kept = [w for i, w in enumerate(words) if i not in drop]
    return " ".join(kept) if drop and any(w[0].isalnum() and w not in CONTRASTS for w in kept) else ""
