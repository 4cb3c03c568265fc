"""What a thing is asked to count as: "does 1,480 count as | lost |", "when is it regarded as | empty |".

The state is asked about then, and not given; nor does a reading beside it give one.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.understanding.clauses import STOPS, asking

_COUNTING = frozenset({
    "count", "counts", "counted", "counting", "treat", "treats", "treated", "treating", "regard", "regarded", "class",
    "classed", "classified", "classify", "rate", "rated", "taken", "take", "reckoned", "seen",
})  # fmt: skip
_LEADS = frozenset({
    "do", "does", "did", "is", "are", "should", "can", "may", "must", "will", "would", "shall", "when", "what", "which",
    "how", "where", "below", "under", "whether", "if",
})  # fmt: skip
_JOINING = frozenset(("and", "but", ".", "?", ";"))
"""Words behind which more is asked: "does that count as lost, | and can I still steer"."""
_WITHIN, _BESIDE = 7, 3
"""Words between such a verb and its "as", and from there to the state."""


def counted_as(words: Sequence[str]) -> frozenset[int]:
    """Return the places of the words behind "as" by which it is asked what something counts as."""
    if "as" not in words or _COUNTING.isdisjoint(words):
        return frozenset()
    asks = asking(words)
    ends = len(words) - (words[-1] in STOPS)
    last = max((i for i, word in enumerate(words[:ends]) if word in _JOINING), default=0)
    return frozenset(
        k
        for at, word in enumerate(words)
        if word == "as" and at > last
        if any(words[i] in _COUNTING and i in asks and _is_asked(i, words) for i in range(max(0, at - _WITHIN), at))
        for k in range(at + 1, min(at + 1 + _BESIDE, len(words)))
    )


def _is_asked(at: int, words: Sequence[str]) -> bool:
    """Return whether words that ask lead to a verb in its clause: "treat it as lost" bids."""
    begin = next((k + 1 for k in range(at - 1, -1, -1) if words[k] in STOPS), 0)
    return not _LEADS.isdisjoint(words[begin:at])
