"""Words that stand for what has not been named: "the other", "otherwise", and "normally" for the one case alone."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from assistant.practice.marking.reading.said import Said

_REST = frozenset({"other", "others", "rest", "remaining", "otherwise", "else"})
_USUAL = frozenset({"normal", "normally", "ordinary", "ordinarily", "usual", "usually"})
"""What people call the one case that has no name of its own."""
_AT_REST = frozenset(("at", "from"))
"""Words before a "rest" that is no motion."""


def others_named(named: Collection[int], many: int, said: Said) -> Iterator[int]:
    """Yield the places of such words. named: places that names take already; many: how many cases have none yet."""
    before = ""
    for i, word in enumerate(said.reading.words):
        rest = word in _REST and before not in _AT_REST
        if rest or (many == 1 and word in _USUAL and i not in named):
            yield i
        before = word
