"""A record in a folder of its own, and a clock that a test sets."""

from collections.abc import Callable, Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from assistant.practice.keeping.record import Record, open_record
from assistant.practice.keeping.rows import Learner, Note

TYPE = "sample"
START = datetime(2026, 11, 25, 7, 0, tzinfo=UTC)


class Clock:
    """A clock that goes a second further whenever it is looked at."""

    def __init__(self) -> None:
        self.now = START

    def __call__(self) -> datetime:
        self.now += timedelta(seconds=1)
        return self.now


Opener = Callable[[], Record]


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def home(tmp_path: Path) -> Path:
    return tmp_path / "home"


@pytest.fixture
def opener(home: Path, clock: Clock) -> Iterator[Opener]:
    """Opens the record of the folder, as often as a test likes."""
    opened: list[Record] = []

    def open_one() -> Record:
        opened.append(open_record(str(home), clock))
        return opened[-1]

    yield open_one
    for record in opened:
        record.close()


@pytest.fixture
def record(opener: Opener) -> Record:
    return opener()


@pytest.fixture
def ana(record: Record) -> Learner:
    return record.enrol("Ana")


def note(record: str = "vle", mark: str = "right", share: float | None = None, **more: object) -> Note:
    points = share if share is not None else float(mark == "right")
    return Note(record, "What is it?", "an answer", mark, points, **more)  # type: ignore[arg-type]
