"""Temperatures that are told of the air: "it is 10 °C on the ramp", "OAT 12". No reading of a thing is one of them."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.quantities.amounts import Amount
from assistant.understanding.clauses import STOPS
from assistant.understanding.mentions import Mention, Reading

OUTSIDE_AIR = "outside_temp"
_DEGREES = frozenset(("deg", "degC", "degF", None))
_LEADS = frozenset({
    "it", "is", "was", "at", "around", "about", "only", "now", "today", "and", "with", "of", "to", "went", "down",
    "dropped", "fell", "reads", "temperature", "temp",
})  # fmt: skip
"""Words that name nothing that an amount could be a reading of."""
_ENDS = STOPS | {"and", "with", "no", "what", "how", "when", "can", "may", "but", "so"}
"""Words at which what is told of the air ends."""
_NEAR = 2


def degrees_out(mentions: Sequence[Mention], amounts: Sequence[Amount], words: Sequence[str]) -> Mention | None:
    """Return a bare "out" behind degrees, or behind a bare number of a question for a time: "15 | out |"."""
    for amount in amounts:
        k = amount.end
        if tuple(words[k : k + 1]) != ("out",) or (k + 1 < len(words) and words[k + 1] not in STOPS):
            continue
        lasting = amount.unit is None and any("duration" in m.concepts for m in mentions)
        if lasting or amount.unit in _DEGREES - {None}:
            return Mention(k, k + 1, (k,), frozenset((OUTSIDE_AIR,)), frozenset(), False, words[k])
    return None


def of_the_air(reading: Reading) -> frozenset[int]:
    """Return where the amounts begin that are told of the air outside, and of no thing."""
    said = [m for m in reading.mentions if OUTSIDE_AIR in m.concepts]
    return frozenset(
        a.start
        for a in (reading.amounts if said else ())
        if a.unit in _DEGREES and any(_is_told_by(m, a, reading.words) for m in said)
    )


def _is_told_by(mention: Mention, amount: Amount, words: Sequence[str]) -> bool:
    """Return whether words for the air stand around an amount, right before it, or behind it where nothing else
    leads it.
    """
    if mention.start < amount.start < mention.end:  # "it is 10 outside"
        return _leads_nothing(words[: mention.start])
    if mention.end <= amount.start:
        return _LEADS.issuperset(words[mention.end : amount.start])
    between = words[amount.end : mention.start]
    ends = mention.end == len(words) or words[mention.end] in _ENDS or "it" in words[: amount.start]
    return ends and len(between) < _NEAR and STOPS.isdisjoint(between) and _leads_nothing(words[: amount.start])


def _leads_nothing(before: Sequence[str]) -> bool:
    """Return whether what stands before an amount in its clause names nothing that it could be a reading of."""
    last = max((k for k, word in enumerate(before) if word in STOPS), default=-1)
    return _LEADS.issuperset(before[last + 1 :])
