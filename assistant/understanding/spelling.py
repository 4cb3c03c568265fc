"""Mend a word that is neither the knowledge's nor ordinary English, if one known word is near enough.

Mending chooses *what* is meant and never a number: words with digits are left alone, and so are short ones,
where one letter makes another word.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.frozen import NamedTuple

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


def mend(word: str, known: Sequence[str], second: Sequence[str] = (), most: int | None = None) -> list[Mended]:
    """Return the nearest known words, best first; words of `second` only where none of `known` is as near.

    most: a stricter bound than the length allows.
    """
    bound = allowed_distance(word) if most is None else min(most, allowed_distance(word))
    if not bound or not word.isalpha():
        return []
    ranked = _near(word, known, bound)
    others = _near(word, second, bound)
    if others and (not ranked or others[0][0] < ranked[0][0]):
        ranked = others
    if not ranked:
        return []
    best = ranked[0][0]
    return [Mended(name, int(cost)) for cost, name in ranked if cost <= best]


def _near(word: str, known: Sequence[str], bound: int) -> list[tuple[float, str]]:
    from rapidfuzz import process  # imported when a word is unknown, not at every start
    from rapidfuzz.distance import OSA

    hits = process.extract(word, known, scorer=OSA.distance, score_cutoff=bound, limit=12)
    near = [(_cost(word, name, distance), name) for name, distance, _ in hits if not _another(word, name, distance)]
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


def _cost(word: str, name: str, distance: float) -> float:
    """Rank equals: people keep the first letter and the letters themselves, and lose or swap the order."""
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
    return cost
