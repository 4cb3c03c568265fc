"""Turn round what the question before said: "and without?"."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Protocol

from assistant.resolving.knowing import Question
from assistant.understanding.mentions import Reading

_WITH = {"with": "with", "without": "without", "w/o": "without"}
_BESIDE_WITH = frozenset({
    "and", "an", "so", "ok", "okay", "or", "then", "now", "what", "about", "how", "if", "them", "it", "any", "that",
    "those", "the", "same", "but", "again",
})  # fmt: skip


class Places(Protocol):
    """What is put in the place of words of the question before, and what of the turn is used up."""

    used: set[int]
    drop: set[int]

    def replace(self, old: Sequence[int], new: Sequence[str], used: Iterable[int]) -> None:
        """Put words in the place of some of the question before; used: the turn's own that they stand for."""


def replace_with(before: Question, reading: Reading, places: Places) -> None:
    """Put "without" in the place of "with" before a thing, or the other way about, where a turn says no more."""
    said = [_WITH[w] for w in reading.words if w in _WITH]
    rest = {w for w in reading.words if w[0].isalpha() and w not in _WITH}
    if len(said) != 1 or not _BESIDE_WITH.issuperset(rest):
        return
    words, everything = before.reading.words, range(len(reading.words))
    starts = {m.start for m in before.reading.mentions}
    for k in range(len(words) - 1, -1, -1):
        if _WITH.get(words[k], said[0]) != said[0] and starts & {k + 1, k + 2}:
            places.replace((k,), said, everything)
            return
    given = [c for c in before.conditions if c.where and not c.is_result]
    for condition in reversed(given if said == ["without"] else ()):
        for mention in before.reading.mentions:
            if set(mention.taken) < set(condition.where) and not any(c[0] == "@" for c in mention.concepts):
                places.replace(condition.where, ("without", *mention.text.split()), everything)
                return
