"""The unit that an answer is wanted in: "the tyre limit in miles per hour" names a unit there, and no thing."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from assistant.frozen import NamedTuple
from assistant.quantities.amounts import Amount
from assistant.quantities.units import Unit, Units

_IN = frozenset(("in", "into"))
_COUNTED = "many"
_OF_WHAT, _SHARE = frozenset(("what", "which")), frozenset(("percent", "percentage"))
"""Of what a share alone is asked without "in": "at what percent of the target"."""
_BOUNDS = frozenset(("above", "below", "over", "under"))
_WANTING = frozenset(("what", "which", "how", "whats", "convert", "give", "express"))
"""Words by which an amount is wanted, and none is given."""
_SHORT = 6
"""In a question of a few words a unit at the end is asked for as well: "max free fall speed mph"."""
_DIVIDED = (["per"], ["/"])
_MEASURES = frozenset((
    "speed", "pressure", "length", "mass", "time", "temperature", "angle", "acceleration", "energy", "ratio",
    "temperature_difference",
))  # fmt: skip
"""What an answer may measure; a unit of anything else makes it another question."""
_ASKED_AS = {
    "time": ("duration",), "acceleration": ("deceleration",), "length": ("length", "altitude"),
    "angle": ("angle", "temperature"), "ratio": ("ratio", "factor"),
    "temperature_difference": ("temperature",),
}  # fmt: skip
"""The quantities that a unit's dimension is asked for as; a bare "degrees" may be either."""


class AskedUnit(NamedTuple):
    """A unit that stands alone where an answer is asked for in it, and where its name begins and ends."""

    symbol: str
    start: int
    end: int
    quantities: tuple[str, ...]
    outright: bool
    """Whether "in" stands before it; else it may be a thing of that name: "how many bars are amber?", "white bars"."""


def unit_asked(words: Sequence[str], amounts: Sequence[Amount], units: Units) -> AskedUnit | None:
    """Return the unit that a question wants its answer in, or None: "in feet", "how many pounds", or at its end."""
    inside = {k for a in amounts for k in range(a.start, a.end)}
    for i, before in enumerate(("", *words[:-1])):
        asks = _asks_for(i, before, words)
        if i in inside or not (asks or (len(words) <= _SHORT and i)):
            continue
        found = units.match(words, i, glued=before in _IN)
        if found is not None and _is_wanted(*found, asks, words):
            return AskedUnit(found[0].symbol, i, found[1], _quantities(found[0]), before in _IN)
    return None


def _asks_for(at: int, before: str, words: Sequence[str]) -> bool:
    """Return whether a unit at a place would be asked for, by the word before it or by where it stands."""
    if before in _IN or before == _COUNTED:
        return True
    if before in _OF_WHAT and words[at] in _SHARE:
        return True
    if before in _BOUNDS and at + 1 >= len([w for w in words if w[0].isalnum()]):
        return True  # "release the parking brake above degC"
    if before == "," and words[-1] == "please" and at + 2 == len(words):
        return True
    return not at and "at" in words[1:3]  # "kt at the tiller limit 56"


def given_apart(unit: AskedUnit | None, amounts: Sequence[Amount], words: Sequence[str]) -> Amount | None:
    """Return the one bare amount of a question that asks for no amount, whose unit is told apart from it: "the gauge
    reads in kilopascals and gives 1,280, may I leave it?".
    """
    bare = [a for a in amounts if a.unit is None]
    if unit is None or not unit.outright or len(bare) != 1 or not _WANTING.isdisjoint(words):
        return None
    if list(words[unit.end : unit.end + 1]) == ["at"] and bare[0].start == unit.end + 1:
        return None  # "the limit in knots at 22,000"
    if bare[0].end + 1 == unit.start:
        return None  # "140 in bar": a figure wanted in another unit than its own
    if list(words[bare[0].start - 1 : bare[0].start]) == ["at"] and len(amounts) > 1:
        return None  # "Mach 0.6 at 35,000 in knots"
    return bare[0]


def _is_wanted(unit: Unit, end: int, asks: bool, words: Sequence[str]) -> bool:
    """Return whether a unit measures what an answer may be of, and is whole: "knots per second" is no speed."""
    return unit.dimension in _MEASURES and (asks or end == len(words)) and words[end : end + 1] not in _DIVIDED


def _quantities(unit: Unit) -> tuple[str, ...]:
    return _ASKED_AS.get(unit.dimension, (unit.dimension,))


def narrowing_nothing(mentions: list[Any], unit: AskedUnit, kinds: Mapping[str, str]) -> list[Any]:
    """Return the mentions with those of the unit's name passing: it says how an answer is wanted, not of what.

    A thing that it names besides ("in bar") is not meant, and a quantity that a longer name holds is only part of
    it: the hour of "miles per hour" is no duration.
    """
    part = unit.end - unit.start > 1
    result = []
    for mention in mentions:
        measures = any(kinds.get(c) == "quantity" for c in mention.concepts)
        if not unit.start <= mention.start < unit.end:
            result.append(mention)
        elif mention.is_plain or (measures and not part):
            result.append(mention._replace(passing=True, weak=mention.weak or (unit.outright and mention.is_plain)))
    return result
