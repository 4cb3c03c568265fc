"""What several readings of a sound come to: those that lead to one answer count together, by fit and by meaning."""

from __future__ import annotations

import re
from math import exp
from typing import TYPE_CHECKING

from assistant.answering.answer import ANSWER, DECLINE, Answer
from assistant.conversation.context import Context
from assistant.frozen import NamedTuple
from assistant.quantities.amounts import Amount

if TYPE_CHECKING:
    from collections.abc import Sequence

COST_OF_MENDING = 1.0
"""What each unit of sound that is another takes from what a mended reading is worth, as a share of being explained."""
_TRUST = 0.22
"""What a unit of logarithm of fitting the sound counts: a recogniser is surer of itself than it is right."""
_FARTHEST = 25.0
"""How much worse than the best a text may fit: what fits worse is only held to be as bad."""
_ASKED = 0.08
"""What a unit of logarithm of being likely as a question counts."""
_MENDING = 3.0
"""What mending costs beyond its fit, for each unit of sound that is another: names are put where none was heard."""
_OUTDONE, _AS_USUAL, _MOST_UNUSUAL = 4.0, 0.5, 4.0
"""How much better a reading must fit that outdoes the chosen one; how much less usual it may be, for each unit of that,
and at most."""
_EXPLAINED = 5.0
"""How many units of logarithm of fitting the sound the whole of being explained weighs."""


_SENTENCE_END = re.compile(r"(?<=[.:;?!])\s+")
_FIGURE = re.compile(r"\d")
_UNDER_WHICH = "That is with"
"""How the sentence begins that only tells what an answer was taken to be asked under."""


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
    usual: float = 0.0
    """How likely the text is as a question, whatever was heard: a natural logarithm of probability."""
    meant: float = 1.0
    """How sure it is that it was said to this listener, as `addressed` tells it."""

    @property
    def leads_to(self) -> tuple[object, ...]:
        """What readings that come to the same share: the answer's number; or its record, what that tells, and amounts.

        One record may tell opposite things, such as a table of what is lost with what.
        """
        answer = self.answer
        if answer.outcome == DECLINE:
            return (DECLINE,)
        given = tuple((value.value, value.unit) for value in answer.values[:1])
        amounts = tuple(amount.value for amount in self.amounts)
        sentences = _SENTENCE_END.split(answer.text)
        if answer.outcome == ANSWER and not (given and _FIGURE.search(sentences[0])):
            told = frozenset(each.lower() for each in sentences if not each.startswith(_UNDER_WHICH))
            return (ANSWER, answer.entry, told, amounts)
        if given and not amounts and answer.outcome == ANSWER:
            return (ANSWER, given[0])  # a number is the same answer, whichever record tells it
        return (answer.outcome, answer.entry or answer.text, given, amounts)


class Weighed(NamedTuple):
    """The reading that was meant. sureness: the share of all readings that lead to its answer, 0 to 1.

    number: the least probability of a figure in it. rivals: readings that lead elsewhere, the likeliest first. other:
    its text with a number that sounds alike in the place of its own. outdone: whether one that was heard as it stands
    leads elsewhere, fits the sound better, and is as usual a question: nothing but its being explained is against it.
    """

    reading: Reading
    sureness: float
    number: float = 1.0
    rivals: tuple[Reading, ...] = ()
    other: str = ""
    outdone: bool = False


def answers_of(readings: Sequence[Reading]) -> list[object]:
    """Return for each reading what stands for its answer: readings that lead to one number or one text share it."""
    same: dict[object, object] = {}

    def first(lead: object) -> object:
        while lead in same:
            lead = same[lead]
        return lead

    for reading in readings:
        one, two = first(reading.leads_to), first(reading.answer.text)
        if one != two:
            same[two] = one
    return [first(reading.leads_to) for reading in readings]


def by_fit(readings: list[Reading]) -> Weighed:
    """Weigh readings by how well they fit the sound and how well they are explained."""
    fits = [reading.fit - _MENDING * reading.cost for reading in readings]
    top = max(fits)
    by_sound = [exp(_TRUST * max(fit - top, -_FARTHEST)) for fit in fits]
    meant = [exp(_EXPLAINED * (reading.explained - 1) + _ASKED * reading.usual) for reading in readings]
    weights = [one * two for one, two in zip(by_sound, meant, strict=True)]
    answers = answers_of(readings)
    best = _best(weights)
    rivals = _rivals(best, readings, answers, weights)
    elsewhere = [each for each, answer in zip(readings, answers, strict=True) if answer != answers[best]]
    outdone = any(_outdoes(each, readings[best]) for each in elsewhere)
    return Weighed(readings[best], _share_of(best, answers, weights), 1.0, rivals, outdone=outdone)


def _outdoes(reading: Reading, chosen: Reading) -> bool:
    if reading.cost:
        return False
    better = reading.fit - chosen.fit
    return better > _OUTDONE and chosen.usual - reading.usual <= min(_AS_USUAL * better, _MOST_UNUSUAL)


def _best(weights: list[float]) -> int:
    return max(range(len(weights)), key=weights.__getitem__)


def _share_of(place: int, answers: list[object], weights: list[float]) -> float:
    """Return the share of the answer of one reading among all.

    Of each answer its best reading counts: readings that differ in little words are many, and no more is known by them.
    """
    best: dict[object, float] = {}
    for answer, weight in zip(answers, weights, strict=True):
        best[answer] = max(weight, best.get(answer, 0.0))
    return best[answers[place]] / sum(best.values())


def _rivals(
    chosen: int, readings: list[Reading], answers: list[object], weights: list[float]
) -> tuple[Reading, ...]:
    ordered = sorted(range(len(readings)), key=lambda place: -weights[place])
    elsewhere = (readings[place] for place in ordered if answers[place] != answers[chosen])
    return tuple(reading for reading in elsewhere if reading.answer.outcome == ANSWER)


def by_score(readings: list[Reading]) -> Weighed:
    """Weigh by the recogniser's own scores, where it cannot judge a text."""
    best = max(reading.score for reading in readings)
    weights = [
        exp(4 * (r.score - best) + _EXPLAINED * (r.explained - 1) - 4 * COST_OF_MENDING * r.cost) for r in readings
    ]
    answers, chosen = answers_of(readings), _best(weights)
    rivals = _rivals(chosen, readings, answers, weights)
    return Weighed(readings[chosen], _share_of(chosen, answers, weights), 1.0, rivals)
