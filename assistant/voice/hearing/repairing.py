"""Mend what a recogniser misheard by sound: "free ball lever" is nearer to a name we know than to anything else.

Only words that the knowledge does not explain are looked at, alone or with their neighbours; only names of the
knowledge take their place; and no number is ever made or changed. Whether a repair is believed is for the weighing.
"""

from __future__ import annotations

from collections import Counter
from functools import cached_property
from itertools import pairwise
from typing import TYPE_CHECKING

from assistant.frozen import NamedTuple
from assistant.quantities.numbers import STARTERS, is_typed
from assistant.quantities.tokens import tokenize, words_of
from assistant.resolving.knowing import Knowledge
from assistant.understanding.lexicon import GAP
from assistant.understanding.mentions import Reading
from assistant.voice.hearing import sounds
from assistant.voice.hearing.sounds import Sounding

if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Any

_WIDEST = 3
"""Words of a span, and of a name."""
_FARTHEST = 0.34
"""Mean cost a sound beyond which two names do not sound alike."""
_LEAST_SOUNDS = 3
_FEW_SOUNDS = 0.75
"""A short word is near too many others: what a pair may cost in all is at most this for each of its sounds."""
_LOOKED_AT = 80
_MOST = 4
_OFTEN = 3
"""Ways of asking that must hold a pair of names, for it to be looked for."""
_NO_NUMBERS = frozenset({"a", "an", "o", "oh", "and"})
"""Words that may begin a number and mostly do not."""
_NOT_MENDED = frozenset({"outside", "filler"})


class Repair(NamedTuple):
    """A text with one thing in it mended: what was heard there, what it is taken for, and the mean cost a sound."""

    text: str
    heard: str
    meant: str
    cost: float


class Repairer:
    """Finds names of one knowledge base that sound like what was heard."""

    def __init__(self, knowledge: Knowledge, sounding: Sounding) -> None:
        self._knowledge = knowledge
        self._sounding = sounding
        self._near: dict[str, list[tuple[str, float]]] = {}

    def repairs(self, text: str, doubtful: Sequence[tuple[int, int]] | None = None) -> list[Repair]:
        """Return the text with each doubtful place mended in each likely way, the likeliest first.

        doubtful: places of the words that may be misheard; None for those that no name explains.
        """
        tokens = tokenize(text)
        words = [token.text for token in tokens]
        if doubtful is None:
            odd = self._odd(words, self._knowledge.reader.read(text, mending=False))
        else:
            odd = {i for i, t in enumerate(tokens) if any(t.start < end and t.end > start for start, end in doubtful)}
        found: dict[str, Repair] = {}
        for start, end in _spans(words, odd):
            heard = " ".join(token.text for token in tokens[start:end])
            for name, cost in self._alike(heard):
                mended = f"{text[: tokens[start].start]}{name}{text[tokens[end - 1].end :]}"
                if mended not in found or cost < found[mended].cost:
                    found[mended] = Repair(mended, heard, name, cost)
        return sorted(found.values(), key=lambda repair: repair.cost)

    def sounds(self, text: str) -> tuple[str, ...]:
        """Return how a text sounds, its figures as they are said."""
        return self._sounding.of_text(text)

    def is_english(self, text: str) -> bool:
        """Return whether all words of a text are in the dictionary: a recogniser that guesses makes up others."""
        return all(self._sounding.has(word) for word in words_of(text))

    def warm(self) -> None:
        """Make the sounds of all names ready, which the first repair would have to wait for."""
        self._search("landing gear")

    def _odd(self, words: list[str], reading: Reading) -> set[int]:
        """Return the places of words that no name explains."""
        unknown = {w for m in reading.mentions if m.is_plain and not m.weak for w in m.text.split()}
        return {i for i, word in enumerate(words) if word in unknown or not self._is_used(word)}

    def _is_used(self, word: str) -> bool:
        lexicon = self._knowledge.lexicon
        return lexicon.knows(word) or word in lexicon.neutral or len(word) < 2

    def _alike(self, heard: str) -> list[tuple[str, float]]:
        found = self._near.get(heard)
        if found is None:
            found = self._near[heard] = self._search(heard)
        return found

    def _search(self, heard: str) -> list[tuple[str, float]]:
        import numpy as np

        said = sounds.numbers(self._sounding.of(word.replace("'", "") for word in heard.split()))
        if len(said) < _LEAST_SOUNDS:
            return []
        names, coded, lengths, bags = self._vocabulary
        bag = np.bincount(said, minlength=bags.shape[1])
        apart = np.abs(bags - bag).sum(axis=1)
        near = np.argpartition(apart, min(_LOOKED_AT, len(names) - 1))[:_LOOKED_AT]
        cost = sounds.distances(said, coded[near], lengths[near])
        mean = cost / np.maximum(lengths[near], len(said))
        order = np.argsort(mean)
        alike = [(names[near[i]], float(mean[i])) for i in order[: _MOST * 2] if self._is_near(mean[i], cost[i], said)]
        return [(name, value) for name, value in alike if name != heard][:_MOST]

    def _is_near(self, mean: float, cost: float, said: list[int]) -> bool:
        return mean <= _FARTHEST and cost <= _FEW_SOUNDS * (len(said) - 1)

    @cached_property
    def _vocabulary(self) -> tuple[list[str], Any, Any, Any]:
        """The names, their sounds as numbers in rows of one length, how many each has, and how often each sound."""
        import numpy as np

        known = {name: self._sounding.of(name.split()) for name in self._names()}
        known = {name: said for name, said in known.items() if len(said) >= _LEAST_SOUNDS}
        longest = max(map(len, known.values()))
        coded = np.array([sounds.numbers(said, longest) for said in known.values()], dtype=np.intp)
        lengths = np.array([len(said) for said in known.values()], dtype=np.intp)
        bags = np.array([np.bincount(row[row > 0], minlength=len(sounds.ALL) + 1) for row in coded])
        return list(known), coded, lengths, bags

    def _names(self) -> set[str]:
        lexicon = self._knowledge.lexicon
        found = set()
        for term in self._knowledge.base.terms.values():
            for name in term.names if term.kind not in _NOT_MENDED else ():
                words = words_of(name)
                if GAP not in name and len(words) <= _WIDEST and all(_is_mendable(word) for word in words):
                    found.add(" ".join(words))
        plain = {*"".join(lexicon.surface).split()} - lexicon.neutral - lexicon.weak
        found.update(self._pairs(plain))
        found.update(w for w in plain if len(w) > 3 and _is_mendable(w) and self._sounding.has(w))
        return found

    def _pairs(self, names: set[str]) -> set[str]:
        """Return pairs of names that ways of asking hold one after the other, such as a leg and its part."""
        records = self._knowledge.base.records.values()
        asks = [words_of(ask) for record in records for ask in getattr(record, "asks", ())]
        counts = Counter(
            pair for ask in asks for pair in pairwise(ask) if all(w in names and _is_mendable(w) for w in pair)
        )
        return {" ".join(pair) for pair, count in counts.items() if count >= _OFTEN}


def _spans(words: list[str], odd: set[int]) -> list[tuple[int, int]]:
    """Return where something may be misheard: spans that hold an odd word and no number."""
    fixed = {i for i, word in enumerate(words) if not word[0].isalpha() or _is_number(word)}
    return [
        (start, start + size)
        for size in range(1, _WIDEST + 1)
        for start in range(len(words) - size + 1)
        if not odd.isdisjoint(range(start, start + size)) and fixed.isdisjoint(range(start, start + size))
    ]


def _is_number(word: str) -> bool:
    return word not in _NO_NUMBERS and (word in STARTERS or is_typed(word))


def _is_mendable(word: str) -> bool:
    return word.isalpha() and not _is_number(word)

