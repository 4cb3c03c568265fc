"""Which words that steer a conversation were said, and which choice: whoever drives says them short and in noise."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from assistant.answering.answer import ANSWER
from assistant.conversation.context import Context
from assistant.voice import control_words as words
from assistant.voice.hearing.ear import Ear, Heard
from assistant.voice.hearing.samples import from_pcm
from assistant.voice.hearing.wording import said_words
from assistant.voice.listening import Utterance
from assistant.voice.sound import RATE

if TYPE_CHECKING:
    from assistant.voice.hearing.recognising import Floats

_SHORT_S = 2.6
"""What is longer is no control word, nor a choice."""
_QUESTION_WORDS = 4
"""What has so many words, and is answered as it was heard, is a question."""
_WRITTEN = 1.5
"""What a control is worth more where the open recogniser wrote it too, as a natural logarithm."""
_HINT_SURE, _HINT_COUNTS = -0.4, -1.2
"""How likely, as a mean logarithm, what is made out after a hint must be to be taken as it is; and to count for its
phrase as a second recogniser does."""
_TOLD = 2
"""Choices that are told by ear at once."""
_NAME_WORDS = 4
"""Words of a choice that may be said by its name."""

_HINTED = tuple(words.SAID[control][0] for control in (
    words.AGAIN, words.AFFIRM, words.NEGATIVE, words.PASS, words.STANDBY, words.DISREGARD, words.STOP, words.CONFIRM,
))  # fmt: skip
"""What an open recogniser is told may come: the words that it knows least."""
_IN_ANSWERS = (
    words.AGAIN, words.SLOWER, words.FASTER, words.TWICE, words.STANDBY, words.DISREGARD, words.READ_BACK, words.PASS,
    words.HELP, words.STOP,
)  # fmt: skip
"""What steers where an answer is awaited: "no" and "affirmative" are answers then."""
_ANSWER_HINTED = tuple(words.SAID[control][0] for control in (
    words.AGAIN, words.PASS, words.STANDBY, words.DISREGARD, words.STOP, words.READ_BACK,
))  # fmt: skip

Phrase = Callable[[Utterance, Sequence[str]], str]
"""Which of some phrases an utterance is by a grammar; "" for none."""


class Steering:
    """Tells control words and choices from questions."""

    def __init__(self, ear: Ear, phrase: Phrase) -> None:
        self._ear = ear
        self._phrase = phrase

    def meant(
        self, utterance: Utterance, heard: Heard, choices: Sequence[str] = (), pending: bool = False
    ) -> tuple[str, str]:
        """Return the control that was said, or "", and the phrase of it or of a choice, or "".

        pending: whether something is to be affirmed.
        """
        said = words.control_word(heard.text)
        if said and heard.text in heard.others[:2]:
            return said, heard.text
        if len(utterance.pcm) > 2 * RATE * _SHORT_S or self._is_question(heard, pending):
            return said, heard.text if said else ""
        wanted = (*words.phrases(), *choices)
        phrase = self._said(utterance, heard.others, wanted, _HINTED, _besides(choices, pending), pending)
        return words.control_word(phrase), phrase

    def in_an_answer(self, utterance: Utterance, readings: Sequence[str], choices: Sequence[str] = ()) -> str:
        """Return the phrase that steers, or the choice, in what came where an answer was awaited; "" for an answer."""
        likeliest = next(iter(readings), "")
        if words.control_word(likeliest) in _IN_ANSWERS:
            return " ".join(said_words(likeliest))
        if len(utterance.pcm) > 2 * RATE * _SHORT_S:
            return ""
        wanted = (*words.phrases(*_IN_ANSWERS), *choices)
        return self._said(utterance, readings, wanted, (*choices, *_ANSWER_HINTED), ("pass", *choices), False)

    def _said(
        self, utterance: Utterance, readings: Sequence[str], wanted: Sequence[str], hints: Sequence[str],
        besides: Sequence[str], pending: bool,
    ) -> str:  # fmt: skip
        """Return which of the phrases that may come a short utterance is, or ""."""
        samples: Floats = from_pcm(utterance.pcm)
        hinted = self._ear.expected.told(samples, hints) if readings else None
        by_hint = _phrase_of(hinted.text, wanted) if hinted and hinted.score >= _HINT_COUNTS else ""
        if hinted and by_hint and hinted.score >= _HINT_SURE:
            return by_hint
        made_out = (hinted.text, *readings) if hinted else readings
        return self._ear.expected.said(
            samples, made_out, wanted, by_hint or self._phrase(utterance, wanted),
            lambda phrase, agreed: words.least_fit(phrase, pending, agreed),
            lambda phrase: words.surprise(phrase, pending) - _as_written(phrase, made_out), besides,
        )  # fmt: skip

    @staticmethod
    def _is_question(heard: Heard, pending: bool) -> bool:
        whole = len(heard.text.split()) >= _QUESTION_WORDS and heard.text in heard.others
        return heard.answer.outcome == ANSWER and whole and not pending


def _phrase_of(text: str, wanted: Sequence[str]) -> str:
    """Return a text as the phrase of a control, if it is one that may come."""
    plain = " ".join(said_words(text))
    return plain if plain in words.phrases() and plain in wanted else ""


def _as_written(phrase: str, made_out: Sequence[str]) -> float:
    """Return what a phrase is worth more because the open recogniser wrote it, before anything else."""
    control = words.control_word(phrase)
    return _WRITTEN if control and made_out and control == words.control_word(made_out[0]) else 0.0


def choices_of(context: Context) -> tuple[str, ...]:
    """Return what may be said to pick one of what was offered: its number, or its name where that is short."""
    count, answer = len(context.offered), context.answer
    named = [each.rstrip(".?! ").lower() for each in answer.choices] if answer and count else []
    return (
        *("one", "two", "three")[:count], *("first", "second", "third")[:count],
        *("number one", "number two", "number three")[:count],
        *("the third", "what is the third", "what's the third", "the other one")[: 4 if count > _TOLD else 0],
        *("the first one", "the second one", "the third one")[:count],
        *(each for each in named if each.replace(" ", "").isalpha() and len(each.split()) <= _NAME_WORDS),
    )  # fmt: skip


def _besides(choices: Sequence[str], pending: bool) -> tuple[str, ...]:
    """Return the shortest phrases, which an open recogniser hears as anything or as nothing."""
    affirming = ("affirm", "negative", "yes", "no") if pending else ()
    return ("pass", *affirming, *choices[:3])
