"""Write ways of asking and names as plain text that needs no escaping in the cache, and read one when it is wanted.

A start reads all of the cache and uses little of it: text without quotes is read at the speed of the disk.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from sys import intern
from typing import Any

_FIELD, _PART, _ONE, _WEIGHT, _LINE, _LEADS = "{", "}", "|", "^", "\n", "\t"
_MARKS = frozenset((_FIELD, _PART, _ONE, _WEIGHT, _LINE, _LEADS))

GAP = "…"
"""Stands in a name where other words may."""
BEGINNING = 3
"""Letters by which names and words are kept together."""

_A_NUMBER = 6
"""Letters that a number takes in a list, about."""
_SCATTERED = 64
"""Bits of a number that are so few that a step for each is sooner done than a look at all bytes."""


def pack_ask(ask: Sequence[Any]) -> str:
    """Return [tag, required, optional] as text. Raises ValueError for a concept that holds a mark."""
    tag, required, optional = ask
    return _FIELD.join((tag, _pack_parts(required), _pack_parts(optional)))


def unpack_ask(text: str) -> tuple[str, list[str], list[str]]:
    """Return the tag, and the required and optional parts, each still as text."""
    tag, required, optional = text.split(_FIELD)
    return tag, _pieces(required), _pieces(optional)


def unpack_part(text: str) -> tuple[frozenset[str], float]:
    """Return the concepts of a part and its weight."""
    concepts, _, weight = text.rpartition(_WEIGHT)
    return frozenset(_parted(concepts)), float(weight)


def pack_numbers(numbers: Sequence[int]) -> str | list[int]:
    """Return numbers as they are, or as the bits of one number where they stand so close that this is shorter."""
    bits = f"{bits_of(numbers):x}"
    return bits if len(bits) < _A_NUMBER * len(numbers) else list(numbers)


def unpack_numbers(packed: str | Iterable[int]) -> int:
    """Return packed numbers as the bits of one number."""
    return int(packed, 16) if isinstance(packed, str) else bits_of(packed)


def bits_of(numbers: Iterable[int]) -> int:
    """Return numbers as the bits of one."""
    found = 0
    for number in numbers:
        found |= 1 << number
    return found


def numbers_of(bits: int, most: int) -> list[int]:
    """Return the numbers that are the bits of one, the least first; no more than some."""
    found: list[int] = []
    if bits.bit_count() <= _SCATTERED:
        while bits:
            found.append(bits.bit_length() - 1)  # from the top, where a step needs no look at the rest
            bits ^= 1 << found[-1]
        found.reverse()
        return found[:most]
    eights = bits.to_bytes(bits.bit_length() // 8 + 1, "little")
    left = eights.lstrip(b"\0")  # quicker than a step for each bit: most stand far apart
    while left and len(found) < most:
        first, byte = 8 * (len(eights) - len(left)) - 1, left[0]
        while byte:
            found.append(first + (byte & -byte).bit_length())
            byte &= byte - 1
        left = left[1:].lstrip(b"\0")
    return found[:most]


def pack_names(found: Sequence[Sequence[Sequence[str]]]) -> str:
    """Return [stems, concepts] of names that begin alike as one text, a line for each second stem, with their places.

    Names of one word, and those with a gap after the first, stand under "". Of the stems only those are written that do
    not stand before them already. One text takes a quarter of the room of the many short ones that it consists of, and
    few of its lines are ever wanted.
    """
    by_second: dict[str, list[str]] = {}
    for place, (stems, concepts) in enumerate(found):
        second = "" if len(stems) == 1 or stems[1] == GAP else stems[1]
        rest = _joined(stems[2 if second else 1 :])
        by_second.setdefault(second, []).append(f"{place}{_PART}{rest}{_PART}{_joined(concepts)}")
    return _LINE + "".join(f"{second}{_LEADS}{_FIELD.join(names)}{_LINE}" for second, names in by_second.items())


def unpack_names(text: str, first: str, second: str) -> list[tuple[int, tuple[str, ...], tuple[str, ...]]]:
    """Return the place, the stems and the concepts of each name with two first stems, none where there are none."""
    leads = f"{_LINE}{second}{_LEADS}"
    at = text.find(leads)
    if at < 0:
        return []
    begin = at + len(leads)
    found = (entry.split(_PART) for entry in text[begin : text.index(_LINE, begin)].split(_FIELD))
    lead = (intern(first), intern(second)) if second else (intern(first),)
    return [(int(place), lead + (_parted(rest) if rest else ()), _parted(named)) for place, rest, named in found]


def _parted(text: str) -> tuple[str, ...]:
    """Return the words of a text; the same word of many is kept once."""
    return tuple(map(intern, text.split(_ONE)))


def by_beginning(words: Iterable[str]) -> dict[str, list[str]]:
    """Return words by how they begin, so that those near one can be read without the others."""
    found: dict[str, list[str]] = {}
    for word in words:
        found.setdefault(word[:BEGINNING], []).append(word)
    return found


def by_length(words: Iterable[str]) -> list[str]:
    """Return words as a text for each length, in order, each word between ends of lines: those much shorter or longer
    than a misspelling are not looked at for it.
    """
    found: dict[int, list[str]] = {}
    for word in sorted(words):
        found.setdefault(len(word), []).append(word)
    listed = (found.get(length, ()) for length in range(max(found, default=0) + 1))
    return ["\n".join(("", *each, "")) for each in listed]


def _pack_parts(parts: Iterable[Sequence[Any]]) -> str:
    return _PART.join(f"{_joined(concepts)}{_WEIGHT}{weight:g}" for concepts, weight in parts)


def _pieces(parts: str) -> list[str]:
    return parts.split(_PART) if parts else []


def _joined(words: Iterable[str]) -> str:
    text = _ONE.join(words)
    if not _MARKS.isdisjoint(text.replace(_ONE, "")):
        raise ValueError(f"'{text}' holds a mark of the index")
    return text
