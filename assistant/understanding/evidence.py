"""What ways of asking leave unexplained of a question, each piece of it looked at once however many ways share it.

Many ways of asking hold the same of a question, and have the same records: what the one explains, and what the text
of the other does, is worked out when it first comes up. Which mentions these are is written as bits of a number, so
that what both leave is found by one step.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import partial
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


class _Kept(dict[Any, Any]):
    """What a function returns, for each key that was asked for."""

    def __init__(self, work: Callable[[Any], Any]) -> None:
        self._work = work

    def __missing__(self, key: Any) -> Any:
        found = self[key] = self._work(key)
        return found


class Known:
    """Which records explain a concept, as bits of a number: one step tells whether a record explains any of some.

    vocabulary: what each record explains, of which the order counts here. knowing: by concept, the records, packed.
    """

    def __init__(self, vocabulary: Iterable[str], knowing: Mapping[str, Any]) -> None:
        self.bit = {record: 1 << number for number, record in enumerate(vocabulary)}
        """The bit of each record."""
        self._knowing = knowing
        self._read: dict[str, int] = _Kept(self._unpacked)

    def of_any(self, concepts: Iterable[str]) -> int:
        """Return the records that explain any of some concepts."""
        found = 0
        for concept in concepts:
            found |= self._read[concept]
        return found

    def _unpacked(self, concept: str) -> int:
        return unpack_numbers(self._knowing.get(concept, ()))


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
        self.by_asked: dict[frozenset[str], tuple[float, float, int]] = _Kept(partial(_explained, bits, total))
        explained_by = [(bit, 0 if c.outside else known.of_any(c.concepts)) for bit, c in bits]
        self.strange: dict[str, int] = _Kept(partial(_strange, explained_by, known.bit))
        self.by_left: dict[int, tuple[float, float, tuple[Mention, ...]]] = _Kept(partial(_left, bits))


_Bits = Sequence[tuple[int, Content]]


def _explained(bits: _Bits, total: float, asked: frozenset[str]) -> tuple[float, float, int]:
    lacks, explained, left = asked.isdisjoint, 0.0, 0
    for bit, (_, concepts, implied, weight, _, _) in bits:
        if not lacks(concepts):
            explained += weight
        elif not lacks(implied):
            explained += weight / 2
        else:
            left |= bit
    share = explained / total
    return share, 0.55 + 0.45 * share, left


def _strange(explained_by: Sequence[tuple[int, int]], bit_of: Mapping[str, int], record: str) -> int:
    own, left = bit_of[record], 0
    for bit, records in explained_by:
        if not records & own:
            left |= bit
    return left


def _left(bits: _Bits, left: int) -> tuple[float, float, tuple[Mention, ...]]:
    penalty = 1.0
    barred: list[Mention] = []
    for bit, each in bits:
        if not left & bit:
            continue
        if each.left is None:
            barred.append(each.mention)
        else:
            penalty *= each.left
    return penalty, 0.5 ** len(barred), tuple(barred)
