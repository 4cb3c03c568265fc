"""Ask aloud and take a spoken answer: what a rehearsal alone and a class share with the conversation by ear.

What an answer is worth is not decided here: its likeliest readings are handed back, for whoever marks them.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from assistant.frozen import NamedTuple
from assistant.voice import control_words as words
from assistant.voice import hands_free_said as said
from assistant.voice import tones
from assistant.voice.hearing.ear import Ear
from assistant.voice.hearing.samples import from_pcm
from assistant.voice.listening import Listener, Utterance
from assistant.voice.sound import Speaker, Tones
from assistant.voice.steering import Phrase, Steering

PATIENCE_S = 15.0
"""How long an answer is waited for once the question has been said."""
_REPEATS = (
    words.AGAIN, words.SLOWER, words.FASTER, words.TWICE, words.READ_BACK, words.CONFIRM, words.GREETING,
    words.USUAL_PACE, words.LOADED,
)  # fmt: skip
"""Controls after which the question stands, and is said again."""
_ANSWERS = (words.AFFIRM, words.NEGATIVE)
_STEPS = {words.SLOWER: -1, words.FASTER: 1}


class SpokenAnswer(NamedTuple):
    """What came to a question that was asked aloud.

    readings: what was said, the likeliest first; () for a silence, which means busy and is never marked. control: a
    word that steers instead of answering, one of `control_words`, or "". choice: which of the choices was said, or "".
    """

    readings: tuple[str, ...] = ()
    control: str = ""
    choice: str = ""

    @property
    def silent(self) -> bool:
        """Whether nothing was said."""
        return not self.readings and not self.control and not self.choice


class Asker:
    """Asks aloud, and hears the answer, with the pieces of a conversation by ear.

    phrase: what hears a short phrase by a grammar. pace: makes the voice faster by some steps, or slower.
    """

    def __init__(
        self, listener: Listener, speaker: Speaker, sounds: Tones, ear: Ear,
        phrase: Phrase = lambda utterance, wanted: "", pace: Callable[[int], None] = lambda steps: None,
    ) -> None:  # fmt: skip
        self._listener = listener
        self._speaker = speaker
        self._tones = sounds
        self._ear = ear
        self._steering = Steering(ear, phrase)
        self._pace = pace

    def ask(
        self, question: str, patience_s: float | None = PATIENCE_S, first: str = "", choices: Sequence[str] = ()
    ) -> SpokenAnswer:
        """Say a question and return what is answered; who speaks early is let speak. Raises listening.Closed.

        SAY AGAIN and the like are obeyed here; where the question was put by somebody else, SAY AGAIN is handed back.
        first: what is said before the question, once. choices: phrases that pick something instead of answering.
        """
        self._speaker.say(f"{first} {question}".strip())
        while True:
            utterance = self._listener.utterance(patience_s)
            if utterance is None:
                return SpokenAnswer()
            self._tones.sound(tones.THINKING)
            answer = self._heard(utterance, choices)
            if answer.control == words.STANDBY:
                patience_s = None  # however long: who asked for it is waited for
                self._speaker.say(said.STANDING_BY)
            elif answer.control == words.DISREGARD:
                self._speaker.say(f"{said.DISREGARDED} {question}")
            elif answer.control in _REPEATS and question:
                self._again(answer.control, question)
            elif answer.silent:
                self._tones.sound(tones.NOT_UNDERSTOOD)
            else:
                return answer

    def tell(self, text: str) -> None:
        """Say something that asks nothing, to its end."""
        self._speaker.say(text)
        self._speaker.wait()

    def _again(self, control: str, question: str) -> None:
        if control in _STEPS:
            self._pace(_STEPS[control])
        self._speaker.say(f"{question} {question}" if control == words.TWICE else question)

    def _heard(self, utterance: Utterance, choices: Sequence[str]) -> SpokenAnswer:
        """Return an answer; a word that steers is looked for before anything of it may be marked."""
        readings, others = self._ear.said(from_pcm(utterance.pcm))
        phrase = self._steering.in_an_answer(utterance, others, choices)
        if phrase in choices:
            return SpokenAnswer(readings, "", phrase)
        control = words.control_word(phrase or next(iter(readings), ""))
        faint = control == words.STOP and not readings  # what ends a sitting must be more than a sound
        return SpokenAnswer(readings, "" if control in _ANSWERS or faint else control)
