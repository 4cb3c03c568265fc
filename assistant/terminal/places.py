"""Where the user's own files lie: earlier questions, and records set aside."""

from __future__ import annotations

import errno
import os
import sys

HOME_VARIABLE = "DOWNLOCK_HOME"


def data_folder() -> str:
    """Return the folder of the user's files; DOWNLOCK_HOME names another than the platform's."""
    named = os.environ.get(HOME_VARIABLE)
    if named:
        return os.path.abspath(os.path.expanduser(named))
    if sys.platform == "win32" or sys.platform == "darwin":
        from platformdirs import user_data_dir

        return user_data_dir("downlock", appauthor=False)
    # What the library would say, without its import, since every question passes through here.
    home = os.environ.get("XDG_DATA_HOME") or os.path.join(os.path.expanduser("~"), ".local", "share")
    return os.path.join(home, "downlock")


def write_private(path: str, text: str) -> bool:
    """Write a file that its owner alone may read, whole or not at all; False when it cannot be written."""
    return not why_not_written(path, text)


def why_not_written(path: str, text: str) -> str:
    """Write a file as `write_private` does; return what kept it from being written, and what to do, or nothing."""
    beside = f"{path}.{os.getpid()}"
    try:
        os.makedirs(os.path.dirname(path), mode=0o700, exist_ok=True)
        number = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
        with os.fdopen(number, "w", encoding="utf-8") as file:
            file.write(text)
        os.replace(beside, path)
    except OSError as error:
        if os.path.exists(beside):
            os.remove(beside)
        return _why(error)
    return ""


def _why(error: OSError) -> str:
    if error.errno in (errno.ENOSPC, getattr(errno, "EDQUOT", errno.ENOSPC)):
        return "the disk is full; make room, or name a file on another one"
    return f"{(error.strerror or 'it cannot be opened').lower()}; name a file in a folder that can be written"
