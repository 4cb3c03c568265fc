"""Holds the open record for a sitting: every write is one transaction, and goes on in memory if the disk fails.

Whatever goes wrong is a line of news for the person at the screen; the sitting itself never ends for it.
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Callable
from datetime import UTC, datetime
from typing import TypeVar

from assistant.practice.keeping import backups, opening
from assistant.practice.keeping.connecting import is_damage, reason, transact

T = TypeVar("T")
Action = Callable[[sqlite3.Connection], T]


class Keeper:
    """An open record.

    saved: whether what is written stays after the program has ended. was_read: whether what the file holds is known.
    """

    connection: sqlite3.Connection
    saved: bool
    was_read: bool

    def __init__(self, folder: str, clock: opening.Clock) -> None:
        self.folder = folder
        self.path = os.path.join(folder, opening.FILE)
        self._clock = clock
        self._news: list[str] = []
        self._file: object = None
        self._adopt(opening.open_file(folder, clock))

    @property
    def now(self) -> datetime:
        """The time of the clock that was handed over, in UTC."""
        return self._clock().astimezone(UTC)

    def news(self) -> tuple[str, ...]:
        """Return the lines that the user has not been told yet, each once."""
        told, self._news = tuple(self._news), []
        return told

    def read(self, action: Action[T]) -> T:
        """Return what an action reads; a file that proves damaged is replaced by its backup first."""
        return self._run(lambda: action(self.connection))

    def write(self, action: Action[T]) -> T:
        """Return what an action returns after its writes are kept, or held in memory where they cannot be."""
        if self.saved and self._identity() != self._file:  # set aside by another program, or deleted
            self._reopen()
        return self._run(lambda: transact(self.connection, action))

    def close(self) -> None:
        """End with a backup of what was written. May be called twice."""
        try:
            if self.saved:
                with opening.alone(self.folder):
                    backups.back_up_if_changed(self.connection, self.folder, self.now)
        except (OSError, sqlite3.Error) as error:
            self._news.append(f"No backup of {self.path} could be made: {reason(error)}.")
        finally:
            self.saved = False
            self.connection.close()

    def _adopt(self, opened: opening.Opened) -> None:
        self.connection, self.saved, self.was_read = opened.connection, opened.saved, opened.read
        self._news += opened.news
        self._file = self._identity()

    def _identity(self) -> object:
        try:
            found = os.stat(self.path)
        except OSError:
            return None
        return found.st_dev, found.st_ino

    def _run(self, action: Callable[[], T]) -> T:
        """Do something with the connection of the moment, again after each help there is."""
        for help_with in (self._mend, self._go_unsaved):
            try:
                return action()
            except sqlite3.Error as error:
                if not self.saved or _is_fault(error):
                    raise
                help_with(error)
        return action()

    def _mend(self, error: sqlite3.Error) -> None:
        if is_damage(error):
            self._reopen()
        else:
            self._go_unsaved(error)

    def _go_unsaved(self, error: sqlite3.Error) -> None:
        memory = opening.copied_to_memory(self.connection)
        self.connection.close()
        self.connection, self.saved = memory, False
        self._news.append(
            f"{self.path} cannot be written: {reason(error)}. Going on unsaved: nothing more is kept."
        )

    def _reopen(self) -> None:
        self.connection.close()
        self._adopt(opening.open_file(self.folder, self._clock))


def _is_fault(error: sqlite3.Error) -> bool:
    """Whether an error is of what was written, not of the file that should keep it."""
    return isinstance(error, (sqlite3.IntegrityError, sqlite3.ProgrammingError, sqlite3.InterfaceError))
