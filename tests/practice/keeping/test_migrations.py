"""An older file is backed up and brought to this version, a newer one is left alone."""

import sqlite3
from pathlib import Path

from assistant.practice.keeping import answers, schema
from assistant.practice.keeping.backups import backups
from assistant.practice.keeping.opening import FILE
from assistant.practice.keeping.rows import Seated
from tests.practice.keeping.conftest import START, TYPE, Opener, note


def _older(home: Path, version: int) -> None:
    home.mkdir()
    connection = sqlite3.connect(home / FILE)
    for step in schema.STEPS[:version]:
        for statement in step:
            connection.execute(statement)
    connection.execute("INSERT INTO learner (name, name_key, since) VALUES ('Ana', 'ana', ?)", (START.isoformat(),))
    answers.insert(connection, "u1", 1, TYPE, START, note())
    connection.execute(f"PRAGMA application_id = {schema.MARK_OF_FILE}")
    connection.execute(f"PRAGMA user_version = {version}")
    connection.commit()
    connection.close()


def _layout(connection: sqlite3.Connection) -> list[tuple[str, ...]]:
    tables = connection.execute("SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name").fetchall()
    return [(name, *(row[1] for row in connection.execute(f"PRAGMA table_info({name})"))) for (name,) in tables]


def test_an_older_file_is_migrated_with_its_content(home: Path, opener: Opener) -> None:
    _older(home, 1)

    record = opener()

    ana = record.enrol("ana")
    assert ana.since == START
    assert [each.uid for each in record.history(ana, TYPE)] == ["u1"]
    assert record.sittings.seats(record.sittings.begin(TYPE, [Seated("Ana")]).id)[0].learner == ana.id
    assert record.news() == ()


def test_before_a_migration_the_file_is_backed_up_as_it_was(home: Path, opener: Opener) -> None:
    _older(home, 1)

    opener()

    (made,) = [each for each in backups(str(home)) if each.before]
    connection = sqlite3.connect(made.path)
    assert schema.version_of(connection) == 1
    assert connection.execute("SELECT uid FROM answer").fetchall() == [("u1",)]
    connection.close()


def test_every_older_version_ends_in_the_same_tables_as_a_new_file(tmp_path: Path, opener: Opener) -> None:
    new = opener()._keeper.connection

    for version in range(1, schema.VERSION):
        connection = sqlite3.connect(":memory:", isolation_level=None)
        for step in schema.STEPS[:version]:
            for statement in step:
                connection.execute(statement)
        connection.execute(f"PRAGMA user_version = {version}")
        schema.migrate(connection)
        assert _layout(connection) == _layout(new)
        connection.close()


def test_a_step_that_fails_leaves_the_version_before() -> None:
    connection = sqlite3.connect(":memory:", isolation_level=None)
    for statement in (*schema.STEPS[0], "CREATE TABLE seat (in_the_way TEXT)"):
        connection.execute(statement)
    connection.execute("PRAGMA user_version = 1")
    before = _layout(connection)

    try:
        schema.migrate(connection)
    except sqlite3.OperationalError as error:
        assert "seat already exists" in str(error)

    assert schema.version_of(connection) == 1
    assert _layout(connection) == before
    connection.close()


def test_a_file_of_a_newer_version_is_left_alone(home: Path, opener: Opener) -> None:
    opener().close()
    connection = sqlite3.connect(home / FILE)
    connection.execute("PRAGMA user_version = 99")
    connection.close()
    before = (home / FILE).read_bytes()

    record = opener()
    record.note_answer(record.enrol("Ana"), TYPE, note())

    assert "was written by a newer version of this program (tables 99," in record.news()[0]
    assert not record.saved
    record.close()
    assert (home / FILE).read_bytes() == before
