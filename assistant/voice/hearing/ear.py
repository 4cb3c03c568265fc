"""From a sound to an answer: what was said, what it leads to, and whether that is sure enough to be answered.

A number that the recogniser was not sure of is put up for confirmation before anything is answered with it; a
reading that too little speaks for is asked back; what is no speech is nothing.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, NamedTuple

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer, Number
from assistant.conversation.context import Context
from assistant.quantities.amounts import Amount
from assistant.quantities.show import exact_shown, number_words, spoken
from assistant.resolving.knowing import Knowledge
from assistant.voice.hearing.numbers import other_numbers
from assistant.voice.hearing.recognising import Recognised, Recogniser
from assistant.voice.hearing.weighing import Reading, Weighed, Weigher
from assistant.voice.hearing.wording import plainly
from assistant.voice.sound import RATE

if TYPE_CHECKING:
    from assistant.voice.hearing.recognising import Floats

NO_SPEECH = 0.6
"""Probability of nothing having been said from which on nothing was."""
MUMBLED = -1.1
"""Mean logarithm of probability under which what was made out is a guess."""
SURE, HEARD = 0.7, 0.2
"""The least share of all readings that must lead to an answer for it to be given, explained and by sound alone."""
_WELL_EXPLAINED, _WELL_HEARD = 0.65, 0.75
"""What the knowledge explains less well than the first must be heard as well as the second."""
NUMBER_SURE, TEEN_SURE = 0.6, 0.85
"""The least probability that a number may have to be answered with; that of one which ends like "fifteen" or "fifty"
must be higher, since those two are taken for one another even where the recogniser is fairly sure."""
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

    @property
    def nothing(self) -> bool:
        """Whether nothing was made out."""
        return not self.text


class Ear:
    """Hears questions of one knowledge base with one recogniser."""

    def __init__(self, recogniser: Recogniser, weigher: Weigher, knowledge: Knowledge, clock: Clock) -> None:
        self.recogniser = recogniser
        self._weigher = weigher
        self._knowledge = knowledge
        self._clock = clock

    def hear(self, samples: Floats, context: Context) -> Heard:
        """Return what an utterance says and its answer; the context is that of the conversation."""
        begun = self._clock()
        recognised = self.recogniser.recognise(samples)
        weighed = None
        if not _is_nothing(recognised):
            weighed = self._weigher.weigh(recognised, self.recogniser, samples, context)
        heard = self.nothing(context) if weighed is None else self._settled(weighed, context)
        others = () if recognised.no_speech > NO_SPEECH else _texts(recognised)
        return heard._replace(hear_ms=round(1000 * (self._clock() - begun), 1), others=others)

    def said(self, samples: Floats) -> tuple[str, ...]:
        """Return what an utterance may say, the likeliest first, without asking anything with it; () for nothing."""
        recognised = self.recogniser.recognise(samples)
        if _is_nothing(recognised):
            return ()
        return _texts(recognised)

    def warm(self) -> None:
        """Do once what only the first utterance would have to wait for."""
        import numpy as np

        self.recogniser.recognise(np.zeros(RATE, dtype=np.float32))
        self._weigher.warm()

    def nothing(self, context: Context) -> Heard:
        """Return that nothing was said."""
        answer = Answer("", DECLINE, NOTHING, NOTHING)
        return Heard("", 0.0, self.recogniser.name, 0.0, answer, context)

    def _settled(self, weighed: Weighed, context: Context) -> Heard:
        reading = weighed.reading
        answer, after, pending = reading.answer, reading.after, ""
        sure = TEEN_SURE if other_numbers(reading.text) else NUMBER_SURE
        if answer.outcome == ANSWER and reading.amounts and weighed.number < sure:
            answer, after, pending = _confirming(reading, self._knowledge), context, reading.text
        elif answer.outcome == ANSWER and _is_unsure(weighed):
            answer, after, pending = _asking_back(weighed), context, reading.text
        confidence = round(weighed.sureness * min(1.0, weighed.number), 3)
        return Heard(reading.text, confidence, self.recogniser.name, 0.0, answer, after, pending)


def _is_unsure(weighed: Weighed) -> bool:
    faint = weighed.reading.explained < _WELL_EXPLAINED and weighed.heard < _WELL_HEARD
    return weighed.sureness < SURE or weighed.heard < HEARD or faint


def _texts(recognised: Recognised) -> tuple[str, ...]:
    return tuple(dict.fromkeys(plainly(each.text) for each in recognised.hypotheses))


def _is_nothing(recognised: Recognised) -> bool:
    if recognised.no_speech > NO_SPEECH or not recognised.hypotheses:
        return True
    return recognised.hypotheses[0].score < MUMBLED


def _confirming(reading: Reading, knowledge: Knowledge) -> Answer:
    """Return the question whether the numbers were heard rightly, said figure by figure as on the radio."""
    said = ", ".join(_on_the_radio(amount, knowledge) for amount in reading.amounts)
    shown = ", ".join(_shown(amount, knowledge) for amount in reading.amounts)
    numbers = tuple(Number("heard", amount.value, amount.unit or "count") for amount in reading.amounts)
    return reading.answer._replace(
        outcome=CLARIFY, text=f"CONFIRM {said}? I heard {shown}: {reading.text}", spoken=f"Confirm, {said}?",
        values=numbers, working="", sources=(), needs=tuple(f"confirmation of {each}" for each in shown.split(", ")),
        choices=(reading.text,), entry="",
    )  # fmt: skip


def _asking_back(weighed: Weighed) -> Answer:
    """Return the question which of the likeliest readings was meant."""
    readings = [weighed.reading, *weighed.rivals[:1]]
    choices = tuple(reading.text for reading in readings)
    text = f"CONFIRM: {choices[0].rstrip('.?! ')}?"
    if len(choices) > 1:
        text += f" Or was it: {choices[1].rstrip('.?! ')}?"
    answer = weighed.reading.answer
    return answer._replace(
        outcome=CLARIFY, text=text, spoken=text.replace("CONFIRM:", "Confirm,"), values=(), working="", sources=(),
        needs=("what was asked",), choices=choices, entry="",
    )  # fmt: skip


def _on_the_radio(amount: Amount, knowledge: Knowledge) -> str:
    if amount.unit and amount.unit != "count":
        return spoken(amount.value, amount.unit, knowledge.units, digits=True)
    whole = amount.value == int(amount.value) and 0 <= amount.value < 100_000
    return spoken(amount.value, "kt", knowledge.units, digits=True).rsplit(" ", 1)[0] if whole else number_words(
        amount.value
    )  # fmt: skip


def _shown(amount: Amount, knowledge: Knowledge) -> str:
    return exact_shown(amount.value, amount.unit or "count", knowledge.units)
