"""What a sitting came to: told when it ends, however it ends."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from datetime import date
from math import ceil

from assistant.frozen import NamedTuple
from assistant.practice.asking.choosing import CHANGED, FADING, NEW, NEW_SHARE, Choice, Pace
from assistant.practice.asking.day_share import MOST_A_DAY
from assistant.practice.recall import MARKS, MISSED, PARTLY, RIGHT, WRONG
from assistant.practice.sitting_marks import MARK, NOTE, Line
from assistant.practice.sitting_state import Given

_CALLED = {RIGHT: "right", PARTLY: "partly right", WRONG: "wrong", MISSED: "missed"}
_SHOWN = 8
_EACH_MIN, _ROUND_MIN, _LONG_MIN = 0.5, 5, 60
"""Minutes that a question takes with its answer, to which they are rounded up, from which on they are many."""
_MISSED = "missed"
_ALL = "All of it, until it is known, would take"
_FIRST = "limits and memory items first"
_ON_AVERAGE = "on average until then"
_A_DAY_MIN, _TIMES_EACH = 30, 4
"""Minutes a day that a learner has, and how often a record is asked until it is known."""
SAVED, UNSAVED = "Kept in the record of {name}.", "Not kept: the record of {name} cannot be written."


class Ahead(NamedTuple):
    """What is still to come. left: today; tomorrow: due then, without what is new; ready_by: the day, if one is set.

    waiting: due today as well, beyond what a day asks.
    """

    left: int
    tomorrow: int
    pace: Pace
    ready_by: date | None = None
    number: int | None = None
    """Questions that a sitting was to have, where that was said."""
    minutes: float | None = None
    """Minutes that a sitting was to take, where that was said."""
    waiting: int = 0
    done: bool = False
    """Whether all that today asks on the way to the day was asked."""


def counts_line(given: Sequence[Given]) -> str:
    """Return how many answers got which mark: "12 answered: 9 right, 2 partly right, 1 missed."."""
    if not given:
        return "Nothing was answered."
    counted = Counter(each.taken.mark for each in given)
    marks = ", ".join(f"{counted[mark]} {_CALLED[mark]}" for mark in MARKS if counted[mark])
    prompted = sum(each.hinted for each in given)
    with_hint = f", {prompted} with a hint" if prompted else ""
    return f"{len(given)} answered{with_hint}: {marks}."


def summary_lines(given: Sequence[Given], ahead: Ahead | None, name: str, saved: bool) -> list[Line]:
    """Return what a sitting came to, what to read again and what is to come."""
    lines = [Line(counts_line(given), MARK)]
    overruled = sum(each.was_overruled for each in given)
    if overruled:
        lines.append(Line(f"{overruled} mark{'s' * (overruled > 1)} overruled by you, and recorded so."))
    lines += _to_read(given)
    if ahead is not None:
        lines += [Line(each) for each in ahead_lines(ahead)]
    if given:
        lines.append(Line((SAVED if saved else UNSAVED).format(name=name), NOTE))
    return lines


def today_line(chosen: Iterable[Choice], waiting: int = 0, done: bool = False) -> str:
    """Return what today asks, by why, and how long that takes: "Today: 14 to ask (5 fading, 9 new), about 10 min.".

    waiting: how many are due beyond what a day asks. done: all that it asks was asked.
    """
    counted = Counter(_MISSED if _is_missed(each) else each.why for each in chosen)
    parts = ", ".join(f"{counted[why]} {why}" for why in (CHANGED, FADING, _MISSED, NEW) if counted[why])
    total = sum(counted.values())
    if not total and (waiting or done):
        return f"{_answered(waiting)} --minutes 10 asks some more now."
    if not total:
        return "Nothing is due today; --number 10 asks ahead of time."
    minutes = _rounded(total * _EACH_MIN)
    long = f"; --minutes {_A_DAY_MIN} takes the most urgent" if minutes > _LONG_MIN else ""
    told = f"Today: {total} to ask ({parts}), about {minutes} min, and again what you miss{long}."
    if not waiting:
        return told
    kept = ", and keeps places for what is new, so that all of it comes up" if counted[NEW] else ""
    return f"{told} {_more_due(waiting)}: a day asks {MOST_A_DAY} at most{kept}, unless you say --number or --minutes."


def _is_missed(choice: Choice) -> bool:
    """Whether something is asked again since it was not known the last time, and not since it has faded."""
    return choice.why == FADING and choice.standing.word == MISSED


def ahead_lines(ahead: Ahead) -> list[str]:
    """Return what is to come: today, tomorrow, by the day to be ready."""
    today = f"Left today: {ahead.left}." if ahead.left else "Nothing more is due today."
    if ahead.done:
        today = _answered(ahead.waiting)
    elif ahead.waiting:
        today = f"Left of today's {MOST_A_DAY}: {ahead.left}; {_more_due(ahead.waiting)}."
    lines = [f"{today} Fading by tomorrow: {ahead.tomorrow}."]
    if ahead.ready_by and ahead.pace.days is not None:
        lines.append(ready_line(ahead.ready_by, ahead.pace, ahead.number, ahead.minutes, ahead.done))
    return lines


def ready_line(
    day: date, pace: Pace, number: int | None = None, minutes: float | None = None, done: bool = False
) -> str:  # fmt: skip
    """Return how the days left and what is not begun stand to each other.

    number, minutes: of a sitting, if said. done: all that today asks was asked, so that today is none of the days left.
    """
    days = (pace.days or 1) - done
    unseen = f"{pace.unseen} not asked yet" if pace.unseen else "everything was asked at least once"
    if not days:
        return f"Ready by {day}: that is today, and its questions are answered; {unseen}."
    counted = "after today" if done else "with today"
    load = _reach(pace, days, number) if number else _load(pace, days, minutes or _A_DAY_MIN)
    return f"Ready by {day}: {days} day{'s' * (days > 1)} {counted}, {unseen}.{load}"


def _reach(pace: Pace, days: int, number: int) -> str:
    """Return how many questions a day all of it takes, and how far so many reach, where they are too few."""
    needed = (pace.unseen * _TIMES_EACH + pace.due) / days
    if not pace.unseen or number >= needed:
        return ""
    return f" {_ALL} about {_rounded(needed)} questions a day {_ON_AVERAGE}; {_begun(pace, days, number)}"


def _load(pace: Pace, days: int, a_day: float) -> str:
    """Return what all of it takes a day, where that is more than the minutes of one, and how far these reach."""
    minutes = (pace.unseen * _TIMES_EACH + pace.due) * _EACH_MIN / days
    if not pace.unseen or minutes <= a_day:
        return ""
    reach = f"{a_day:.0f} min, or {_begun(pace, days, int(a_day / _EACH_MIN))}"
    return f" {_ALL} about {_rounded(minutes)} min a day {_ON_AVERAGE}; {reach}"


def _begun(pace: Pace, days: int, number: int) -> str:
    """Return how many of those not asked yet so many questions a day reach: half of each goes to what is new, and on
    the first day, when little fades, all that is not due."""
    first = max(number - pace.due, ceil(number * NEW_SHARE))
    reached = ceil(number * (days - 1) * NEW_SHARE) + first
    if reached >= pace.unseen:
        return f"{number} questions a day ask each at least once, {_FIRST}."
    return f"{number} questions a day reach about {reached} of those not asked yet, {_FIRST}."


def _answered(waiting: int) -> str:
    """Return that all that a day asks was asked, and what else is due."""
    more = f"; {_more_due(waiting)}" if waiting else ""
    return f"Today's {MOST_A_DAY} questions are answered{more}."


def _more_due(waiting: int) -> str:
    return f"{waiting} more {'is' if waiting == 1 else 'are'} to be asked again"


def _rounded(minutes: float) -> int:
    return ceil(minutes / _ROUND_MIN) * _ROUND_MIN


def _to_read(given: Sequence[Given]) -> list[Line]:
    """Return the paragraphs of what was not right the last time it was asked."""
    last = {each.put.item.record: each for each in given}
    weak = [each for each in last.values() if each.taken.mark != RIGHT]
    if not weak:
        return []
    listed = [Line(f"- {each.put.item.paragraph}: {each.put.item.title} ({_CALLED[each.taken.mark]})") for each in weak]
    more = len(listed) - _SHOWN
    return [Line("To read again:"), *listed[:_SHOWN], *([Line(f"  and {more} more")] if more > 0 else [])]
