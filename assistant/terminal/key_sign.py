"""A sign that the key of a class is shown in another terminal, so that the screen that the class sees need not show it.

A small file whose time says when the view last looked: one that was killed leaves it behind, and it is soon too old.
"""

from __future__ import annotations

import os
import time

from assistant.terminal.places import data_folder, write_private

_FILE = "key-view"
_OFTEN_S, _FRESH_S = 1.0, 4.0
"""How often the sign is renewed, and how old it may be."""


class KeySign:
    """Put up while the key is shown, and taken down at the end."""

    def __init__(self) -> None:
        self._renewed = 0.0

    def renew(self) -> None:
        """Say that the key is shown now; where that cannot be written, the other terminal shows it too."""
        if time.monotonic() - self._renewed >= _OFTEN_S or not self._renewed:
            write_private(_path(), "")
            self._renewed = time.monotonic()

    def take_down(self) -> None:
        """Say that it is shown no longer."""
        try:
            os.remove(_path())
        except OSError:
            return


def key_is_elsewhere() -> bool:
    """Return whether another terminal shows the key of the class."""
    try:
        return abs(time.time() - os.path.getmtime(_path())) < _FRESH_S
    except OSError:
        return False


def _path() -> str:
    return os.path.join(data_folder(), _FILE)
