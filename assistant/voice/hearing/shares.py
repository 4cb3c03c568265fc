"""What several readings of a sound come to: those that lead to one answer count together, by fit and by meaning."""

from __future__ import annotations

from math import exp

from assistant.answering.answer import ANSWER, DECLINE, Answer
from assistant.conversation.context import Context
from assistant.frozen import NamedTuple
from assistant.quantities.amounts import Amount

COST_OF_MENDING = 1.0
"""What each unit of sound that is another takes from what a mended reading is worth, as a share of being explained."""
_TRUST = 0.3
"""What a unit of logarithm of fitting the sound counts: a recogniser is surer of itself than it is right."""
_FARTHEST = 16.0
"""How much worse than the best a text may fit: what fits worse is only held to be as bad."""
_MENDING = 3.0
"""What mending costs beyond its fit, for each unit of sound that is another: names are put where none was heard."""
_EXPLAINED = 4.0
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
    fit: float = 0.0
    """How well the text fits the sound, beside which that of others counts: a natural logarithm of probability."""

    @property
    def leads_to(self) -> tuple[object, ...]:
        """What readings that come to the same share: the answer's number; or its record, and amounts given."""
        answer = self.answer
        if answer.outcome == DECLINE:
            return (DECLINE,)
        given = tuple((value.value, value.unit) for value in answer.values[:1])
        amounts = tuple(amount.value for amount in self.amounts)
        if given and not amounts and answer.outcome == ANSWER:
            return (ANSWER, given[0])  # a number is the same answer, whichever record tells it
        return (answer.outcome, answer.entry or answer.text, given, amounts)


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


def by_fit(readings: list[Reading]) -> Weighed:
    """Weigh readings by how well they fit the sound and how well they are explained."""
    fits = [reading.fit - _MENDING * reading.cost for reading in readings]
    top = max(fits)
    by_sound = [exp(_TRUST * max(fit - top, -_FARTHEST)) for fit in fits]
    weights = [
        weight * exp(_EXPLAINED * (reading.explained - 1)) for weight, reading in zip(by_sound, readings, strict=True)
    ]
    chosen, sureness = _most(readings, weights)
    heard = _share_of(chosen.leads_to, readings, by_sound)
    return Weighed(chosen, sureness, 1.0, _rivals(chosen, readings, weights), heard)


def _most(short: list[Reading], weights: list[float]) -> tuple[Reading, float]:
    """Return the best reading, and the share of its answer."""
    chosen = max(zip(short, weights, strict=True), key=lambda pair: pair[1])[0]
    return chosen, _share_of(chosen.leads_to, short, weights)


def _share_of(lead: tuple[object, ...], short: list[Reading], weights: list[float]) -> float:
    """Return the share of one answer among all.

    Of each answer its best reading counts: readings that differ in little words are many, and no more is known by them.
    """
    best: dict[tuple[object, ...], float] = {}
    for reading, weight in zip(short, weights, strict=True):
        best[reading.leads_to] = max(weight, best.get(reading.leads_to, 0.0))
    return best[lead] / sum(best.values())


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
