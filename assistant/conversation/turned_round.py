"""Turn round what the question before said: "and without?", "both to the left", "make the other one 30 right"."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Protocol

from assistant.quantities.amounts import Amount
from assistant.resolving.knowing import Question
from assistant.understanding.mentions import Reading

_WITH = {"with": "with", "without": "without", "w/o": "without"}
_BESIDE_WITH = frozenset({
    "and", "an", "so", "ok", "okay", "or", "then", "now", "what", "about", "how", "if", "them", "it", "any", "that",
    "those", "the", "same", "but", "again",
})  # fmt: skip
_SIDES = {"left": "left", "right": "right", "port": "left", "starboard": "right"}
_SEATS = {"captain": "left", "first_officer": "right"}
_CONTROLS = frozenset({"tiller", "captain", "first_officer", "pedal", "pedal_steering"})
_BESIDE_ORDER = frozenset({
    "and", "so", "ok", "then", "now", "make", "it", "is", "that", "what", "if", "the", "to", "a", "with", "turn",
    "turns", "put", "puts", "pulls", "goes", "instead", "say", "degrees", "deg", "both", "all", "of", "them", "other",
    "way", "s", "same", "but", "has", "at", "order", "tiller", "tillers",
})  # fmt: skip
_NEAR = 2


class Places(Protocol):
    """What is put in the place of words of the question before, and what of the turn is used up."""

    used: set[int]
    drop: set[int]

    def replace(self, old: Sequence[int], new: Sequence[str], used: Iterable[int]) -> None:
        """Put words in the place of some of the question before; used: the turn's own that they stand for."""


def replace_with(before: Question, reading: Reading, places: Places) -> None:
    """Put "without" in the place of "with" before a thing, or the other way about, where a turn says no more."""
    said = [_WITH[w] for w in reading.words if w in _WITH]
    rest = {w for w in reading.words if w[0].isalpha() and w not in _WITH}
    if len(said) != 1 or not _BESIDE_WITH.issuperset(rest):
        return
    words, everything = before.reading.words, range(len(reading.words))
    starts = {m.start for m in before.reading.mentions}
    for k in range(len(words) - 1, -1, -1):
        if _WITH.get(words[k], said[0]) != said[0] and starts & {k + 1, k + 2}:
            places.replace((k,), said, everything)
            return
    given = [c for c in before.conditions if c.where and not c.is_result]
    for condition in reversed(given if said == ["without"] else ()):
        for mention in before.reading.mentions:
            if set(mention.taken) < set(condition.where) and not any(c[0] == "@" for c in mention.concepts):
                places.replace(condition.where, ("without", *mention.text.split()), everything)
                return


def replace_orders(before: Question, reading: Reading, places: Places) -> None:
    """Put the order of a control, or the side of all, in the place of the one before: "both to the left"."""
    sides = [k for k, w in enumerate(reading.words) if w in _SIDES]
    old = _orders(before.reading)
    if not old or not sides or any(a.unit not in (None, "deg") for a in reading.amounts):
        return
    controls = {k for m in reading.mentions if m.concepts & _CONTROLS for k in m.taken}
    rest = {w for k, w in enumerate(reading.words) if k not in controls and w not in _SIDES and w[0].isalpha()}
    numbers = {w for a in reading.amounts for w in reading.words[a.start : a.end]}
    if not _BESIDE_ORDER.issuperset(rest - numbers):
        return
    everything = range(len(reading.words))
    if not reading.amounts and ("both" in reading.words or len(old) == 1):
        for _, _, side in old:
            if side is not None:
                places.replace((side,), (reading.words[sides[-1]],), everything)
        return
    for control, amount, side in _orders(reading):
        for named, figure, turned in old:
            if named == control and side is not None and turned is not None:
                places.replace(range(figure.start, figure.end), reading.words[amount.start : amount.end], everything)
                places.replace((turned,), (reading.words[side],), everything)


def _orders(reading: Reading) -> list[tuple[str, Amount, int | None]]:
    """Return the orders that a text gives: whose control, how far, and where it says to which side."""
    found: list[tuple[str, Amount, int | None]] = []
    words = reading.words
    for amount in reading.amounts:
        if amount.unit not in (None, "deg"):
            continue
        after = range(amount.end, min(amount.end + _NEAR + 1, len(words)))
        side = next((k for k in after if words[k] in _SIDES), None)
        before = [m for m in reading.mentions if m.concepts & _CONTROLS and m.end <= amount.start]
        if before and side is not None:
            found.append((_whose(before[-1].start, before[-1].concepts, reading), amount, side))
    return found


def _whose(start: int, concepts: frozenset[str], reading: Reading) -> str:
    """Return whose control is named: by its seat, by who sits there, or "pedals"."""
    if concepts & {"pedal", "pedal_steering"}:
        return "pedals"
    for concept, seat in _SEATS.items():
        if concept in concepts:
            return seat
        if any(m.concepts & {concept} and start - _NEAR <= m.end <= start for m in reading.mentions):
            return seat
    return _SIDES.get(reading.words[start - 1], "") if start else ""
