"""Lengths that are told of a thing beneath what it is measured from: "2 mm below the housing" stands out of nothing."""

from __future__ import annotations

from assistant.knowledge.records import Bands
from assistant.quantities.amounts import Amount
from assistant.resolving.knowing import Question

_BENEATH = frozenset({"below", "under", "beneath", "inside", "into", "in", "underneath", "within", "deep", "smaller"})
_IN_ALL = frozenset(("total", "all", "length"))
_LEADING = 3
_SUNK = frozenset({"sunk", "recessed", "inside", "below", "under", "beneath", "sunken", "minus"})
"""Words by which a thing does not stand out of what it is measured from."""


def is_beneath(amount: Amount, bands: Bands, question: Question) -> bool:
    """Return whether a length is said to be beneath what a rule measures from: "2 mm below the housing"."""
    if amount.unit is None or not any(rule.value == 0 and rule.unit == bands.unit for rule in bands.rules):
        return False
    words = question.reading.words
    after, before = words[amount.end : amount.end + 1], words[: amount.start]
    after = () if not _IN_ALL.isdisjoint(words[amount.end + 1 : amount.end + 2]) else after
    near = before if before[-1:] == ("by",) else before[-_LEADING:]
    return not _BENEATH.isdisjoint((*after, *before[-1:])) or not _SUNK.isdisjoint((*near, *after))
