"""What a sitting of one learner is made of: the question put, the answers given, where it stands, what follows."""

from __future__ import annotations

from collections.abc import Callable

from assistant.answering.answer import Answer
from assistant.frozen import NamedTuple
from assistant.practice.asking.pool import Item
from assistant.practice.asking.standing import Was
from assistant.practice.making.question import Question
from assistant.practice.recall import word_for
from assistant.practice.sitting_marks import Line, Taken

WAITING, ANSWERING, MARKED, OVERRULING, STANDING_BY, OVER = (
    "waiting", "answering", "marked", "overruling", "standing by", "over",
)  # fmt: skip
"""Phases: between two questions; awaiting an answer, a word on the mark, the learner's own mark, the end of a pause."""
KEEP, REMARK, NEXT, END = "keep", "remark", "next", "end"
"""What the caller is to do: keep the last answer, keep its other mark, put the next question, close the sitting."""


class Put(NamedTuple):
    """A question as it is put. why: as a choice says it. was: what a revision changed since it was last asked."""

    question: Question
    item: Item
    why: str = ""
    was: Was | None = None
    again: bool = False
    """Whether it was missed in this sitting already."""


class Given(NamedTuple):
    """An answer that was given.

    marked: what the program made of it. hesitation: seconds before typing, nothing where they do not count.
    """

    put: Put
    taken: Taken
    marked: str
    hinted: bool = False
    hesitation: float | None = None

    @property
    def was_overruled(self) -> bool:
        """Whether the learner put another mark in the place of the program's."""
        return self.taken.mark != self.marked

    @property
    def word(self) -> str:
        """Missed, prompted or recalled."""
        return word_for(self.taken.mark, self.taken.share, self.hinted, self.hesitation, self.put.question.text)


class State(NamedTuple):
    """Where a sitting stands. back: the phase before a pause."""

    phase: str = WAITING
    put: Put | None = None
    given: tuple[Given, ...] = ()
    hinted: bool = False
    timed: bool = True
    """Whether the time before the answer says how well it is known: no more once the learner paused."""
    back: str = ANSWERING
    unmarked: bool = False
    """Whether the last answer still needs the learner's own mark."""


class Desk(NamedTuple):
    """What a sitting is given to work with.

    take: an answer to a question as marked. reply: what the assistant says to a text that follows a question.
    """

    take: Callable[[Question, str], Taken]
    reply: Callable[[Question, str], Answer]


class After(NamedTuple):
    """What follows from something that happened: the state, lines to show, what is to be done (or nothing)."""

    state: State
    lines: tuple[Line, ...] = ()
    act: str = ""
