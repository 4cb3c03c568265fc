"""Which of several readings of a sound was meant: the one that fits the sound and that the knowledge explains best.

Readings come from the recogniser, and from mending by sound what no name explains. Each is put to the conversation as
a typed turn would be. The few that do best are held against the sound once more, part by part, and those that lead to
one answer count together: what remains is how sure it is that this answer is the one asked for.
"""

from __future__ import annotations

import re
from math import exp
from typing import TYPE_CHECKING, NamedTuple

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer
from assistant.conversation.context import Context
from assistant.conversation.controls import control
from assistant.conversation.turn import answer_turn, question_of
from assistant.quantities.amounts import Amount
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge
from assistant.voice.hearing.numbers import number_places, numbered, other_numbers
from assistant.voice.hearing.prompting import questions_near
from assistant.voice.hearing.recognising import Judged, Recognised, Recogniser
from assistant.voice.hearing.repairing import Repairer
from assistant.voice.hearing.wording import plainly

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from assistant.voice.hearing.recognising import Floats

_MOST_HEARD = 8
_MENDED = 3
"""Readings that are mended by sound, and how often each."""
_TIMES = 10
_SHORT_LIST = 5
_FEWEST_WORDS = 3
"""Words of what is mended: a single word is like too many names."""
_SURE_WORD = 0.6
"""Probability of a word from which on it is taken as it was heard."""
_WORD = re.compile(r"[^\W\d_][\w']*")
_WELL_EXPLAINED, _ENOUGH = 0.85, 3
_ASKS_BACK = 0.55
"""What a reading that the knowledge asks back on is worth beside one that it answers."""
_COST_OF_MENDING = 1.0
_LEAST_MENDED = 0.8
"""A mended reading counts only if the knowledge explains it at least so well."""
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


class Weigher:
    """Weighs what a recogniser made of a sound, for one knowledge base."""

    def __init__(self, knowledge: Knowledge, repairer: Repairer | None) -> None:
        self._knowledge = knowledge
        self._repairer = repairer

    def weigh(
        self, recognised: Recognised, recogniser: Recogniser, samples: Floats, context: Context
    ) -> Weighed | None:
        """Return what was meant, or None where nothing was made out."""
        heard = _distinct(recognised)
        if not heard:
            return None
        short = self._short(heard, context)
        if _is_settled(short):
            weighed = Weighed(max(short, key=lambda reading: reading.score), 1.0)
        else:
            weighed = self._thought_over(heard, short, recogniser, samples, context)
        if not weighed.reading.amounts:
            return weighed
        return weighed._replace(number=_number_chance(weighed.reading.text, recogniser, samples))

    def _thought_over(
        self, heard: list[tuple[str, float]], short: list[Reading], recogniser: Recogniser, samples: Floats,
        context: Context,
    ) -> Weighed:  # fmt: skip
        """Hear the sound again after the questions near, mend what is in doubt, and weigh all readings."""
        expecting = questions_near((text for text, _ in heard[:_MENDED]), self._knowledge)
        again = _distinct(recogniser.recognise(samples, expecting)) if expecting else []
        scores = dict(again)
        short = [reading._replace(score=max(reading.score, scores.get(reading.text, -9.0))) for reading in short]
        known = {reading.text for reading in short}
        short += [reading for reading in self._short(again, context) if reading.text not in known]
        judged = _judged(short[:_MENDED], recogniser, samples)
        readings = [*short, *self._mended(short[:_MENDED], judged, context)]
        return _by_fit(readings, size=len(judged[short[0].text].parts)) if judged else _by_score(readings)

    def _short(self, heard: Sequence[tuple[str, float]], context: Context) -> list[Reading]:
        """Return the readings of one hearing that are worth more thought, the most promising first."""
        if not heard:
            return []
        texts = dict(pair for text, score in heard for pair in ((text, score), (numbered(text), score)))
        readings = [self._read(text, score, 0.0, context) for text, score in texts.items()]
        readings.sort(key=lambda reading: -_worth(reading, heard[0][1]))
        return _short_list(readings, heard[0][0])

    def warm(self) -> None:
        """Do once what only the first sound would have to wait for."""
        self._explains("what", Context())
        if self._repairer is not None:
            self._repairer.warm()

    def _read(self, text: str, score: float, cost: float, context: Context) -> Reading:
        answer, after = answer_turn(text, context, self._knowledge)
        asked = question_of(text, self._knowledge, context.variant)
        return Reading(
            text, score, cost, self._explained(text, answer, after, context), answer, after, asked.reading.amounts
        )

    def _explained(self, text: str, answer: Answer, after: Context, before: Context) -> float:
        """Return how well the knowledge explains a turn, from 0 for a decline to about 1."""
        if answer.outcome == DECLINE:
            return 0.0
        if control(text):
            return 1.0
        if after.asked is None or after.asked is before.asked:
            return _ASKS_BACK
        score = resolve_scored(after.asked, self._knowledge).score
        if answer.outcome == CLARIFY:
            return min(score, _ASKS_BACK) if score else _ASKS_BACK / 2
        return min(score, 1.0)

    def _mended(self, readings: Sequence[Reading], judged: Mapping[str, Judged], context: Context) -> list[Reading]:
        """Return readings mended by sound where the recogniser was in doubt, or where it cannot say, anywhere."""
        if self._repairer is None:
            return []
        found: dict[str, tuple[float, float, float]] = {}
        known = {reading.text for reading in readings}
        for text, score in [(r.text, r.score) for r in readings if len(r.text.split()) >= _FEWEST_WORDS]:
            doubtful = _doubtful(text, judged[text]) if judged else None
            for repair in self._repairer.repairs(text, doubtful)[:_TIMES]:
                if repair.text in found or repair.text in known:
                    continue
                explained = self._explains(repair.text, context)
                if explained >= _LEAST_MENDED:
                    found[repair.text] = (score, repair.cost, explained)
        ordered = sorted(found.items(), key=lambda pair: pair[1][1] * _COST_OF_MENDING - pair[1][2] - pair[1][0])
        return [self._read(text, score, cost, context) for text, (score, cost, _) in ordered[:_SHORT_LIST]]

    def _explains(self, text: str, context: Context) -> float:
        """Return how well a text is explained by itself: quicker than a whole turn."""
        return resolve_scored(question_of(text, self._knowledge, context.variant), self._knowledge).score


def _judged(readings: Sequence[Reading], recogniser: Recogniser, samples: Floats) -> dict[str, Judged]:
    texts = list(dict.fromkeys(reading.text for reading in readings))
    return dict(zip(texts, recogniser.judge(samples, texts) if texts else (), strict=False))


def _is_settled(short: list[Reading]) -> bool:
    """Return whether all readings of a sound are well explained and lead to one answer: nothing is left to think."""
    leads = {reading.leads_to for reading in short}
    well = all(r.answer.outcome == ANSWER and r.explained >= _WELL_EXPLAINED for r in short)
    return len(leads) == 1 and well and len(short) >= _ENOUGH


def _by_fit(readings: list[Reading], size: int) -> Weighed:
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


def _doubtful(text: str, judged: Judged) -> list[tuple[int, int]]:
    """Return the places of the words that the recogniser was not sure of."""
    found = []
    for word in _WORD.finditer(text):
        chance = 1.0
        for part in judged.parts:
            if part.start < word.end() and part.end > word.start():
                chance *= part.chance
        if chance < _SURE_WORD:
            found.append(word.span())
    return found


def _distinct(recognised: Recognised) -> list[tuple[str, float]]:
    """Return the texts in plain writing, each once, the likeliest first."""
    found: dict[str, tuple[str, float]] = {}
    for hypothesis in recognised.hypotheses:
        text = plainly(hypothesis.text)
        key = " ".join(text.lower().replace(",", " ").rstrip(".?! ").split())
        if key and key not in found:
            found[key] = text, hypothesis.score
    return list(found.values())[:_MOST_HEARD]


def _worth(reading: Reading, best: float) -> float:
    """Return what a reading is worth before it is held against the sound again."""
    return reading.explained - _COST_OF_MENDING * reading.cost + reading.score - best


def _short_list(readings: list[Reading], likeliest: str) -> list[Reading]:
    """Return the best readings, among them always what the recogniser itself held likeliest."""
    short = readings[:_SHORT_LIST]
    if all(reading.text != likeliest for reading in short):
        short.append(next(reading for reading in readings if reading.text == likeliest))
    return short


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


def _by_score(short: list[Reading]) -> Weighed:
    """Weigh by the recogniser's own scores, where it cannot judge a text."""
    best = max(reading.score for reading in short)
    weights = [
        exp(4 * (r.score - best) + _EXPLAINED * (r.explained - 1) - 4 * _COST_OF_MENDING * r.cost) for r in short
    ]
    chosen, sureness = _most(short, weights)
    return Weighed(chosen, sureness, 1.0, _rivals(chosen, short, weights))


def _number_chance(text: str, recogniser: Recogniser, samples: Floats) -> float:
    """Return how likely the numbers of a text are: each part of them, and beside others that sound alike."""
    judged = recogniser.judge(samples, [text, *other_numbers(text)])
    if not judged:
        return 1.0
    mine, *others = judged
    places = number_places(text)
    chances = [p.chance for p in mine.parts for start, end in places if p.start < end and p.end > start]
    return min([*chances, _against(mine, others)])


def _against(mine: Judged, others: list[Judged]) -> float:
    """Return how likely a text is beside those in which only a number sounds a little different."""
    whole = 1.0 + sum(exp(min(20.0, other.total - mine.total)) for other in others)
    return 1 / whole
