"""Readings put together from parts of others: a recogniser seldom errs at the same place in all that it offers.

Where two texts differ, either may be the one that was said, and each may be wrong somewhere else.
"""

from __future__ import annotations

from difflib import SequenceMatcher
from typing import TYPE_CHECKING

from assistant.voice.hearing.wording import bare_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

_BASES, _MOST = 4, 60
_LONGEST = 3
"""Words of a piece that takes the place of another: longer ones are another text."""


def crossed(texts: Sequence[str]) -> list[str]:
    """Return the likeliest of some texts with one piece as another of them has it, each once; none that is given."""
    known = {_key(text.split()) for text in texts}
    found: dict[tuple[str, ...], str] = {}
    for base in texts[:_BASES]:
        for words in _with_pieces(base.split(), (text.split() for text in texts if text != base)):
            key = _key(words)
            if key not in known and key not in found:
                found[key] = " ".join(words)
    return list(found.values())[:_MOST]


def _with_pieces(base: list[str], others: Iterable[list[str]]) -> Iterator[list[str]]:
    for other in others:
        matcher = SequenceMatcher(None, _key(base), _key(other), autojunk=False)
        for kind, start, end, first, last in matcher.get_opcodes():
            if kind != "equal" and max(end - start, last - first) <= _LONGEST:
                yield [*base[:start], *other[first:last], *base[end:]]


def _key(words: Sequence[str]) -> tuple[str, ...]:
    return tuple(bare_words(words))
