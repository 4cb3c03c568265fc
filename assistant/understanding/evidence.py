"""What ways of asking leave unexplained of a question, each piece of it looked at once however many ways share it.

Many ways of asking hold the same of a question, and have the same records: what the one explains, and what the text
of the other does, is worked out when it first comes up. Which mentions these are is written as bits of a number, so
that what both leave is found by one step.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from assistant.frozen import NamedTuple
from assistant.understanding.mentions import Mention
from assistant.understanding.packing import unpack_numbers


class Content(NamedTuple):
    """A mention that counts, with its concepts and those that it brings along; its weight, whether another subject owns
    it, what it costs when left unexplained (None: it bars the record).
    """

    mention: Mention
    concepts: frozenset[str]
    implied: frozenset[str]
    weight: float
    outside: bool
    left: float | None


class Known:
    """Which records explain a concept, as bits of a number: one step tells whether a record explains any of some.

    vocabulary: what each record explains, of which the order counts here. knowing: by concept, the records, packed.
    """

    def __init__(self, vocabulary: Iterable[str], knowing: Mapping[str, Any]) -> None:
        self.bit = {record: 1 << number for number, record in enumerate(vocabulary)}
        """The bit of each record."""
        self._knowing = knowing
        self._read: dict[str, int] = {}

    def of_any(self, concepts: Iterable[str]) -> int:
        """Return the records that explain any of some concepts."""
        found = 0
        for concept in concepts:
            known = self._read.get(concept)
            if known is None:
                known = self._read[concept] = unpack_numbers(self._knowing.get(concept, ()))
            found |= known
        return found


class Fits:
    """How ways of asking and their records fit a question.

    by_asked: by the concepts that a way of asking has in common with the question, the share of it that they explain,
    the factor that this makes, and the mentions that they leave. strange: by record, those that its text leaves.
    by_left: by the mentions that both leave, the factor for those that only cost, the one for those that bar the
    record, and the mentions that do.
    """

    def __init__(self, content: Iterable[Content], known: Known) -> None:
        bits = tuple((1 << place, each) for place, each in enumerate(content))
        total = sum(c.weight for _, c in bits) or 1.0
        self.by_asked = _Explained(bits, total)
        self.strange = _Strange([(bit, 0 if c.outside else known.of_any(c.concepts)) for bit, c in bits], known.bit)
        self.by_left = _Left(bits)


_Bits = Sequence[tuple[int, Content]]


class _Explained(dict[frozenset[str], tuple[float, float, int]]):
    """What concepts explain of a question, worked out when they first come up."""

    def __init__(self, bits: _Bits, total: float) -> None:
        self._bits = bits
        self._total = total

    def __missing__(self, asked: frozenset[str]) -> tuple[float, float, int]:
        lacks, explained, left = asked.isdisjoint, 0.0, 0
        for bit, (_, concepts, implied, weight, _, _) in self._bits:
            if not lacks(concepts):
                explained += weight
            elif implied and not lacks(implied):
                explained += weight / 2
            else:
                left |= bit
        share = explained / self._total
        found = self[asked] = share, 0.55 + 0.45 * share, left
        return found


class _Strange(dict[str, int]):
    """What the text of a record leaves of a question, worked out when it first comes up."""

    def __init__(self, explained_by: Sequence[tuple[int, int]], bit_of: Mapping[str, int]) -> None:
        self._explained_by = explained_by
        self._bit_of = bit_of

    def __missing__(self, record: str) -> int:
        own, left = self._bit_of[record], 0
        for bit, records in self._explained_by:
            if not records & own:
                left |= bit
        self[record] = left
        return left


class _Left(dict[int, tuple[float, float, tuple[Mention, ...]]]):
    """What it costs that mentions are left, worked out when they first come up."""

    def __init__(self, bits: _Bits) -> None:
        self._bits = bits

    def __missing__(self, left: int) -> tuple[float, float, tuple[Mention, ...]]:
        penalty = 1.0
        barred: list[Mention] = []
        for bit, each in self._bits:
            if not left & bit:
                continue
            if each.left is None:
                barred.append(each.mention)
            else:
                penalty *= each.left
        found = self[left] = penalty, 0.5 ** len(barred), tuple(barred)
        return found
