"""Whether words read as English: two that stand side by side must do so in the statements of the knowledge itself.

Ways of asking are telegrams ("M1 no braking lever"). Made into a sentence they may still miss a word that joins two
names. The statements, titles and names are written English: what never stands together there is not read aloud.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from itertools import pairwise
from typing import Any

from assistant.knowledge.base import Base
from assistant.understanding.words import stem

_FIELDS = ("says", "of", "title", "condition", "exceeded", "within", "says_more", "now", "subject")
_LISTS = ("points", "needed", "assumes")
_WORD = re.compile(r"[A-Za-z][\w'’/-]*|\d[\d.,]*|[^\sA-Za-z\d]")
_LED = frozenset(("the", "a", "an", "each", "every", "its", "their", "your", "my", "this", "that", "any", "all"))
_ALONE = frozenset(("do", "does", "is", "are", "what", "when", "where", "why", "of", "for", "with", "to", "have"))
"""Words after which a thing stands without an article, if none follows them."""
_BEING = frozenset(("is", "are", "was", "were", "be", "been"))
_LEADING = frozenset((
    "what", "which", "when", "where", "why", "who", "how", "do", "does", "did", "is", "are", "can", "may", "must",
    "will", "you", "there", "not", "long", "fast", "far", "many", "much", "way", "no", "has", "have", "colour", "mean",
))  # fmt: skip
"""What a question begins with: no sign of how its names are joined."""
_SPOILT = re.compile(
    r"\b(?:do|does|did) (?:did|do|does|is|are|has|have|can|may|must)\b|"
    r"\b(?:is|are) (?:\w+ ){1,4}(?:cannot|can|is|are)\b|"
    r"\b(?:taxi|land|stop|brake|park|tow|go|steer) (?:the )?[\w-]+ (?:lost|failed)\b|"
    r"^What ha(?:ve|s)\b|^What must be\b|^What makes\b|\b(?:in|on|at|to|of|for|with|from|by|and|or) ?\?$|\bus\b|\bme\b",
    re.IGNORECASE,
)  # fmt: skip
"""What no sentence holds: two verbs that help, a preposition with nothing after it."""


class Prose:
    """Which words stand side by side in the written English of a base."""

    def __init__(
        self, base: Base, small: Collection[str], counted: Collection[str], parts: Collection[str],
        classes: Callable[[str], str],
    ) -> None:  # fmt: skip
        self._small = frozenset(small)
        alone, led = "|".join(sorted(_ALONE)), "|".join(sorted(_LED | {"no"}))
        self._bare = re.compile(rf"\b(?:{alone}) (?:(?!(?:{led})\b)[a-z-]+ )?(?:{'|'.join(counted)})\b(?! \d)")
        self._parts, self._classes = parts, classes
        self._direct: set[tuple[str, str]] = set()
        self._uncounted: set[str] = set()
        self._being: set[tuple[str, str]] = set()
        for text in _texts(base):
            self._add(text)

    def _is_verb(self, word: str) -> bool:
        return self._classes(word) in ("b", "t")

    def _add(self, text: str) -> None:
        for clause in _clauses(text):
            words = [stem(word) for word in clause if word not in _LED]
            self._direct.update(
                (stem(one), stem(other)) for (one, _), (other, led) in pairwise(_unled(clause))
                if not led or one in self._small or self._is_verb(one)
            )  # fmt: skip
            self._uncounted.update(
                other for (one, _), (other, led), (after, _) in zip(*_threes(list(_unled(clause))), strict=True)
                if not led and one in self._small and (after in self._small or not after)
            )  # fmt: skip
            self._being.update((one, last) for (one, middle), last in zip(pairwise(words), words[2:], strict=False)
                               if middle in _BEING)  # fmt: skip

    def sentence(self, text: str) -> bool:
        """Return whether a question reads as English, but for the words that it begins with."""
        if _SPOILT.search(text) or self._bare.search(text.lower()):
            return False
        words = next(_clauses(text), [])
        start = next((i for i, word in enumerate(words) if word not in _LEADING and word not in _LED), len(words))
        being = bool(_BEING.intersection(words))
        known = self._direct | self._being if being else self._direct
        return self._joined([word for word in words[start:] if word not in _BEING and word != "there"], known, being)

    def name(self, text: str) -> bool:
        """Return whether the name of something, or a short clause, reads as English."""
        clauses = list(_clauses(text))
        return len(clauses) == 1 and self._joined(clauses[0], self._direct, named=True)

    def names(self, words: Sequence[str]) -> list[str]:
        """Return words cut into the longest names in which each two stand side by side as they are written."""
        found: list[list[str]] = []
        for word in words:
            if found and (stem(found[-1][-1].lower()), stem(word.lower())) in self._direct:
                found[-1].append(word)
            else:
                found.append([word])
        return [" ".join(each) for each in found]

    def alone(self, word: str) -> bool:
        """Return whether a word stands without an article as a thing of its own: "before pushback"."""
        return word.lower() in self._uncounted

    def _joined(
        self, words: Sequence[str], known: Collection[tuple[str, str]], being: bool = False, named: bool = False
    ) -> bool:
        return all(self._fits(one, other, known, being, named) for one, other in pairwise(_unled(words)))

    def _fits(
        self, one: tuple[str, bool], other: tuple[str, bool], known: Collection[tuple[str, str]], being: bool,
        named: bool,
    ) -> bool:  # fmt: skip
        """Return whether a word may follow another: known to, or after a word that joins, led by an article."""
        (first, _), (second, led) = one, other
        kinds = self._classes(first) + self._classes(second)
        if (stem(first), stem(second)) in known or (being and kinds in ("np", "sp")):
            return True
        if self._is_verb(first) and (led or second[0].isdigit() or second in self._uncounted):
            return True
        if kinds == "as" or (named and first in self._parts and kinds[1] == "s"):
            return True
        if first in self._small:
            return led or second in _LEADING
        return second in self._small and (second not in _ADVERBS or self._is_verb(first))


_ADVERBS = frozenset(("in", "up", "off", "out", "over", "again", "there", "together", "down", "later", "on"))
"""Words that join only at times: "chocks in"."""


def _threes(words: list[tuple[str, bool]]) -> tuple[list[tuple[str, bool]], ...]:
    """Return words, those after them, and those after these, in three rows."""
    padded = [*words, ("", False)]
    return padded[:-2], padded[1:-1], padded[2:]


def _unled(words: Iterable[str]) -> Iterator[tuple[str, bool]]:
    """Yield words without articles, each with whether one led it."""
    led = False
    for word in words:
        if word in _LED:
            led = True
        else:
            yield word, led
            led = False


def _clauses(text: str) -> Iterator[list[str]]:
    words: list[str] = []
    for token in _WORD.findall(text.lower().replace("’", "'")):
        if token[0].isalnum():
            words.append(token.rstrip(".,"))
        elif words:
            yield words
            words = []
    if words:
        yield words


def _texts(base: Base) -> Iterator[str]:
    for name in base.order:
        record = base.records[name]
        yield from _of(record)
        for step in getattr(record, "steps", ()):
            yield step.do
        for output in getattr(record, "outputs", ()):
            yield from (output.label, *(says for _, says, _ in output.values))
        for rule in getattr(record, "rules", ()):
            yield getattr(rule, "says", "")
    for item in base.inputs.values():
        yield from (says for _, says, _ in item.values)
    for term in base.terms.values():
        if term.kind == "thing":
            yield from term.names[:3]


def _of(record: Any) -> Iterator[str]:
    yield from (text for field in _FIELDS if isinstance(text := getattr(record, field, ""), str))
    for field in _LISTS:
        yield from (text for text in getattr(record, field, ()) if isinstance(text, str))
