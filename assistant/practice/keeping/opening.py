"""Open the record, whatever state it is in: new, older, damaged, held by another program, or not writable at all.

Opening is done by one program at a time: a lock of SQLite's own on an empty file beside the record, which ends with
the process that holds it, however that ends.
"""

from __future__ import annotations

import os
import shutil
import sqlite3
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime

from assistant.frozen import NamedTuple
from assistant.practice.keeping import backups, schema
from assistant.practice.keeping.connecting import (
    PATIENCE,
    begin,
    connect,
    in_memory,
    is_damage,
    is_sound,
    read_only,
    reason,
    use_log,
)

FILE = "practice.db"
_LOCK = "practice.lock"
_BESIDE = ("-wal", "-shm")
Clock = Callable[[], datetime]


class Opened(NamedTuple):
    """An open record: whether what is written stays, lines that its user must be told, whether the file was read.

    read: False where a file is there and nothing of it is known, so that nobody can be said not to be in it.
    """

    connection: sqlite3.Connection
    saved: bool
    news: tuple[str, ...]
    read: bool = True


class _NotForUs(Exception):
    """The file is sound, and yet not to be touched; the message is a line for the user."""


def open_file(folder: str, clock: Clock) -> Opened:
    """Return the record of a data folder, made, mended or migrated as needed; never raises for what it finds.

    Where nothing can be kept, the record is held in memory, with what could be read of the file.
    """
    path = os.path.join(folder, FILE)
    news: list[str] = []
    try:
        os.makedirs(folder, mode=0o700, exist_ok=True)
        with alone(folder):
            return Opened(_open(folder, path, clock, news), True, tuple(news))
    except _NotForUs as why:
        return Opened(_emptied(in_memory()), False, (*news, str(why)), False)
    except (OSError, sqlite3.Error) as error:
        line = f"{path} cannot be written: {reason(error)}. Going on unsaved: nothing is kept."
        found = _what_can_be_read(path)
        return Opened(found or _emptied(in_memory()), False, (*news, line), found is not None)


@contextmanager
def alone(folder: str) -> Iterator[None]:
    """Keep other programs from opening, closing or clearing the record meanwhile. Raises sqlite3.Error and OSError."""
    lock = sqlite3.connect(os.path.join(folder, _LOCK), timeout=PATIENCE, isolation_level=None)
    try:
        lock.execute("BEGIN EXCLUSIVE")
        yield
    finally:
        lock.close()


def copied_to_memory(connection: sqlite3.Connection) -> sqlite3.Connection:
    """Return a record in memory with all that can still be read of an open one."""
    memory = in_memory()
    try:
        connection.backup(memory)
        return _emptied(memory)
    except sqlite3.Error:
        memory.close()
        return _emptied(in_memory())


def set_aside_files(folder: str) -> list[str]:
    """Return the damaged files in a data folder that were set aside."""
    try:
        return sorted(os.path.join(folder, n) for n in os.listdir(folder) if n.startswith("practice-damaged-"))
    except OSError:
        return []


def _open(folder: str, path: str, clock: Clock, news: list[str]) -> sqlite3.Connection:
    now = clock().astimezone(UTC)
    backups.clear_unfinished(folder)
    if not _holds_anything(path) and backups.backups(folder):
        news.append(_replace_lost(folder, path, now))
    connection = _sound(path)
    if connection is None:
        news.append(_mend(folder, path, now))
        connection = _sound(path)
        if connection is None:
            raise OSError(0, "it is damaged, and so is its backup")
    try:
        _bring_up(connection, folder, path, now, news)
    except BaseException:
        connection.close()
        raise
    return connection


def _sound(path: str) -> sqlite3.Connection | None:
    """A connection to a whole file, nothing when it is damaged."""
    if not os.path.exists(path):
        os.close(os.open(path, os.O_WRONLY | os.O_CREAT, 0o600))
    try:
        connection = connect(path)
    except sqlite3.Error as error:
        if is_damage(error):
            return None
        raise
    try:
        if is_sound(connection) and schema.is_ours(connection):
            use_log(connection)  # not before: another program's file stays as it is
            return connection
    except BaseException:
        connection.close()
        raise
    connection.close()
    return None


def _replace_lost(folder: str, path: str, now: datetime) -> str:
    """Put the last backup in the place of a file that is missing or holds nothing, as a power cut leaves it.

    Return what to tell. Where backups are, a record was: what holds nothing is then no new one.
    """
    found = "was missing" if not os.path.exists(path) else "was empty"
    kept = any(os.path.exists(each) and os.path.getsize(each) for each in (path, f"{path}-wal"))
    aside = _set_aside(folder, path, now) if kept else ""
    if not aside:
        for ending in _BESIDE:  # a log of another file would be read into the one that is put there
            _remove(path + ending)
    restored = backups.restore_last(folder, path)
    told = f"{path} {found}" + (f", and what was left of it is set aside as {aside}; " if aside else "; ")
    return told + (f"the backup of {restored.shown} was opened in its place." if restored else "a new record begins.")


def _mend(folder: str, path: str, now: datetime) -> str:
    """Set a damaged file aside, put the last backup in its place; return what to tell."""
    aside = _set_aside(folder, path, now)
    restored = backups.restore_last(folder, path)
    told = f"{path} was damaged and is set aside as {aside}; "
    return told + (
        f"the backup of {restored.shown} was opened." if restored else "there is no backup, and a new record begins."
    )


def _set_aside(folder: str, path: str, now: datetime) -> str:
    """Move a file that cannot be used out of the way with what lies beside it; return its new path."""
    aside = os.path.join(folder, f"practice-damaged-{now:%Y%m%dT%H%M%S}Z.db")
    number = 1
    while any(os.path.exists(aside + ending) for ending in (*_BESIDE, "")):
        number += 1
        aside = os.path.join(folder, f"practice-damaged-{now:%Y%m%dT%H%M%S}Z-{number}.db")
    for ending in (*_BESIDE, ""):  # the file itself last: until then the next opening finds it damaged still
        if os.path.exists(path + ending):
            os.replace(path + ending, aside + ending)
    return aside


def _holds_anything(path: str) -> bool:
    """Whether a file is there and is not empty: neither of no length nor without a table. A damaged one counts as held.

    Raises sqlite3.Error where it cannot be looked at for another reason.
    """
    if not os.path.exists(path) or not os.path.getsize(path):
        return False
    try:
        connection = connect(path)
    except sqlite3.Error as error:
        return _only_damaged(error)
    try:
        return bool(connection.execute("SELECT count(*) FROM sqlite_master").fetchone()[0])
    except sqlite3.Error as error:
        return _only_damaged(error)
    finally:
        connection.close()


def _only_damaged(error: sqlite3.Error) -> bool:
    if is_damage(error):
        return True
    raise error


def _remove(path: str) -> None:
    if os.path.exists(path):
        os.remove(path)


def _bring_up(connection: sqlite3.Connection, folder: str, path: str, now: datetime, news: list[str]) -> None:
    """Migrate an older file after a backup of it; copy one whose last sitting ended without a copy."""
    version = schema.version_of(connection)
    if version > schema.VERSION:
        raise _NotForUs(
            f"{path} was written by a newer version of this program (tables {version}, known {schema.VERSION}). "
            "It is left as it is: nothing is read from it here, and nothing is kept; install the newer version."
        )
    if 0 < version < schema.VERSION:
        backups.back_up(connection, folder, now, before=schema.VERSION)
    schema.migrate(connection)
    begin(connection)  # a file that may only be read says so now, not at the first answer
    connection.execute("ROLLBACK")
    try:
        backups.back_up_if_changed(connection, folder, now)
    except (OSError, sqlite3.Error) as error:
        news.append(f"No backup of {path} could be made: {reason(error)}.")


def _what_can_be_read(path: str) -> sqlite3.Connection | None:
    """A record in memory with the content of a file that cannot be written; None where it cannot be read either."""
    if not os.path.exists(path):
        return _emptied(in_memory())
    try:
        with tempfile.TemporaryDirectory(prefix="downlock-") as folder:
            copy = os.path.join(folder, FILE)
            for ending in ("", "-wal"):  # what was written last may still be in the second
                if os.path.exists(path + ending):
                    shutil.copyfile(path + ending, copy + ending)
            return _read_all(connect(copy))
    except (OSError, sqlite3.Error):
        return _read_in_place(path)


def _read_in_place(path: str) -> sqlite3.Connection | None:
    try:
        return _read_all(read_only(path))
    except sqlite3.Error:
        return None


def _read_all(connection: sqlite3.Connection) -> sqlite3.Connection | None:
    try:
        usable = is_sound(connection) and schema.is_ours(connection)
        if usable and schema.version_of(connection) <= schema.VERSION:
            return copied_to_memory(connection)
    finally:
        connection.close()
    return None


def _emptied(memory: sqlite3.Connection) -> sqlite3.Connection:
    """A record in memory with every table, whatever it had of them."""
    schema.migrate(memory)
    return memory
