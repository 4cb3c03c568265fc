"""Copies of the record: made before each migration and after each sitting, the last of them kept.

A copy is written beside its place and moved there when it is whole. Its name tells its order, its time and how many
writes the record had seen, so that the next opening knows whether a sitting ended without its copy. A record never
loses writes: the last copy of one that had more than the record now is of another one, and is not thrown out with age.
"""

from __future__ import annotations

import os
import re
import shutil
import sqlite3
from datetime import datetime
from itertools import pairwise

from assistant.frozen import NamedTuple
from assistant.practice.keeping import schema
from assistant.practice.keeping.connecting import is_sound, read_only

FOLDER = "practice-backups"
KEPT, KEPT_BEFORE, KEPT_OTHERS = 5, 2, 2
"""How many copies after a sitting, how many made before a migration, and how many of other records are kept."""
_UNFINISHED = ".practice-unfinished-"
_NAME = re.compile(r"practice-(\d{6})-(\d{8}T\d{6})Z-writes-(\d+)(-before-v\d+)?\.db")


class Backup(NamedTuple):
    """A copy: its order, when it was made (UTC, as in its name), the writes it holds, whether before a migration."""

    number: int
    made: str
    writes: int
    before: bool
    path: str

    @property
    def shown(self) -> str:
        """When it was made, for a person: "2026-11-25 13:40 UTC"."""
        day, time = self.made.split("T")
        return f"{day[:4]}-{day[4:6]}-{day[6:]} {time[:2]}:{time[2:4]} UTC"


def backups(folder: str) -> list[Backup]:
    """Return the copies in the data folder, the newest first."""
    place = os.path.join(folder, FOLDER)
    try:
        names = os.listdir(place)
    except OSError:
        return []
    found = [(match, name) for name in names if (match := _NAME.fullmatch(name))]
    made = [Backup(int(m[1]), m[2], int(m[3]), bool(m[4]), os.path.join(place, name)) for m, name in found]
    return sorted(made, reverse=True)


def back_up(connection: sqlite3.Connection, folder: str, now: datetime, before: int | None = None) -> None:
    """Copy the record as it stands. before: the version it is about to be migrated to.

    Raises OSError and sqlite3.Error; what was there stays then.
    """
    place = os.path.join(folder, FOLDER)
    os.makedirs(place, mode=0o700, exist_ok=True)
    number = max((each.number for each in backups(folder)), default=0) + 1
    mark = f"-before-v{before}" if before is not None else ""
    name = f"practice-{number:06}-{now:%Y%m%dT%H%M%S}Z-writes-{writes_of(connection)}{mark}.db"
    beside = os.path.join(place, f"{_UNFINISHED}{os.getpid()}")
    try:
        _copy(connection, beside)
        os.replace(beside, os.path.join(place, name))
    finally:
        _remove(beside)
    _thin(folder)


def back_up_if_changed(connection: sqlite3.Connection, folder: str, now: datetime) -> None:
    """Copy the record unless the newest copy holds all that was written."""
    newest = next(iter(backups(folder)), None)
    written = writes_of(connection)
    if written and (newest is None or newest.writes != written):
        back_up(connection, folder, now)


def restore_last(folder: str, path: str) -> Backup | None:
    """Put the newest sound copy in the place of the record, and return it; nothing when there is none."""
    for backup in backups(folder):
        if _is_sound_file(backup.path):
            beside = os.path.join(folder, f"{_UNFINISHED}{os.getpid()}")
            try:
                shutil.copyfile(backup.path, beside)
                _settle(beside)
                os.replace(beside, path)
            finally:
                _remove(beside)
            return backup
    return None


def remove_all(folder: str) -> None:
    """Delete every copy, also those half made. Raises OSError."""
    place = os.path.join(folder, FOLDER)
    for name in os.listdir(place) if os.path.isdir(place) else ():
        if _NAME.fullmatch(name) or name.startswith(_UNFINISHED):
            os.remove(os.path.join(place, name))


def clear_unfinished(folder: str) -> None:
    """Delete what is left of copies whose program ended while it made them."""
    for place in (folder, os.path.join(folder, FOLDER)):
        for name in os.listdir(place) if os.path.isdir(place) else ():
            if name.startswith(_UNFINISHED):
                _remove(os.path.join(place, name))


def writes_of(connection: sqlite3.Connection) -> int:
    """Return how many writes a record has seen."""
    return int(connection.execute("SELECT value FROM meta WHERE name = 'writes'").fetchone()[0])


def _copy(connection: sqlite3.Connection, path: str) -> None:
    _remove(path)
    os.close(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600))
    copy = sqlite3.connect(path, isolation_level=None)
    try:
        connection.backup(copy)
        copy.execute("PRAGMA journal_mode = DELETE")  # a copy is one file, whole by itself
    finally:
        copy.close()
    _settle(path)


def _settle(path: str) -> None:
    """See a file onto the disk before anything relies on it."""
    os.chmod(path, 0o600)
    with open(path, "rb+") as file:
        os.fsync(file.fileno())


def _is_sound_file(path: str) -> bool:
    """Whether a copy is whole and a record: what holds nothing, as a power cut leaves it, is none."""
    try:
        connection = read_only(path)
    except sqlite3.Error:
        return False
    try:
        return is_sound(connection) and schema.is_ours(connection) and schema.version_of(connection) > 0
    except sqlite3.Error:
        return False
    finally:
        connection.close()


def _thin(folder: str) -> None:
    found = backups(folder)
    plain, before = [b for b in found if not b.before], [b for b in found if b.before]
    others = [b for newer, b in pairwise(plain) if b.writes > newer.writes][:KEPT_OTHERS]
    for backup in (*(b for b in plain[KEPT:] if b not in others), *before[KEPT_BEFORE:]):
        _remove(backup.path)


def _remove(path: str) -> None:
    try:
        os.remove(path)
    except OSError:
        return
