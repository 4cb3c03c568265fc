"""A learner with a fortnight behind, whose record holds every kind of thing that progress tells of."""

from collections.abc import Iterator
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest

from assistant.knowledge.library_records import Change
from assistant.knowledge.records import Source
from assistant.practice.asking.pool import GENERAL, Item, LeftOut, Pool
from assistant.practice.keeping.record import Record, open_record
from assistant.practice.keeping.rows import Learner, Note
from assistant.practice.progress.overview import Overview, overview

NOW = datetime(2026, 11, 25, 7, 0, tzinfo=UTC)
READY_BY = date(2026, 12, 10)
NAME = 'Ana <b>"Ō"</b> & co'
DEFERENCE = "Training only. Loaded: AOM 8. Check your library."
CHANGE = Change("c", "limit", "200 kt", "205 kt", "AOM 8", "r2", (Source("AOM", "1"),))
SECTIONS = ("32-30", "32-40", "32-40", GENERAL)


def item(number: int) -> Item:
    changes = (CHANGE,) if number == 2 else ()
    title = f"Title of <{number}>"
    return Item(
        f"r{number}", "limits", SECTIONS[number % 4], title, "205 kt", f"AOM 1.{number}", (("AOM", "8"),), "c", changes
    )


POOL = Pool("sample", tuple(map(item, range(20))), (LeftOut("x1", "out of force", "OLD 1 is historic"),) * 2)


class Clock:
    now = NOW

    def __call__(self) -> datetime:
        return self.now


@pytest.fixture
def record(tmp_path: Path) -> Iterator[Record]:
    with open_record(str(tmp_path / "home"), Clock()) as opened:
        yield opened


@pytest.fixture
def learner(record: Record) -> Learner:
    """(days ago, record, mark) as noted, and one mark overruled."""
    ana = record.enrol(NAME)
    clock = record._keeper._clock
    answers = [
        (13, 0, "right"), (12, 1, "wrong"), (11, 1, "wrong"), (10, 2, "right"), (5, 4, "missed"), (1, 5, "right"),
        (1, 6, "partly"), (1, 1, "wrong"), (0, 8, "right"), (0, 9, "wrong"),
    ]  # fmt: skip
    for days, number, mark in answers:
        clock.now = NOW - timedelta(days=days, hours=1)  # type: ignore[attr-defined]
        share = {"right": 1.0, "partly": 0.6}.get(mark, 0.0)
        revision = "7" if number == 2 else "8"
        note = Note(f"r{number}", "Q?", "A", mark, share, "205 kt", revisions=(("AOM", revision),), content="c")
        kept = record.note_answer(ana, "sample", note._replace(confused_with="r0" if number == 1 else ""))
    clock.now = NOW  # type: ignore[attr-defined]
    record.overrule(kept, "right")
    return ana


@pytest.fixture
def seen(record: Record, learner: Learner) -> Overview:
    return overview(record, learner, POOL, NOW, READY_BY)


@pytest.fixture
def nothing_seen(record: Record) -> Overview:
    return overview(record, record.enrol("Ben"), POOL, NOW)
