"""Whether what is said of a thing is denied, or half said: "has | never | been lost", "is | not exactly | lost"."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from itertools import pairwise

_NOT = frozenset({
    "not", "never", "nor", "nobody", "nothing", "hardly", "barely", "scarcely", "forgot", "forgotten", "forgets",
    "neither",
})  # fmt: skip
_NO_TAILS = frozenset(("longer", "one"))
BESIDE = frozenset({
    "been", "yet", "even", "ever", "quite", "really", "still", "has", "have", "had", "being", "be", "any", "to", "at",
    "completely", "fully", "actually", "currently", "got", "get", "is", "was", "are", "were", "did", "do", "does",
})  # fmt: skip
"""Words that may stand between "not" and what it denies."""
ACTING = BESIDE | {
    "the", "my", "our", "switch", "switched", "turn", "turned", "take", "took", "taken", "put", "set", "pull", "pulled",
    "select", "selected", "let", "move", "moved", "bring", "brought", "leave", "left", "get", "has", "of",
    "a", "an",
}  # fmt: skip
"""Words that may stand between "forgot" and the thing, where its state follows: "forgot to switch the … on"."""
_HEDGES = frozenset({"exactly", "strictly", "entirely", "totally", "wholly", "altogether", "technically", "properly"})
"""Words after "not" that leave open how it is: "not exactly lost"."""
_MOST_BESIDE = 4


def is_hedged(between: Sequence[str]) -> bool:
    """Return whether words between a thing and its state leave open how it is: "System 1 is | not exactly | lost"."""
    return any(word == "not" and following in _HEDGES for word, following in pairwise(between))


def denied_before(words: Sequence[str], at: int, beside: Collection[str]) -> bool:
    """Return whether a word is denied by one before it, with little between."""
    for i in range(at - 1, max(-1, at - 2 - _MOST_BESIDE), -1):
        word = words[i]
        if word == "nothing" and words[i - 1 : i] == ("to",):
            return False  # "the accumulator has bled down to nothing, loss of System 1"
        if word in _NOT or (word == "no" and i + 1 < at and words[i + 1] in _NO_TAILS):
            return True
        if word not in beside and word not in _NO_TAILS:
            return False
    return False
