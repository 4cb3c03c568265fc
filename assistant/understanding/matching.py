"""Which records a question may be asking for, by evidence both ways.

A way of asking is covered by the question's concepts, and the question's words are explained by the way of
asking or by what its record says; rare concepts weigh more. A content word that nothing explains bars a
record: it is kept only to say what is known nearby.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping
from math import log
from typing import Any, NamedTuple

from assistant.understanding.reading import OUTSIDE, PLAIN, STATE, Mention, Reading

STRANGE = 5.0
"""Weight of a word that no record knows."""
_MOST = 80
_SOFT_PENALTY = 0.94
_BOUND_PENALTY = 0.84
_BY_THE_WAY = 0.8
"""Share of a concept that another one only brings along."""
_ASIDE_PENALTY = 0.82
_PASSING_PENALTY = 0.98
_STATE_WEIGHT = 1.2


class Match(NamedTuple):
    """A record with one of its ways of asking, and how well the question fits it.

    covered: share of the way of asking that the question holds. matched: weight of it. share: how much of
    the question the way of asking itself explains. barred: content words that the record does not explain.
    """

    record: str
    tag: str
    score: float
    covered: float
    matched: float
    share: float
    barred: tuple[Mention, ...]
    missing: tuple[tuple[str, ...], ...]

    @property
    def open(self) -> bool:
        """Return whether every content word is explained."""
        return not self.barred


class Matcher:
    """Ranks the records of one base for a reading."""

    def __init__(self, derived: Mapping[str, Any]) -> None:
        self._asks: list[list[Any]] = derived["asks"]
        self._postings: dict[str, list[int]] = derived["postings"]
        self._vocabulary: dict[str, list[str]] = derived["vocabulary"]
        self._sets: dict[str, frozenset[str]] = {}
        self._kinds: dict[str, str] = derived["lexicon"]["kinds"]
        self._records = len(self._vocabulary) or 1
        self._weights: dict[str, float] = {}

    def vocabulary(self, record: str) -> frozenset[str]:
        """Return every concept that a record explains."""
        found = self._sets.get(record)
        if found is None:
            found = self._sets[record] = frozenset(self._vocabulary.get(record, ()))
        return found

    def weight(self, concept: str) -> float:
        """Return how much a concept tells: the rarer, the more."""
        found = self._weights.get(concept)
        if found is None:
            holders = len(self._postings.get(concept, ()))
            rarity = log(1 + 3 * self._records / holders) if holders else STRANGE
            kind = self._kinds.get(concept, "")
            if concept in ("maximum", "minimum"):
                rarity *= 0.45
            elif concept.startswith(STATE):
                rarity = min(rarity, _STATE_WEIGHT)
            else:
                rarity *= {"ask": 0.3, "quantity": 0.8}.get(kind, 1.0)
            found = self._weights[concept] = rarity
        return found

    def mention_weight(self, mention: Mention) -> float:
        """Return the weight of a mention in the commonest of its senses."""
        if mention.weak:
            return 0.0
        if mention.passing and not mention.known:
            return 0.3
        return min(self.weight(c) for c in mention.concepts)

    def is_soft(self, mention: Mention) -> bool:
        """Return whether a mention only colours what is asked: leaving it unexplained is no bar."""
        return (
            mention.weak
            or mention.passing
            or all(self._kinds.get(c) in ("ask", "filler") or c in ("maximum", "minimum") for c in mention.concepts)
        )

    def is_strict(self, mention: Mention) -> bool:
        """Return whether a mention left unexplained bars a record: a word that no term names, a quantity or
        an aspect asked for. Other things of the trade may be named as circumstances.
        """
        if any(c.startswith(OUTSIDE) for c in mention.concepts):
            return True
        return all(c.startswith(PLAIN) or self._kinds.get(c) in ("ask!", "quantity") for c in mention.concepts)

    def rank(
        self,
        reading: Reading,
        given: Collection[str] = (),
        excused: Collection[int] = (),
        only: Collection[str] | None = None,
    ) -> list[Match]:
        """Return the records that share anything with the question, best first.

        given: concepts that amounts or the conversation supply, which cover but need no explaining.
        excused: positions of mentions that something else explains (the conditions of a state table).
        only: the ids to rank, when others are out of question.
        """
        concepts = reading.concepts.union(given)
        primary = frozenset().union(*(m.concepts for m in reading.mentions)).union(given)
        content = [m for m in reading.mentions if not (m.weak or m.start in excused)]
        weights = [self.mention_weight(m) for m in content]
        total = sum(weights) or 1.0
        best: dict[tuple[str, str], Match] = {}
        for index in self._candidates(reading, given):
            record, tag, required, optional = self._asks[index]
            if only is not None and record not in only:
                continue
            match = self._match(record, tag, required, optional, concepts, primary, content, weights, total)
            held = best.get((record, tag))
            if held is None or match.score > held.score:
                best[record, tag] = match
        return sorted(best.values(), key=lambda m: (-m.score, -m.matched))

    def _candidates(self, reading: Reading, given: Iterable[str]) -> list[int]:
        gathered: dict[int, float] = defaultdict(float)
        concepts = sorted(reading.concepts.union(given), key=lambda c: len(self._postings.get(c, ())))
        for concept in concepts:
            holders = self._postings.get(concept, ())
            if len(holders) > 1500 and gathered:
                continue
            gain = self.weight(concept)
            for index in holders:
                gathered[index] += gain
        if len(gathered) <= _MOST:
            return list(gathered)
        return sorted(gathered, key=lambda i: -gathered[i])[:_MOST]

    def _match(
        self, record: str, tag: str, required: list[Any], optional: list[Any], concepts: Collection[str],
        primary: Collection[str], content: list[Mention], weights: list[float], total: float,
    ) -> Match:  # fmt: skip
        covered = whole = 0.0
        missing: list[tuple[str, ...]] = []
        asked: set[str] = set()
        for part, weight in required:
            whole += weight
            asked.update(part)
            if any(c in primary for c in part):
                covered += weight
            elif any(c in concepts for c in part):
                covered += weight * _BY_THE_WAY
            else:
                missing.append(tuple(part))
        bonus = 0.0
        for part, weight in optional:
            asked.update(part)
            if any(c in concepts for c in part):
                bonus += weight
        share = cover = covered / whole if whole else 0.0
        explained = 0.0
        vocabulary = self.vocabulary(record)
        barred: list[Mention] = []
        penalty = 1.0
        for mention, weight in zip(content, weights, strict=True):
            if not asked.isdisjoint(mention.concepts):
                explained += weight
            elif not asked.isdisjoint(mention.implied):
                explained += weight / 2
            elif vocabulary.isdisjoint(mention.concepts) or any(c.startswith(OUTSIDE) for c in mention.concepts):
                if mention.passing:
                    penalty *= _PASSING_PENALTY
                elif self.is_soft(mention):
                    penalty *= _BOUND_PENALTY if mention.holds("maximum") or mention.holds("minimum") else _SOFT_PENALTY
                elif self.is_strict(mention):
                    barred.append(mention)
                else:
                    penalty *= _ASIDE_PENALTY
        share = explained / total
        score = cover * (0.55 + 0.45 * share) * penalty * 0.5 ** len(barred)
        return Match(record, tag, score, cover, covered + bonus, share, tuple(barred), tuple(missing))


def strange(reading: Reading, matcher: Matcher) -> list[Mention]:
    """Return the content words of a question that no record at all knows, or that are of other subjects."""
    return [
        m
        for m in reading.mentions
        if not m.weak
        and (
            (not m.known and not m.passing and all(c.startswith(PLAIN) for c in m.concepts))
            or all(c.startswith(OUTSIDE) for c in m.concepts)
        )
    ]
