"""Which of several readings of a sound was meant: the one that fits the sound and that the knowledge explains best.

Readings come from the recogniser, and from mending by sound what no name explains. Each is put to the conversation as
a typed turn would be. The few that do best are held against the sound once more, part by part, and those that lead to
one answer count together: what remains is how sure it is that this answer is the one asked for.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer, Saying
from assistant.answering.unanswered import KNOWN_NEARBY
from assistant.conversation.context import Context
from assistant.conversation.control_words.controls import control
from assistant.conversation.turn import answer_turn, question_of
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.mentions import OUTSIDE
from assistant.understanding.mentions import Reading as Read
from assistant.voice.hearing.addressed import SURELY, UNKNOWN_LEAN, goes_on, is_addressed
from assistant.voice.hearing.everyday import Everyday
from assistant.voice.hearing.fitting import as_a_question, judged_texts, number_chance
from assistant.voice.hearing.homophones import Homophones
from assistant.voice.hearing.making import Maker
from assistant.voice.hearing.nearness import said_more
from assistant.voice.hearing.numbers import numbered
from assistant.voice.hearing.prompting import questions_near
from assistant.voice.hearing.recognising import Judged, Recognised, Recogniser
from assistant.voice.hearing.repairing import Repairer
from assistant.voice.hearing.rewording import Rewords
from assistant.voice.hearing.shares import COST_OF_MENDING, Reading, Weighed, answers_of, by_fit, by_score
from assistant.voice.hearing.usage import Usage
from assistant.voice.hearing.wording import goes_round, plainly

if TYPE_CHECKING:
    from collections.abc import Container, Iterable, Mapping, Sequence

    from assistant.voice.hearing.recognising import Floats

_MOST_HEARD = 8
_LOOKED_AT = 3
"""Texts by which it is told what may be expected."""
_SHORT_LIST = 5
_WELL_EXPLAINED, _ENOUGH = 0.85, 3
_NEAR = 0.15
"""How much less likely a reading may be, a part, to be as good as the likeliest before it is looked at more closely."""
_ASKS_BACK = 0.55
"""What a reading that the knowledge asks back on is worth beside one that it answers."""
_ELSEWHERE = 0.85
"""What a reading is worth that names something known to be of another subject: declined, but no chance sounds."""
_FAR_OFF = 13.0
"""How much worse than the best a reading that was only made may fit: what was meant seldom fits worse."""
_STRANGE = 0.2
"""What a word that the knowledge does not know takes from a reading: it is likelier to be misheard than meant."""
_PICKING = 4
"""Words of a turn that picks what was offered."""
OTHER_TALK = "What was heard does not sound like a question on what is loaded."


class Weigher:
    """Weighs what a recogniser made of a sound, for one knowledge base."""

    def __init__(
        self, knowledge: Knowledge, repairer: Repairer | None, homophones: Homophones | None = None,
        usage: Usage | None = None, rewords: Rewords | None = None, everyday: Everyday | None = None,
    ) -> None:  # fmt: skip
        self._knowledge = knowledge
        self._repairer = repairer
        self._homophones = homophones
        self._everyday = everyday
        self._maker = Maker(knowledge, repairer, usage, rewords)

    def weigh(
        self, recognised: Recognised, recogniser: Recogniser, samples: Floats, context: Context
    ) -> Weighed | None:
        """Return what was meant, or None where nothing was made out."""
        heard = self._distinct(recognised)
        if not heard:
            return None
        readings = self._readings(heard, context)
        best = max(readings, key=_by_meaning)
        if _is_settled(readings) and self._maker.is_usual(best.text):
            weighed = Weighed(best, 1.0)
        else:
            weighed = self._thought_over(heard, _short_list(readings, heard[0][0]), recogniser, samples, context)
        if not weighed.reading.amounts:
            return weighed
        chance, other = number_chance(weighed.reading.text, recogniser, samples)
        return weighed._replace(number=chance, other=other)

    def _thought_over(
        self, heard: list[tuple[str, float]], short: list[Reading], recogniser: Recogniser, samples: Floats,
        context: Context,
    ) -> Weighed:  # fmt: skip
        """Hear the sound again after the questions near, mend what is in doubt, and weigh all readings."""
        expecting = questions_near((text for text, _ in heard[:_LOOKED_AT]), self._knowledge)
        again = self._distinct(recogniser.recognise(samples, expecting)) if expecting else []
        scores = dict(again)
        short = [reading._replace(score=max(reading.score, scores.get(reading.text, -9.0))) for reading in short]
        known = {reading.text for reading in short}
        if again:
            more = _short_list(self._readings(again, context), again[0][0])
            short += [reading for reading in more if reading.text not in known]
        judged = judged_texts(short, recogniser, samples)
        if judged:
            short.sort(key=lambda reading: -judged[reading.text].total)
        readings = _each_once([*short, *self._made(short, judged, context)])
        if not judged:
            return by_score(self._levelled(readings))
        judged |= judged_texts([reading for reading in readings if reading.text not in judged], recogniser, samples)
        readings = [reading._replace(fit=judged[reading.text].total) for reading in readings]
        readings = self._levelled(_that_fit(readings, {reading.text for reading in short}))
        weighed = by_fit(readings)
        return said_more(weighed, readings, self._repairer, self._knowledge) if self._repairer else weighed

    def _distinct(self, recognised: Recognised) -> list[tuple[str, float]]:
        """Return the texts in plain writing, each once, the likeliest first."""
        found: dict[str, tuple[str, float]] = {}
        heard = [(self._written(plainly(each.text)), each.score) for each in recognised.hypotheses]
        for text, score in [pair for pair in heard if not goes_round(pair[0])] or heard:
            key = " ".join(text.lower().replace(",", " ").rstrip(".?! ").split())
            if key and key not in found:
                found[key] = text, score
        return list(found.values())[:_MOST_HEARD]

    def _written(self, text: str) -> str:
        return self._homophones.written(text) if self._homophones is not None else text

    def _levelled(self, readings: list[Reading]) -> list[Reading]:
        """Return readings without those that sound as another does and lead elsewhere, where that is explained better.

        Which of them was meant is no matter of sound.
        """
        if self._repairer is None:
            return readings
        sounds, answers = [self._repairer.sounds(reading.text) for reading in readings], answers_of(readings)
        best: dict[tuple[str, ...], int] = {}
        for place, said in enumerate(sounds):
            best[said] = max(best.get(said, place), place, key=lambda each: _by_meaning(readings[each]))
        return [
            reading
            for said, answer, reading in zip(sounds, answers, readings, strict=True)
            if answer == answers[best[said]]
        ]

    def _readings(self, heard: Sequence[tuple[str, float]], context: Context) -> list[Reading]:
        """Return the readings of one hearing, the most promising first."""
        texts = dict(pair for text, score in heard for pair in ((text, score), (numbered(text), score)))
        readings = [self._read(text, score, 0.0, context) for text, score in texts.items()]
        return sorted(readings, key=lambda reading: -_worth(reading, heard[0][1]))

    def warm(self) -> None:
        """Do once what only the first sound would have to wait for."""
        self._explains("what", Context())
        if self._repairer is not None:
            self._repairer.warm()
        if self._homophones is not None:
            self._homophones.warm()
        self._maker.warm()

    def _read(self, text: str, score: float, cost: float, context: Context) -> Reading:
        answer, after = answer_turn(text, context, self._knowledge)
        meant = self._meant(text, answer, after, context, lent=cost > 0)
        if not meant and answer.outcome != DECLINE:  # of what declines anyway each reading stays one of its own
            answer, after = _other_talk(answer), context
        asked = question_of(text, self._knowledge, context.variant)
        explained = self._explained(text, answer, after, context) - _STRANGE * self._strange(asked.reading)
        usual = self._maker.usual(text)
        return Reading(text, score, cost, max(0.0, explained), answer, after, asked.reading.amounts, 0.0, usual, meant)

    def _strange(self, reading: Read) -> int:
        """Return how many words are neither names nor those between them, or are no words until they are mended."""
        lexicon, repairer = self._knowledge.lexicon, self._repairer
        odd = sum(w.isalpha() and not lexicon.knows(w) and w not in lexicon.neutral for w in set(reading.words))
        return odd + sum(repairer is not None and not repairer.is_english(old) for old, _ in reading.mended)

    def _meant(self, text: str, answer: Answer, after: Context, before: Context, lent: bool) -> float:
        """Return how sure it is that a turn was said to this listener: it steers, picks, goes on, or asks by itself.

        lent: whether a name in it was only mended to be one.
        """
        if control(text) or (before.offered and len(text.split()) <= _PICKING):
            return SURELY
        lean = self._everyday.lean(text) if self._everyday is not None else UNKNOWN_LEAN
        asked = after.asked
        if answer.outcome != DECLINE:
            if asked is None or asked is before.asked:
                return SURELY
            if before.asked is not None and (asked.context or asked.background or self._is_completed(text, asked)):
                return goes_on(text, answer, before.answer, self._knowledge, lean)
        return is_addressed(text, answer, self._knowledge, lent, lean)

    def _is_completed(self, text: str, asked: Question) -> bool:
        return asked.reading.words != self._knowledge.reader.read(text).words

    def _explained(self, text: str, answer: Answer, after: Context, before: Context) -> float:
        """Return how well the knowledge explains a turn, from 0 for what it makes nothing of to about 1."""
        if answer.outcome == DECLINE:
            return _ELSEWHERE if _names_what_is_elsewhere(answer) else 0.0
        if control(text):
            return 1.0
        if after.asked is None or after.asked is before.asked:
            return _ASKS_BACK
        score = resolve_scored(after.asked, self._knowledge).score
        if answer.outcome == CLARIFY:
            return min(score, _ASKS_BACK) if score else _ASKS_BACK / 2
        return min(score, 1.0)

    def _made(self, readings: Sequence[Reading], judged: Mapping[str, Judged], context: Context) -> list[Reading]:
        """Return readings that were not heard as they stand."""
        made = self._maker.made(readings, judged, self._written, lambda text: self._explains(text, context))
        return [self._read(each.text, each.score, each.cost, context) for each in made]

    def _explains(self, text: str, context: Context) -> float:
        """Return how well a text is explained by itself: quicker than a whole turn."""
        return resolve_scored(question_of(text, self._knowledge, context.variant), self._knowledge).score


def _by_meaning(reading: Reading) -> tuple[bool, float, float]:
    return bool(control(reading.text)), reading.explained, reading.score


def _each_once(readings: Iterable[Reading]) -> list[Reading]:
    """Return readings without those that another is but for stops and capitals, which would count twice."""
    found: dict[str, Reading] = {}
    for reading in readings:
        found.setdefault(as_a_question(reading.text).lower(), reading)
    return list(found.values())


def _that_fit(readings: Sequence[Reading], heard: Container[str]) -> list[Reading]:
    """Return readings without those that were made and fit the sound far worse: talk may be worded as a question."""
    best = max(reading.fit for reading in readings)
    return [reading for reading in readings if reading.text in heard or reading.fit >= best - _FAR_OFF]


def _other_talk(answer: Answer) -> Answer:
    """Return that something was said to somebody else, with nothing left of the answer that it would have had."""
    said = answer.said._replace(text=OTHER_TALK) if isinstance(answer.said, Saying) else OTHER_TALK
    return Answer(answer.question, DECLINE, OTHER_TALK, said, cautions=answer.cautions, variant=answer.variant)


def declined_to_strangers(reading: Reading) -> Answer:
    """Return a declining answer as it is told where nobody may have asked: strangers are offered nothing nearby."""
    answer = reading.answer
    if reading.meant >= SURELY or answer.text == OTHER_TALK:
        return answer
    if not reading.meant:
        return _other_talk(answer)
    text = answer.text.partition(KNOWN_NEARBY)[0]
    said = answer.said._replace(text=text) if isinstance(answer.said, Saying) else text
    return answer._replace(text=text, said=said, aloud=())


def _names_what_is_elsewhere(answer: Answer) -> bool:
    named = answer.understood.get("concepts", ())
    return any(concept.startswith(OUTSIDE) for each in named for concept in each["concepts"])


def _is_settled(readings: list[Reading]) -> bool:
    """Return whether all that a sound may well be leads to one well explained answer: no more thought is needed."""
    likeliest = max(reading.score for reading in readings)
    near = [reading for reading in readings if reading.score >= likeliest - _NEAR]
    well = all(r.answer.outcome == ANSWER and r.explained >= _WELL_EXPLAINED for r in near)
    return well and len(readings) >= _ENOUGH and len(set(answers_of(near))) == 1


def _worth(reading: Reading, best: float) -> float:
    """Return what a reading is worth before it is held against the sound again."""
    return reading.explained - COST_OF_MENDING * reading.cost + reading.score - best


def _short_list(readings: list[Reading], likeliest: str) -> list[Reading]:
    """Return the best readings, among them always what the recogniser itself held likeliest."""
    short = readings[:_SHORT_LIST]
    if all(reading.text != likeliest for reading in short):
        short.append(next(reading for reading in readings if reading.text == likeliest))
    return short
