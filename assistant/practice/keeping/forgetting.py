"""Remove a person wholly: not only the rows, but what was left of them in free pages, backups and set-aside files."""

from __future__ import annotations

import os
import sqlite3
import unicodedata

from assistant.frozen import NamedTuple
from assistant.practice.keeping import backups
from assistant.practice.keeping.connecting import reason
from assistant.practice.keeping.keeper import Keeper
from assistant.practice.keeping.opening import alone, set_aside_files
from assistant.practice.keeping.rows import Learner


class Forgotten(NamedTuple):
    """What was removed: answers and class turns of the person, and damaged files that held the name.

    left: lines on what could not be removed, and why.
    """

    answers: int
    turns: int
    files: tuple[str, ...]
    left: tuple[str, ...]


def forget(keeper: Keeper, learner: Learner) -> Forgotten:
    """Remove a learner from the record, its backups and its set-aside files; a fresh backup takes their place."""
    answers, turns = keeper.write(lambda c: _remove_rows(c, learner.id))
    left: list[str] = []
    if keeper.saved:
        _sweep(keeper, left)
    files = _set_aside_with(keeper.folder, learner.name, left)
    return Forgotten(answers, turns, files, tuple(left))


def holding(folder: str, name: str) -> tuple[str, ...]:
    """Return the set-aside files of a folder that hold a name. Raises OSError."""
    return tuple(path for path in set_aside_files(folder) if _holds(path, name))


def _remove_rows(connection: sqlite3.Connection, learner: int) -> tuple[int, int]:
    counts = (
        connection.execute("SELECT count(*) FROM answer WHERE learner = ?", (learner,)).fetchone()[0],
        connection.execute(
            "SELECT count(*) FROM turn JOIN seat ON seat.id = turn.seat WHERE seat.learner = ?", (learner,)
        ).fetchone()[0],
    )
    connection.execute("DELETE FROM learner WHERE id = ?", (learner,))  # the rest goes with it
    return counts


def _sweep(keeper: Keeper, left: list[str]) -> None:
    """Write the file anew without its free pages, empty its log, and replace every backup."""
    try:
        keeper.connection.execute("VACUUM")
        busy = keeper.connection.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()[0]
        if busy:
            left.append("Another program has the record open; what is left in its log goes when that program ends.")
    except sqlite3.Error as error:
        left.append(f"Free pages of {keeper.path} could not be cleared: {reason(error)}.")
    try:
        with alone(keeper.folder):
            backups.remove_all(keeper.folder)
            backups.back_up(keeper.connection, keeper.folder, keeper.now)
    except (OSError, sqlite3.Error) as error:
        left.append(f"The backups in {keeper.folder} could not all be replaced: {reason(error)}.")


def _set_aside_with(folder: str, name: str, left: list[str]) -> tuple[str, ...]:
    """Delete the damaged files that were set aside and hold the name, since nothing can be taken out of them."""
    removed = []
    for path in set_aside_files(folder):
        try:
            if _holds(path, name):
                os.remove(path)
                removed.append(path)
        except OSError as error:
            left.append(f"{path} could not be removed: {reason(error)}.")
    return tuple(removed)


def _holds(path: str, name: str) -> bool:
    with open(path, "rb") as file:
        content = file.read()
    forms = {unicodedata.normalize(form, name) for form in ("NFC", "NFKC")}
    return any(written.encode() in content for form in forms for written in (form, form.casefold()))
