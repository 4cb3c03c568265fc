"""Which records a question may be asking for, by evidence both ways.

A way of asking is covered by the question's concepts, and the question's words are explained by the way of
asking or by what its record says; rare concepts weigh more. A content word that nothing explains bars a
record: it is kept only to say what is known nearby.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from functools import cached_property
from math import log
from operator import itemgetter
from sys import intern
from typing import Any

from assistant.frozen import NamedTuple
from assistant.understanding.asks import UNDER, Asks
from assistant.understanding.evidence import Content, Fits, Known
from assistant.understanding.gathering import worth_a_match
from assistant.understanding.heads import counted, heads, things_of
from assistant.understanding.mentions import BOUNDS, OUTSIDE, PLAIN, STATE, Mention, Reading

_MOST = 24
"""Records that are told of those that share anything with a question: nobody looks at more."""
STRANGE = 5.0
"""Weight of a word that no record knows."""
_SOFT_PENALTY = 0.94
_BOUND_PENALTY = 0.84
_LEFT_UNSAID, _SAID = 4, 2.0
_BROUGHT_ALONG = 0.3
"""Share of its weight that a concept nobody named counts for when the ways of asking worth a match are gathered."""
_ASIDE_PENALTY = 0.82
_PASSING_PENALTY = 0.98
_STATE_WEIGHT = 1.2
_WHOLE = 0.99
_OF_ONE_CASE = frozenset({"factor"})
"""Quantities that are given for a case alone: what a record does not know of the case makes it another figure's."""


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
    concepts: frozenset[str] = frozenset()
    """What the way of asking names."""

    @property
    def whole(self) -> bool:
        """Return whether the question holds all that the way of asking requires."""
        return self.covered > _WHOLE

    @property
    def output(self) -> str:
        """The output of a state table that the way of asking is for."""
        return self.tag.split(".", 1)[1]

    @property
    def under_states(self) -> bool:
        """Return whether it is a way of asking only where a state is given that the result rests on."""
        return self.tag.startswith(UNDER)

    @property
    def open(self) -> bool:
        """Return whether every content word is explained."""
        return not self.barred


_Best = tuple[float, float, float, int, float, tuple[Mention, ...]]
"""The best way of asking for the same: its score, the share of it that is covered, the weight covered, its number, and
of its fit the share explained and the mentions that bar its record.
"""


class Matcher:
    """Ranks the records of one base for a reading."""

    def __init__(self, derived: Mapping[str, Any]) -> None:
        self._asks = Asks(derived)
        self._vocabulary: Mapping[str, list[str]] = derived["vocabulary"]
        self._sets: dict[str, frozenset[str]] = {}
        self._known = Known(self._vocabulary, derived["knowing"])
        self._kinds: dict[str, str] = derived["lexicon"]["kinds"]
        self._records = len(self._vocabulary) or 1
        self._weights: dict[str, float] = {}
        self._latest: tuple[Reading, frozenset[int], Fits] | None = None
        self._latest_content: tuple[Reading, list[Content]] | None = None

    def vocabulary(self, record: str) -> frozenset[str]:
        """Return every concept that a record explains."""
        found = self._sets.get(record)
        if found is None:
            # A set that is copied takes the room that it needs; one that grew has taken more.
            found = self._sets[record] = frozenset(set(map(intern, self._vocabulary.get(record, ()))))
        return found

    def weight(self, concept: str) -> float:
        """Return how much a concept tells: the rarer, the more."""
        found = self._weights.get(concept)
        if found is None:
            holders = self._asks.holding(concept).bit_count()
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
        return mention.weak or mention.passing or mention.concepts <= self._soft

    @cached_property
    def _soft(self) -> frozenset[str]:
        """The concepts that only colour what is asked."""
        return BOUNDS.union(c for c, kind in self._kinds.items() if kind in ("ask", "filler"))

    def telling(self, reading: Reading) -> list[Mention]:
        """Return the mentions of a reading that do more than colour what is asked."""
        return [m for m in reading.mentions if not self.is_soft(m)]

    def is_strict(self, mention: Mention) -> bool:
        """Return whether a mention left unexplained bars a record: a word that no term names, a quantity or
        an aspect asked for. Other things of the trade may be named as circumstances.
        """
        if mention.is_outside:
            return True
        return all(c.startswith(PLAIN) or self._kinds.get(c) in ("ask!", "quantity") for c in mention.concepts)

    def rank(
        self, reading: Reading, given: Collection[str] = (), excused: Collection[int] = ()
    ) -> list[Match]:
        """Return the records that share anything with the question, best first.

        given: concepts that amounts or the conversation supply, which cover but need no explaining.
        excused: positions of mentions that something else explains (the conditions of a state table).
        """
        return self._best_of(self._gathered(reading, given), reading, given, excused)

    def rank_among(
        self, records: frozenset[str], reading: Reading, given: Collection[str] = (), excused: Collection[int] = (),
        least: float = 0.0,
    ) -> list[Match]:  # fmt: skip
        """Return those of some records that share anything with the question, best first; least: the share of a way of
        asking that the question holds more of.
        """
        numbers = self._asks.among(records, reading.concepts.union(given))
        return self._best_of(numbers, reading, given, excused, least)

    def _best_of(
        self, numbers: Sequence[tuple[int, frozenset[str]]], reading: Reading, given: Collection[str],
        excused: Collection[int], least: float = 0.0,
    ) -> list[Match]:  # fmt: skip
        """Return how well the question fits the best of the ways of asking for the same, best first; the number of each
        comes with the concepts of the question that it holds.
        """
        if not numbers:
            return []
        asks = self._asks
        for number, _ in numbers:
            asks[number]  # what their parts are worth is known when all are read
        worth = self._asks.worth(reading.named.union(given), reading.concepts.union(given))
        fits = self._fits(reading, frozenset(excused))
        by_asked, strange_to, by_left = fits.by_asked, fits.strange, fits.by_left
        best: dict[tuple[str, str], _Best] = {}
        for number, asked in numbers:
            of, required, _, whole = asks[number]
            weight = 0.0
            for part in required:
                weight += worth[part]
            covered = weight / whole if whole else 0.0
            if covered <= least:
                continue
            held = best.get(of)
            if held is not None and covered <= held[0]:
                continue  # no score is above the share that is covered
            share, shared, missed = by_asked[asked]
            penalty, halved, barred = by_left[missed & strange_to[of[0]]]
            score = covered * shared * penalty * halved
            if held is None or score > held[0]:
                best[of] = score, covered, weight, number, share, barred
        first = sorted(best.values(), key=itemgetter(0), reverse=True)
        if len(first) > _MOST:
            least = first[_MOST - 1][0]  # those that are as good may go before it
            first = [each for each in first if each[0] >= least]
        found = [self._match(each, worth) for each in first]
        return sorted(found, key=lambda m: (-m.score, -m.matched))

    def _match(self, best: _Best, worth: Sequence[float]) -> Match:
        score, covered, weight, number, share, barred = best
        of, _, optional, _ = self._asks[number]
        bonus = sum(weight for part, weight in optional if worth[part]) if optional else 0
        return Match(*of, score, covered, weight + bonus, share, barred, self._asks.named(number))

    def _fits(self, reading: Reading, excused: frozenset[int]) -> Fits:
        """Return how ways of asking fit a reading; kept for the latest: a question is matched several times."""
        if self._latest is None or self._latest[0] is not reading or self._latest[1] != excused:
            content = [c for c in self._content(reading) if c.mention.start not in excused]
            self._latest = reading, excused, Fits(content, self._known)
        return self._latest[2]

    def _content(self, reading: Reading) -> list[Content]:
        """Return what a reading names with what counts of it; kept for the latest, as what is excused differs."""
        if self._latest_content is None or self._latest_content[0] is not reading:
            self._latest_content = reading, self._content_of(reading)
        return self._latest_content[1]

    def _content_of(self, reading: Reading) -> list[Content]:
        things = things_of(reading, self._kinds)
        alone = counted(reading, things)
        own = heads(reading, things) | alone
        if reading.named.intersection(_OF_ONE_CASE) and not reading.amounts:
            own |= {m.start for m in reading.mentions if not (self.is_soft(m) or m.is_plain)}
        return [
            Content(
                m, m.telling, frozenset() if m.start in alone else m.implied, self.mention_weight(m), m.is_outside,
                None if m.start in own else self._left_over(m),
            )
            for m in reading.mentions
            if not m.weak
        ]

    def _gathered(self, reading: Reading, given: Collection[str]) -> list[tuple[int, frozenset[str]]]:
        """Return the ways of asking that are worth a match, each with the concepts of the question that it holds."""
        telling = frozenset().union(*(m.concepts for m in reading.mentions if not m.weak)).union(given)
        holding = {c: self._asks.holding(c) for c in reading.concepts.union(given)}
        # Sums are taken in one order, so that what is nearly a tie comes out alike in every run.
        concepts = sorted(holding, key=lambda c: (holding[c].bit_count(), c))
        # Where much is left unsaid, what is said counts for more.
        own = reading.concepts if len(given) > _LEFT_UNSAID else frozenset()
        shares = ((1.0 if c in telling else _BROUGHT_ALONG) * (_SAID if c in own else 1.0) for c in concepts)
        gains = {c: self.weight(c) * share for c, share in zip(concepts, shares, strict=True)}
        return worth_a_match(gains, holding)

    def _left_over(self, mention: Mention) -> float | None:
        """Return the penalty for a mention that nothing explains, or None where it bars the record."""
        if mention.passing:
            return _PASSING_PENALTY
        if self.is_soft(mention):
            return _BOUND_PENALTY if mention.holds("maximum") or mention.holds("minimum") else _SOFT_PENALTY
        return None if self.is_strict(mention) else _ASIDE_PENALTY


def strange(reading: Reading, matcher: Matcher) -> list[Mention]:
    """Return the content words of a question that no record at all knows, or that are of other subjects."""
    return [
        m
        for m in reading.mentions
        if not m.weak
        and (
            (not m.known and not m.passing and m.is_plain)
            or all(c.startswith(OUTSIDE) for c in m.concepts)
        )
    ]
