"""Where nothing can be written, one clear line says so and the sitting goes on, with what could be read."""

import os
import urllib.parse  # noqa: F401  what is imported on the way must be there before files may no more be read
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from assistant.practice.keeping import connecting
from assistant.practice.keeping.opening import FILE
from assistant.practice.keeping.record import Record, open_record
from assistant.practice.keeping.rows import Learner
from tests.practice.keeping.conftest import TYPE, Clock, Opener, note


def test_a_full_disk_is_said_once_and_the_sitting_goes_on(record: Record, ana: Learner, home: Path) -> None:
    record.note_answer(ana, TYPE, note("before"))
    pages = record._keeper.connection.execute("PRAGMA page_count").fetchone()[0]
    record._keeper.connection.execute(f"PRAGMA max_page_count = {pages}")

    for number in range(60):
        record.note_answer(ana, TYPE, note(f"record-{number}"))

    assert record.news() == (
        f"{home / FILE} cannot be written: the disk is full. Going on unsaved: nothing more is kept.",
    )
    assert not record.saved
    assert len(record.history(ana, TYPE)) == 61
    assert len(record.cards(ana, TYPE)) == 61


def test_what_was_kept_before_the_disk_was_full_is_there_again(record: Record, ana: Learner, opener: Opener) -> None:
    record.note_answer(ana, TYPE, note("before"))
    record._keeper.connection.execute("PRAGMA max_page_count = 1")
    for number in range(60):
        record.note_answer(ana, TYPE, note(f"record-{number}"))
    record.close()

    again = opener().history(ana, TYPE)

    assert 1 <= len(again) < 61
    assert again[0].note.record == "before"


def test_a_file_where_the_folder_should_be(tmp_path: Path, clock: Clock) -> None:
    place = tmp_path / "file"
    place.write_text("here already")

    record = open_record(str(place), clock)
    kept = record.note_answer(record.enrol("Ana"), TYPE, note())

    assert record.news() == (
        f"{place / FILE} cannot be written: there is a file where its folder should be. "
        "Going on unsaved: nothing is kept.",
    )
    assert record.history(record.enrol("Ana"), TYPE) == (kept,)
    assert place.read_text() == "here already"
    record.close()
    assert record.news() == ()


@contextmanager
def _readable_only(home: Path) -> Iterator[None]:
    """Files that may only be read, for this process too if it may do anything otherwise."""
    for path in (home, *home.rglob("*")):
        path.chmod(0o555 if path.is_dir() else 0o444)
    privileged = os.geteuid() == 0
    if privileged:
        os.seteuid(65534)
    try:
        yield
    finally:
        if privileged:
            os.seteuid(0)
        for path in (home, *home.rglob("*")):
            path.chmod(0o755)


def test_a_folder_that_may_only_be_read_is_read(clock: Clock) -> None:
    with TemporaryDirectory() as place:
        os.chmod(place, 0o755)
        home = Path(place) / "home"
        with open_record(str(home), clock) as record:
            ana = record.enrol("Ana")
            record.note_answer(ana, TYPE, note("before"))

        with _readable_only(home):
            record = open_record(str(home), clock)
            for number in range(2):
                record.note_answer(ana, TYPE, note(f"new-{number}"))

        (told,) = record.news()
        assert told.startswith(f"{home / FILE} cannot be written: ")
        assert told.endswith("Going on unsaved: nothing is kept.")
        assert [each.note.record for each in record.history(ana, TYPE)] == ["before", "new-0", "new-1"]
        record.close()


def test_a_record_held_by_another_program_for_too_long(
    record: Record, ana: Learner, opener: Opener, monkeypatch: pytest.MonkeyPatch
) -> None:
    other = opener()
    other._keeper.connection.execute("BEGIN IMMEDIATE")
    monkeypatch.setattr(connecting, "PATIENCE", 0.05)

    kept = record.note_answer(ana, TYPE, note())
    other._keeper.connection.execute("ROLLBACK")

    assert record.history(ana, TYPE) == (kept,)
    assert "another program holds it" in record.news()[0]
    assert not record.saved
