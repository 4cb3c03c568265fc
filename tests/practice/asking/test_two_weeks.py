"""Two weeks of a learner's days, simulated: with days missed, a revision in the midst, and a date to be ready by."""

from __future__ import annotations

from collections import Counter
from datetime import date, datetime, timedelta, timezone
from pathlib import Path
from random import Random
from typing import NamedTuple

import pytest

from assistant.knowledge.library_records import Change
from assistant.knowledge.records import Source
from assistant.practice.asking.choosing import CHANGED, FADING, NEW, choose_next
from assistant.practice.asking.pool import Item, Pool
from assistant.practice.asking.standing import standings
from assistant.practice.keeping.record import open_record
from assistant.practice.keeping.rows import Note
from assistant.practice.progress.overview import Overview, overview

START = datetime(2026, 11, 25, 6, 30, tzinfo=timezone(timedelta(hours=1)))
READY_BY = date(2026, 12, 8)
MISSED_DAYS = (4, 9)
REVISED_ON = 7
RECORDS = 120
SECTIONS = ("32-10", "32-20", "32-30", "32-40", "32-50", "32-60")
CHANGED_RECORD = "r5"


class Asked(NamedTuple):
    day: int
    record: str
    why: str
    section: str


class Person:
    """Somebody who forgets: each success makes a memory last longer, each look at the answer starts it anew."""

    def __init__(self, chance: Random) -> None:
        self._chance = chance
        self._lasts: dict[str, float] = {}
        self._last: dict[str, datetime] = {}

    def knows(self, record: str, at: datetime) -> float:
        if record not in self._lasts:
            return 0.25
        days = (at - self._last[record]) / timedelta(days=1)
        return float(0.5 ** (days / self._lasts[record]))

    def answer(self, record: str, at: datetime) -> str:
        right = self._chance.random() < self.knows(record, at)
        self._lasts[record] = self._lasts.get(record, 3.0) * 2.2 if right else 3.0
        self._last[record] = at
        return "right" if right else self._chance.choice(["wrong", "missed"])


def pool_on(day: int) -> Pool:
    revision = "7" if day < REVISED_ON else "8"
    change = Change("c", "limit", "200 kt", "205 kt", "AOM 8", CHANGED_RECORD, (Source("AOM", "1"),))
    items = tuple(
        Item(
            f"r{number}", "limits", SECTIONS[number % 6], f"Limit {number}", "205 kt", "AOM 1",
            (("AOM", revision),), "c", (change,) if day >= REVISED_ON and f"r{number}" == CHANGED_RECORD else (),
        )
        for number in range(RECORDS)
    )  # fmt: skip
    return Pool("simulated", items, ())


class Weeks(NamedTuple):
    asked: list[Asked]
    last: Overview
    known: float


@pytest.fixture(scope="module")
def weeks(tmp_path_factory: pytest.TempPathFactory) -> Weeks:
    home: Path = tmp_path_factory.mktemp("two-weeks")
    chance, person = Random(42), Person(Random(7))
    now = START
    asked: list[Asked] = []
    for day in range(14):
        now = START + timedelta(days=day)
        if day in MISSED_DAYS:
            continue
        with open_record(str(home), lambda: now) as record:  # noqa: B023  read at once
            assert record.news() == ()
            ana, pool, given = record.enrol("Ana"), pool_on(day), list[str]()
            while chosen := choose_next(standings(record, ana, pool), now, chance, READY_BY, given):
                item = chosen.standing.item
                given.append(item.record)
                asked.append(Asked(day, item.record, chosen.why, item.section))
                mark = person.answer(item.record, now)
                record.note_answer(
                    ana,
                    pool.type_id,
                    Note(item.record, "Q?", "A", mark, float(mark == "right"), item.statement,
                         revisions=item.revisions, content=item.content),
                )  # fmt: skip
                now += timedelta(seconds=25)
            last = overview(record, ana, pool, now, READY_BY)
    known = sum(person.knows(f"r{number}", now) for number in range(RECORDS)) / RECORDS
    return Weeks(asked, last, known)


def test_everything_was_asked_before_the_day(weeks: Weeks) -> None:
    assert {each.record for each in weeks.asked} == {f"r{number}" for number in range(RECORDS)}
    assert weeks.last.pace.unseen == 0


def test_new_records_are_spread_over_the_days_and_end_before_the_last(weeks: Weeks) -> None:
    begun = Counter(each.day for each in weeks.asked if each.why == NEW)

    assert max(begun.values()) <= 2 * RECORDS / 14
    assert 13 not in begun
    assert len(begun) >= 9


def test_no_day_asks_for_much_more_than_another(weeks: Weeks) -> None:
    sizes = Counter(each.day for each in weeks.asked)

    assert set(sizes) == set(range(14)) - set(MISSED_DAYS)
    assert max(sizes.values()) <= 2 * sum(sizes.values()) / len(sizes)  # as on a day after one that was missed


def test_on_no_day_a_new_record_comes_before_what_is_fading_already(weeks: Weeks) -> None:
    days = [[each for each in weeks.asked if each.day == day] for day in range(14)]
    for today in days:
        first_new = next((place for place, each in enumerate(today) if each.why == NEW), len(today))
        asked_already = {each.record for each in today[:first_new]}
        begun = {each.record for each in today if each.why == NEW}
        late = {each.record for each in today[first_new:] if each.why == FADING}
        assert late <= asked_already | begun  # asked again since it was missed today, and for no other reason


def test_what_the_revision_changed_is_asked_first_on_that_day_and_once(weeks: Weeks) -> None:
    revised = [each for each in weeks.asked if each.why == CHANGED]

    assert [(each.day, each.record) for each in revised] == [(REVISED_ON, CHANGED_RECORD)]
    assert next(each for each in weeks.asked if each.day == REVISED_ON) == revised[0]


def test_sections_hardly_ever_follow_themselves(weeks: Weeks) -> None:
    pairs = [(a, b) for a, b in zip(weeks.asked, weeks.asked[1:], strict=False) if a.day == b.day]

    assert sum(a.section == b.section for a, b in pairs) < 0.1 * len(pairs)


def test_what_is_missed_is_asked_more_often(weeks: Weeks) -> None:
    times = Counter(each.record for each in weeks.asked)

    assert min(times.values()) >= 1
    assert max(times.values()) >= 5


def test_the_learner_is_ready_and_the_record_says_so(weeks: Weeks) -> None:
    assert weeks.known > 0.85
    assert weeks.last.total.known > 0.8 * RECORDS
    assert weeks.last.total.today > 0.9
    assert weeks.last.total.ready == pytest.approx(weeks.last.total.today)
    assert abs(weeks.last.total.today - weeks.known) < 0.12
    assert sum(sum(day[1:]) for day in weeks.last.days) == weeks.last.answers == len(weeks.asked)
