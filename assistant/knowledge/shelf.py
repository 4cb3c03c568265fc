"""Values that are kept one by one, and read when they are wanted: a question needs few of thousands."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from itertools import accumulate
from typing import Any

_MARK = "\x7fshelf"
"""Stands in the JSON of the rest for a shelf: where its values begin, how long each is with the end of its line, and
their names.
"""


class Shelved(dict[str, Any]):
    """A mapping to be kept value by value."""


class Shelf(Mapping[str, Any]):
    """A mapping that was kept so: it knows its names, and reads a value whenever it is asked for."""

    def __init__(self, text: bytes, start: int, lengths: list[int], names: list[str]) -> None:
        self._text = text
        self._starts = dict(zip(names, accumulate(lengths, initial=start), strict=False))

    def __getitem__(self, name: str) -> Any:
        start = self._starts[name]
        end = self._text.index(b"\n", start)
        return json.loads(self._text[start:end].decode("utf-8", "surrogatepass"))

    def __contains__(self, name: object) -> bool:
        return name in self._starts

    def __iter__(self) -> Iterator[str]:
        return iter(self._starts)

    def __len__(self) -> int:
        return len(self._starts)


def written(content: dict[str, Any]) -> bytes:
    """Return some content as text: all but the shelves in its first line, then each of their values in one."""
    values: list[bytes] = []
    front = _dumps(_front(content, values))
    return b"\n".join((front, b"".join(values)))


def read(text: bytes, begin: int = 0) -> Any:
    """Return what was written, from some place in a text on. Raises ValueError or TypeError for anything else."""
    end = text.index(b"\n", begin)

    def shelf(found: dict[str, Any]) -> Any:
        if _MARK not in found:
            return found
        start, lengths, names = found[_MARK]
        return Shelf(text, end + 1 + start, lengths, names)

    return json.loads(text[begin:end].decode("utf-8", "surrogatepass"), object_hook=shelf)


def _front(value: Any, values: list[bytes]) -> Any:
    if isinstance(value, Shelved):
        start = sum(map(len, values))
        own = [_dumps(one) + b"\n" for one in value.values()]
        values.extend(own)
        return {_MARK: [start, [len(one) for one in own], list(value)]}
    return {name: _front(one, values) for name, one in value.items()} if isinstance(value, dict) else value


def _dumps(value: Any) -> bytes:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":")).encode("utf-8", "surrogatepass")
