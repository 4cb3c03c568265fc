"""How much likelier a text is as a question of the trade than as anything that people say to one another.

A car is full of talk, and much of it is put in the words of questions: "how long until we arrive", "did you lock the
door". Each word of it is known here, and each names something; what tells it apart is that all of English says it
more readily than those who ask. So two counts are held against each other: that of questions as they are put
(`usage.py`), and the three-word model of English that comes with pocketsphinx.
"""

from __future__ import annotations

import re
from math import exp, log
from typing import Any

from assistant.voice.hearing.usage import NUMBER_WORDS, Usage

_WORD = re.compile(r"[^\W\d_]+(?:'[^\W\d_]+)*|\d[\d.,]*")
_UNIT = 1e-4
"""The model tells logarithms to the base 1.0001, near enough this times a natural one."""
_LEAST, _NONE = -14.0, -1000.0
"""Natural logarithm for a word that the model does not hold, and what it tells of one."""
_A_NUMBER, _NUMBERS = "two", 6.0
"""A word by which the model is asked for a number, whichever it is, and how many times likelier one of all is."""
_BEGINNING, _END = "<s>", "</s>"
_SPELT = {
    "tyre": "tire", "tyres": "tires", "aeroplane": "airplane", "aeroplanes": "airplanes", "metres": "meters",
    "metre": "meter", "centre": "center", "colour": "color", "tonnes": "tons", "tonne": "ton",
}  # fmt: skip
"""Words as they are written here, and as the model may have them."""


class Everyday:
    """Holds the counts of questions against a model of English."""

    def __init__(self, usage: Usage, model: Any) -> None:
        self._usage = usage
        self._model = model

    def lean(self, text: str) -> float:
        """Return the natural logarithm of how much likelier a text is as a question here than as English at all."""
        return self._usage.total(text) - self._english(text)

    def _english(self, text: str) -> float:
        words = [_BEGINNING, *_words(text), _END]
        return sum(self._chance(words[max(0, i - 2) : i + 1]) for i in range(1, len(words)))

    def _chance(self, words: list[str]) -> float:
        """Return the natural logarithm of the probability of the last of some words after the others."""
        *before, word = words
        more = log(_NUMBERS) if word == _A_NUMBER else 0.0
        spellings = [word, _SPELT[word]] if word in _SPELT else [word]
        found = [self._model.prob([each, *reversed(before)]) * _UNIT for each in spellings]
        return max(_LEAST, log(sum(exp(each) for each in found if each > _NONE) or exp(_LEAST)) + more)


def _words(text: str) -> list[str]:
    """Return the words of a text as the model has them, each number as the same one."""
    found: list[str] = []
    for word in _WORD.findall(text.lower().replace("\u2019", "'").replace("-", " ")):
        plain = _A_NUMBER if word in NUMBER_WORDS or word[0].isdigit() else word
        if plain != _A_NUMBER or found[-1:] != [_A_NUMBER]:
            found.append(plain)
    return found


def open_everyday(usage: Usage | None) -> Everyday | None:
    """Return what tells questions from other talk, or None where one of the two counts is missing."""
    if usage is None:
        return None
    try:
        from pocketsphinx import Config, LogMath, NGramModel, get_model_path

        path = get_model_path("en-us/en-us.lm.bin")
        return Everyday(usage, NGramModel(Config(lm=path, loglevel="FATAL"), LogMath(), path))
    except (ImportError, OSError, ValueError, RuntimeError):
        return None
