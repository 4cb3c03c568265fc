"""Which amount of the question before one of a turn stands for: its like by unit, by the words beside it, by size."""

from __future__ import annotations

from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.mentions import Reading

FEW = 4
"""Words of a turn that may be no more than a figure."""
_ZERO = frozenset({"zero", "standstill", "stopped", "stationary"})
_TIMES = 3.0
_SPEEDS = ("kt", "m/s", "mph")


def figure(reading: Reading) -> Amount | None:
    """Return the one bare number of a turn; a short one may say "zero", or "at a standstill"."""
    at = next((k for k, word in enumerate(reading.words) if word in _ZERO), None) if len(reading.words) <= FEW else None
    if not reading.amounts and at is not None:
        return Amount(at, at + 1, 0.0, None, reading.words[at], True, False)
    return reading.amounts[0] if len(reading.amounts) == 1 and reading.amounts[0].unit in (None, "count") else None


def unit_word(unit: str) -> str:
    """Return a unit as it is written behind a number in a question."""
    return {"deg": "degrees", "degC": "degrees celsius", "m/s2": "m/s2"}.get(unit, unit)


def like_of(amount: Amount, before: Question, reading: Reading, know: Knowledge, taken: set[int]) -> Amount | None:
    """Return the amount of the question before that a new one stands for; "by 10" stands for none."""
    if amount.start and reading.words[amount.start - 1] == "by":
        return None
    only = len(before.reading.amounts) == 1 == len(reading.amounts) and len(reading.words) <= FEW
    same = [
        a
        for a in before.reading.amounts
        if a.start not in taken and (_alike(amount, a, know) or (only and _of_its_size(amount, a)))
    ]
    if len(same) < 2:
        return same[0] if same else None
    speeds = [a for a in same if a.unit in _SPEEDS]
    if amount.unit is None and reading.words[max(0, amount.start - 1)] == "at" and len(speeds) == 1:
        return speeds[0]
    cue = reading.words[amount.start - 1] if amount.start else ""
    after = reading.words[amount.end] if amount.end < len(reading.words) else ""
    words = before.reading.words
    for old in same:
        if cue and old.start and words[old.start - 1] == cue and cue not in ("the", "is", "of"):
            return old
        if after and old.end < len(words) and words[old.end] == after:
            return old
    if amount.unit is None:
        same = _near_in_size(amount, same, speeds) or speeds or same
    return min(same, key=lambda old: abs(old.value - amount.value)) if _of_warmth(same) else same[0]


def _near_in_size(new: Amount, same: list[Amount], speeds: list[Amount]) -> list[Amount]:
    """Return the one amount that a bare number is of the size of, where no speed is: "for ninety", after 20 knots in a
    bend of 45 degrees.
    """
    near = [old for old in same if _of_its_size(new, old)]
    return near if len(near) == 1 and speeds and near[0] not in speeds else []


def _of_its_size(new: Amount, old: Amount) -> bool:
    """Return whether a bare number may be of what the one amount before it was of: "50", after 40 minutes."""
    return new.unit is None and old.unit != "count" and old.value / _TIMES <= new.value <= old.value * _TIMES


def _of_warmth(amounts: list[Amount]) -> bool:
    """Return whether amounts may all be temperatures, of which one comes in the place of the nearest."""
    return all(a.unit in (None, "deg", "degC") for a in amounts)


def _alike(new: Amount, old: Amount, know: Knowledge) -> bool:
    if "count" in (new.unit, old.unit):
        return new.unit == old.unit
    if new.unit is None or old.unit is None:
        # A bare number seldom stands for a time: "from 400", after "in ten minutes".
        return old.unit not in ("min", "s", "h")
    return fits(new, old.unit, know.units) is not None
