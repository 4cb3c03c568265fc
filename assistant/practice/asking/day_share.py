"""How much of what is due a day asks on the way to a date: no more than somebody does beside other work.

What is left over is asked on the days after, the most urgent first. Who wants more, or less, says so.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, datetime

from assistant.practice.asking.choosing import Pace
from assistant.practice.keeping.rows import Answered

MOST_A_DAY = 60
"""Questions a day, about half an hour of them."""


def share_left(answers: Iterable[Answered], now: datetime, ready_by: date | None) -> int | None:
    """Return how many of a day's questions are still to be put, of whatever sittings; None where no day is set."""
    if ready_by is None:
        return None
    answered = sum(1 for each in answers if each.at.astimezone(now.tzinfo).date() == now.date())
    return max(MOST_A_DAY - answered, 0)


def is_beyond(pace: Pace) -> bool:
    """Whether more is due today than a day asks on the way to a date."""
    return pace.days is not None and pace.due + pace.new > MOST_A_DAY
