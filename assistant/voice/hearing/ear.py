"""From a sound to an answer: what was said, what it leads to, and whether that is sure enough to be answered.

A number that the recogniser was not sure of is put up for confirmation before anything is answered with it; a
reading that too little speaks for is asked back; what is no speech is nothing.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Container
from math import exp, log
from typing import TYPE_CHECKING

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer
from assistant.conversation.context import Context
from assistant.frozen import NamedTuple
from assistant.resolving.knowing import Knowledge
from assistant.voice.hearing.addressed import SURELY
from assistant.voice.hearing.confirming import asking_back, confirming
from assistant.voice.hearing.numbers import figures_told, other_numbers
from assistant.voice.hearing.phrases import Expected
from assistant.voice.hearing.reading_back import with_numbers
from assistant.voice.hearing.recognising import Recognised, Recogniser
from assistant.voice.hearing.shares import Reading, Weighed
from assistant.voice.hearing.sounds import Sounding
from assistant.voice.hearing.weighing import Weigher, declined_to_strangers
from assistant.voice.hearing.wording import plainly, said_words
from assistant.voice.sound import RATE

if TYPE_CHECKING:
    from assistant.voice.hearing.recognising import Floats

NO_SPEECH = 0.6
"""Probability of nothing having been said from which on nothing was."""
MUMBLED, MUMBLED_SHORT = -1.1, -1.6
"""Mean logarithm of probability under which what was made out is a guess; of a few words that were waited for, which
a recogniser is never sure of."""
_SHORT_S = 2.4
"""Seconds of an utterance that holds a few words."""
_FEW_WORDS = 3
_TELLING = frozenset({"what", "which", "who", "where", "when", "why", "how", "again", "yes", "no"})
"""Words that are a turn by themselves."""
SURE = 1.8
"""How much must speak for an answer to be given, as a natural logarithm of right ones to wrong ones."""
SURE_ODD, _ODD = 2.4, -5.1
"""The same where words stand as they hardly ever do in a question, and up to how likely each word of it is then."""
_LEADING, _MOST_LEADING = 0.51, 3.0
_EXPLAINED, _HEARD, _USUAL_WORD, _ALL = 1.9, 2.3, 0.66, 3.5
_LEAST_USUAL, _TYPICAL, _FEWEST_WORDS = -8.0, -3.9, 3
"""What speaks for an answer: by how much its readings lead all others, how well the knowledge explains it, how well it
was heard, as a mean logarithm of probability, and how likely each of its words is in a question. Fitted to what came
of development questions, clean and in noise."""
_EVEN, _AS_USUAL = 0.58, -4.0
"""The share of all readings up to which one that leads elsewhere may as well be meant; and how much less likely as a
question, a natural logarithm, it may be for that."""
NUMBER_SURE, TEEN_SURE = 0.6, 0.96
"""The least probability that a number may have to be answered with; that of one which ends like "fifteen" or "fifty"
must be higher, since those two are taken for one another even where the recogniser is fairly sure."""
_NUMBER_ALONE = re.compile(
    r"(?:^|\b(?:the|did|it|so|hit|bit|add|had)\s+)(?:[12]|one|two)\s+(?:is|has|was|are|fails?|failed)\b", re.I
)
"""A number that something is told of, where the name before it was lost."""
_USUAL = 0.3
"""What a part of a text that was well heard is below certainty, as a natural logarithm."""
NOTHING = "Nothing was said that could be made out."
Clock = Callable[[], float]


class Heard(NamedTuple):
    """What was heard and what it leads to.

    text: what was said, "" for nothing. confidence: 0 to 1. recogniser: which one ran. hear_ms: milliseconds from the
    end of speech to the answer. pending: the text to ask once a doubtful number or reading is confirmed.
    """

    text: str
    confidence: float
    recogniser: str
    hear_ms: float
    answer: Answer
    after: Context
    pending: str = ""
    others: tuple[str, ...] = ()
    """Everything that the sound may have been, also where none of it is believed."""
    figures: tuple[str, ...] = ()
    """The number that it may have been, said figure by figure, the likeliest first."""

    @property
    def nothing(self) -> bool:
        """Whether nothing was made out."""
        return not self.text


class Ear:
    """Hears questions of one knowledge base with one recogniser."""

    def __init__(
        self, recogniser: Recogniser, weigher: Weigher, knowledge: Knowledge, clock: Clock,
        sounding: Sounding | None = None,
    ) -> None:  # fmt: skip
        self.recogniser = recogniser
        self.expected = Expected(recogniser, sounding)
        """What tells which of some phrases was said."""
        self._weigher = weigher
        self._knowledge = knowledge
        self._clock = clock

    def hear(self, samples: Floats, context: Context) -> Heard:
        """Return what an utterance says and its answer; the context is that of the conversation."""
        begun = self._clock()
        recognised = self.recogniser.recognise(samples)
        weighed, faint = None, _is_nothing(recognised)
        if not faint or _may_be_waited_for(recognised, samples, context):
            weighed = self._weigher.weigh(recognised, self.recogniser, samples, context)
        heard = self.nothing(context) if weighed is None else self._settled(weighed, context, faint)
        if faint and weighed is not None:
            heard = self._if_waited_for(heard, weighed, context)
        others = () if recognised.no_speech > NO_SPEECH else _texts(recognised)
        figures = tuple(filter(None, (figures_told(each.text) for each in recognised.hypotheses))) if others else ()
        return heard._replace(hear_ms=round(1000 * (self._clock() - begun), 1), others=others, figures=figures)

    def _if_waited_for(self, heard: Heard, weighed: Weighed, context: Context) -> Heard:
        """Return what was heard faintly, if it is an answer to what was asked back, or may be confirmed."""
        if heard.pending:
            return heard
        if heard.answer.outcome != ANSWER:
            return self.nothing(context)
        asked_back = context.answer is not None and context.answer.outcome == CLARIFY
        if asked_back and len(heard.text.split()) <= _FEW_WORDS and not heard.answer.values:
            return heard
        if weighed.reading.amounts:
            asked = confirming(weighed, self._knowledge)
        elif self._names_nothing(weighed.reading):
            return self.nothing(context)
        else:
            asked = asking_back(weighed._replace(rivals=()), self._knowledge)
        return heard._replace(answer=asked, after=context, pending=heard.text)

    def said(self, samples: Floats) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """Return what an utterance says, the likeliest first, without asking anything with it; () for nothing.

        And everything that the sound may have been, also where none of it is believed.
        """
        recognised = self.recogniser.recognise(samples)
        others = () if recognised.no_speech > NO_SPEECH else _texts(recognised)
        return () if _is_nothing(recognised) else others, others

    def warm(self) -> None:
        """Do once what only the first utterance would have to wait for."""
        import numpy as np

        self.recogniser.recognise(np.zeros(RATE, dtype=np.float32))
        self._weigher.warm()

    def nothing(self, context: Context) -> Heard:
        """Return that nothing was said."""
        answer = Answer("", DECLINE, NOTHING, NOTHING)
        return Heard("", 0.0, self.recogniser.name, 0.0, answer, context)

    def _names_nothing(self, reading: Reading) -> bool:
        """Return whether a reading is but a word or two that name nothing ("and"): no use in asking it back."""
        words = said_words(reading.text)
        telling = [word for word in words if word in _TELLING or word not in self._knowledge.lexicon.neutral]
        return len(words) < _FEW_WORDS and not telling

    def _settled(self, weighed: Weighed, context: Context, faint: bool) -> Heard:
        weighed, shorter = fuller_beside(weighed, self._knowledge.lexicon.neutral)
        reading = weighed.reading
        answer, after, pending = reading.answer, reading.after, ""
        sure = TEEN_SURE if other_numbers(reading.text) else NUMBER_SURE
        guessed = reading.score < MUMBLED and not faint  # a piece of what was said, with the rest left out
        unsure = guessed or reading.meant < SURELY or weighed.outdone or _may_be_another(weighed)
        unsure = unsure or _NUMBER_ALONE.search(reading.text) is not None
        unsure = unsure or evidence(weighed) < (SURE_ODD if _usual_word(reading) < _ODD else SURE)
        if answer.outcome == ANSWER and shorter and weighed.number >= sure:
            answer, after, pending = asking_back(weighed, self._knowledge), context, reading.text
        elif answer.outcome == ANSWER and reading.amounts and (unsure or weighed.number < sure):
            whole = weighed.number >= sure  # a doubtful number is asked for by itself, as on the radio
            answer, after, pending = confirming(weighed, self._knowledge, whole), context, reading.text
        elif answer.outcome == ANSWER and unsure and self._names_nothing(reading):
            return self.nothing(context)
        elif answer.outcome == ANSWER and unsure:
            answer, after, pending = asking_back(weighed, self._knowledge), context, reading.text
        if answer.outcome == ANSWER:
            answer = with_numbers(answer, after, self._knowledge)
        elif answer.outcome == DECLINE:
            answer = declined_to_strangers(reading)
        made_out = min(1.0, exp(reading.score + _USUAL))
        confidence = round(weighed.sureness * min(1.0, weighed.number) * made_out, 3)
        return Heard(reading.text, confidence, self.recogniser.name, 0.0, answer, after, pending)


def _may_be_waited_for(recognised: Recognised, samples: Floats, context: Context) -> bool:
    """Return whether something short, faintly heard, may go on from what was said before."""
    if recognised.no_speech > NO_SPEECH or not recognised.hypotheses or context.asked is None:
        return False
    return recognised.hypotheses[0].score >= MUMBLED_SHORT and len(samples) <= _SHORT_S * RATE


def evidence(weighed: Weighed) -> float:
    """Return how much speaks for the chosen reading, as a natural logarithm of right answers to wrong ones."""
    share = weighed.sureness
    leading = log(share / (1 - share)) if 0 < share < 1 else _MOST_LEADING
    reading = weighed.reading
    usual = _usual_word(reading)
    told = _LEADING * min(leading, _MOST_LEADING) + _EXPLAINED * reading.explained
    return told + _HEARD * max(MUMBLED, reading.score) + _USUAL_WORD * max(_LEAST_USUAL, usual) + _ALL


def _usual_word(reading: Reading) -> float:
    return reading.usual / max(_FEWEST_WORDS, len(reading.text.split())) if reading.usual else _TYPICAL


def _may_be_another(weighed: Weighed) -> bool:
    """Return whether a rival may as well be meant: nearly as likely by all that is known, and as usual a question."""
    if weighed.sureness > _EVEN or not weighed.rivals:
        return False
    return weighed.rivals[0].usual - weighed.reading.usual >= _AS_USUAL


def fuller_beside(weighed: Weighed, neutral: Container[str]) -> tuple[Weighed, bool]:
    """Return what was weighed, with a fuller reading that leads elsewhere beside the chosen one, and whether there is.

    A reading that holds all words of the chosen one and more: words are sooner lost in hearing than made up. The one
    of the two that fits the sound better is put up first. neutral: words that tell nothing.
    """
    mine = said_words(weighed.reading.text)
    fuller = next((each for each in weighed.rivals if _holds(said_words(each.text), mine, neutral)), None)
    if fuller is None or weighed.reading.answer.outcome != ANSWER:
        return weighed, False
    first, second = (weighed.reading, fuller) if weighed.reading.fit >= fuller.fit else (fuller, weighed.reading)
    return weighed._replace(reading=first, rivals=(second, *(r for r in weighed.rivals if r is not fuller))), True


def _holds(words: list[str], others: list[str], neutral: Container[str]) -> bool:
    """Return whether all of other words are among some words, in their order, and there are more that tell anything."""
    left = iter(words)
    if not all(other in left for other in others):
        return False
    return any(word not in neutral for word in (Counter(words) - Counter(others)))


def _texts(recognised: Recognised) -> tuple[str, ...]:
    return tuple(dict.fromkeys(plainly(each.text) for each in recognised.hypotheses))


def _is_nothing(recognised: Recognised) -> bool:
    if recognised.no_speech > NO_SPEECH or not recognised.hypotheses:
        return True
    return recognised.hypotheses[0].score < MUMBLED
