"""How words sound, and how far apart two ways of sounding are.

Sounds are those of the CMU Pronouncing Dictionary (BSD), which comes with pocketsphinx. The costs say which sounds are
taken for one another in noise: those made alike are near, and the ends of words are easily lost.
"""

from __future__ import annotations

import os
from functools import cache
from typing import TYPE_CHECKING

from assistant.voice.hearing.recognising import HearingProblem
from assistant.voice.hearing.wording import said_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from numpy import float32, intp
    from numpy.typing import NDArray

    Costs = NDArray[float32]
    Codes = NDArray[intp]

Sounds = tuple[str, ...]

_VOWELS = ["AA", "AE", "AH", "AO", "AW", "AY", "EH", "ER", "EY", "IH", "IY", "OW", "OY", "UH", "UW"]
_STOPS, _NASALS, _GLIDES = ["P", "T", "K", "B", "D", "G"], ["M", "N", "NG"], ["L", "R", "W", "Y"]
_HISSES = ["F", "TH", "S", "SH", "V", "DH", "Z", "ZH", "HH", "CH", "JH"]
ALL = (*_VOWELS, *_STOPS, *_NASALS, *_GLIDES, *_HISSES)
NUMBER = {sound: i for i, sound in enumerate(ALL, 1)}
"""Sounds as numbers from 1; 0 stands for none."""
_NEAR_VOWELS = (
    "IH IY|IH EH|EH AE|AA AO|AA AH|AH UH|UH UW|AO OW|AH ER|AH IH|EH EY|AY AA|AW AA|AE AH|IY EY|AO AH|OW UH|AH EH"
)
_NEAR = (
    "P B|T D|K G|F V|S Z|SH ZH|TH DH|CH JH|T CH|D JH|S SH|DH D|TH T|TH F|DH V|B V|ER R|IY Y|UW W|HH TH|HH F|S TH|F TH"
)
_LOST = {"HH": 0.35, "T": 0.5, "D": 0.5, "R": 0.6, "L": 0.6, "S": 0.6, "Z": 0.6, "AH": 0.5, "IH": 0.5, "ER": 0.6}
_LOST_CONSONANT, _LOST_VOWEL = 0.8, 0.7
_MOST_LETTERS = 4
_VOWEL_LETTERS = frozenset("aeiouy")


@cache
def costs() -> Costs:
    """Return what it costs to take one sound for another, by their numbers; row and column 0: a sound lost or added."""
    import numpy as np

    table = np.ones((len(ALL) + 1, len(ALL) + 1), dtype=np.float32)
    for group, cost in ((_VOWELS, 0.5), (_STOPS, 0.5), (_NASALS, 0.35), (_GLIDES, 0.6), (_HISSES, 0.6)):
        for one in group:
            for two in group:
                table[NUMBER[one], NUMBER[two]] = cost
    for pairs, cost in ((_NEAR_VOWELS, 0.25), (_NEAR, 0.35)):
        for pair in pairs.split("|"):
            first, second = (NUMBER[sound] for sound in pair.split())
            table[first, second] = table[second, first] = cost
    for sound, number in NUMBER.items():
        lost = _LOST.get(sound, _LOST_VOWEL if sound in _VOWELS else _LOST_CONSONANT)
        table[number, 0] = table[0, number] = lost
    np.fill_diagonal(table, 0)
    return table


class Sounding:
    """The sounds of words: from the dictionary, else from its parts, else letter by letter as they mostly sound."""

    def __init__(self, dictionary: str) -> None:
        self._lines = {word: sounds for word, _, sounds in (line.partition(" ") for line in dictionary.splitlines())}
        self._known: dict[str, Sounds] = {}

    def of(self, words: Iterable[str]) -> Sounds:
        """Return the sounds of words said one after another."""
        return tuple(sound for word in words for sound in self.word(word))

    def of_text(self, text: str) -> Sounds:
        """Return the sounds of a text, its figures as they are said."""
        return self.of(said_words(text))

    def word(self, word: str) -> Sounds:
        """Return the sounds of one word in lower case."""
        found = self._known.get(word)
        if found is None:
            found = self._known[word] = self.listed(word) or self._derived(word) or self._lettered(word) or _spelt(word)
        return found

    def has(self, word: str) -> bool:
        """Return whether a word is in the dictionary."""
        return word in self._lines

    def listed(self, word: str) -> Sounds:
        """Return the sounds of a word as the dictionary gives them; () for what it has not."""
        return tuple(self._lines.get(word, "").split())

    def _lettered(self, word: str) -> Sounds:
        """Return the sounds of a few letters without a vowel, which are said by their names."""
        if len(word) > _MOST_LETTERS or not _VOWEL_LETTERS.isdisjoint(word):
            return ()
        return tuple(sound for letter in word for sound in self.listed(letter))

    def _derived(self, word: str) -> Sounds:
        """Return the sounds of an inflected or a compound word from those of its parts."""
        for ending, sounds in (("s", ("Z",)), ("ed", ("D",)), ("ing", ("IH", "NG")), ("er", ("ER",))):
            stem = self.listed(word.removesuffix(ending)) if word.endswith(ending) else ()
            if stem:
                return (*stem, *sounds)
        for i in range(3, len(word) - 2):
            one, two = self.listed(word[:i]), self.listed(word[i:])
            if one and two:
                return one + two
        return ()


_LETTERS = {
    "sh": "SH", "ch": "CH", "th": "TH", "ph": "F", "ck": "K", "ng": "NG", "qu": "K W", "ee": "IY", "ea": "IY",
    "oo": "UW", "ou": "AW", "ow": "AW", "ai": "EY", "ay": "EY", "oi": "OY", "au": "AO", "er": "ER", "ur": "ER",
    "ir": "ER", "or": "AO R", "ar": "AA R", "a": "AE", "b": "B", "c": "K", "d": "D", "e": "EH", "f": "F", "g": "G",
    "h": "HH", "i": "IH", "j": "JH", "k": "K", "l": "L", "m": "M", "n": "N", "o": "AA", "p": "P", "q": "K",
    "r": "R", "s": "S", "t": "T", "u": "AH", "v": "V", "w": "W", "x": "K S", "y": "IY", "z": "Z",
}  # fmt: skip


def _spelt(word: str) -> Sounds:
    sounds: list[str] = []
    i = 0
    while i < len(word):
        size = 2 if word[i : i + 2] in _LETTERS else 1
        sounds += _LETTERS.get(word[i : i + size], "").split()
        i += size
    return tuple(sounds)


def numbers(sounds: Sequence[str], size: int = 0) -> list[int]:
    """Return sounds as numbers, filled up with none to a size."""
    coded = [NUMBER[sound] for sound in sounds if sound in NUMBER]
    return coded + [0] * (size - len(coded))


def distances(said: Sequence[int], others: Codes, lengths: Codes) -> Costs:
    """Return the cost of turning some sounds into each row of others, each row filled up to one length with none."""
    import numpy as np

    table = costs()
    adding = table[0][others]
    row = np.concatenate([np.zeros((len(others), 1), np.float32), np.cumsum(adding, axis=1)], axis=1)
    for sound in said:
        taken, lost = table[sound][others], table[sound, 0]
        new = np.empty_like(row)
        new[:, 0] = row[:, 0] + lost
        for j in range(others.shape[1]):
            best = np.minimum(row[:, j] + taken[:, j], row[:, j + 1] + lost)
            new[:, j + 1] = np.minimum(best, new[:, j] + adding[:, j])
        row = new
    result: Costs = row[np.arange(len(others)), lengths]
    return result


def apart(one: Sounds, two: Sounds) -> float:
    """Return how far two ways of sounding are apart, as mean cost a sound: 0 the same, about 1 nothing alike."""
    return all_apart(one, [two])[0]


def all_apart(one: Sounds, others: Sequence[Sounds]) -> list[float]:
    """Return how far each of others is apart from one, in one table for all of them."""
    import numpy as np

    if not one or not others:
        return [1.0] * len(others)
    coded = [numbers(each) for each in others]
    longest = max(map(len, coded))
    rows = np.array([each + [0] * (longest - len(each)) for each in coded], dtype=np.intp)
    found = distances(numbers(one), rows, np.array([len(each) for each in coded]))
    return [
        float(cost) / max(len(one), len(two)) if two else 1.0 for cost, two in zip(found, others, strict=True)
    ]


def dictionary() -> str:
    """Return the text of the dictionary. Raises HearingProblem when it is not installed."""
    try:
        from pocketsphinx import get_model_path
    except (ImportError, OSError) as error:
        raise HearingProblem(f"pocketsphinx cannot be used: {error}") from None
    with open(os.path.join(get_model_path(), "en-us", "cmudict-en-us.dict"), encoding="utf-8") as file:
        return file.read()
