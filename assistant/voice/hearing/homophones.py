"""Words that sound the same are told apart by what the trade says: "breaking" is "braking" where nobody breaks things.

No sound can tell such words apart, and a recogniser writes the one that is common elsewhere. How often the knowledge
itself uses each says which is meant; a word that it uses nearly as often as the other is left alone.
"""

from __future__ import annotations

import re
from collections import Counter
from functools import cached_property
from typing import TYPE_CHECKING

from assistant.resolving.knowing import Knowledge
from assistant.understanding.lexicon import GAP

if TYPE_CHECKING:
    from assistant.voice.hearing.sounds import Sounding, Sounds

_WORD = re.compile(r"[^\W\d_]{4,}(?![\w'])")
_OFTENER = 20
"""How many times as often the knowledge must use a word as the one that was written."""


class Homophones:
    """Writes words of equal sound as one knowledge base does."""

    def __init__(self, knowledge: Knowledge, sounding: Sounding) -> None:
        self._knowledge = knowledge
        self._sounding = sounding
        self._known: dict[str, str] = {}

    def written(self, text: str) -> str:
        """Return a text with each word as the knowledge writes what sounds so."""
        return _WORD.sub(lambda match: self._of(match[0]), text)

    def warm(self) -> None:
        """Make ready what the first text would have to wait for."""
        self.written("braking")

    def _of(self, word: str) -> str:
        low = word.lower()
        if low not in self._known:
            self._known[low] = self._meant(low)
        meant = self._known[low]
        if meant == low:
            return word
        return meant.capitalize() if word[0].isupper() else meant

    def _meant(self, word: str) -> str:
        counts, by_sound = self._uses
        best = by_sound.get(self._sounding.listed(word), word)
        if best == word or word in self._knowledge.lexicon.neutral:
            return word
        return best if counts[best] >= _OFTENER * max(1, counts[word]) else word

    @cached_property
    def _uses(self) -> tuple[Counter[str], dict[Sounds, str]]:
        """How often the knowledge uses each word, and of each sound the word it uses most."""
        base = self._knowledge.base
        names = [name for term in base.terms.values() if term.kind != "outside" for name in term.names]
        asks = [ask for record in base.records.values() for ask in getattr(record, "asks", ())]
        counts = Counter(_WORD.findall(" ".join([*names, *asks]).replace(GAP, " ").lower()))
        plain = self._knowledge.lexicon.neutral | self._knowledge.lexicon.weak
        by_sound: dict[Sounds, str] = {}
        for word, _ in reversed(counts.most_common()):
            if word not in plain and (said := self._sounding.listed(word)):
                by_sound[said] = word
        return counts, by_sound
