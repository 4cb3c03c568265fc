"""What several readings of a sound come to: those that lead to one answer count together, by fit and by meaning."""

from __future__ import annotations

from math import exp

from assistant.answering.answer import ANSWER, DECLINE, Answer
from assistant.conversation.context import Context
from assistant.frozen import NamedTuple
from assistant.quantities.amounts import Amount

COST_OF_MENDING = 1.0
"""What each unit of sound that is another takes from what a mended reading is worth, as a share of being explained."""
_MENDING = 0.3
"""What mending costs, in the recogniser's own score a part, for each unit of sound that is another."""
_EXPLAINED = 3.0
"""How many units of logarithm of fitting the sound the whole of being explained weighs."""


class Reading(NamedTuple):
    """One reading of a sound: how likely it was by the recogniser, what mending it cost, and where it leads."""

    text: str
    score: float
    cost: float
    explained: float
    answer: Answer
    after: Context
    amounts: tuple[Amount, ...]

    @property
    def leads_to(self) -> tuple[object, ...]:
        """What readings that come to the same share: the record, its first number, and the amounts given."""
        answer = self.answer
        if answer.outcome == DECLINE:
            return (DECLINE,)
        first = tuple((v.value, v.unit) for v in answer.values[:1])
        return (answer.outcome, answer.entry or answer.text, first, tuple(amount.value for amount in self.amounts))


class Weighed(NamedTuple):
    """The reading that was meant. sureness: the share of all readings that lead to its answer, 0 to 1.

    number: the least probability of a figure in it. rivals: readings that lead elsewhere, the likeliest first.
    """

    reading: Reading
    sureness: float
    number: float = 1.0
    rivals: tuple[Reading, ...] = ()
    heard: float = 1.0
    """The share by the sound alone, whatever the knowledge explains."""


def by_fit(readings: list[Reading], size: int) -> Weighed:
    """Weigh readings by how well they fit the sound and how well they are explained.

    size: parts of the likeliest. The score a part is taken for so many: in sum, a left-out word would be a gain.
    """
    fits = [size * (reading.score - _MENDING * reading.cost) for reading in readings]
    top = max(fits)
    by_sound = [exp(fit - top) for fit in fits]
    weights = [
        weight * exp(_EXPLAINED * (reading.explained - 1)) for weight, reading in zip(by_sound, readings, strict=True)
    ]
    chosen, sureness = _most(readings, weights)
    same = sum(w for r, w in zip(readings, by_sound, strict=True) if r.leads_to == chosen.leads_to)
    return Weighed(chosen, sureness, 1.0, _rivals(chosen, readings, weights), same / sum(by_sound))


def _most(short: list[Reading], weights: list[float]) -> tuple[Reading, float]:
    """Return the best reading of the answer that all readings together speak for most, and its share."""
    shares: dict[tuple[object, ...], float] = {}
    for reading, weight in zip(short, weights, strict=True):
        shares[reading.leads_to] = shares.get(reading.leads_to, 0.0) + weight
    best = max(shares, key=lambda key: shares[key])
    chosen = max(
        (pair for pair in zip(short, weights, strict=True) if pair[0].leads_to == best), key=lambda pair: pair[1]
    )[0]
    return chosen, shares[best] / sum(shares.values())


def _rivals(chosen: Reading, short: list[Reading], weights: list[float]) -> tuple[Reading, ...]:
    ordered = sorted(zip(short, weights, strict=True), key=lambda pair: -pair[1])
    return tuple(each for each, _ in ordered if each.leads_to != chosen.leads_to and each.answer.outcome == ANSWER)


def by_score(short: list[Reading]) -> Weighed:
    """Weigh by the recogniser's own scores, where it cannot judge a text."""
    best = max(reading.score for reading in short)
    weights = [
        exp(4 * (r.score - best) + _EXPLAINED * (r.explained - 1) - 4 * COST_OF_MENDING * r.cost) for r in short
    ]
    chosen, sureness = _most(short, weights)
    return Weighed(chosen, sureness, 1.0, _rivals(chosen, short, weights))
