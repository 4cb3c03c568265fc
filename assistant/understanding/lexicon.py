"""The names of all concepts, and where they stand in a question.

A name is compared by the stems of its words, so that every inflection counts; the longest name at a place
wins, and a name that several concepts share keeps them all: the record asked for decides which was meant.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from json import loads
from typing import Any, NamedTuple

from assistant.understanding.words import expand, stem

GAP = "…"
_WIDEST_GAP = 3

Names = dict[str, list[tuple[tuple[str, ...], tuple[str, ...]]]]


class Found(NamedTuple):
    """A name found at tokens[start:end]; `taken` are the indices that belong to it (a gap leaves some out)."""

    start: int
    end: int
    taken: tuple[int, ...]
    concepts: tuple[str, ...]


class Lexicon:
    """Names by their first stem, longest first; kinds and companions of concepts."""

    def __init__(self, plain: Mapping[str, Any]) -> None:
        self._names: dict[str, str | list[list[list[str]]]] = plain["names"]
        self.kinds: dict[str, str] = plain["kinds"]
        self.implied: dict[str, list[str]] = plain["implied"]
        self.families: dict[str, str] = plain["families"]
        self.wants: dict[str, str] = plain["wants"]
        self.sets: dict[str, list[list[str]]] = plain["sets"]
        self.words = frozenset(plain["words"].split())
        self.surface = frozenset(plain["surface"].split())
        self.neutral = frozenset(plain["neutral"].split())
        self.weak = frozenset(plain["weak"].split())
        self.whole = frozenset(plain["whole"].split())
        self.shown: dict[str, str] = plain["shown"]
        self._corrections: str = plain["corrections"]

    def at(self, stems: Sequence[str], start: int, free: Sequence[bool]) -> Found | None:
        """Return the longest name that begins at a place, or None."""
        for parts, concepts in self._beginning(stems[start]):
            taken = _match(parts, stems, start, free)
            if taken:
                return Found(start, taken[-1] + 1, taken, tuple(concepts))
        return None

    def _beginning(self, first: str) -> list[list[list[str]]]:
        found = self._names.get(first, [])
        if isinstance(found, str):
            found = self._names[first] = loads(found)
        return found

    def correction(self, word: str) -> str | None:
        """Return the proper word of a listed misspelling, or None."""
        at = self._corrections.find(f"\n{word} ")
        return None if at < 0 else self._corrections[at + len(word) + 2 : self._corrections.index("\n", at + 1)]

    def knows(self, word: str) -> bool:
        """Return whether a word is part of a name or of the knowledge's own text."""
        return stem(word) in self.words


def _match(parts: Sequence[str], stems: Sequence[str], start: int, free: Sequence[bool]) -> tuple[int, ...]:
    if len(parts) == 1:
        return (start,) if free[start] else ()
    taken: list[int] = []
    i = start
    gap = 0
    for part in parts:
        if part == GAP:
            gap = _WIDEST_GAP
            continue
        last = min(i + gap, len(stems) - 1)
        while i <= last and (stems[i] != part or not free[i]):
            i += 1
        if i > last:
            return ()
        taken.append(i)
        i += 1
        gap = 0
    return tuple(taken)


def name_stems(name: str) -> tuple[str, ...]:
    """Return the stems under which a name is kept."""
    from assistant.quantities.tokens import tokenize  # compiling only: a question brings its own tokens

    stems: list[str] = []
    for piece in name.split():
        if piece == GAP:
            stems.append(GAP)
            continue
        if len(piece) > 2 and piece[:-1].isdigit() and piece[-1].isalpha():
            stems.append(piece.lower())
            continue
        for token in tokenize(piece):
            if token.text not in ("-", "'", ",", "."):
                stems.extend(stem(word) for word in expand(token.text))
    return tuple(stems)


def joined_names(stems: tuple[str, ...], name: str) -> Iterable[tuple[str, ...]]:
    """Yield the name also as one word, where two words are often written together ("nosewheel")."""
    words = name.split()
    if 2 <= len(words) <= 2 and GAP not in words and all(len(w) > 2 and w.isalpha() for w in words):
        yield (stem("".join(words)),)
