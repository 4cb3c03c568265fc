"""The ways of asking of one base, by number and by concept, each read when it is first looked at.

They are numbered in the order of their records, so that those of a record stand in a row.
"""

from __future__ import annotations

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from itertools import accumulate
from typing import Any

from assistant.frozen import NamedTuple
from assistant.understanding.packing import bits_of, unpack_ask, unpack_numbers, unpack_part

UNDER = "under."
"""Begins the tag of a way of asking for a result that counts only where a state that it rests on is given."""
_BY_THE_WAY = 0.8
"""Share of a concept that another one only brings along."""


_FEW = 32
"""Ways of asking that are so few that their numbers take less room than their bits."""

_Part = tuple[int, float]
"""A part of ways of asking, which are some concepts of which any counts: its number, and its weight."""


class Ask(NamedTuple):
    """A way of asking: whose it is (record, tag); the numbers of the parts that are required, and the parts that may be
    said besides; the weight of what is required.
    """

    of: tuple[str, str]
    required: tuple[int, ...]
    optional: tuple[_Part, ...]
    whole: float

    @property
    def parts(self) -> tuple[int, ...]:
        """The numbers of all its parts."""
        return (*self.required, *(part for part, _ in self.optional)) if self.optional else self.required


class Asks(dict[int, Ask]):
    """Ways of asking by their number."""

    def __init__(self, derived: Mapping[str, Any]) -> None:
        self._by_record: Mapping[str, list[str]] = derived["asks"]
        self._askable = list(self._by_record)
        self._ends = list(accumulate(derived["numbers"]))
        """Where the ways of asking of each record end."""
        self._postings: Mapping[str, str | list[int]] = derived["postings"]
        self._packed: dict[str, list[str]] = {}
        self._owners: dict[tuple[str, str], tuple[str, str]] = {}
        """Whose ways of asking are, each kept once."""
        self._few: dict[str, list[int]] = {}
        self._many: dict[str, int] = {}
        """The ways of asking that hold a concept: as numbers, or as bits."""
        self._own: dict[frozenset[str], dict[str, list[int]]] = {}
        self._read: dict[str, _Part] = {}
        """The parts read so far, by how they are kept."""
        self._parts: dict[str, list[int]] = defaultdict(list)
        """The numbers of the parts that hold a concept."""
        self._concepts: list[frozenset[str]] = []
        """The concepts of parts, by their numbers."""
        self._named: dict[int, frozenset[str]] = {}
        """What ways of asking name that were among the best: few of all ever are."""
        self._sets: dict[frozenset[str], frozenset[str]] = {}
        """The same, each set of concepts kept once."""
        self._weights: list[float] = []
        self._by_the_way: list[float] = []
        """What parts weigh by their numbers, named and only brought along."""

    def __missing__(self, number: int) -> Ask:
        place = bisect_right(self._ends, number)
        record = self._askable[place]
        if record not in self._packed:
            self._packed[record] = self._by_record[record]
        packed, at = self._packed[record], number - self._ends[place]  # counted from their end
        tag, *kept = unpack_ask(packed[at])
        packed[at] = ""  # it is read once
        required, optional = ([self._part(text) for text in texts] for texts in kept)
        needed = tuple(part for part, _ in required)
        whole = sum(weight for _, weight in required)
        of = self._owners.setdefault((record, tag), (record, tag))
        found = self[number] = Ask(of, needed, tuple(optional), whole)
        return found

    def named(self, number: int) -> frozenset[str]:
        """Return all concepts that a way of asking names."""
        found = self._named.get(number)
        if found is None:
            found = frozenset().union(*(self._concepts[part] for part in self[number].parts))
            found = self._named[number] = self._sets.setdefault(found, found)
        return found

    def _part(self, text: str) -> _Part:
        """Return a part; the same one of many ways of asking is kept once."""
        found = self._read.get(text)
        if found is None:
            concepts, weight = unpack_part(text)
            number = len(self._weights)
            self._weights.append(weight)
            self._by_the_way.append(weight * _BY_THE_WAY)
            self._concepts.append(concepts)
            for concept in concepts:
                self._parts[concept].append(number)
            found = self._read[text] = number, weight
        return found

    def holding(self, concept: str) -> int:
        """Return the ways of asking that hold a concept, as bits."""
        if concept in self._few:
            return bits_of(self._few[concept])
        found = self._many.get(concept)
        if found is None:
            kept = self._postings.get(concept, [])
            found = unpack_numbers(kept)
            if len(kept) < _FEW and not isinstance(kept, str):
                self._few[concept] = kept
            else:
                self._many[concept] = found
        return found

    def worth(self, named: frozenset[str], concepts: frozenset[str]) -> Sequence[float]:
        """Return what of each of the parts read so far a question holds: all of its weight where it is named."""
        found = [0.0] * len(self._weights)
        for concept in concepts:
            for number in self._parts.get(concept, ()):
                found[number] = self._by_the_way[number]
        for concept in named:
            for number in self._parts.get(concept, ()):
                found[number] = self._weights[number]
        return found

    def among(self, records: frozenset[str], concepts: Iterable[str]) -> list[tuple[int, frozenset[str]]]:
        """Return the ways of asking of some records that hold any of some concepts, in their order, each with those."""
        own = self._own.get(records)
        if own is None:
            own = self._own[records] = self._holding_among(records)
        held: dict[int, list[str]] = defaultdict(list)
        for concept in concepts:
            for number in own.get(concept, ()):
                held[number].append(concept)
        return [(number, frozenset(held[number])) for number in sorted(held)]

    def _holding_among(self, records: frozenset[str]) -> dict[str, list[int]]:
        found: dict[str, list[int]] = defaultdict(list)
        for record, start, end in zip(self._askable, (0, *self._ends), self._ends, strict=False):
            for number in range(start, end) if record in records else ():
                for concept in frozenset().union(*(self._concepts[part] for part in self[number].parts)):
                    found[concept].append(number)
        return found
