"""How much of what is due a day asks on the way to a date: no more than somebody does beside other work.

What is left over is asked on the days after, the most urgent first. Who wants more, or less, says so. Once the day to
be ready by is over, a day still asks no more.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date, datetime
from random import Random

from assistant.frozen import NamedTuple
from assistant.practice.asking.choosing import NEW, Choice, plan
from assistant.practice.asking.standing import Standing
from assistant.practice.keeping.rows import Answered

MOST_A_DAY = 60
"""Questions a day, about half an hour of them."""


class Today(NamedTuple):
    """What a day still asks. share: how many questions of it are left, None where no day was ever set.

    waiting: how many more are changed or fading, beyond the share.
    """

    chosen: tuple[Choice, ...]
    share: int | None = None
    waiting: int = 0

    @property
    def new(self) -> int:
        """How many of those it asks are new."""
        return sum(1 for each in self.chosen if each.why == NEW)

    @property
    def again(self) -> int:
        """How many of those it asks were asked before."""
        return len(self.chosen) - self.new

    @property
    def is_done(self) -> bool:
        """Whether all of the share was asked."""
        return self.share == 0


def share_left(answers: Iterable[Answered], now: datetime, ready_by: date | None) -> int | None:
    """Return how many of a day's questions are still to be put, of whatever sittings; None where no day is set."""
    if ready_by is None:
        return None
    answered = sum(1 for each in answers if each.at.astimezone(now.tzinfo).date() == now.date())
    return max(MOST_A_DAY - answered, 0)


def today_of(
    standings: Sequence[Standing], now: datetime, share: int | None = None, ready_by: date | None = None
) -> Today:
    """Return what today still asks, the same wherever it is told. share: of `share_left`."""
    due = plan(standings, now, Random(0), ready_by=ready_by)
    if share is None:
        return Today(due)
    chosen = plan(standings, now, Random(0), share, ready_by, ahead=False)
    waiting = sum(1 for each in due if each.why != NEW) - sum(1 for each in chosen if each.why != NEW)
    return Today(chosen, share, max(waiting, 0))
