"""Mend a word that is neither the knowledge's nor ordinary English, if one known word is near enough.

Mending chooses *what* is meant and never a number: words with digits are left alone, and so are short ones,
where one letter makes another word.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from itertools import pairwise

from assistant.frozen import NamedTuple

_ROWS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")
_VOWELS = "aeiou"
_OFTEN = 0.3
"""What a word that is used often comes forward: rare words are seldom meant."""
_TURNING = frozenset(("de", "un", "in", "im", "dis", "non", "mis", "re", "over", "under"))


class Mended(NamedTuple):
    """A known word that may have been meant, and how many letters apart it is."""

    word: str
    distance: int


def allowed_distance(word: str) -> int:
    """Return how many edits a word of this length may be from the word meant."""
    length = len(word)
    return 0 if length < 3 else 1 if length < 6 else 2 if length < 9 else 3


def apart(one: str, other: str) -> int:
    """Return how many edits two words are apart, a swap of neighbours counting as one."""
    from rapidfuzz.distance import OSA

    return int(OSA.distance(one, other))


def mend(
    word: str, known: Sequence[str], second: Sequence[str] = (), most: int | None = None, often: Collection[str] = ()
) -> list[Mended]:
    """Return the nearest known words, best first; words of `second` only where none of `known` is as near.

    most: a stricter bound than the length allows. often: words that are meant before others as near.
    """
    bound = allowed_distance(word) if most is None else min(most, allowed_distance(word))
    if not bound or not word.isalpha():
        return []
    ranked = _near(word, known, bound, often)
    others = _near(word, second, bound, often)
    if others and (not ranked or others[0][0] < ranked[0][0]):
        ranked = others
    if not ranked:
        return []
    best = ranked[0][0]
    return [Mended(name, int(ranked_cost(word, name, apart(word, name)))) for cost, name in ranked if cost <= best]


def slips_of(word: str, known: Sequence[str]) -> list[str]:
    """Return the known words of which a word may be a slip of the finger, though it is a word itself: a letter left
    out or doubled, two changed over, or one struck for its neighbour.
    """
    if len(word) < 3 or not word.isalpha():
        return []
    return [
        name
        for name in known
        if name[0] == word[0]
        and abs(len(name) - len(word)) <= 1
        and apart(word, name) == 1
        and not _turns(word, name)
        and not _inflected(word, name)
        and (len(name) > len(word) or _is_slip(word, name))
    ]


def _inflected(word: str, name: str) -> bool:
    return word + "s" == name or name + "s" == word


def _is_slip(word: str, name: str) -> bool:
    """Return whether a word of the same length or a letter more is what a finger makes of another."""
    if len(word) > len(name):
        return any(a == b and word[:i] + word[i + 1 :] == name for i, (a, b) in enumerate(pairwise(word)))
    changed = [(a, b) for a, b in zip(word, name, strict=True) if a != b]
    return len(changed) == 2 or (len(word) > 3 and all(_are_neighbours(a, b) for a, b in changed))


def _are_neighbours(one: str, other: str) -> bool:
    return any(one + other in row or other + one in row for row in _ROWS)


def _near(word: str, known: Sequence[str], bound: int, often: Collection[str]) -> list[tuple[float, str]]:
    from rapidfuzz import process  # imported when a word is unknown, not at every start
    from rapidfuzz.distance import OSA

    hits = process.extract(word, known, scorer=OSA.distance, score_cutoff=bound, limit=24)
    near = [
        (ranked_cost(word, name, distance) - _OFTEN * (name in often), name)
        for name, distance, _ in hits
        if not _another(word, name, distance)
    ]
    if len(word) == 3:
        # Three letters make many words: only one letter left out of a word that begins alike is mended.
        near = [(cost, name) for cost, name in near if len(name) == 4 and name[0] == word[0]]
    return sorted(near)


def _another(word: str, name: str, distance: float) -> bool:
    """Return whether a near word is rather another one: two slips and a wrong beginning, or a meaning turned."""
    return (distance >= 2 and word[0] != name[0]) or _turns(word, name)


def _turns(word: str, name: str) -> bool:
    """Return whether two words differ by a beginning that turns the meaning: "deactivated" is not "activated"."""
    longer, shorter = (word, name) if len(word) > len(name) else (name, word)
    return longer.endswith(shorter) and longer[: -len(shorter)] in _TURNING


def ranked_cost(word: str, name: str, distance: float) -> float:
    """Return how far a word is from a known one, so that of equals the likelier comes first.

    People keep the first letter and the letters themselves, and lose or swap the order.
    """
    cost = distance
    if word[0] != name[0]:
        cost += 0.6
    if sorted(word) == sorted(name):
        cost -= 0.5
    if set(word) == set(name):
        cost -= 0.3
    if word[-1] != name[-1]:
        cost += 0.1
    if len(name) > len(word):
        cost -= 0.15  # letters are left out more often than put in
    if _halves_a_consonant(word, name):
        cost -= 0.05
    return cost


def _halves_a_consonant(word: str, name: str) -> bool:
    """Return whether a word has one consonant where another has two: "hoter" is hotter before it is a hooter."""
    doubled = (i for i, (a, b) in enumerate(pairwise(name)) if a == b and a not in _VOWELS)
    return any(name[:i] + name[i + 1 :] == word for i in doubled)
