"""The tables of the record, as the steps that lead from each version of them to the next.

A step is never changed once it was released: files that it made are out there. A change is a step of its own.
"""

from __future__ import annotations

import sqlite3

from assistant.practice.keeping.connecting import begin

MARK_OF_FILE = 0x446C6B31
"""SQLite's application id, by which a file is known to be a record of this program."""

_ANSWERS = (
    "CREATE TABLE meta (name TEXT PRIMARY KEY, value INTEGER NOT NULL) WITHOUT ROWID",
    "INSERT INTO meta VALUES ('writes', 0)",
    """CREATE TABLE learner (
        id INTEGER PRIMARY KEY AUTOINCREMENT, name TEXT NOT NULL, name_key TEXT NOT NULL UNIQUE, since TEXT NOT NULL
    )""",
    """CREATE TABLE answer (
        id INTEGER PRIMARY KEY AUTOINCREMENT, uid TEXT NOT NULL UNIQUE,
        learner INTEGER NOT NULL REFERENCES learner ON DELETE CASCADE,
        type TEXT NOT NULL, at TEXT NOT NULL, record TEXT NOT NULL, question TEXT NOT NULL, answer TEXT NOT NULL,
        mark TEXT NOT NULL CHECK (mark IN ('right', 'partly', 'wrong', 'missed')),
        share REAL NOT NULL CHECK (share BETWEEN 0 AND 1),
        expected TEXT NOT NULL, form TEXT NOT NULL, how TEXT NOT NULL, hinted INTEGER NOT NULL,
        overruled INTEGER NOT NULL, marked TEXT NOT NULL CHECK (marked IN ('right', 'partly', 'wrong', 'missed')),
        confused_with TEXT NOT NULL, hesitation REAL, revisions TEXT NOT NULL, content TEXT NOT NULL
    )""",
    "CREATE INDEX answer_of_record ON answer (learner, type, record, at, id)",
    """CREATE TABLE card (
        learner INTEGER NOT NULL REFERENCES learner ON DELETE CASCADE, type TEXT NOT NULL, record TEXT NOT NULL,
        stability REAL NOT NULL, difficulty REAL NOT NULL, state INTEGER NOT NULL, step INTEGER,
        due TEXT NOT NULL, last TEXT NOT NULL, PRIMARY KEY (learner, type, record)
    ) WITHOUT ROWID""",
)
_CLASSES = (
    "ALTER TABLE learner ADD COLUMN ready_by TEXT",
    """CREATE TABLE sitting (
        id INTEGER PRIMARY KEY AUTOINCREMENT, uid TEXT NOT NULL UNIQUE, type TEXT NOT NULL, title TEXT NOT NULL,
        state TEXT NOT NULL CHECK (state IN ('open', 'paused', 'ended')),
        began TEXT NOT NULL, ended TEXT, plan TEXT NOT NULL, options TEXT NOT NULL
    )""",
    """CREATE TABLE seat (
        id INTEGER PRIMARY KEY AUTOINCREMENT, sitting INTEGER NOT NULL REFERENCES sitting ON DELETE CASCADE,
        learner INTEGER NOT NULL REFERENCES learner ON DELETE CASCADE, place INTEGER NOT NULL, team TEXT NOT NULL,
        UNIQUE (sitting, learner), UNIQUE (sitting, place)
    )""",
    "CREATE INDEX seat_of_learner ON seat (learner)",
    """CREATE TABLE turn (
        id INTEGER PRIMARY KEY AUTOINCREMENT, sitting INTEGER NOT NULL REFERENCES sitting ON DELETE CASCADE,
        number INTEGER NOT NULL, record TEXT NOT NULL, question TEXT NOT NULL, expected TEXT NOT NULL,
        sources TEXT NOT NULL, form TEXT NOT NULL, revisions TEXT NOT NULL, content TEXT NOT NULL,
        phase TEXT NOT NULL CHECK (phase IN ('asked', 'named', 'revealed', 'marked')),
        seat INTEGER REFERENCES seat ON DELETE CASCADE, passed TEXT NOT NULL, hinted INTEGER NOT NULL,
        mark TEXT NOT NULL, marked TEXT NOT NULL, share REAL NOT NULL, answer TEXT NOT NULL,
        overruled INTEGER NOT NULL, confused_with TEXT NOT NULL, at TEXT NOT NULL,
        kept INTEGER REFERENCES answer ON DELETE SET NULL, UNIQUE (sitting, number)
    )""",
    "CREATE INDEX turn_of_seat ON turn (seat)",
    "CREATE INDEX turn_of_answer ON turn (kept)",
)
_TABLES = (("meta", "learner", "answer", "card"), ("sitting", "seat", "turn"))
"""What each step adds."""
STEPS: tuple[tuple[str, ...], ...] = (_ANSWERS, _CLASSES)
VERSION = len(STEPS)


def version_of(connection: sqlite3.Connection) -> int:
    """Return the version of a file's tables, 0 where there are none yet."""
    return int(connection.execute("PRAGMA user_version").fetchone()[0])


def is_ours(connection: sqlite3.Connection) -> bool:
    """Whether a file is empty, or a record of this program with every table that its version has."""
    mark = int(connection.execute("PRAGMA application_id").fetchone()[0])
    tables = {name for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")}
    expected = {name for step in _TABLES[: version_of(connection)] for name in step}
    return not tables or (mark == MARK_OF_FILE and tables >= expected)


def migrate(connection: sqlite3.Connection) -> None:
    """Bring the tables to this version, each step wholly or not at all."""
    for number in range(version_of(connection), VERSION):
        begin(connection)
        try:
            for statement in STEPS[number]:
                connection.execute(statement)
            connection.execute(f"PRAGMA application_id = {MARK_OF_FILE}")
            connection.execute(f"PRAGMA user_version = {number + 1}")
            connection.execute("COMMIT")
        except BaseException:
            connection.rollback()
            raise
