"""Which of several readings of a sound was meant: the one that fits the sound and that the knowledge explains best.

Readings come from the recogniser, and from mending by sound what no name explains. Each is put to the conversation as
a typed turn would be. The few that do best are held against the sound once more, part by part, and those that lead to
one answer count together: what remains is how sure it is that this answer is the one asked for.
"""

from __future__ import annotations

import re
from math import exp
from typing import TYPE_CHECKING

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer
from assistant.conversation.context import Context
from assistant.conversation.controls import control
from assistant.conversation.turn import answer_turn, question_of
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge
from assistant.voice.hearing.addressed import goes_on, is_addressed
from assistant.voice.hearing.numbers import number_places, numbered, other_numbers
from assistant.voice.hearing.prompting import questions_near
from assistant.voice.hearing.recognising import Judged, Recognised, Recogniser
from assistant.voice.hearing.repairing import Repairer
from assistant.voice.hearing.shares import COST_OF_MENDING, Reading, Weighed, by_fit, by_score
from assistant.voice.hearing.wording import goes_round, plainly

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
_LEAST_MENDED = 0.8
"""A mended reading counts only if the knowledge explains it at least so well."""
_PICKING = 4
"""Words of a turn that picks what was offered."""
OTHER_TALK = "What was heard does not sound like a question on what is loaded."


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
        readings = self._levelled([*short, *self._mended(short[:_MENDED], judged, context)])
        return by_fit(readings, size=len(judged[short[0].text].parts)) if judged else by_score(readings)

    def _levelled(self, readings: list[Reading]) -> list[Reading]:
        """Return readings without those that sound as another does and lead elsewhere, where that is explained better.

        Which of them was meant is no matter of sound.
        """
        if self._repairer is None:
            return readings
        sounds = [self._repairer.sounds(reading.text) for reading in readings]
        best: dict[tuple[str, ...], Reading] = {}
        for said, reading in zip(sounds, readings, strict=True):
            best[said] = max(best.get(said, reading), reading, key=_by_meaning)
        kept = zip(sounds, readings, strict=True)
        return [reading for said, reading in kept if reading.leads_to == best[said].leads_to]

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
        if not self._is_meant(text, answer, after, context, lent=cost > 0):
            answer, after = answer._replace(outcome=DECLINE, understood={}, text=OTHER_TALK, said=""), context
        asked = question_of(text, self._knowledge, context.variant)
        return Reading(
            text, score, cost, self._explained(text, answer, after, context), answer, after, asked.reading.amounts
        )

    def _is_meant(self, text: str, answer: Answer, after: Context, before: Context, lent: bool) -> bool:
        """Return whether a turn was said to this listener: it steers, picks, goes on, or asks by itself.

        lent: whether a name in it was only mended to be one.
        """
        if answer.outcome == DECLINE or control(text) or after.asked is None or after.asked is before.asked:
            return True
        if before.offered and len(text.split()) <= _PICKING:
            return True
        asked = after.asked
        if before.asked is not None and (asked.context or asked.background):
            return goes_on(text, answer, before.answer, self._knowledge)
        return is_addressed(text, answer, self._knowledge, lent)

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
        ordered = sorted(found.items(), key=lambda pair: pair[1][1] * COST_OF_MENDING - pair[1][2] - pair[1][0])
        return [self._read(text, score, cost, context) for text, (score, cost, _) in ordered[:_SHORT_LIST]]

    def _explains(self, text: str, context: Context) -> float:
        """Return how well a text is explained by itself: quicker than a whole turn."""
        return resolve_scored(question_of(text, self._knowledge, context.variant), self._knowledge).score


def _by_meaning(reading: Reading) -> tuple[bool, float, float]:
    return bool(control(reading.text)), reading.explained, reading.score


def _judged(readings: Sequence[Reading], recogniser: Recogniser, samples: Floats) -> dict[str, Judged]:
    texts = list(dict.fromkeys(reading.text for reading in readings))
    return dict(zip(texts, recogniser.judge(samples, texts) if texts else (), strict=False))


def _is_settled(short: list[Reading]) -> bool:
    """Return whether all readings of a sound are well explained and lead to one answer: nothing is left to think."""
    leads = {reading.leads_to for reading in short}
    well = all(r.answer.outcome == ANSWER and r.explained >= _WELL_EXPLAINED for r in short)
    return len(leads) == 1 and well and len(short) >= _ENOUGH


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
    heard = [(plainly(each.text), each.score) for each in recognised.hypotheses]
    for text, score in [pair for pair in heard if not goes_round(pair[0])] or heard:
        key = " ".join(text.lower().replace(",", " ").rstrip(".?! ").split())
        if key and key not in found:
            found[key] = text, score
    return list(found.values())[:_MOST_HEARD]


def _worth(reading: Reading, best: float) -> float:
    """Return what a reading is worth before it is held against the sound again."""
    return reading.explained - COST_OF_MENDING * reading.cost + reading.score - best


def _short_list(readings: list[Reading], likeliest: str) -> list[Reading]:
    """Return the best readings, among them always what the recogniser itself held likeliest."""
    short = readings[:_SHORT_LIST]
    if all(reading.text != likeliest for reading in short):
        short.append(next(reading for reading in readings if reading.text == likeliest))
    return short


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
