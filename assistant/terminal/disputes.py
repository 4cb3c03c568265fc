"""Records that the user has set aside, kept between conversations in a small file of the data folder.

The file is the user's own and may be edited or deleted. What cannot be read in it is told, and the file is laid
beside before a new one is written.
"""

from __future__ import annotations

import os

from assistant.terminal.places import data_folder, write_private

Disputes = tuple[tuple[str, str], ...]
FILE = "disputed.json"
_LARGEST = 1_000_000


def kept_disputes(type_id: str) -> Disputes:
    """Return (record, note) of each record of a type that is set aside."""
    return disputes_told(type_id)[0]


def disputes_told(type_id: str) -> tuple[Disputes, str]:
    """Return what is set aside of a type, and a line on what of the file cannot be read, or nothing.

    Disputes may be missing where there is such a line.
    """
    found, damage = _read()
    pairs = found.get(type_id)
    disputed = tuple((pair[0], pair[1]) for pair in pairs if _is_pair(pair)) if isinstance(pairs, list) else ()
    lost = "records set aside as disputed may not be known as such"
    return disputed, f"{_path()} {damage}: {lost}; mend or delete it" if damage else ""


def keep_disputes(type_id: str, disputed: Disputes) -> bool:
    """Keep what is set aside of a type, in the place of what was; False when it cannot be written."""
    found, damage = _read()
    if damage:
        _lay_beside()
    everything = {**found, type_id: [list(pair) for pair in disputed]}
    import json

    body = json.dumps(everything, indent=2, ensure_ascii=True) + "\n"
    return write_private(_path(), body)


def _path() -> str:
    return os.path.join(data_folder(), FILE)


def _lay_beside() -> None:
    try:
        os.replace(_path(), f"{_path()}.damaged")
    except OSError:
        return


def _read() -> tuple[dict[str, object], str]:
    """Return what the file holds, and what is wrong with it; one that is not there is in order."""
    try:
        if os.path.getsize(_path()) > _LARGEST:
            return {}, f"holds more than {_LARGEST:,} bytes"
        import json  # few have set anything aside

        with open(_path(), encoding="utf-8") as file:
            found = json.load(file)
    except (FileNotFoundError, NotADirectoryError):
        return {}, ""
    except OSError as error:
        return {}, f"cannot be read ({error.strerror or 'unreadable'})"
    except (ValueError, RecursionError):
        return {}, "is not well-formed"
    if not isinstance(found, dict):
        return {}, "is not well-formed"
    sound = all(isinstance(pairs, list) and all(map(_is_pair, pairs)) for pairs in found.values())
    return found, "" if sound else "is not well-formed"


def _is_pair(value: object) -> bool:
    return isinstance(value, list) and len(value) == 2 and all(isinstance(part, str) for part in value)
