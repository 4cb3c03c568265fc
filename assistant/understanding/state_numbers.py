"""A reading of a thing as the state that its documents define it to be: "System 2 at 1,200 psi" is lost."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from assistant.quantities.amounts import Amount
from assistant.quantities.units import Units
from assistant.understanding.bounds_said import bound_side
from assistant.understanding.condition import Condition, StateWords
from assistant.understanding.grouping import Group
from assistant.understanding.mentions import Reading

_FAR = 6
_HELD_IN = frozenset(("in", "on", "left", "from"))
_HOLDING = _HELD_IN | {"the", "my", "our"}
_PARTING = frozenset((",", ".", "?", ";", "and", "but", "can", "may", "i", "we", "with", "press", "or"))
_ASKING = frozenset(("?", ";"))


def numbered(
    reading: Reading, group: Group, following: int, known: StateWords, units: Units, asking: Collection[int] = ()
) -> list[Condition]:
    """Return the states that an amount beside some things means for them."""
    if group.aside or known.numbers.keys().isdisjoint(group.inputs):
        return []
    for amount in reading.amounts:
        if not _beside(reading.words, amount, group, following):
            continue
        if amount.start in asking and group.start not in asking:
            continue  # "System 1 lost, may I press 1,000 psi": the amount is asked about
        side = bound_side(reading.words, amount.start)
        bound = [c for name in group.inputs if (c := by_number(name, amount, known, units, side))]
        if bound:
            return [c._replace(where=(*c.where, *group.places)) for c in bound]
    return []


def reads(reading: Reading, at: int, amount_at: int) -> bool:
    """Return whether what follows a state word up to an amount only reads it: "has still got | 2,600 psi"."""
    return 0 <= amount_at - at <= 3 and not _PARTING.intersection(reading.words[at:amount_at])


def _beside(words: Sequence[str], amount: Amount, group: Group, following: int) -> bool:
    """Return whether an amount is said of some things: "System 2 at 1,200 psi", "1,700 psi in the accumulator"."""
    if amount.end <= group.start:
        between = words[amount.end : group.start]
        return bool(between) and between[0] in _HELD_IN and all(w in _HOLDING for w in between)
    if not group.end <= amount.start < following or amount.start - group.end > _FAR:
        return False
    return not _ASKING.intersection(words[group.end : amount.start])


def by_number(name: str, amount: Amount, known: StateWords, units: Units, side: int = 0) -> Condition | None:
    """Return the state of an input that a reading of it means, where its documents define one.

    side: -1 for a reading that is only said to be below the amount, 1 for one above it.
    """
    for test, value, unit, state, remark in known.numbers.get(name, ()):
        if amount.unit and unit and units.get(amount.unit).dimension != units.get(unit).dimension:
            return None
        if not amount.unit and unit and amount.value and not 0.1 * value <= amount.value <= 10 * value:
            return None
        given = units.convert(amount.value, amount.unit, unit) if unit and amount.unit else amount.value
        if passes(test, given + side * 1e-6 * abs(value), value):
            return Condition(name, state, remark, where=tuple(range(amount.start, amount.end)))
    return None


def passes(test: str, given: float, value: float) -> bool:
    """Return whether a value passes a test of a knowledge file."""
    if test == "below":
        return given < value
    if test == "up to":
        return given <= value
    if test == "over":
        return given > value
    if test == "from":
        return given >= value
    return test == "otherwise"
