"""An answer given aloud before a class, heard at this machine's microphone, which is open for that answer alone."""

from __future__ import annotations

import threading

from assistant.terminal.by_ear import CardTones, grammar
from assistant.terminal.microphone import CardMicrophone
from assistant.terminal.session import Session
from assistant.voice import control_words as words
from assistant.voice.asking import Asker, SpokenAnswer
from assistant.voice.hearing.endpoint import Endpointer, voice_judge
from assistant.voice.hearing.opening import open_ear
from assistant.voice.hearing.recognising import HearingProblem
from assistant.voice.listening import Closed, Listener
from assistant.voice.speaking.player import CardPlayer

_OTHERWISE = "type the answer after a"
_TO_THE_CLASS = (words.PASS, words.AGAIN)


class Silent:
    """A speaker that says nothing: the question was put already."""

    speaking = False

    def say(self, text: str) -> None:
        """Say nothing."""

    def stop(self) -> None:
        """Stop nothing."""

    def wait(self, timeout_s: float | None = None) -> bool:
        """Return at once."""
        return True


class ClassEar:
    """Hears answers. lacks: a line on what of the recogniser is not there, or empty.

    Raises HearingProblem where nothing can be heard, a machine without a microphone among them.
    """

    def __init__(self, session: Session) -> None:
        CardMicrophone(_OTHERWISE).close()
        self._ear, self.lacks = open_ear(session.knowledge)
        self._judge = voice_judge()
        self._phrase = grammar()
        self._player = CardPlayer()
        threading.Thread(target=self._ear.warm, daemon=True).start()

    def hear(self) -> str:
        """Return what is answered, or "" for a silence, which is no answer. Raises HearingProblem."""
        microphone = CardMicrophone(_OTHERWISE)
        speaker = Silent()
        try:
            listener = Listener(microphone, speaker, Endpointer(self._judge))
            spoken = Asker(listener, speaker, CardTones(self._player), self._ear, self._phrase).ask("")
        except Closed:
            raise HearingProblem("the microphone gives nothing any more") from None
        finally:
            microphone.close()
        return answer_text(spoken)

    def close(self) -> None:
        """Let go of the sound card."""
        self._player.close()


def answer_text(spoken: SpokenAnswer) -> str:
    """Return what was answered as it would have been typed: a word that steers is none that could be marked.

    Who gives up and who wants the question again says so to the class; what else steers is the instructor's to do.
    """
    if spoken.control:
        return words.SAID[spoken.control][0] if spoken.control in _TO_THE_CLASS else ""
    return next(iter(spoken.readings), "")
