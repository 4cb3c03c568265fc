"""How likely a text is to be asked at all: which words follow which, counted in questions as people put them.

A recogniser knows all English and hears "how many sensors has each like God". Nobody asks that here: after "has each"
comes the name of a thing. The counts are knowledge (`language/word_order.txt`), made by `scripts/count_words.py`; a
number is one word in them, whichever it is, so that none is ever likelier than another.
"""

from __future__ import annotations

import re
from math import log
from typing import TYPE_CHECKING

from assistant.quantities.numbers import STARTERS

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

BEGINNING, END, NUMBER = "<", ">", "0"
_REMARK = "#"
_WORD = re.compile(r"[^\W\d_]+(?:'[^\W\d_]+)*|\d[\d.,]*")
_NO_NUMBERS = frozenset({"a", "an", "oh", "half", "quarter", "point", "plus", "minus", "tree", "fife", "wun", "ait"})
NUMBER_WORDS = STARTERS - _NO_NUMBERS
_SPELT = {
    "tire": "tyre", "tires": "tyres", "color": "colour", "center": "centre", "centered": "centred", "meter": "metre",
    "meters": "metres", "kilometers": "kilometres", "millimeters": "millimetres", "millimeter": "millimetre",
    "airplane": "aeroplane", "airplanes": "aeroplanes", "tons": "tonnes", "ton": "tonne", "okay": "ok",
}  # fmt: skip
"""Words as a recogniser spells them, and as they were counted."""
_LEAST_LETTERS = 3
_DISCOUNT = 0.75
_UNKNOWN, _VOCABULARY = 0.1, 20_000
"""How often a word that was never counted counts, and how many words there may be."""


class Usage:
    """The counts of one file: words, pairs and threes."""

    def __init__(self, lines: Iterable[str]) -> None:
        """Take lines of `words: next count next count`, and of `: word count` for words alone."""
        self.words: dict[str, int] = {}
        self._after: dict[str, dict[str, int]] = {}
        for line in lines:
            before, _, counts = line.partition(":")
            if before.startswith(_REMARK) or not counts:
                continue
            pieces = counts.split()
            found = dict(zip(pieces[::2], map(int, pieces[1::2]), strict=True))
            if before:
                self._after[before] = found
            else:
                self.words |= found
        self._all = sum(self.words.values()) + _UNKNOWN * _VOCABULARY
        self._left = {before: self._left_over(before, found) for before, found in self._after.items()}

    def _left_over(self, before: str, found: dict[str, int]) -> tuple[float, float]:
        """Return how often a beginning was counted, and the share of what comes after it seldom or never."""
        one, _, two = before.rpartition(" ")
        often = self._after.get(one, {}).get(two, 0) if one else self.words.get(two, 0)
        often = max(often, sum(found.values()))
        return often, 1 - sum(count - _DISCOUNT for count in found.values()) / often

    def steps(self, one: str, two: str, words: Iterable[str]) -> list[float]:
        """Return the natural logarithm of the probability of each of some words after two others."""
        three, pair = f"{one} {two}", two
        rest, rest_pair = self._left.get(three, (1.0, 1.0))[1], self._left.get(pair, (1.0, 1.0))[1]
        after, after_pair = self._after.get(three, {}), self._after.get(pair, {})
        often, often_pair = self._left.get(three, (1.0,))[0], self._left.get(pair, (1.0,))[0]
        found = []
        for word in words:
            count, count_pair = after.get(word, 0), after_pair.get(word, 0)
            chance = rest_pair * (self.words.get(word, 0) + _UNKNOWN) / self._all
            if count_pair:
                chance += (count_pair - _DISCOUNT) / often_pair
            chance *= rest
            if count:
                chance += (count - _DISCOUNT) / often
            found.append(log(chance))
        return found

    def alone(self, word: str) -> float:
        """Return the natural logarithm of the probability of a word by itself."""
        return log((self.words.get(word, 0) + _UNKNOWN) / self._all)

    def total(self, text: str) -> float:
        """Return the natural logarithm of the probability of a text."""
        words = [BEGINNING, BEGINNING, *counted_words(text), END]
        return sum(self.steps(words[i - 2], words[i - 1], words[i : i + 1])[0] for i in range(2, len(words)))


def counted_words(text: str) -> list[str]:
    """Return the words of a text as they are counted: numbers alike, letters together, no apostrophes."""
    found: list[str] = []
    for word in _WORD.findall(text.lower().replace("\u2019", "'").replace("-", " ")):
        plain = word.replace("'", "")
        plain = NUMBER if plain in NUMBER_WORDS or plain[0].isdigit() else _SPELT.get(plain, plain)
        if plain != NUMBER or found[-1:] != [NUMBER]:
            found.append(plain)
    return _with_letters_together(found)


def _with_letters_together(words: Sequence[str]) -> list[str]:
    found: list[str] = []
    at = 0
    while at < len(words):
        end = at
        while end < len(words) and len(words[end]) == 1 and words[end] != NUMBER:
            end += 1
        if end - at >= _LEAST_LETTERS:
            found.append("".join(words[at:end]))
            at = end
        else:
            found.append(words[at])
            at += 1
    return found
