"""A conversation by ear alone: say what is loaded, listen, answer, and listen again.

Who drives has attention for little else. So a silence means busy, not wrong; what was not caught is said twice at
most; and whoever begins to speak is let speak. Everything outside is handed in: sound, tones, the ear, the screen.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer
from assistant.conversation.context import Context
from assistant.conversation.turn import answer_turn
from assistant.resolving.knowing import Knowledge
from assistant.voice import control_words as words
from assistant.voice import tones
from assistant.voice.hearing.ear import Ear, Heard
from assistant.voice.hearing.samples import from_pcm
from assistant.voice.listening import Closed, Listener, Utterance
from assistant.voice.sound import RATE, Speaker, Tones

SILENCE_S = 20.0
"""How long nobody speaks before it counts as a silence."""
_SILENCES = 3
_MISSES = 2
_SHORT_S = 2.6
"""What is longer is no control word, nor a choice, nor a number."""
_QUESTION_WORDS = 4
"""What has so many words, and is answered as it was heard, is a question."""
_OWN_WORDS = 0.7
"""Share of words of what is being said from which on it is our own voice that was heard."""

BUSY = "You seem busy. I end here, and nothing is lost. Start me again when you have time."
NOT_CAUGHT = ("I did not catch that. Say again.", "I still did not catch it. Say it in other words.")
STANDING_BY = "Standing by."
FAREWELL = "Ended."
ECHO = "The microphone hears the loudspeaker: I listen only once I have spoken. With a headset you can interrupt me."
NOTHING_YET = "Nothing has been said yet."
GO_ON = "All right. Ask when you are ready."
ASK_AGAIN = "Then say it again, the number above all."
SAFETY = (
    "Training only. Set it up before you move off, and stop when traffic needs you. "
    "Not for use in flight or while at the controls."
)


class Manner(NamedTuple):
    """What surrounds a conversation by ear.

    words_for: an answer as it is said. show: writes a line where there is a screen. slower: makes the voice slower.
    examples: questions that work, offered when nothing is caught.
    """

    words_for: Callable[[Answer], str]
    show: Callable[[str], None]
    slower: Callable[[], None]
    examples: Sequence[str]
    phrase: Callable[[Utterance, Sequence[str], bool], str] = lambda utterance, wanted, numbers: ""
    """Which of some phrases an utterance is by a grammar, or a number; "" for none."""
    alike: Callable[[str, str], bool] = lambda one, two: one == two
    """Whether two texts sound alike."""


class HandsFree:
    """One conversation by ear, from its first word to its last."""

    def __init__(
        self, listener: Listener, speaker: Speaker, sounds: Tones, ear: Ear, knowledge: Knowledge, manner: Manner,
        variant: str = "",
    ) -> None:  # fmt: skip
        self._listener = listener
        self._speaker = speaker
        self._tones = sounds
        self._ear = ear
        self._knowledge = knowledge
        self._manner = manner
        self._context = Context(variant=variant)
        self._last = ""
        self._heard = ""
        self._pending = ""
        self._needs_number = False
        self._misses = 0
        self._over = False

    def run(self, start_line: str) -> None:
        """Hold the conversation until it is ended, by a word, by three silences or with the microphone."""
        self._say(start_line)
        silences = 0
        try:
            while not self._over:
                utterance = self._next()
                if utterance is None:
                    silences += 1
                    if silences == _SILENCES:
                        self._end(BUSY)
                elif self._turn(utterance):
                    silences = 0
        except Closed:
            self._speaker.wait()

    def _next(self) -> Utterance | None:
        if not self._speaker.speaking:
            self._tones.sound(tones.LISTENING)  # else it is given when what is being said has come to its end
        return self._listener.utterance(SILENCE_S)

    # --- one turn

    def _turn(self, utterance: Utterance) -> bool:
        """Do what an utterance asks; return whether anything was said at all."""
        self._tones.sound(tones.THINKING)
        heard = self._ear.hear(from_pcm(utterance.pcm), self._context)
        steer, text = self._steering(utterance, heard)
        if heard.nothing and not steer:
            return False
        if utterance.over_speech and not steer and self._is_echo(heard.text):
            self._listener.waits_its_turn = True
            self._manner.show(ECHO)
            self._say(self._last)
            return False
        self._manner.show(f'Heard: "{text or heard.text}" ({heard.recogniser}, {100 * heard.confidence:.0f}% sure).')
        if steer:
            self._steer(steer)
        elif text and text != heard.text:
            self._answer_text(text)
        else:
            self._take(heard)
        return True

    def _steering(self, utterance: Utterance, heard: Heard) -> tuple[str, str]:
        """Return the control that was said, or "", and what was said if a grammar heard it better."""
        said = words.control_word(heard.text)
        if said or len(utterance.pcm) > 2 * RATE * _SHORT_S:
            return said, heard.text
        wanted = (*words.phrases(), *self._choices())
        phrase = self._manner.phrase(utterance, wanted, self._needs_number)
        if not phrase or not self._is_meant(phrase, heard):
            return "", heard.text
        return words.control_word(phrase), phrase

    def _is_meant(self, phrase: str, heard: Heard) -> bool:
        """Return whether a phrase that a grammar heard was said: a grammar hears one of its phrases in anything."""
        long = len(heard.text.split()) >= _QUESTION_WORDS and heard.text in heard.others
        if heard.answer.outcome == ANSWER and long and not self._pending:
            return False
        return any(self._manner.alike(phrase, text) for text in heard.others)

    def _choices(self) -> tuple[str, ...]:
        return ("one", "two", "three", "the first one", "the second one") if self._context.offered else ()

    def _steer(self, control: str) -> None:
        self._misses = 0
        pending, self._pending = self._pending, ""
        if control == words.STOP:
            self._end(FAREWELL)
        elif control == words.STANDBY:
            self._stand_by(pending)
        elif control == words.AFFIRM:
            self._answer_text(pending) if pending else self._say(GO_ON)
        elif control in (words.NEGATIVE, words.PASS):
            self._say(ASK_AGAIN if pending and control == words.NEGATIVE else GO_ON)
        elif control == words.DISREGARD:
            self._answer_text("disregard")
        elif control == words.READ_BACK:
            self._pending = pending
            self._say(f"You said: {self._heard}" if self._heard else NOTHING_YET, remember=False)
        else:
            self._pending = pending
            self._repeat(control)

    def _repeat(self, control: str) -> None:
        if not self._last:
            self._say(NOTHING_YET, remember=False)
            return
        said = self._last
        if control == words.SLOWER:
            self._manner.slower()
        elif control == words.TWICE:
            said = " ".join(f"{each} {each}" for each in _sentences(said))
        elif control == words.CONFIRM and self._heard:
            said = f"You asked: {self._heard.rstrip('.?! ')}. {said}"
        self._say(said, remember=False)

    def _stand_by(self, pending: str) -> None:
        """Wait until spoken to, however long; what is said then is a turn like any other."""
        self._pending = pending
        self._say(STANDING_BY, remember=False)
        while not self._over:
            utterance = self._listener.utterance(None)
            if utterance is not None and self._turn(utterance):
                return

    # --- answers

    def _take(self, heard: Heard) -> None:
        self._heard = heard.text
        self._pending = heard.pending
        self._context = heard.after
        self._answer(heard.answer)

    def _answer_text(self, text: str) -> None:
        self._heard = text
        answer, self._context = answer_turn(text, self._context, self._knowledge)
        self._answer(answer)

    def _answer(self, answer: Answer) -> None:
        self._needs_number = answer.outcome == CLARIFY and bool(answer.needs) and not self._pending
        if answer.outcome == DECLINE:
            self._miss(answer)
            return
        self._misses = 0
        self._manner.show(answer.text)
        self._say(self._manner.words_for(answer))

    def _miss(self, answer: Answer) -> None:
        """Say that something is not known or was not caught, twice at most; then offer what works, then keep still."""
        self._misses += 1
        self._tones.sound(tones.NOT_UNDERSTOOD)
        if self._misses <= _MISSES:
            known = answer.text and answer.understood.get("concepts")
            self._manner.show(answer.text)
            self._say(self._manner.words_for(answer) if known else NOT_CAUGHT[self._misses - 1])
        elif self._misses == _MISSES + 1:
            offered = ". Or: ".join(each.rstrip("?. ") for each in self._manner.examples[:3])
            self._say(f"I can answer, for example: {offered}.")

    def _is_echo(self, text: str) -> bool:
        """Return whether what was heard while speaking is what was being said."""
        said = set(self._last.lower().split())
        heard = text.lower().split()
        return bool(heard) and sum(word.strip(".,?!") in said for word in heard) > _OWN_WORDS * len(heard)

    # --- saying

    def _say(self, text: str, remember: bool = True) -> None:
        if remember:
            self._last = text
        self._speaker.say(text)

    def _end(self, text: str) -> None:
        self._over = True
        self._say(text, remember=False)
        self._manner.show(text)
        self._speaker.wait()
        self._tones.sound(tones.ENDED)


def start_line(type_name: str, loaded: str) -> str:
    """Return what is said first: which type, what is loaded, and once what this is for."""
    return f"{type_name}. Loaded: {loaded}. {SAFETY} Ask when you are ready; say stop to end."


def _sentences(text: str) -> list[str]:
    found = text.replace("? ", "?\n").replace(". ", ".\n").splitlines()
    return [each.strip() for each in found if each.strip()]
