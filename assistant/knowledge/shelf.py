"""Values that are kept one by one, and read when they are wanted: a question needs few of thousands.

They are kept as `marshal` writes plain values, in its second version: that depends on the values alone, and not on
which of them are the same object in memory. Reading it is quicker than JSON, and runs nothing that a file holds.
"""

from __future__ import annotations

import marshal
from collections.abc import Callable, Iterator, Mapping
from itertools import accumulate
from typing import Any

FORM = 2
"""The version of what `marshal` writes."""
_MARK = "\x7fshelf"
"""Stands in the rest for a shelf: its names with the place of each value."""
_LENGTHS = 1 << 32
"""A place is one number, as pairs take three times the memory: where a value begins times this, and its length."""
_HEAD = 8
"""Bytes at the beginning that tell how long the rest is; then come the rest and the values."""

Cut = Callable[[int, int], bytes]
"""Reads so many bytes from a place on in what is kept."""


class Shelved(dict[str, Any]):
    """A mapping to be kept value by value."""


class Shelf(Mapping[str, Any]):
    """A mapping that was kept so: it knows its names, and reads a value whenever it is asked for."""

    def __init__(self, cut: Cut, begin: int, places: dict[str, int]) -> None:
        self._cut = cut
        self._begin = begin
        self._places = places

    def __getitem__(self, name: str) -> Any:
        start, length = divmod(self._places[name], _LENGTHS)
        return marshal.loads(self._cut(self._begin + start, length))

    def __contains__(self, name: object) -> bool:
        return name in self._places

    def __iter__(self) -> Iterator[str]:
        return iter(self._places)

    def __len__(self) -> int:
        return len(self._places)


def written(content: dict[str, Any]) -> bytes:
    """Return some content as bytes: all but the shelves first, then each of their values."""
    values: list[bytes] = []
    front = marshal.dumps(_front(content, values), FORM)
    return b"".join((len(front).to_bytes(_HEAD, "little"), front, *values))


def read(cut: Cut, begin: int = 0) -> Any:
    """Return what was written, from some place on. Raises ValueError, EOFError or TypeError for anything else."""
    length = int.from_bytes(cut(begin, _HEAD), "little")
    return _with_shelves(marshal.loads(cut(begin + _HEAD, length)), cut, begin + _HEAD + length)


def _with_shelves(value: Any, cut: Cut, begin: int) -> Any:
    """Return the rest with its shelves, which stand below mappings alone."""
    if not isinstance(value, dict):
        return value
    if _MARK in value:
        return Shelf(cut, begin, value[_MARK])
    return {name: _with_shelves(one, cut, begin) for name, one in value.items()}


def _front(value: Any, values: list[bytes]) -> Any:
    if isinstance(value, Shelved):
        own = [marshal.dumps(one, FORM) for one in value.values()]
        starts = accumulate(map(len, own), initial=sum(map(len, values)))
        values.extend(own)
        places = (start * _LENGTHS + len(one) for start, one in zip(starts, own, strict=False))
        return {_MARK: dict(zip(value, places, strict=True))}
    return {name: _front(one, values) for name, one in value.items()} if isinstance(value, dict) else value
