"""Another order for a control: "both to the left", "make the other one 30 right", "mine the other way"."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.conversation.reading_turns.turned_round import Places
from assistant.frozen import NamedTuple
from assistant.quantities.amounts import Amount
from assistant.resolving.knowing import Question
from assistant.understanding.mentions import Reading

SIDES = {"left": "left", "right": "right", "port": "left", "starboard": "right"}
_TURNED = {"left": "right", "right": "left", "port": "right", "starboard": "left"}
_SEATS = {"captain": "left", "first_officer": "right"}
SEATS = frozenset(_SEATS.values())
_CONTROLS = frozenset({"tiller", "captain", "first_officer", "pedal", "pedal_steering"})
_HIS = frozenset({"mine", "my", "other", "his", "hers", "yours", "theirs"})
"""Words for a control by whose it is, beside one that is named."""
OTHER_WAY = frozenset({"opposite", "opposed", "reversed", "way"})
_BESIDE = frozenset({
    "and", "so", "ok", "then", "now", "make", "it", "is", "that", "what", "if", "the", "to", "a", "with", "turn",
    "turns", "put", "puts", "pulls", "goes", "instead", "say", "degrees", "deg", "both", "all", "of", "them", "other",
    "way", "s", "same", "but", "has", "at", "order", "tiller", "tillers", "one", "only", "about", "how", "opposite",
    "side", "direction", "reversed", "round", "turned", "going", "was", "on", "are", "we", "i", "just", "go",
    "as", "well", "too", "also", "full", "around",
})  # fmt: skip
_FULL = frozenset({"full", "hard", "fully"})
_ORDINALS = frozenset({"first", "second"})
_NEAR = 2
PEDALS = "pedals"


def turns_round(words: Sequence[str]) -> bool:
    """Return whether a turn says that an order goes the other way; "which way" asks which it is."""
    return any(w in OTHER_WAY and (w != "way" or words[max(0, i - 1)] not in _ASKING) for i, w in enumerate(words))


_ASKING = frozenset(("which", "what"))


class Order(NamedTuple):
    """What one control orders: whose it is, where it is named, how far, and where it says to which side.

    also: how else it is named right behind its order: "right seat 35 right on hers".
    """

    whose: str
    place: int
    amount: Amount | None
    side: int | None
    also: str = ""


def replace_orders(before: Question, reading: Reading, places: Places) -> None:
    """Put the order of a control, or the side of all, in the place of the one before: "both to the left"."""
    sides = [k for k, w in enumerate(reading.words) if w in SIDES]
    old = [o for o in orders_of(before.reading) if o.amount and o.side is not None]
    if not old or any(a.unit not in (None, "deg") for a in reading.amounts) or not _says_no_more(reading):
        return
    new = orders_of(reading)
    turns = turns_round(reading.words) and not sides
    if _apart(reading) and len(old) == 1 and old[0].side is not None and "both" in before.reading.words:
        places.replace((old[0].side,), ("opposite",), range(len(reading.words)))
    elif not reading.amounts and ("both" in reading.words or len(old) == 1 or not new) and (sides or turns):
        if len(old) == 1 or "both" in reading.words or "all" in reading.words:
            _turn_all(old, reading.words[sides[-1]] if sides else "", before.reading, reading, places)
    else:
        if not new and reading.amounts and "both" in reading.words:
            side = sides[-1] if sides else None
            new = [Order(o.whose, 0, reading.amounts[0], side) for o in old if o.whose != PEDALS]
        _replace_each(new, old, turns, before, reading, places)


def _turn_all(old: list[Order], side: str, before: Reading, reading: Reading, places: Places) -> None:
    for order in old:
        _turn_round(order, side, before, places, range(len(reading.words)))


def _replace_each(
    new: list[Order], old: list[Order], turns: bool, before: Question, reading: Reading, places: Places
) -> None:
    """Put each new order in the place of the one that it stands for; turns: only its side is turned."""
    everything = range(len(reading.words))
    for order in new:
        like = _like(order, old)
        if like is None or like.amount is None:
            continue
        if order.amount is not None:
            figure = reading.words[order.amount.start : order.amount.end]
            places.replace(range(like.amount.start, like.amount.end), figure, everything)
        if order.side is not None or turns:
            side = reading.words[order.side] if order.side is not None else ""
            _turn_round(like, side, before.reading, places, everything)


def only_turns(reading: Reading) -> bool:
    """Return whether a turn says no more than that what was told is turned round: "and the other way round?"."""
    words = [w for w in reading.words if w[0].isalpha()]
    return turns_round(reading.words) and (_BESIDE | OTHER_WAY).issuperset(words) and not reading.amounts


def _apart(reading: Reading) -> bool:
    """Return whether a turn says that two controls are turned against each other: "one left, one right"."""
    sides = {SIDES[w] for w in reading.words if w in SIDES}
    return len(sides) == 2 and not reading.amounts and reading.words.count("one") + reading.words.count("other") == 2


def _says_no_more(reading: Reading) -> bool:
    """Return whether a turn holds nothing but controls, sides, figures and small words."""
    controls = {k for m in reading.mentions if m.concepts & _CONTROLS for k in m.taken}
    numbers = {k for a in reading.amounts for k in range(a.start, a.end)}
    rest = (w for k, w in enumerate(reading.words) if k not in controls | numbers and w[0].isalpha())
    return all(w in SIDES or w in _HIS or w in _BESIDE for w in rest)


def _turn_round(order: Order, side: str, before: Reading, places: Places, everything: range) -> None:
    """Put a side in the place of that of an order, or the other one."""
    if order.side is not None:
        places.replace((order.side,), (side or _TURNED[before.words[order.side]],), everything)


def _like(order: Order, old: list[Order]) -> Order | None:
    """Return the order that a new one stands for: of the same control, or of the only one that it may be."""
    same = [o for o in old if order.whose and order.whose in (o.whose, o.also)]
    same = same or [o for o in old if o.whose == order.whose]
    if len(same) == 1:
        return same[0]
    named = {o.whose for o in old} & SEATS
    other = [o for o in old if o.whose not in named and o.whose != PEDALS]
    apart = order.whose not in named and order.whose != PEDALS and bool(order.whose)
    return other[0] if not same and apart and len(named) == 1 == len(other) else None


def orders_of(reading: Reading) -> list[Order]:
    """Return the orders that a text gives, each with what stands between its control and the next."""
    words, named = reading.words, controls_named(reading)
    found: list[Order] = []
    ends = [place for place, _ in named[1:]] + [len(words)]
    for (place, whose), following in zip(named, ends, strict=bool(named)):
        inside = [a for a in reading.amounts if place <= a.start < following and a.unit in (None, "deg")]
        full = (k for k in range(place, following) if words[k] in _FULL)
        inside += [Amount(k, k + 1, 0.0, None, words[k], True, False) for k in full]
        amount = inside[0] if inside else None
        start = amount.end if amount else place + 1
        until = min(start + _NEAR + 1, following) if amount else following
        side = next((k for k in range(start, until) if words[k] in SIDES), None)
        if amount or side is not None or len(named) == 1:
            found.append(Order(whose, place, amount, side))
        elif found and whose in _HIS and words[place - 1] == "on":
            found[-1] = found[-1]._replace(also=whose)
    return found


def controls_named(reading: Reading) -> list[tuple[int, str]]:
    """Return where each control is named, by its seat, by who sits there, by "mine", or as the pedals."""
    found: dict[int, str] = {}
    for mention in reading.mentions:
        if mention.concepts & _CONTROLS:
            found[mention.start] = _whose(mention.start, mention.concepts, reading)
    inside = {k for m in reading.mentions if m.concepts & _CONTROLS for k in m.taken}
    for k, word in enumerate(reading.words):
        if word in _ORDINALS and k not in inside:
            found[k] = word
        if word in _HIS and reading.words[k + 1 : k + 2] != ("way",) and k not in found:
            found[k] = "mine" if word == "my" else word
    merged: list[tuple[int, str]] = []
    for place, whose in sorted(found.items()):
        if merged and place - merged[-1][0] <= _NEAR and _one(merged[-1][1], whose):
            merged[-1] = (place, merged[-1][1] or whose)  # "captain's tiller", "my tiller"
        else:
            merged.append((place, whose))
    return merged


def _one(first: str, second: str) -> bool:
    """Return whether two names beside each other are of one control."""
    return second in ("", first) or (first in _HIS and second == "")


def _whose(start: int, concepts: frozenset[str], reading: Reading) -> str:
    """Return whose control is named: by its seat, by who sits there, or as the pedals."""
    if concepts & {"pedal", "pedal_steering"}:
        return PEDALS
    for concept, seat in _SEATS.items():
        if concept in concepts:
            return seat
    for concept, seat in _SEATS.items():
        if any(m.concepts & {concept} and start - _NEAR <= m.end <= start for m in reading.mentions):
            return seat
    return SIDES.get(reading.words[start - 1], "") if start else ""
