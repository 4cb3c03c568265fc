"""A rehearsal by ear: its lines are said, and what is answered is heard in place of a line that is typed.

Whoever drives may be busy: a silence answers nothing, and three of them end the sitting. What was hardly made out is
said back before anything of it is marked.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from assistant.practice.recall import MISSED, RIGHT, WRONG
from assistant.practice.sitting_marks import ASKED, Line
from assistant.practice.sitting_state import ANSWERING, MARKED, OVERRULING, Desk, State
from assistant.practice.sitting_words import asks_back
from assistant.resolving.knowing import Knowledge
from assistant.voice import control_words as words
from assistant.voice import hands_free_said as told
from assistant.voice.asking import Asker, SpokenAnswer
from assistant.voice.hearing.confirming import as_asked
from assistant.voice.hearing.numbers import other_numbers
from assistant.voice.listening import Closed

AFTER_MARK_S = 3.5
"""How long a word on the mark is waited for before the next question comes."""
_SILENCES = 3
_READINGS = 3
"""Readings of an answer that are looked at."""
_BEGIN = "Answer in your own words. Say hint, pass, say again or stop; after the mark why, or overrule."
_ASK_MARK = "Was it right, partly, wrong or missed?"
_CHOICES = {
    ANSWERING: ("hint", "give me a hint"),
    MARKED: ("why", "where does it say that", "overrule", "next", "go on"),
    OVERRULING: ("right", "partly", "wrong", "missed"),
}
_STANDS = "disregard"
"""What leaves a mark as it is."""


class Busy(EOFError):
    """Nobody answers any more."""


class SpokenLines:
    """Says what a sitting tells and asks, and hears the answers: the voice and the lines of a room in one.

    speech: lines as they are said. show: writes a line where there is a screen. busy: whether silences ended it.
    """

    def __init__(
        self, asker: Asker, desk: Desk, knowledge: Knowledge, speech: Callable[[Iterable[Line]], str],
        show: Callable[[str], None],
    ) -> None:  # fmt: skip
        self.busy = False
        self._asker = asker
        self._desk = desk
        self._knowledge = knowledge
        self._speech = speech
        self._show = show
        self._state = State()
        self._waiting: list[str] = [_BEGIN]
        self._question = ""
        self._last = ""
        self._doubted = False

    def say(self, lines: Iterable[Line], state: State) -> None:
        """Keep lines to be said before the next answer is awaited."""
        told_now = tuple(lines)
        asked = [each for each in told_now if each.kind == ASKED]
        if asked and state.phase == ANSWERING:
            self._question = self._speech(asked[-1:])
            self._doubted = self._doubted and state.put == self._state.put
        others = [each for each in told_now if each.kind != ASKED or state.phase != ANSWERING]
        if said := self._speech(others):
            self._waiting.append(said)
            self._last = said
        self._state = state

    def stop(self) -> None:
        """Do nothing: who speaks is let speak by the listener."""

    def finish(self) -> None:
        """Say what is left to be said, to its end."""
        if self._waiting:
            self._asker.tell(" ".join(self._waiting))
        self._waiting = []

    def ask(self, prompt: str) -> tuple[str, float | None]:
        """Return what was answered, as if it were typed; no time is taken. Raises EOFError once nobody answers."""
        try:
            return self._asked(), None
        except Closed:
            raise EOFError from None

    def _asked(self) -> str:
        phase, first = self._state.phase, " ".join(self._waiting)
        self._waiting = []
        if phase == MARKED:
            return self._on_the_mark(self._asker.ask(first or self._last, AFTER_MARK_S, "", _CHOICES[MARKED]))
        if phase == OVERRULING:
            return self._mark(self._asker.ask(_ASK_MARK, first=first, choices=_CHOICES[OVERRULING]))
        return self._answer(first)

    # --- while an answer is awaited

    def _answer(self, first: str) -> str:
        for _ in range(_SILENCES):
            heard = self._asker.ask(self._question, first=first, choices=_CHOICES[ANSWERING])
            while not heard.silent:
                text = self._text_of(heard)
                if text:
                    return text
                heard = self._asker.ask(self._question, first=self._doubt(heard), choices=_CHOICES[ANSWERING])
            first = ""
        self.busy = True
        raise Busy

    def _text_of(self, heard: SpokenAnswer) -> str:
        """Return an answer as it would be typed; "" where it was hardly made out, which is put up once."""
        if heard.choice:
            return heard.choice
        if heard.control:
            return "pass" if heard.control == words.ONWARD else words.SAID[heard.control][0]
        text, sure = self._best(heard.readings)
        self._show(f'Heard: "{text}".')
        if sure or self._doubted:
            return text
        self._doubted = True
        return ""

    def _doubt(self, heard: SpokenAnswer) -> str:
        return f"I heard: {as_asked(heard.readings[0], self._knowledge)}. Say it once more, or say pass."

    def _best(self, readings: Sequence[str]) -> tuple[str, bool]:
        """Return the reading to be marked, and whether it may be: of those with the same numbers the best one.

        Another number is another answer. What says nothing to the point, and a wrong number that sounds like the right
        one, may as well have been misheard.
        """
        first = readings[0]
        same = [each for each in readings[:_READINGS] if self._numbers(each) == self._numbers(first)]
        best = next((each for each in same if self._mark_of(each) == RIGHT), first)
        mark = self._mark_of(best)
        alike = (*readings[1:_READINGS], *other_numbers(best)) if mark == WRONG else ()
        return best, mark != MISSED and all(self._mark_of(each) != RIGHT for each in alike)

    def _mark_of(self, text: str) -> str:
        return self._desk.take(self._state.put.question, text).mark if self._state.put else ""

    def _numbers(self, text: str) -> tuple[float, ...]:
        return tuple(each.value for each in self._knowledge.reader.read(text).amounts)

    # --- after the mark

    def _on_the_mark(self, heard: SpokenAnswer) -> str:
        """Return a word on the mark, or a question on it; whatever else is heard then was said to somebody else."""
        if heard.choice or heard.control:
            return heard.choice or words.SAID[heard.control][0]
        text = next(iter(heard.readings), "")
        return text if asks_back(text) else ""

    def _mark(self, heard: SpokenAnswer) -> str:
        if heard.silent:
            self.busy = self._state.unmarked
            if self.busy:
                raise Busy
            return _STANDS
        return self._on_the_mark(heard) or next(iter(heard.readings), "")


def ends_with(lines: SpokenLines) -> None:
    """Say what is left; where nobody answered any more, say first why it ends."""
    if lines.busy:
        lines.say((Line(told.BUSY),), State())
    lines.finish()
