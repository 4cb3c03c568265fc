"""A connection to the record, set so that what was committed stays, and what its errors mean to a person."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Callable
from time import monotonic, sleep
from typing import TypeVar

T = TypeVar("T")
PATIENCE = 10.0
"""Seconds to wait while another program writes; each writes for a few milliseconds."""
_REASONS = {
    sqlite3.SQLITE_FULL: "the disk is full",
    sqlite3.SQLITE_READONLY: "the file or its folder may only be read",
    sqlite3.SQLITE_CANTOPEN: "the file cannot be opened or its folder may only be read",
    sqlite3.SQLITE_BUSY: "another program holds it",
    sqlite3.SQLITE_LOCKED: "another program holds it",
    sqlite3.SQLITE_IOERR: "the disk reports an error or is full",
    sqlite3.SQLITE_PERM: "access to it is not permitted",
}
_DAMAGE = (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB)


def connect(path: str) -> sqlite3.Connection:
    """Return a connection to a file, which is made if it is not there. Raises sqlite3.Error."""
    connection = sqlite3.connect(path, timeout=PATIENCE, isolation_level=None)
    try:
        return _settled(connection)
    except BaseException:
        connection.close()
        raise


def use_log(connection: sqlite3.Connection) -> None:
    """Let what is written go to a log beside the file first, so that reading and writing do not wait for each other."""
    connection.execute("PRAGMA journal_mode = WAL")


def in_memory() -> sqlite3.Connection:
    """Return a connection to nothing but memory."""
    return _settled(sqlite3.connect(":memory:", isolation_level=None))


def read_only(path: str) -> sqlite3.Connection:
    """Return a connection to a file that nobody writes, which leaves no trace beside it."""
    from urllib.parse import quote

    place = quote(path.replace("\\", "/"))
    lead = "/" if not place.startswith("/") else ""
    return sqlite3.connect(f"file:{lead}{place}?mode=ro&immutable=1", uri=True, isolation_level=None)


def transact(connection: sqlite3.Connection, action: Callable[[sqlite3.Connection], T]) -> T:
    """Run what writes as one transaction, and count it. Raises what the action raises, with nothing written."""
    begin(connection)
    try:
        result = action(connection)
        connection.execute("UPDATE meta SET value = value + 1 WHERE name = 'writes'")
        connection.execute("COMMIT")
    except BaseException:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
        raise
    return result


def is_sound(connection: sqlite3.Connection) -> bool:
    """Whether a file is whole; raises sqlite3.Error where it cannot be looked at for another reason."""
    try:
        rows = connection.execute("PRAGMA quick_check(1)").fetchall()
        return bool(rows) and rows[0][0] == "ok"
    except sqlite3.DatabaseError as error:
        if is_damage(error):
            return False
        raise


def is_damage(error: BaseException) -> bool:
    """Whether an error says that the file itself is broken."""
    return isinstance(error, sqlite3.Error) and _code(error) in _DAMAGE


def reason(error: BaseException) -> str:
    """Return why something could not be kept, in plain words."""
    if isinstance(error, (FileExistsError, NotADirectoryError)):
        return "there is a file where its folder should be"
    if isinstance(error, OSError):
        return (error.strerror or str(error)).lower()
    known = _REASONS.get(_code(error)) if isinstance(error, sqlite3.Error) else None
    return known or str(error)


def begin(connection: sqlite3.Connection) -> None:
    """Begin to write, and wait for another program to end its turn.

    SQLite itself looks for a free moment ever more seldom, and against a program that writes without a pause it finds
    none in all its time; so this looks often, at uneven moments.
    """
    begun, looked = monotonic(), 0
    connection.execute("PRAGMA busy_timeout = 0")
    try:
        while True:
            try:
                connection.execute("BEGIN IMMEDIATE")
                return
            except sqlite3.OperationalError as error:
                if _code(error) != sqlite3.SQLITE_BUSY or monotonic() - begun > PATIENCE:
                    raise
            looked += 1
            sleep((1 + (looked * 5 + os.getpid()) % 7) / 1000)
    finally:
        connection.execute(f"PRAGMA busy_timeout = {int(PATIENCE * 1000)}")


def _code(error: sqlite3.Error) -> int:
    """The primary code of an error, without the details that its higher bits carry."""
    return int(getattr(error, "sqlite_errorcode", 0) or 0) & 0xFF


def _settled(connection: sqlite3.Connection) -> sqlite3.Connection:
    for pragma in ("synchronous = FULL", "foreign_keys = ON", "secure_delete = ON", "trusted_schema = OFF"):
        connection.execute(f"PRAGMA {pragma}")
    return connection
