"""How a learner stands with a type: counted and expected by ATA section, what is confused, what is due.

One record that text, JSON and page are all made from.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from datetime import date, datetime, timedelta

from assistant.frozen import NamedTuple
from assistant.practice.asking.choosing import Pace, pace
from assistant.practice.asking.day_share import Today, share_left, today_of
from assistant.practice.asking.pool import GENERAL, LeftOut, Pool, section_name
from assistant.practice.asking.standing import KNOWN, SHAKY, UNKNOWN, Standing, standings
from assistant.practice.keeping.answers import word_of
from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import Answered, Learner
from assistant.practice.recall import MISSED, PROMPTED, RECALLED
from assistant.practice.sections import titled

DAYS_SHOWN = 14
_MOST = 5


class Section(NamedTuple):
    """A section, or all of them: records by level, and the share expected to be recalled, 0 to 1.

    ready: on the day to be ready by, if there is one and nothing more is done until then.
    """

    section: str
    name: str
    known: int
    shaky: int
    unknown: int
    today: float
    ready: float | None

    @property
    def full_name(self) -> str:
        """Its number, where it has one, and its name."""
        return titled(self.section, self.name)

    @property
    def records(self) -> int:
        """How many records there are in it."""
        return self.known + self.shaky + self.unknown


class Confusion(NamedTuple):
    """What was taken for what: the record asked about, the one whose answer came, how often, when last."""

    record: str
    title: str
    other: str
    other_title: str
    times: int
    last: datetime


class Missed(NamedTuple):
    """A record that was missed more than once, and how often it was asked."""

    record: str
    title: str
    paragraph: str
    missed: int
    asked: int


class Day(NamedTuple):
    """The answers of one day, by how they went."""

    day: date
    recalled: int
    prompted: int
    missed: int


class Changed(NamedTuple):
    """A record that a revision changed since the learner was asked."""

    record: str
    title: str
    line: str


class Overview(NamedTuple):
    """How a learner stands. sections: by number, what is true of all aeroplanes last; total: all of them."""

    learner: str
    type_id: str
    now: datetime
    ready_by: date | None
    sections: tuple[Section, ...]
    total: Section
    pace: Pace
    answers: int
    overruled: int
    confusions: tuple[Confusion, ...]
    missed: tuple[Missed, ...]
    changed: tuple[Changed, ...]
    days: tuple[Day, ...]
    left_out: tuple[LeftOut, ...]
    today: Today


def overview(record: Record, learner: Learner, pool: Pool, now: datetime, ready_by: date | None = None) -> Overview:
    """Return how a learner stands at a moment (aware, of the learner's clock), and on a day if one is given."""
    every = standings(record, learner, pool)
    answers = record.history(learner, pool.type_id)
    named = sorted({each.item.section for each in every}, key=lambda name: (name == GENERAL, name))
    sections = (_section(name, [s for s in every if s.item.section == name], now, ready_by) for name in named)
    titles = {item.record: item.title for item in pool.items}
    return Overview(
        learner.name,
        pool.type_id,
        now,
        ready_by,
        tuple(sections),
        _section("", every, now, ready_by),
        pace(every, now, ready_by),
        len(answers),
        sum(1 for each in answers if each.note.overruled),
        _confusions(answers, titles),
        _missed(answers, every),
        tuple(Changed(s.item.record, s.item.title, s.was.line) for s in every if s.was),
        _days(answers, now),
        pool.left_out,
        today_of(every, now, share_left(answers, now, ready_by or learner.ready_by), ready_by),
    )


def moment_of(day: date, now: datetime) -> datetime:
    """Return the same time of day on another day."""
    return now + timedelta(days=(day - now.date()).days)


def _section(name: str, group: Sequence[Standing], now: datetime, ready_by: date | None) -> Section:
    levels = Counter(each.level(now) for each in group)
    ready = _mean(each.recall(moment_of(ready_by, now)) for each in group) if ready_by else None
    return Section(
        name, section_name(name), levels[KNOWN], levels[SHAKY], levels[UNKNOWN],
        _mean(each.recall(now) for each in group), ready,
    )  # fmt: skip


def _mean(values: Iterable[float]) -> float:
    listed = list(values)
    return sum(listed) / len(listed) if listed else 0.0


def _confusions(answers: Iterable[Answered], titles: dict[str, str]) -> tuple[Confusion, ...]:
    found: dict[tuple[str, str], list[datetime]] = {}
    for each in answers:
        if each.note.confused_with and each.note.mark != "right":
            found.setdefault((each.note.record, each.note.confused_with), []).append(each.at)
    made = [
        Confusion(one, titles.get(one, one), other, titles.get(other, other), len(times), max(times))
        for (one, other), times in found.items()
    ]
    return tuple(sorted(made, key=lambda each: (-each.times, -each.last.timestamp())))


def _missed(answers: Iterable[Answered], every: Iterable[Standing]) -> tuple[Missed, ...]:
    """The records missed most of those that are not settled by now."""
    asked, missed = Counter[str](), Counter[str]()
    for each in answers:
        asked[each.note.record] += 1
        missed[each.note.record] += word_of(each.note) == MISSED
    open_ones = [s for s in every if s.word != RECALLED and missed[s.item.record] > 1]
    ranked = sorted(open_ones, key=lambda s: (-missed[s.item.record], s.item.record))[:_MOST]
    return tuple(
        Missed(s.item.record, s.item.title, s.item.paragraph, missed[s.item.record], asked[s.item.record])
        for s in ranked
    )


def _days(answers: Iterable[Answered], now: datetime) -> tuple[Day, ...]:
    """The last days, also those without an answer."""
    counts: dict[date, Counter[str]] = {}
    for each in answers:
        counts.setdefault(each.at.astimezone(now.tzinfo).date(), Counter())[word_of(each.note)] += 1
    shown = (now.date() - timedelta(days=back) for back in reversed(range(DAYS_SHOWN)))
    none: Counter[str] = Counter()
    return tuple(Day(day, *(counts.get(day, none)[word] for word in (RECALLED, PROMPTED, MISSED))) for day in shown)
