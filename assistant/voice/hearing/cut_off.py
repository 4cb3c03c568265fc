"""Whether a recording breaks off: half a question would be answered as if it were the whole one."""

from __future__ import annotations

import os

_NO_SIZE = 0x7FFF_F000
"""From this size on the header of a WAV file says only that its writer did not know how long it would be."""
_LONGEST_PAGE = 65_307
"""Bytes of an Ogg page at most."""
_HEAD, _TABLE = 27, 26
"""Bytes before the table of a page's segments, and where their number stands."""
_SHARE = 0.98
"""Share of the samples announced under which some are missing; what pads the end may be counted otherwise."""


def is_cut_off(path: str, announced: int, found: int) -> bool:
    """Return whether a file ends before its own head says. announced, found: its samples, as told and as read."""
    if found < _SHARE * announced:
        return True
    with open(path, "rb") as file:
        head, size = file.read(8), os.path.getsize(path)
        if head[:4] == b"RIFF":
            return _is_short(int.from_bytes(head[4:], "little"), size)
        if head[:4] != b"OggS":
            return False
        file.seek(max(0, size - _LONGEST_PAGE))
        return _is_broken_page(file.read())


def _is_short(told: int, size: int) -> bool:
    return told < _NO_SIZE and told + 8 > size + 1  # a byte that pads the end is often left out


def _is_broken_page(tail: bytes) -> bool:
    """Return whether the last page of an Ogg file is not all there."""
    page = tail[max(0, tail.rfind(b"OggS")) :]
    if len(page) < _HEAD or len(page) < _HEAD + page[_TABLE]:
        return True
    return len(page) < _HEAD + page[_TABLE] + sum(page[_HEAD : _HEAD + page[_TABLE]])
