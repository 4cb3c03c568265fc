"""Which known word is meant by one that is neither the knowledge's nor ordinary English."""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.quantities.numbers import DIGITS, STARTERS, TENS
from assistant.quantities.tokens import Token
from assistant.quantities.units import Units
from assistant.understanding.lexicon import Lexicon
from assistant.understanding.spelling import allowed_distance, apart, mend
from assistant.understanding.word_lists import MOST_KEPT, WordLists
from assistant.understanding.words import stem

_MULTIPLYING = frozenset(("hundred", "thousand"))
_SHORTEST = 3
"""Letters of a known word that an unknown one may be mended into, at the least."""


class Mender:
    """Mends the words of questions with one lexicon, the units and the lists of ordinary words."""

    def __init__(self, lexicon: Lexicon, units: Units, lists: WordLists) -> None:
        self._lexicon = lexicon
        self._lists = lists
        self._known_units = frozenset(w for unit in units for name in unit.names for w in name)
        self._spellings: tuple[list[str], list[str]] | None = None
        self._mended: dict[str, str | None] = {}
        self._sound: set[str] = set()
        """Words met so far that are right as they stand, where no number stands around them."""

    def mend_all(self, tokens: list[Token], mended: list[tuple[str, str]]) -> list[Token]:
        """Return the tokens with unknown words mended; the pairs (as typed, as read) are added to `mended`."""
        result: list[Token] = []
        texts = [token.text for token in tokens]
        sound = self._sound
        for tens, token, after in zip(["", *texts], tokens, [*texts[1:], ""], strict=False):
            alone = tens not in TENS and after not in _MULTIPLYING
            if alone and token.text in sound:
                result.append(token)  # most words are
                continue
            better = self._lexicon.correction(token.text) or self._digit(token.text, tens)
            if better is None and not self._is_known(token.text):
                better = self._counted(token.text) if after in _MULTIPLYING else self._mend(token.text)
            if better is None:
                if alone:
                    self._keep_sound(token.text)
                result.append(token)
                continue
            better = self._as_many(token.text, better)
            mended.append((token.text, better))
            result.extend(Token(word, token.raw, token.start, token.end) for word in better.split())
        return result

    def _keep_sound(self, word: str) -> None:
        """Remember a word that is right as it stands, where no number stands around it."""
        if len(self._sound) > MOST_KEPT:
            self._sound.clear()
        self._sound.add(word)

    def _as_many(self, word: str, better: str) -> str:
        """Return what is meant in the plural that was typed: of "landins" it is landings that are counted."""
        many = better + "s"
        if not word.endswith("s") or better.endswith("s") or not (self._is_known(many) or self.is_ordinary(many)):
            return better
        return many if apart(word, many) <= apart(word, better) else better

    def _is_known(self, word: str) -> bool:
        lexicon = self._lexicon
        return (
            not word[0].isalpha()
            or len(word) < 3
            or word in lexicon.neutral
            or word in lexicon.weak
            or stem(word) in lexicon.words
            or word in STARTERS
            or word in self._known_units
        )

    def _mend(self, word: str) -> str | None:
        if word not in self._mended:
            if len(self._mended) > MOST_KEPT:
                self._mended.clear()
            self._mended[word] = None if self.is_ordinary(word) else self.nearest(word)
        return self._mended[word]

    def _counted(self, word: str) -> str | None:
        """Return the only number that a slip before a hundred may be of; it is no other word."""
        near = _one_off(word, STARTERS)
        return near[0] if len(near) == 1 else None

    def _digit(self, word: str, before: str) -> str | None:
        """Return the only digit that a slip behind twenty or more may be of, where questions do not have that word."""
        if before not in TENS or word in DIGITS:
            return None
        near = [name for name in _one_off(word, DIGITS) if len(name) >= _SHORTEST]
        single = len({DIGITS[name] for name in near}) == 1
        return near[0] if single and word not in self._lexicon.asked else None  # read from the file, so looked at last

    def is_ordinary(self, word: str) -> bool:
        """Return whether a word is ordinary English, which is not to be mended into the trade's."""
        return self._lists.holds(word, "common_words")

    def nearest(self, word: str, most: int | None = None) -> str | None:
        """Return the known word or two words that a misspelling is nearest to."""
        if self._spellings is None:
            ours = self._lexicon.surface
            plain = {*(w for w in self._lexicon.neutral if len(w) >= _SHORTEST), *STARTERS, *self._known_units}
            self._spellings = ours, sorted(plain.difference("".join(ours[_SHORTEST:]).split()))
        ours, others = self._spellings
        near = _of_about_its_length(word, ours)
        found = mend(word, near, others if most is None else (), most, self._lexicon.frequent)
        if found and found[0].distance <= 1:
            return found[0].word
        two = _split(word, ours)
        if two:
            return two
        return self._ordinary_meant(word) or (found[0].word if found else None)

    def _ordinary_meant(self, word: str) -> str | None:
        """Return the ordinary word that a long one is one letter off: not the trade's, it blocks nothing."""
        if len(word) < 5:
            return None
        of_its_length = rf"^.{{{len(word) - 1},{len(word) + 1}}}$"
        found = mend(word, re.findall(of_its_length, self._lists.text("passing_words"), re.MULTILINE), (), 1)
        return found[0].word if found else None


def _one_off(word: str, names: Iterable[str]) -> list[str]:
    """Return the names that a word of three letters or more is one slip from."""
    return [name for name in names if len(word) >= _SHORTEST and apart(word, name) == 1]


def _of_about_its_length(word: str, known: list[str]) -> list[str]:
    """Return the words, in order, that are no more letters longer or shorter than a slip may make a word."""
    most = allowed_distance(word)
    return sorted("".join(known[max(_SHORTEST, len(word) - most) : len(word) + most + 1]).split())


def _split(word: str, known: list[str]) -> str | None:
    """Return two words written as one that are both among some in order, each of three letters or more."""
    for i in range(3, len(word) - 2):
        if _is_among(known, word[:i]) and _is_among(known, word[i:]):
            return f"{word[:i]} {word[i:]}"
    return None


def _is_among(words: list[str], word: str) -> bool:
    """Return whether a word is one of those that stand, by their length, between ends of lines."""
    return any(f"\n{word}\n" in text for text in words[len(word) : len(word) + 1])
