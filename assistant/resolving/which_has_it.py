"""Which of some things has a size, so that the thing is asked for: "which setting uses the highest pressure"."""

from __future__ import annotations

from assistant.understanding.mentions import BOUNDS, Reading

_HAS = frozenset({
    "has", "have", "uses", "use", "gives", "give", "takes", "take", "needs", "need", "gets", "get", "applies", "apply",
    "sends", "send", "puts", "put", "runs", "run", "holds", "hold", "carries", "carry", "reaches", "reach",
})  # fmt: skip
"""What a thing does with a size that it has."""


def asks_which_has_it(reading: Reading, quantities: frozenset[str]) -> bool:
    """Return whether it is asked which of some things has a size, which is known then: "which setting | uses | the
    highest pressure".
    """
    words = reading.words
    if words[:1] != ("which",) or not (verbs := [k for k, word in enumerate(words) if word in _HAS]):
        return False
    before = [m for m in reading.mentions if 0 < m.start < verbs[0] and not m.weak]
    return bool(before) and all(m.concepts.isdisjoint(quantities | BOUNDS) for m in before)
