"""The ways of asking of one base, by number and by concept, each read when it is first looked at.

They are numbered in the order of their records, so that those of a record stand in a row.
"""

from __future__ import annotations

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterable, Mapping
from itertools import accumulate
from typing import Any

from assistant.frozen import NamedTuple
from assistant.understanding.packing import Parts, unpack_ask

UNDER = "under."
"""Begins the tag of a way of asking for a result that counts only where a state that it rests on is given."""
_BY_THE_WAY = 0.8
"""Share of a concept that another one only brings along."""


class Ask(NamedTuple):
    """A way of asking: whose it is (record, tag); parts with weights, each any of some concepts; the weight of those
    that are required, and all concepts of them together.
    """

    of: tuple[str, str]
    required: Parts
    optional: Parts
    whole: float
    concepts: frozenset[str]


class Asks(dict[int, Ask]):
    """Ways of asking by their number."""

    def __init__(self, derived: Mapping[str, Any]) -> None:
        self._by_record: Mapping[str, list[str]] = derived["asks"]
        self._askable = list(self._by_record)
        self._ends = list(accumulate(derived["numbers"]))
        """Where the ways of asking of each record end."""
        self._numbers = list(range(self._ends[-1] if self._ends else 0))
        """Each number once: a concept's ways of asking are lists of them."""
        self._postings: Mapping[str, list[int]] = derived["postings"]
        self._packed: dict[str, list[str]] = {}
        self._alike: dict[frozenset[str], frozenset[str]] = {}
        self._holders: dict[str, list[int]] = {}
        self._own: dict[frozenset[str], dict[str, list[int]]] = {}
        self._parts: dict[str, list[frozenset[str]]] = defaultdict(list)
        self._seen: set[frozenset[str]] = set()
        """The parts of the ways of asking read so far, by concept and all together."""

    def __missing__(self, number: int) -> Ask:
        place = bisect_right(self._ends, number)
        record = self._askable[place]
        if record not in self._packed:
            self._packed[record] = self._by_record[record]
        packed, at = self._packed[record], number - self._ends[place]  # counted from their end
        tag, required, optional = unpack_ask(packed[at])
        packed[at] = ""  # it is read once
        for part in {part for part, _ in (*required, *optional)} - self._seen:
            self._seen.add(part)
            for concept in part:
                self._parts[concept].append(part)
        concepts = frozenset({concept for part, _ in (*required, *optional) for concept in part})
        concepts = self._alike.setdefault(concepts, concepts)  # those of many ways of asking are the same
        whole = sum(weight for _, weight in required)
        found = self[number] = Ask((record, tag), required, optional, whole, concepts)
        return found

    def holding(self, concept: str) -> list[int]:
        """Return the ways of asking that hold a concept."""
        found = self._holders.get(concept)
        if found is None:
            found = self._holders[concept] = [self._numbers[n] for n in self._postings.get(concept, ())]
        return found

    def worth(self, named: frozenset[str], concepts: frozenset[str]) -> Mapping[frozenset[str], float]:
        """Return how far a question holds the parts of the ways of asking read so far: 1 where one is named."""
        found: dict[frozenset[str], float] = defaultdict(float)
        for concept in concepts:
            found.update(dict.fromkeys(self._parts.get(concept, ()), _BY_THE_WAY))
        for concept in named:
            found.update(dict.fromkeys(self._parts.get(concept, ()), 1.0))
        return found

    def among(self, records: frozenset[str], concepts: Iterable[str]) -> list[int]:
        """Return the ways of asking of some records that hold any of some concepts, in their order."""
        own = self._own.get(records)
        if own is None:
            own = self._own[records] = self._holding_among(records)
        return sorted({number for concept in concepts for number in own.get(concept, ())})

    def _holding_among(self, records: frozenset[str]) -> dict[str, list[int]]:
        found: dict[str, list[int]] = defaultdict(list)
        for record, start, end in zip(self._askable, (0, *self._ends), self._ends, strict=False):
            for number in range(start, end) if record in records else ():
                for concept in self[number].concepts:
                    found[concept].append(number)
        return found
