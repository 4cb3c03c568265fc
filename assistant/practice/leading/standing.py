"""Where a class stands, read from its record alone, so that a program that was killed goes on as if it never was.

What the instructor does becomes acts; whoever holds the record carries them out and reads the standing anew.
"""

from __future__ import annotations

from assistant.frozen import NamedTuple
from assistant.practice.keeping.rows import ASKED, ENDED, MARKED, PAUSED, REVEALED, Asking, Seat, Sitting, Turn
from assistant.practice.leading.plan import Aims, Plan, Suggested
from assistant.practice.making.question import Question

THINKING, ANSWERING, BETWEEN, BREAK, OVER = "thinking", "answering", "between", "break", "over"
"""Phases: a question is put; somebody was named for it; the next one may be put; the class pauses; it has ended."""


class Standing(NamedTuple):
    """A class sitting as it stands: its rows, its aims and how far they are."""

    sitting: Sitting
    seats: tuple[Seat, ...]
    turns: tuple[Turn, ...]
    aims: Aims
    plan: Plan

    @property
    def current(self) -> Turn | None:
        """The question that stands, if one does."""
        return next((turn for turn in self.turns if turn.phase != MARKED), None)

    @property
    def last(self) -> Turn | None:
        """The turn that was marked last."""
        marked = [turn for turn in self.turns if turn.phase == MARKED]
        return max(marked, key=lambda turn: (turn.at, turn.number), default=None)

    @property
    def phase(self) -> str:
        """One of the phases."""
        if self.sitting.state in (ENDED, PAUSED):
            return OVER if self.sitting.state == ENDED else BREAK
        turn = self.current
        if turn is None:
            return BETWEEN
        return THINKING if turn.phase == ASKED or (turn.phase == REVEALED and turn.seat is None) else ANSWERING

    @property
    def questions(self) -> tuple[Question, ...]:
        """Every question, those that were added at the end."""
        return (*self.aims.questions, *self.plan.added)

    @property
    def left(self) -> int:
        """How many of the questions aimed at were not put yet."""
        return max(len(self.aims.questions) - self.plan.next, 0)

    @property
    def time_is_over(self) -> bool:
        """Whether the minutes asked for have passed."""
        return bool(self.aims.minutes) and not self.plan.more and self.plan.spent >= self.aims.minutes * 60

    @property
    def all_asked(self) -> bool:
        """Whether nothing more was meant to be put."""
        return not self.left or self.time_is_over

    def question(self, turn: Turn) -> Question | None:
        """Return the question of a turn, if it is known which."""
        place = self.plan.asked.get(turn.number)
        return self.questions[place] if place is not None and place < len(self.questions) else None

    def suggested(self, turn: Turn) -> Suggested | None:
        """Return what the program made of the answer to a turn, if one was typed or heard."""
        return self.plan.suggested.get(turn.number)

    def name_of(self, seat: int | None) -> str:
        """Return who sits somewhere."""
        return next((each.name for each in self.seats if each.id == seat), "")

    @property
    def next_number(self) -> int:
        """The number of the turn that would be put next."""
        return max((turn.number for turn in self.turns), default=0) + 1


class Put(NamedTuple):
    """Put a question to the class, with the plan that then holds."""

    asking: Asking
    plan: Plan


class Call(NamedTuple):
    """Give a turn to a seat."""

    turn: int
    seat: int


class Unpass(NamedTuple):
    """Give a turn back to whoever passed it on last."""

    turn: int


class Hint(NamedTuple):
    """Note that a hint was given."""

    turn: int


class Show(NamedTuple):
    """Note that the key is shown."""

    turn: int


class MarkTurn(NamedTuple):
    """Mark a turn. marked: what the program made of the answer, where it did."""

    turn: int
    mark: str
    share: float
    answer: str = ""
    marked: str = ""
    confused_with: str = ""


class TakeBack(NamedTuple):
    """Take the last mark back."""


class Withdraw(NamedTuple):
    """Withdraw a question, as if it had never been put."""

    turn: int


class Keep(NamedTuple):
    """Keep a plan."""

    plan: Plan


class Join(NamedTuple):
    """Seat one more person, in a team if one was named."""

    name: str
    team: str = ""


class Pause(NamedTuple):
    """Pause, or go on after a pause."""

    on: bool


class End(NamedTuple):
    """End the class."""


Act = Put | Call | Unpass | Hint | Show | MarkTurn | TakeBack | Withdraw | Keep | Join | Pause | End
