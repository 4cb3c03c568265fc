"""Amounts named as bounds: "below 2,000", "slower than 190"; and those denied to be passed: "no more than 205"."""

from __future__ import annotations

from collections.abc import Sequence

_MORE = frozenset({
    "above", "over", "beyond", "past", "exceed", "exceeds", "exceeding", "exceeded", "busted", "bust", "overshot", ">",
})  # fmt: skip
_LESS = frozenset(("below", "under", "beneath", "less", "fewer", "<"))
_THAN = frozenset(("than", "then"))
_LESS_THAN = frozenset({
    "less", "fewer", "lower", "slower", "cooler", "colder", "lighter", "smaller", "shorter", "thinner", "shallower",
    "narrower", "lesser", "sooner", "weaker", "emptier",
})  # fmt: skip
_COMPARING = _LESS_THAN | {"more"}
_DENYING = frozenset(("not", "no", "never", "nothing", "without", "any"))
_REASON = "why"
_NEAR = 2


def bound_side(words: Sequence[str], at: int) -> int:
    """Return -1 where all below an amount at a place is meant, 1 where all above it is, 0 for the amount itself.

    What is denied to pass an amount may be as much as that: "not over 230".
    """
    place, side = _comparing(words, at)
    if not side:
        return 0
    before = words[max(0, place - _NEAR) : place]
    return 0 if not _DENYING.isdisjoint(before[-1:]) and _REASON not in before else side


def _comparing(words: Sequence[str], at: int) -> tuple[int, int]:
    """Return the place of the word that compares with an amount, and to which side it does; 0 for none."""
    for place in range(at - 1, max(-1, at - 1 - _NEAR), -1):
        word = words[place]
        if word in _THAN and place and _compares(words[place - 1], word):
            return place - 1, -1 if words[place - 1] in _LESS_THAN else 1
        if word in _LESS:
            return place, -1
        if word in _MORE:
            return place, 1
    return at, 0


def _compares(word: str, than: str) -> bool:
    return than == "than" or word in _COMPARING or word.endswith("er")
