"""Ask aloud and take a spoken answer: what a rehearsal alone and a class share with the conversation by ear.

What an answer is worth is not decided here: its likeliest readings are handed back, for whoever marks them.
"""

from __future__ import annotations

from assistant.frozen import NamedTuple
from assistant.voice import control_words as words
from assistant.voice import tones
from assistant.voice.hearing.ear import Ear
from assistant.voice.hearing.samples import from_pcm
from assistant.voice.listening import Listener, Utterance
from assistant.voice.sound import Speaker, Tones

PATIENCE_S = 15.0
"""How long an answer is waited for once the question has been said."""


class SpokenAnswer(NamedTuple):
    """What came to a question that was asked aloud.

    readings: what was said, the likeliest first; () for a silence, which means busy and is never marked. control: a
    word that steers instead of answering, one of `control_words`, or "".
    """

    readings: tuple[str, ...] = ()
    control: str = ""

    @property
    def silent(self) -> bool:
        """Whether nothing was said."""
        return not self.readings and not self.control


class Asker:
    """Asks aloud, and hears the answer, with the pieces of a conversation by ear."""

    def __init__(self, listener: Listener, speaker: Speaker, sounds: Tones, ear: Ear) -> None:
        self._listener = listener
        self._speaker = speaker
        self._tones = sounds
        self._ear = ear

    def ask(self, question: str, patience_s: float = PATIENCE_S) -> SpokenAnswer:
        """Say a question and return what is answered; who speaks early is let speak. Raises listening.Closed.

        SAY AGAIN and the like are obeyed here.
        """
        self._speaker.say(question)
        while True:
            utterance = self._listener.utterance(patience_s)
            if utterance is None:
                return SpokenAnswer()
            self._tones.sound(tones.THINKING)
            answer = self._heard(utterance)
            if answer.control in (words.AGAIN, words.SLOWER, words.TWICE):
                self._speaker.say(f"{question} {question}" if answer.control == words.TWICE else question)
            elif answer.silent:
                self._tones.sound(tones.NOT_UNDERSTOOD)
            else:
                return answer

    def tell(self, text: str) -> None:
        """Say something that asks nothing, to its end."""
        self._speaker.say(text)
        self._speaker.wait()

    def _heard(self, utterance: Utterance) -> SpokenAnswer:
        readings = self._ear.said(from_pcm(utterance.pcm))
        control = next(filter(None, map(words.control_word, readings[:1])), "")
        return SpokenAnswer(readings, control) if control else SpokenAnswer(tuple(filter(None, readings)))
