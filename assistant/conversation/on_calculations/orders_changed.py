"""What a turn changes of a sum of orders: one control's order, those of all, the speed; or one that is left off.

A turn that gives an order and names no control means the one that was named last; of two that order the same, either.
"""

from __future__ import annotations

from assistant.conversation.context import LATELY, Context
from assistant.conversation.reading_turns.other_orders import (
    PEDALS,
    SEATS,
    SIDES,
    Order,
    controls_named,
    orders_of,
    turns_round,
)
from assistant.frozen import NamedTuple
from assistant.quantities.amounts import Amount
from assistant.resolving.controls_named import leaves_centred
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.mentions import Reading

ADDING = frozenset({"another", "more", "further", "extra"})
JOINING = frozenset({
    "add", "adds", "added", "adding", "help", "helps", "helped", "joins", "also", "too", "plus", "well", "and", "with",
    "puts", "put",
})  # fmt: skip
OFF = frozenset({"off", "no", "without", "out", "lets", "let", "releases", "release", "drops", "nothing", "none"})
FEET = frozenset({"feet", "foot", "pedal", "pedals"})
_SPEED_BEFORE = frozenset({"at", "doing"})
_PRONOUNS = frozenset({"he", "she", "they", "i"})
_ONE = "one"
_EVERYONE = frozenset({"both", "all", "everything", "everyone"})
_ARTICLES = frozenset({"the", "that", "his", "her", "my", "their", "s"})
_WAS = frozenset({"was", "is", "should", "goes", "were", "went"})
_DENYING = frozenset({"not", "than", "of"})
_FULL = frozenset({"full", "hard", "fully"})


class Told(NamedTuple):
    """One order of a sum: of whose control, how far or None for full, and to which side."""

    whose: str
    degrees: float | None
    side: str


class Sum(NamedTuple):
    """The orders that are summed, and the speed that they are given at."""

    orders: tuple[Told, ...]
    speed: Amount | None


def changed(alone: Question, context: Context, old: Sum, knowledge: Knowledge) -> Sum | None:
    """Return a sum as a turn changes it, None where it is not said which order is meant."""
    speed = speed_of(alone.reading)
    reading = without(alone.reading, speed)
    if any(amount.spoken and 0 < amount.value < 1 for amount in reading.amounts):
        return None  # a part of full
    orders: tuple[Told, ...] | None = old.orders
    named = own = controls_named(reading)
    words = frozenset(reading.words)
    if not named and not words.isdisjoint(_PRONOUNS):
        named = _of_whom(words, context, old, knowledge)
    elif not named and words.isdisjoint(_EVERYONE):
        only = [(0, old.orders[0].whose)] if len(old.orders) == 1 else []
        named = [(0, "other")] if _ONE in words and _alike(old) else only or _named_last(context, knowledge)
    figured = _by_its_figure(reading, old)
    if figured is not None:
        orders = figured
    elif reading.amounts or not words.isdisjoint(SIDES) or turns_round(reading.words):
        every = not words.isdisjoint(_EVERYONE) or _turns_all(reading, old)
        orders = _all_changed(reading, old) if every else _each_changed(reading, named, old)
    elif not words.isdisjoint(OFF) or leaves_centred(reading.words):
        feet = [(0, PEDALS)] if not words.isdisjoint(FEET) else []
        either = named if _ONE in words and _alike(old) else _pronoun(named, words)
        orders = _left_off([whose for _, whose in feet or own or either], old)
    elif own:
        return None  # a control, and nothing that it does
    return None if orders is None else Sum(orders, speed or old.speed)


def _by_its_figure(reading: Reading, old: Sum) -> tuple[Told, ...] | None:
    """Return the orders with the one turned that a turn means by its figure: "the fifteen was to the right"."""
    words = reading.words
    sides = [SIDES[w] for k, w in enumerate(words) if w in SIDES and words[max(0, k - 1)] not in _DENYING]
    turned = turns_round(words)
    if len(reading.amounts) != 1 or len(set(sides)) > 1 or not (sides or turned):
        return None
    amount = reading.amounts[0]
    pointed = amount.start and words[amount.start - 1] in _ARTICLES
    said = any(word in _WAS for word in words[amount.end : amount.end + 2])
    meant = [k for k, o in enumerate(old.orders) if o.degrees == amount.value]
    if len(meant) != 1 or not (pointed or said or turned):
        return None  # "and 20 right instead" is another figure
    order = old.orders[meant[0]]
    side = sides[0] if sides else _turned(order.side)
    new = order._replace(side=side)
    return None if new == order else (*old.orders[: meant[0]], new, *old.orders[meant[0] + 1 :])


def _of_whom(
    words: frozenset[str], context: Context, old: Sum, knowledge: Knowledge
) -> list[tuple[int, str]]:
    """Return whose control "he" or "I" stands for: one that is told as his or mine, else the only one named last."""
    owned = [o.whose for o in old.orders if o.whose not in (*SEATS, PEDALS, "")]
    mine = "mine" if "i" in words else ""
    told = [whose for whose in owned if (whose == "mine") == bool(mine)]
    if len(told) == 1:
        return [(0, told[0])]
    return [] if told or mine else [each for each in _named_last(context, knowledge) if each[1] != PEDALS]


def _pronoun(named: list[tuple[int, str]], words: frozenset[str]) -> list[tuple[int, str]]:
    return [] if words.isdisjoint(_PRONOUNS) else named


def _named_last(context: Context, knowledge: Knowledge) -> list[tuple[int, str]]:
    """Return the one control that was named last, none where a turn named several."""
    for question in (context.asked, *(turn.asked for turn in context.earlier[:LATELY])):
        named = controls_named(knowledge.reader.read(question.reading.text)) if question else []
        if named:
            return named if len(named) == 1 else []
    return []


def _alike(old: Sum) -> bool:
    """Return whether two tillers order the same, so that either may be meant."""
    tillers = [o for o in old.orders if o.whose != PEDALS]
    return len(tillers) == 2 and tillers[0][1:] == tillers[1][1:]


def _left_off(named: list[str], old: Sum) -> tuple[Told, ...] | None:
    at = next((k for whose in named if (k := _which(whose, old)) is not None), None)
    if at is None or len(old.orders) < 2:
        return None
    return old.orders[:at] + old.orders[at + 1 :]


def _all_changed(reading: Reading, old: Sum) -> tuple[Told, ...] | None:
    """Return all orders to the side, and by the figure, that a turn says of both."""
    tillers = [o for o in old.orders if o.whose != PEDALS]
    both = tillers if len(tillers) > 1 else list(old.orders)
    sides = {SIDES[w] for w in reading.words if w in SIDES}
    if len(both) < 2 or len(sides) > 1 or len(reading.amounts) > 1:
        return None
    found = []
    full = not _FULL.isdisjoint(reading.words)
    for order in old.orders:
        new = order
        if order in both:
            turned = turns_round(reading.words)
            side = next(iter(sides), _turned(order.side) if turned else order.side)
            degrees = reading.amounts[0].value if reading.amounts else None if full else order.degrees
            new = order._replace(side=side, degrees=degrees)
        found.append(new)
    return tuple(found)


def _turns_all(reading: Reading, old: Sum) -> bool:
    """Return whether a turn turns what was told, and names no control, side or figure: "and the other way round"."""
    way = turns_round(reading.words) and SIDES.keys().isdisjoint(reading.words)
    pointed = [whose for _, whose in controls_named(reading) if whose != "other"]
    return way and not reading.amounts and not pointed and len(old.orders) > 1


def _turned(side: str) -> str:
    return "left" if side == "right" else "right"


def _each_changed(reading: Reading, named: list[tuple[int, str]], old: Sum) -> tuple[Told, ...] | None:
    """Return the orders with each that a turn gives in the place of the one of its control, or beside all."""
    new = orders_of(reading)
    if not new and len(reading.amounts) < 2 and (named or len(old.orders) == 1):
        at_side = next((k for k, w in enumerate(reading.words) if w in SIDES), None)
        whose = named[0][1] if named else old.orders[0].whose
        new = [Order(whose, 0, next(iter(reading.amounts), None), at_side)]
    elif len(new) == 1 == len(named) and (new[0].amount is None or new[0].side is None):
        new = [_in_full(new[0], reading)]
    found = list(old.orders)
    for order in new:
        at = _which(order.whose, old)
        side = SIDES[reading.words[order.side]] if order.side is not None else ""
        if at is not None:
            found[at] = _replaced(found[at], order, side, reading)
        elif order.amount is not None and side and _is_new(order, old, reading):
            found.append(Told(order.whose, figure(order.amount), side))
        else:
            return None
    return tuple(found) if new else None


def _in_full(order: Order, reading: Reading) -> Order:
    """Return the order of the only control named with what stands before its name: "add full left pedal"."""
    full = (Amount(k, k + 1, 0.0, None, w, True, False) for k, w in enumerate(reading.words) if w in _FULL)
    amount = order.amount or next((a for a in reading.amounts if a.unit in (None, "deg")), None) or next(full, None)
    inside = range(order.place, order.place + 1)
    side = order.side
    if side is None:
        seat = order.whose if order.whose in SEATS else ""
        found = [k for k, w in enumerate(reading.words) if w in SIDES and k not in inside and SIDES[w] != seat]
        side = found[0] if len(found) == 1 else None
    return order._replace(amount=amount, side=side)


def _replaced(old: Told, order: Order, side: str, reading: Reading) -> Told:
    side = side or (_turned(old.side) if turns_round(reading.words) else old.side)
    if order.amount is None:
        return old._replace(side=side)
    degrees = figure(order.amount)
    more = not ADDING.isdisjoint(reading.words[: order.amount.start])
    if more and old.degrees is not None and degrees is not None and side == old.side:
        degrees += old.degrees
    return Told(old.whose, degrees, side)


def _which(whose: str, old: Sum) -> int | None:
    """Return which order a turn means by whose control it names."""
    same = [k for k, o in enumerate(old.orders) if o.whose == whose]
    tillers = [k for k, o in enumerate(old.orders) if o.whose != PEDALS]
    if len(same) == 1 or whose == PEDALS:
        return same[0] if same else None
    if whose in ("first", "second"):
        return tillers[whose == "second"] if len(tillers) > (whose == "second") else None
    if whose == "" or len(tillers) < 2:
        return tillers[0] if whose == "" and len(tillers) == 1 else None
    named = [k for k in tillers if old.orders[k].whose in SEATS or old.orders[k].whose == "mine"]
    rest = [k for k in tillers if k not in named]
    if not rest and whose == "other" and _alike(old):
        return tillers[1]
    return rest[0] if len(rest) == 1 == len(named) else None


def _is_new(order: Order, old: Sum, reading: Reading) -> bool:
    """Return whether an order comes beside those told: of pedals, or of the tiller that nothing was said of."""
    if order.whose == PEDALS:
        return True
    tillers = [o for o in old.orders if o.whose != PEDALS]
    said = bool(tillers) and (tillers[0].whose in SEATS or tillers[0].whose == "mine")
    return len(tillers) < 2 and (said or not tillers or not JOINING.isdisjoint(reading.words))



def figure(amount: Amount) -> float | None:
    """Return an order in degrees, None for full."""
    return None if amount.raw.isalpha() and amount.value == 0.0 and amount.unit is None else amount.value


def speed_of(reading: Reading) -> Amount | None:
    """Return the amount that a text gives as a speed, by its unit or as "at 20"."""
    for amount in reading.amounts:
        at = bool(amount.start) and reading.words[amount.start - 1] in _SPEED_BEFORE
        sided = reading.words[amount.end : amount.end + 1] in (("left",), ("right",))
        if amount.unit not in (None, "deg", "count") or (amount.unit is None and at and not sided):
            return amount
    return None


def without(reading: Reading, speed: Amount | None) -> Reading:
    """Return a reading without the amount that is its speed."""
    return reading._replace(amounts=tuple(a for a in reading.amounts if a is not speed))
