"""What an audio file says, in which order, with which pauses: made before any sound is, from its seed alone.

Each fact comes as a question, a pause to answer aloud, the answer, and once its source. A second question on the same
fact comes later, when it has sunk in a little.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.frozen import NamedTuple
from assistant.voice.speaking.phrases import phrases

USUAL_RATE = 160
"""Words a minute that `said_seconds` was measured at."""
_A_PHRASE_S, _A_LETTER_S = 0.19, 0.06
_THINK_S, _SHORTEST_S, _LONGEST_S = 2.5, 4.0, 24.0
"""Seconds to think of an answer, and the least and most that a pause for it lasts."""
_ALOUD = 0.9
"""Seconds that a listener takes to say an answer, for each that the voice takes."""
_AFTER_S, _BETWEEN_S, _OPENING_S = 0.6, 1.6, 1.2
"""Seconds before a source, before the next question, and after the opening."""
_APART, _APART_S = 4, 90.0
"""Facts and seconds that lie between the two questions on one, where the file is long enough."""


class Ask(NamedTuple):
    """A question as it is said, its answer as it is said, and the question as it is written in a list of chapters."""

    question: str
    answer: str
    title: str


class Fact(NamedTuple):
    """What a file may ask about: a name of its own, its record, one or two questions on it that differ in their words,
    its source as it is said.
    """

    name: str
    entry: str
    asks: tuple[Ask, ...]
    source: str


class Part(NamedTuple):
    """Something said in one go: the text, the seconds of silence after it, and the chapter that it begins, if any."""

    text: str
    pause_s: float
    chapter: str = ""


class Script(NamedTuple):
    """A whole file: its parts in order, how long it will be, the records it is made from, and facts left out."""

    parts: tuple[Part, ...]
    seconds: float
    entries: tuple[str, ...]
    left: int = 0


def make_script(
    opening: Sequence[str], closing: Sequence[str], facts: Sequence[Fact], seconds: float, rate: int = USUAL_RATE
) -> Script:
    """Return what a file of so many seconds says; it is shorter when there are not enough facts.

    opening, closing: what is said before and after. facts: in the order in which they are to come.
    """
    writer = _Writer(rate)
    for text in opening:
        writer.say(text, _OPENING_S, "Opening" if text == opening[0] else "")
    end = sum(said_seconds(text, rate) + _AFTER_S for text in closing)
    waiting, source = [(fact, writer.cost(fact)) for fact in facts if fact.asks], ""
    while True:
        room = seconds - writer.seconds - writer.owed - end
        waiting = [(fact, cost) for fact, cost in waiting if cost <= room and fact.name not in writer.names]
        if not waiting:
            break
        # No paragraph twice in a row, where there is another.
        fact = next((fact for fact, _ in waiting if fact.source != source), waiting[0][0])
        source = fact.source
        writer.ask_first(fact)
        writer.ask_again_when_due()
    writer.ask_again_all()
    for text in closing:
        writer.say(text, _AFTER_S, "End" if text == closing[0] else "")
    left = len({fact.name for fact in facts}) - len(writer.names)
    return Script(tuple(writer.parts), writer.seconds, tuple(dict.fromkeys(writer.entries)), left)


def said_seconds(text: str, rate: int = USUAL_RATE) -> float:
    """Return about how long a text takes to be said, in s."""
    found = phrases(text)
    pauses = sum(phrase.pause_s for phrase in found[:-1])
    said = sum(_A_PHRASE_S + _A_LETTER_S * len(phrase.text) for phrase in found)
    return said * USUAL_RATE / rate + pauses


def answering_pause(answer: str) -> float:
    """Return the seconds in which a listener may think of an answer and say it aloud."""
    return round(min(_LONGEST_S, max(_SHORTEST_S, _THINK_S + _ALOUD * said_seconds(answer))), 1)


def script_text(script: Script) -> str:
    """Return a script to read: a line for each thing said, pauses of a listener's length in brackets."""
    lines: list[str] = []
    for part in script.parts:
        if part.chapter:
            lines += ["", f"# {part.chapter}"]
        lines.append(part.text)
        if part.pause_s >= _SHORTEST_S:
            lines.append(f"[{part.pause_s:g} s to answer]")
    return "\n".join(lines).strip()


class _Writer:
    """A script while it is written: what was said so far, and which facts are to come again."""

    def __init__(self, rate: int) -> None:
        self.parts: list[Part] = []
        self.names: list[str] = []
        self.entries: list[str] = []
        self.seconds = 0.0
        self.owed = 0.0
        self._rate = rate
        self._again: list[tuple[int, float, Ask]] = []
        """Second questions: after how many facts and seconds each may come."""
        self._number = 0

    def say(self, text: str, pause_s: float, chapter: str = "") -> None:
        self.parts.append(Part(text, pause_s, chapter))
        self.seconds += said_seconds(text, self._rate) + pause_s

    def cost(self, fact: Fact) -> float:
        """Seconds that a fact takes, both its questions."""
        source = said_seconds(fact.source, self._rate) + _AFTER_S if fact.source else 0.0
        return source + sum(self._cost(ask) for ask in fact.asks[:2])

    def ask_first(self, fact: Fact) -> None:
        self.names.append(fact.name)
        self.entries.append(fact.entry)
        self._ask(fact.asks[0], fact.source)
        for ask in fact.asks[1:2]:
            self._again.append((len(self.names) + _APART, self.seconds + _APART_S, ask))
            self.owed += self._cost(ask)

    def ask_again_when_due(self) -> None:
        """Ask the second question that has waited longest, if it has waited long enough."""
        if self._again and self._again[0][0] <= len(self.names) and self._again[0][1] <= self.seconds:
            self._ask_again()

    def ask_again_all(self) -> None:
        while self._again:
            self._ask_again()

    def _ask_again(self) -> None:
        _, _, ask = self._again.pop(0)
        self.owed -= self._cost(ask)
        self._ask(ask, "")

    def _ask(self, ask: Ask, source: str) -> None:
        self._number += 1
        self.say(ask.question, answering_pause(ask.answer), f"{self._number}. {ask.title}")
        self.say(ask.answer, _AFTER_S if source else _BETWEEN_S)
        if source:
            self.say(source, _BETWEEN_S)

    def _cost(self, ask: Ask) -> float:
        said = said_seconds(ask.question, self._rate) + said_seconds(ask.answer, self._rate)
        return said + answering_pause(ask.answer) + _BETWEEN_S
