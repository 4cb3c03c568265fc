"""What ways of asking leave unexplained of a question, each piece of it looked at once however many ways share it.

Many ways of asking hold the same of a question, and have the same records: what the one explains, and what the text
of the other does, is worked out when it first comes up.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from assistant.frozen import NamedTuple
from assistant.understanding.mentions import Mention

Fit = tuple[float, float, float, float, tuple[Mention, ...]]
"""How a way of asking and its record fit the rest of a question: the share of it that the way of asking explains
itself, and the factor that this makes; factors for what is left unexplained, and for what bars the record; the mentions
that do.
"""


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


class Fits(dict[tuple[frozenset[str], str], Fit]):
    """How ways of asking fit a question, by the concepts that they have in common with it and their record."""

    def __init__(self, content: Iterable[Content], vocabulary: Callable[[str], frozenset[str]]) -> None:
        self._content = tuple(content)
        self._vocabulary = vocabulary
        self._total = sum(c.weight for c in self._content) or 1.0
        self._shares: dict[frozenset[str], float] = {}
        self._strange: dict[str, list[Content]] = {}

    def __missing__(self, key: tuple[frozenset[str], str]) -> Fit:
        asked, record = key
        penalty = 1.0
        barred: list[Mention] = []
        for mention, concepts, implied, _, _, left in self._strange_to(record):
            if asked.isdisjoint(concepts) and asked.isdisjoint(implied):
                if left is None:
                    barred.append(mention)
                else:
                    penalty *= left
        share = self._explained_by(asked)
        fit = self[key] = share, 0.55 + 0.45 * share, penalty, 0.5 ** len(barred), tuple(barred)
        return fit

    def _explained_by(self, asked: frozenset[str]) -> float:
        """Return the share of the question that concepts of a way of asking explain."""
        found = self._shares.get(asked)
        if found is None:
            explained = 0.0
            for _, concepts, implied, weight, _, _ in self._content:
                if not asked.isdisjoint(concepts):
                    explained += weight
                elif not asked.isdisjoint(implied):
                    explained += weight / 2
            found = self._shares[asked] = explained / self._total
        return found

    def _strange_to(self, record: str) -> list[Content]:
        """Return what the text of a record does not explain."""
        found = self._strange.get(record)
        if found is None:
            explained = self._vocabulary(record)
            found = [c for c in self._content if c.outside or explained.isdisjoint(c.concepts)]
            self._strange[record] = found
        return found
