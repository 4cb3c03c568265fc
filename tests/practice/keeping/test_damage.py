"""A damaged file is set aside with its name told, and the last backup opened; nothing that happens ends a sitting."""

from collections.abc import Callable
from pathlib import Path

import pytest

from assistant.practice.keeping.backups import FOLDER, KEPT, backups
from assistant.practice.keeping.opening import FILE, set_aside_files
from assistant.practice.keeping.record import Record
from tests.practice.keeping.conftest import TYPE, Opener, note


def _overwritten(path: Path) -> None:
    path.write_bytes(b"this is no database at all" * 400)


def _cut(path: Path) -> None:
    path.write_bytes(path.read_bytes()[: path.stat().st_size // 2])


def _scratched(path: Path) -> None:
    content = bytearray(path.read_bytes())
    content[4096:] = bytes(len(content) - 4096)
    path.write_bytes(bytes(content))


def _head_gone(path: Path) -> None:
    path.write_bytes(bytes(100) + path.read_bytes()[100:])


def _of_another_program(path: Path) -> None:
    import sqlite3

    path.unlink()
    connection = sqlite3.connect(path)
    connection.execute("CREATE TABLE other (something TEXT)")
    connection.commit()
    connection.close()


def _table_gone(path: Path) -> None:
    import sqlite3

    connection = sqlite3.connect(path)
    connection.execute("DROP TABLE card")
    connection.close()


DAMAGES: list[Callable[[Path], None]] = [_overwritten, _cut, _scratched, _head_gone, _table_gone, _of_another_program]


def _filled(opener: Opener, answers: int = 40) -> None:
    with opener() as record:
        ana = record.enrol("Ana")
        for number in range(answers):
            record.note_answer(ana, TYPE, note(f"record-{number}"))


@pytest.mark.parametrize("damage", DAMAGES)
def test_a_damaged_file_is_set_aside_and_the_backup_opened(
    opener: Opener, home: Path, damage: Callable[[Path], None]
) -> None:
    _filled(opener)
    damage(home / FILE)
    broken = (home / FILE).read_bytes()

    record = opener()

    (told,) = record.news()
    (aside,) = set_aside_files(str(home))
    assert told.startswith(f"{home / FILE} was damaged and is set aside as {aside}; the backup of 2026-11-25 07:00 UTC")
    assert Path(aside).read_bytes() == broken
    assert len(record.history(record.enrol("Ana"), TYPE)) == 40
    assert record.saved


def _emptied(path: Path) -> None:
    path.write_bytes(b"")


def _without_a_table(path: Path) -> None:
    import sqlite3

    path.unlink()
    connection = sqlite3.connect(path)
    connection.execute("PRAGMA user_version = 0")
    connection.execute("VACUUM")
    connection.close()


def _one_byte(path: Path) -> None:
    path.write_bytes(b"S")


@pytest.mark.parametrize("loss", [_emptied, _one_byte, _without_a_table, Path.unlink])
def test_a_file_that_holds_nothing_is_no_new_record_where_backups_are(
    opener: Opener, home: Path, loss: Callable[[Path], None]
) -> None:
    _filled(opener)
    loss(home / FILE)

    record = opener()

    (told,) = record.news()
    assert "the backup of 2026-11-25 07:00 UTC" in told
    assert str(home / FILE) in told
    assert len(record.history(record.enrol("Ana"), TYPE)) == 40
    assert record.saved


def test_a_log_beside_a_lost_file_is_not_read_into_the_backup(opener: Opener, home: Path) -> None:
    _filled(opener, 3)
    live = opener()
    live.note_answer(live.enrol("Ana"), TYPE, note("unsaved"))
    log = (home / f"{FILE}-wal").read_bytes()
    live.close()
    (home / f"{FILE}-wal").write_bytes(log)
    _emptied(home / FILE)

    record = opener()

    assert log in [Path(each).read_bytes() for each in set_aside_files(str(home))]
    assert len(record.history(record.enrol("Ana"), TYPE)) in (3, 4)


@pytest.mark.parametrize("left", [b"", b"S"])
def test_an_empty_file_where_nothing_was_kept_is_a_new_record(home: Path, opener: Opener, left: bytes) -> None:
    home.mkdir()
    (home / FILE).write_bytes(left)

    record = opener()

    assert record.learners() == ()
    assert record.saved


def test_backups_of_a_record_that_knew_more_outlive_those_of_the_next(opener: Opener, home: Path) -> None:
    _filled(opener)
    for each in backups(str(home)):
        Path(each.path).rename(home / f"moved-{Path(each.path).name}")
    _emptied(home / FILE)
    with opener() as record:
        record.enrol("Bo")
    for path in home.glob("moved-*"):
        path.rename(home / FOLDER / path.name.removeprefix("moved-").replace("000001", "000000"))

    for number in range(KEPT + 4):
        with opener() as record:
            record.enrol(f"Learner {number}")

    assert max(each.writes for each in backups(str(home))) > 40


def test_without_a_backup_a_new_record_begins(home: Path, opener: Opener) -> None:
    home.mkdir()
    _overwritten(home / FILE)

    record = opener()

    assert record.news()[0].endswith("there is no backup, and a new record begins.")
    assert record.saved
    assert record.learners() == ()


def test_a_damaged_backup_is_passed_over(opener: Opener, home: Path) -> None:
    _filled(opener, 3)
    with opener() as record:
        record.note_answer(record.enrol("Ana"), TYPE, note())
    newest, older = backups(str(home))
    _scratched(Path(newest.path))
    _overwritten(home / FILE)

    record = opener()

    assert len(record.history(record.enrol("Ana"), TYPE)) == 3
    assert older.shown in record.news()[0]


def test_damage_in_the_midst_of_a_sitting_costs_no_further_answer(opener: Opener, home: Path) -> None:
    _filled(opener)
    record = opener()
    ana = record.enrol("Ana")
    record._keeper.connection.execute("PRAGMA cache_size = 0")
    with open(home / FILE, "r+b") as file:
        file.write(bytes(home.joinpath(FILE).stat().st_size))

    kept = record.note_answer(ana, TYPE, note("after"))

    assert record.history(ana, TYPE, "after") == (kept,)
    assert len(record.history(ana, TYPE)) == 41
    assert "set aside as" in record.news()[0]
    assert record.saved


def test_a_sitting_that_was_killed_is_backed_up_at_the_next_opening(opener: Opener, home: Path) -> None:
    record = opener()
    record.note_answer(record.enrol("Ana"), TYPE, note())
    assert backups(str(home)) == []

    opener()

    assert len(backups(str(home))) == 1


def test_only_the_last_backups_are_kept_and_none_without_a_change(opener: Opener, home: Path) -> None:
    for number in range(KEPT + 3):
        with opener() as record:
            record.enrol(f"Learner {number}")
        opener().close()

    made = backups(str(home))

    assert [each.number for each in made] == [KEPT + 3 - back for back in range(KEPT)]


def test_what_a_killed_program_left_half_made_is_cleared(opener: Opener, home: Path) -> None:
    (home / FOLDER).mkdir(parents=True)
    for left in (home / FOLDER / ".practice-unfinished-77", home / ".practice-unfinished-78-journal"):
        left.write_bytes(b"half")

    opener()

    assert list(home.rglob(".practice-unfinished-*")) == []


def test_two_files_set_aside_in_one_second_have_two_names(opener: Opener, home: Path, record: Record) -> None:
    record.close()
    for _ in range(3):
        _overwritten(home / FILE)
        opener().close()

    assert len(set_aside_files(str(home))) == 3
