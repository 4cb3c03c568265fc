"""Who is in the record: names as people write them, found again however they are typed."""

from __future__ import annotations

import sqlite3
import unicodedata
from datetime import date, datetime

from assistant.practice.keeping.rows import Learner

LONGEST = 80
RESERVED = ("export", "import", "forget")
"""Words of the command that shows a learner, which could not be asked for by such a name."""
_COLUMNS = "id, name, since, ready_by"


class NameProblem(ValueError):
    """A name cannot be kept; the message is one line and says what would do."""


class NoSuchLearner(LookupError):
    """Nobody of that name or number is in the record (any more); the message is one line."""


def tidy_name(name: str) -> str:
    """Return a name in one form, with single spaces. Raises NameProblem."""
    tidy = " ".join(unicodedata.normalize("NFC", name).split())
    if not tidy:
        raise NameProblem("a name is needed")
    if len(tidy) > LONGEST:
        raise NameProblem(f"a name has {LONGEST} characters at most")
    if not tidy.isprintable():
        raise NameProblem("a name holds letters and signs that can be seen")
    if name_key(tidy) in RESERVED:
        raise NameProblem(f'"{tidy}" is a word of the command; add something to the name')
    return tidy


def name_key(name: str) -> str:
    """Return what two ways of writing the same name share."""
    return " ".join(unicodedata.normalize("NFKC", name).casefold().split())


def learners(connection: sqlite3.Connection) -> tuple[Learner, ...]:
    """Return everybody, by name."""
    rows = connection.execute(f"SELECT {_COLUMNS} FROM learner ORDER BY name_key")
    return tuple(map(_learner, rows))


def find(connection: sqlite3.Connection, name: str) -> Learner | None:
    """Return who has a name, if anybody."""
    query = f"SELECT {_COLUMNS} FROM learner WHERE name_key = ?"
    row = connection.execute(query, (name_key(name),)).fetchone()
    return _learner(row) if row else None


def enrol(connection: sqlite3.Connection, name: str, now: datetime) -> Learner:
    """Return who has a name, entered now if nobody had it. Raises NameProblem."""
    tidy = tidy_name(name)
    connection.execute(
        "INSERT INTO learner (name, name_key, since) VALUES (?, ?, ?) ON CONFLICT DO NOTHING",
        (tidy, name_key(tidy), now.isoformat()),
    )
    found = find(connection, tidy)
    assert found is not None
    return found


def set_ready_by(connection: sqlite3.Connection, learner: int, day: date | None) -> None:
    """Set or clear the day by which somebody means to be ready."""
    shown = day.isoformat() if day else None
    connection.execute("UPDATE learner SET ready_by = ? WHERE id = ?", (shown, learner))


def _learner(row: tuple[int, str, str, str | None]) -> Learner:
    number, name, since, ready = row
    return Learner(number, name, datetime.fromisoformat(since), date.fromisoformat(ready) if ready else None)
