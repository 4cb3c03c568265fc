"""A word of the books with its contrary in its place: "the switch is ON" for OFF, "800 psi or more", "once less".

The words beside it are the same, so that nothing else can be meant. What the books say so too, of another case, is
true.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.contraries import OTHER
from assistant.practice.marking.reading.said import Said, plain, plain_words
from assistant.practice.marking.reading.wording import NEGATORS, word_set
from assistant.resolving.knowing import Knowledge

_SMALL = word_set("a also an and are as at be by can for if in is it of on or that the then to up was with you")
"""Words that make no frame alone: the one before them does too."""
_JOINING = word_set("a an is are the be")
_FORMER = word_set("formerly former previously was were used old once before")
_REACH = 3
_PAIRS = {plain(a): plain(b) for a, b in (("more", "less"), ("less", "more"), ("with", "without"), ("without", "with"))}
"""Contraries that stand in many places, and contradict only between the same words."""


def in_the_same_frame(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the words whose contrary the full answer has between the same words."""
    full = _plain(need.expected)
    places = [i for i, w in enumerate(said.words) if w not in _JOINING]
    words = [said.words[i] for i in places]
    true = set(_frames(full))
    stated = {frame for clause in re.split(r"[.;]\s", need.expected) for frame in _frames(_plain(clause))}
    colours = frozenset(plain(c) for c, family in know.lexicon.families.items() if family == "colour")
    found = []
    for before, word, k in _placed(words):
        at = places[k]
        others = OTHER.get(word, _NONE) | {_PAIRS.get(word, "")} | (colours - {word} if word in colours else _NONE)
        near = said.reading.words[max(0, at - _REACH) : at]
        if others == _NOTHING or not NEGATORS.isdisjoint(near) or not _FORMER.isdisjoint(near):
            continue
        if word in _PAIRS and _PAIRS[word] in _SMALL_PAIR and not _goes_on_alike(words[k:], full, _PAIRS[word]):
            continue
        if word in _SWITCHED and words[k + 1 : k + 2] and words[k + 1][0].isalpha() and words[k + 1] not in _SMALL:
            continue  # "the brakes off system 2"
        told = [other for other in sorted(others) if (before, other) in stated and other not in words]
        if told and (before, word) not in true:
            found.append(f"{said.reading.words[at]} for {told[0]}")
    return found


def _goes_on_alike(words: Sequence[str], full: Sequence[str], other: str) -> bool:
    """Return whether the word behind a "with" is the one behind a "without"."""
    return any(one == other and full[i + 1 : i + 2] == list(words[1:2]) for i, one in enumerate(full[:-1]))


_SWITCHED = frozenset(("on", "off"))
_SMALL_PAIR = frozenset(map(plain, ("with", "without")))
_NONE: frozenset[str] = frozenset()
_NOTHING = frozenset(("",))


def _plain(text: str) -> list[str]:
    """Return the plain words of a text that make its frames."""
    return _words(plain_words(tuple(re.findall(r"[\w°%.]*[\w°%]", text.lower()))))


def _words(words: Sequence[str]) -> list[str]:
    return [w for w in words if w not in _JOINING]


def _frames(words: Sequence[str]) -> Iterator[tuple[tuple[str, ...], str]]:
    for before, word, _ in _placed(words):
        yield before, word


def _placed(words: Sequence[str]) -> Iterator[tuple[tuple[str, ...], str, int]]:
    """Yield each word with what stands directly before it: one word that tells, or two."""
    for i in range(1, len(words)):
        small = words[i - 1] in _SMALL
        if not small:
            yield (words[i - 1],), words[i], i
        elif i > 1:
            yield (words[i - 2], words[i - 1]), words[i], i
