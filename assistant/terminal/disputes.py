"""Records that the user has set aside, kept between conversations in a small file of the data folder.

The file is the user's own and may be edited or deleted; anything unexpected in it counts as nothing kept.
"""

from __future__ import annotations

import json
import os

from assistant.terminal.places import data_folder, write_private

Disputes = tuple[tuple[str, str], ...]
FILE = "disputed.json"
_LARGEST = 1_000_000


def kept_disputes(type_id: str) -> Disputes:
    """Return (record, note) of each record of a type that is set aside."""
    pairs = _read().get(type_id)
    if not isinstance(pairs, list):
        return ()
    return tuple((pair[0], pair[1]) for pair in pairs if _is_pair(pair))


def keep_disputes(type_id: str, disputed: Disputes) -> bool:
    """Keep what is set aside of a type, in the place of what was; False when it cannot be written."""
    everything = {**_read(), type_id: [list(pair) for pair in disputed]}
    body = json.dumps(everything, indent=2, ensure_ascii=True) + "\n"
    return write_private(os.path.join(data_folder(), FILE), body)


def _read() -> dict[str, object]:
    path = os.path.join(data_folder(), FILE)
    try:
        if os.path.getsize(path) > _LARGEST:
            return {}
        with open(path, encoding="utf-8") as file:
            found = json.load(file)
    except (OSError, ValueError, RecursionError):
        return {}
    return found if isinstance(found, dict) else {}


def _is_pair(value: object) -> bool:
    return isinstance(value, list) and len(value) == 2 and all(isinstance(part, str) for part in value)
