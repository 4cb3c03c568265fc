"""The names of all concepts, and where they stand in a question.

A name is compared by the stems of its words, so that every inflection counts; the longest name at a place
wins, and a name that several concepts share keeps them all: the record asked for decides which was meant.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property
from itertools import pairwise
from typing import Any

from assistant.frozen import NamedTuple
from assistant.understanding.mentions import BOUNDS
from assistant.understanding.packing import BEGINNING, unpack_names
from assistant.understanding.packing import GAP as GAP
from assistant.understanding.words import expand, stem

_WIDEST_GAP = 3
_MOST_KEPT = 2000
"""Pairs of words of which it is remembered that they are no names: they never end."""
_STOPS = frozenset((",", ".", ";", ":", "?", "!"))
"""A name with a gap crosses none of these."""
_JOINING, _PARTICLES = frozenset(("and", "but")), frozenset(("up", "down", "out", "off", "in"))
"""And one that ends with a word of place none of these: "lever pulled and nose still up"."""

_Ranked = tuple[int, tuple[str, ...], tuple[str, ...], bool]
"""A name's place among those with its first stem, the longest first; its stems; its concepts; whether it has a gap."""


class Found(NamedTuple):
    """A name found at tokens[start:end]; `taken` are the indices that belong to it (a gap leaves some out)."""

    start: int
    end: int
    taken: tuple[int, ...]
    concepts: tuple[str, ...]


class Words:
    """Words by how they begin, those that begin alike read when one of them is looked for."""

    def __init__(self, kept: Mapping[str, list[str]]) -> None:
        self._kept = kept
        self._read: dict[str, frozenset[str]] = {}

    def __contains__(self, word: str) -> bool:
        beginning = word[:BEGINNING]
        found = self._read.get(beginning)
        if found is None:
            found = self._read[beginning] = frozenset(self._kept.get(beginning, ()))
        return word in found


class Lexicon:
    """Names by their first stem, longest first; kinds and companions of concepts."""

    def __init__(self, plain: Mapping[str, Any]) -> None:
        self._names: Mapping[str, dict[str, str]] = plain["names"]
        self._packed: dict[str, str] = {}
        self._begun: dict[tuple[str, str], list[_Ranked]] = {}
        self._alone: set[tuple[str, str]] = set()
        """Two words met lately of which the second goes on no name that the first begins."""
        self.kinds: dict[str, str] = plain["kinds"]
        self.implied: dict[str, list[str]] = plain["implied"]
        self.families: dict[str, str] = plain["families"]
        self.wants: dict[str, str] = plain["wants"]
        self.sets: dict[str, list[list[str]]] = plain["sets"]
        self.shows: dict[str, tuple[str, list[list[str]]]] = plain["shows"]
        self.ends: dict[str, tuple[str, list[list[str]]]] = plain["ends"]
        self.words = Words(plain["words"])
        """Stems of the words of names and of the knowledge's own text."""
        self._lists: Mapping[str, list[str]] = plain["lists"]
        self.neutral = frozenset(plain["neutral"].split())
        self.weak = frozenset(plain["weak"].split())
        self.whole = frozenset(plain["whole"].split())
        self.shown: dict[str, str] = plain["shown"]
        self._stated = frozenset(plain["stated"])
        self._stated_stems = frozenset(plain["stated_stems"])
        self.variant_numbers: list[str] = plain["variant_numbers"]
        self._corrections: str | dict[str, str] = plain["corrections"]

    def families_of(self, concepts: Iterable[str]) -> set[str]:
        """Return the families that concepts belong to: one of a family takes the place of another."""
        return {self.families[c] for c in concepts if c in self.families}

    def fills(self, concepts: Iterable[str]) -> bool:
        """Return whether concepts only fill a sentence and ask nothing."""
        return self._fillers.issuperset(concepts)

    def at(self, stems: tuple[str, ...], start: int, free: Sequence[bool]) -> Found | None:
        """Return the longest name that begins at a place, or None."""
        first = stems[start]
        if not self._beginning(first):
            return None
        following = stems[start + 1] if start + 1 < len(stems) else ""
        for _, parts, concepts, has_gap in self._after(first, following):
            if parts[-1] not in stems if has_gap else stems[start : start + len(parts)] != parts:
                continue
            taken = _match(parts, stems, start, free)
            if taken and not (has_gap and self._takes_away(taken, stems, free)):
                return Found(start, taken[-1] + 1, taken, concepts)
        return None

    def before_thing(self, stems: tuple[str, ...], start: int, free: Sequence[bool]) -> Found | None:
        """Return the name at a place; one of a state, a result or another thing leaves a thing its first word.

        "No | brake control", "accumulator | brake controller".
        """
        name = self.at(stems, start, free)
        if name is None or len(name.taken) < 2:
            return name
        if stems[start] == "the" and free[start + 1]:
            longer = self.at(stems, start + 1, free)
            if longer and longer.end > name.end and any(c[0] == "=" for c in longer.concepts):
                return None  # "the | bars are amber"
        last = name.taken[-1]
        if stems[last] not in self._stated_stems:
            return name
        thing = self.at(stems, last, free)
        if thing is None or thing.end <= name.end or self._stated.isdisjoint(thing.concepts):
            return name
        shorter = self.at(stems, start, [is_free and k < last for k, is_free in enumerate(free)])
        return shorter if shorter and any(c[0] in "=@" or c in self._stated for c in shorter.concepts) else name

    def _takes_away(self, taken: tuple[int, ...], stems: Sequence[str], free: Sequence[bool]) -> bool:
        """Return whether a name with a gap would take the word that a state needs: "pulled … in the air"."""
        gaps = [k for k, (one, other) in enumerate(pairwise(taken), 1) if other > one + 1]
        if not gaps:
            return False
        begin, end = taken[gaps[-1]], taken[-1]
        following = self._after(stems[begin], stems[begin + 1]) if begin + 1 < len(stems) else ()
        for _, parts, concepts, has_gap in following:
            states = {c for c in concepts if c[0] in "@="}
            longer = _match(parts, stems, begin, free) if states and not has_gap else ()
            if longer and longer[-1] > end and not states & self._named(parts[1:]):
                return True
        return False

    def _named(self, stems: Sequence[str]) -> frozenset[str]:
        """Return the concepts that are named by just these stems."""
        listed = self._after(stems[0], stems[1] if len(stems) > 1 else "")
        return frozenset(c for _, parts, concepts, _ in listed if parts == stems for c in concepts)

    def _after(self, first: str, second: str) -> Sequence[_Ranked]:
        """Return the names that two stems may begin, the longest first: also those of one word, or with a gap there."""
        found = self._begun.get((first, second))
        if found is None:
            if (first, second) in self._alone:
                return self._after(first, "")
            own = [(*name, GAP in name[1]) for name in unpack_names(self._beginning(first), first, second)]
            if second and not own:
                if len(self._alone) >= _MOST_KEPT:
                    self._alone.clear()
                self._alone.add((first, second))
                return self._after(first, "")  # kept once for all words that no name goes on with
            found = self._begun[first, second] = sorted([*own, *self._after(first, "")]) if second else own
        return found

    def _beginning(self, first: str) -> str:
        """Return the names with a first stem as one text; nothing where there are none."""
        found = self._packed.get(first)
        if found is None:
            found = self._packed[first] = self._names.get(first[:BEGINNING], {}).get(first, "")
        return found

    @cached_property
    def implying(self) -> Mapping[str, set[str]]:
        """The concepts whose names bring a concept along, by that concept."""
        found: dict[str, set[str]] = defaultdict(set)
        for name, companions in self.implied.items():
            for companion in companions:
                found[companion].add(name)
        return found

    @cached_property
    def of_family(self) -> frozenset[str]:
        """The concepts that belong to a family, but for the bounds: to name the least of something names no other."""
        return frozenset(self.families) - BOUNDS

    @cached_property
    def _fillers(self) -> frozenset[str]:
        """The concepts that only fill a sentence."""
        return frozenset(concept for concept, kind in self.kinds.items() if kind == "filler")

    @cached_property
    def either(self) -> frozenset[str]:
        """The concepts of one of several things without saying which: "one system"."""
        return frozenset(concept for concept, kind in self.kinds.items() if kind == "either")

    @property
    def surface(self) -> list[str]:
        """The words of all names and ways of asking, as they are written: those of a length as one text, in order.

        Each word stands between ends of lines. They are read anew, and kept by who needs them.
        """
        return self._lists["surface"]

    @cached_property
    def frequent(self) -> frozenset[str]:
        """The words that the knowledge uses most, which a misspelling is likeliest to be of."""
        return frozenset(self._lists["frequent"])

    @property
    def asked(self) -> list[str]:
        """The words that questions are put in, the most frequent first, read anew and kept by who needs them."""
        return self._lists["asked"]

    @cached_property
    def usual(self) -> frozenset[str]:
        """The words that the knowledge uses most and those that questions are put in."""
        return self.frequent.union(self.asked)

    def correction(self, word: str) -> str | None:
        """Return the proper word of a listed misspelling, or None."""
        if isinstance(self._corrections, str):
            pairs = (line.partition(" ") for line in self._corrections.strip().splitlines())
            self._corrections = {wrong: right for wrong, _, right in pairs}
        return self._corrections.get(word)

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
            if stems[i] in _STOPS or (part in _PARTICLES and stems[i] in _JOINING):
                return ()
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
