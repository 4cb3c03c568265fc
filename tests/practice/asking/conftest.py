"""A small type of the tests' own, as it is and as a revision would leave it, and a record with one learner."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest

from assistant.knowledge.base import Base
from assistant.knowledge.load import load
from assistant.knowledge.location import knowledge_root
from assistant.practice.keeping.record import Record, open_record
from assistant.practice.keeping.rows import Learner

SECOND = Path(__file__).parents[2] / "types" / "second"
Library = Callable[..., Base]
START = datetime(2026, 11, 25, 7, 0, tzinfo=UTC)


class Clock:
    """A clock that a test sets."""

    def __init__(self) -> None:
        self.now = START

    def __call__(self) -> datetime:
        return self.now


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def record(tmp_path: Path, clock: Clock) -> Iterator[Record]:
    with open_record(str(tmp_path / "home"), clock) as opened:
        yield opened


@pytest.fixture
def ana(record: Record) -> Learner:
    return record.enrol("Ana")


@pytest.fixture
def library(tmp_path: Path) -> Library:
    """Loads the small type with pieces of its files replaced: library(("revision: \"3\"", "revision: \"4\""), …)."""
    numbers = iter(range(100))

    def loaded(*edits: tuple[str, str]) -> Base:
        root = tmp_path / f"library-{next(numbers)}"
        shutil.copytree(Path(knowledge_root()) / "language", root / "language")
        shutil.copytree(SECOND, root / "second")
        for old, new in edits:
            places = [path for path in (root / "second").iterdir() if old in path.read_text(encoding="utf-8")]
            assert places, f"nothing to replace: {old}"
            for path in places:
                path.write_text(path.read_text(encoding="utf-8").replace(old, new, 1), encoding="utf-8")
        base, problems = load(str(root), "second", cache_dir="")
        assert base is not None, "\n".join(map(str, problems))
        return base

    return loaded
