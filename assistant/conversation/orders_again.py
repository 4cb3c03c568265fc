"""The sum of orders told last with what a turn changes of it: "feet off the pedals", "both right, but at 35 knots".

The sum is taken apart into its orders and its speed, the turn is laid into them, and the whole is said anew, so that a
turn may change several at once. Where the sum said anew does not come out as it was told, it was not understood, and
nothing is taken for such a turn.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.like_amounts import unit_word
from assistant.conversation.other_orders import OTHER_WAY, PEDALS, SEATS, SIDES, Order, controls_named, orders_of
from assistant.conversation.readings import question_of
from assistant.frozen import NamedTuple
from assistant.knowledge.records import Model
from assistant.quantities.amounts import Amount
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import ModelResult, Result
from assistant.resolving.steering_order import Deflection, deflections, leaves_centred, resolve_order
from assistant.understanding.mentions import Reading

_MOST_WORDS = 16
_SURE = 0.9
_PLACES = 6
_ORDERS = "total_order"
_SPEED_BEFORE = frozenset({"at", "doing"})
_ADDING = frozenset({"another", "more", "further", "extra"})
_JOINING = frozenset({
    "add", "adds", "added", "adding", "help", "helps", "helped", "joins", "also", "too", "plus", "well", "and", "with",
    "puts", "put",
})  # fmt: skip
_OFF = frozenset({"off", "no", "without", "out", "lets", "let", "releases", "release", "drops", "nothing", "none"})
_FEET = frozenset({"feet", "foot", "pedal", "pedals"})
_PRONOUNS = frozenset({"he", "she", "they", "i"})
_BESIDE = _OFF | _FEET | _ADDING | _JOINING | SIDES.keys() | {
    "same", "inputs", "full", "of", "again", "holds", "held", "turn", "turns", "turned", "turning", "pedal", "pedals",
    "at", "go", "centred", "centered", "neutral", "free", "straight", "released",
}  # fmt: skip
_NAMES = {"left": "captain tiller", "right": "first officer tiller", PEDALS: PEDALS, "": "tiller", "mine": "my tiller"}
_OTHER_TILLER = "the other tiller"


class _Told(NamedTuple):
    """One order of a sum: of whose control, how far or None for full, and to which side."""

    whose: str
    degrees: float | None
    side: str


class _Sum(NamedTuple):
    """The orders that are summed, and the speed that they are given at."""

    orders: tuple[_Told, ...]
    speed: Amount | None


def orders_again(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the sum of orders told last as a turn changes it, or None where the turn says something else too."""
    told, before = context.result, context.asked
    if before is None or not isinstance(told, ModelResult) or told.model.function != _ORDERS:
        return None
    if len(alone.reading.words) > _MOST_WORDS or not _says_no_more(alone, told.model, knowledge):
        return None
    if isinstance(first.result, ModelResult) and len(deflections(alone, knowledge)) > 1:
        return None  # a sum of its own
    old = _taken_apart(before, told, knowledge)
    new = _changed(alone, before, old, knowledge) if old else None
    if old is None or new is None or (new == old and not alone.named_variant):
        return None
    if new.orders == old.orders and first.score >= _SURE and not alone.named_variant:
        return None
    variant = alone.variant if alone.named_variant else before.variant
    question = _said_anew(new, before, variant, knowledge)
    found = resolve_order(knowledge.record(told.model.id, variant), question, knowledge)
    if not isinstance(found, ModelResult):
        return None
    return question.with_text(alone.reading.text)._replace(named_variant=alone.named_variant), found


def _says_no_more(alone: Question, model: Model, knowledge: Knowledge) -> bool:
    """Return whether a turn names nothing but controls, sides, orders, and a speed."""
    if not (alone.reading.asked & QUANTITIES) <= {model.output}:
        return False
    known = knowledge.matcher.vocabulary(model.id)
    controls = {k for k, _ in controls_named(alone.reading)}
    others = (m for m in alone.reading.mentions if not (m.weak or m.passing or m.start in controls))
    # "Puts in", "is pulling": a state word that is bound to no thing only says that something is done.
    idle = not alone.conditions
    return all(
        _BESIDE.issuperset(m.text.split()) or known & m.concepts or (idle and all(c[0] == "@" for c in m.concepts))
        for m in others
    )


def _said_anew(new: _Sum, before: Question, variant: str, knowledge: Knowledge) -> Question:
    """Return a sum as a question, under the states given before."""
    named = dict.fromkeys(o.whose for o in new.orders)
    parts = []
    for k, order in enumerate(new.orders):
        name = _NAMES.get(order.whose, _OTHER_TILLER)
        if order.whose != PEDALS and len(named) < len(new.orders):
            name = _OTHER_TILLER if k else "tiller"
        parts.append(f"{name} {_degrees(order)} {order.side}")
    speed = (f"at {new.speed.value:.10g} {unit_word(new.speed.unit or 'kt')}",) if new.speed else ()
    question = question_of(" , ".join(("total steering order", *parts, *speed)), knowledge, variant)
    kept = tuple(c._replace(where=()) for c in before.conditions)
    return question._replace(conditions=kept, variant=variant, context=True)


def _degrees(order: _Told) -> str:
    return "full" if order.degrees is None else f"{order.degrees:.10g} degrees"


def _taken_apart(before: Question, told: ModelResult, knowledge: Knowledge) -> _Sum | None:
    """Return the orders that were summed, if their sum said anew comes out as it was told."""
    speed = _speed(before.reading) or _bare_speed(before, knowledge)
    named = tuple(t for o in orders_of(_without(before.reading, speed)) if (t := _told(o, before.reading)))
    counted = tuple(_of_deflection(d, k) for k, d in enumerate(deflections(before, knowledge)))
    for orders in (named, counted):
        if orders and all(o.side for o in orders):
            again = _said_anew(_Sum(orders, speed), before, before.variant, knowledge)
            found = resolve_order(told.model, again, knowledge)
            if isinstance(found, ModelResult) and _comes_to(found) == _comes_to(told):
                return _Sum(orders, speed)
    return None


def _comes_to(result: ModelResult) -> list[tuple[float, str]]:
    return [(round(value.value, _PLACES), value.under) for value in result.values]


def _told(order: Order, reading: Reading) -> _Told | None:
    if order.amount is None:
        return None
    side = SIDES[reading.words[order.side]] if order.side is not None else ""
    return _Told(order.whose, _figure(order.amount), side)


def _figure(amount: Amount) -> float | None:
    """Return an order in degrees, None for full."""
    return None if amount.raw.isalpha() and amount.value == 0.0 and amount.unit is None else amount.value


def _of_deflection(order: Deflection, at: int) -> _Told:
    whose = PEDALS if order.control == PEDALS else "other" if at else ""
    return _Told(whose, order.degrees, {1: "right", -1: "left"}.get(order.side, ""))


def _speed(reading: Reading) -> Amount | None:
    """Return the amount that a text gives as a speed, by its unit or as "at 20"."""
    for amount in reading.amounts:
        at = bool(amount.start) and reading.words[amount.start - 1] in _SPEED_BEFORE
        sided = reading.words[amount.end : amount.end + 1] in (("left",), ("right",))
        if amount.unit not in (None, "deg", "count") or (amount.unit is None and at and not sided):
            return amount
    return None


def _bare_speed(before: Question, knowledge: Knowledge) -> Amount | None:
    taken = {d.place for d in deflections(before, knowledge)}
    bare = [a for a in before.reading.amounts if a.unit is None and a.start not in taken]
    return bare[-1] if bare else None


def _without(reading: Reading, speed: Amount | None) -> Reading:
    return reading._replace(amounts=tuple(a for a in reading.amounts if a is not speed))


def _changed(alone: Question, before: Question, old: _Sum, knowledge: Knowledge) -> _Sum | None:
    """Return a sum as a turn changes it, None where it is not said which order is meant."""
    speed = _speed(alone.reading)
    reading = _without(alone.reading, speed)
    orders: tuple[_Told, ...] | None = old.orders
    named = controls_named(reading)
    words = frozenset(reading.words)
    if not named and not words.isdisjoint(_PRONOUNS):
        named = _of_whom(words, before, old, knowledge)
    if reading.amounts or not words.isdisjoint(SIDES) or not words.isdisjoint(OTHER_WAY):
        orders = _all_changed(reading, old) if "both" in words else _each_changed(reading, named, old)
    elif not words.isdisjoint(_OFF) or leaves_centred(reading.words):
        feet = [(0, PEDALS)] if not words.isdisjoint(_FEET) else []
        orders = _left_off([whose for _, whose in feet or named], old)
    elif named:
        return None  # a control, and nothing that it does
    return None if orders is None else _Sum(orders, speed or old.speed)


def _of_whom(words: frozenset[str], before: Question, old: _Sum, knowledge: Knowledge) -> list[tuple[int, str]]:
    """Return whose control "he" or "I" stands for: one that is told as his or mine, else the only one named last."""
    owned = [o.whose for o in old.orders if o.whose not in (*SEATS, PEDALS, "")]
    mine = "mine" if "i" in words else ""
    told = [whose for whose in owned if (whose == "mine") == bool(mine)]
    named = [] if told or mine else controls_named(knowledge.reader.read(before.reading.text))
    return [(0, told[0])] if len(told) == 1 else named if len(named) == 1 else []


def _left_off(named: list[str], old: _Sum) -> tuple[_Told, ...] | None:
    at = next((k for whose in named if (k := _which(whose, old)) is not None), None)
    if at is None or len(old.orders) < 2:
        return None
    return old.orders[:at] + old.orders[at + 1 :]


def _all_changed(reading: Reading, old: _Sum) -> tuple[_Told, ...] | None:
    """Return all orders to the side, and by the figure, that a turn says of both."""
    tillers = [o for o in old.orders if o.whose != PEDALS]
    both = tillers if len(tillers) > 1 else list(old.orders)
    sides = {SIDES[w] for w in reading.words if w in SIDES}
    if len(both) < 2 or len(sides) > 1 or len(reading.amounts) > 1:
        return None
    found = []
    for order in old.orders:
        new = order
        if order in both:
            turned = not OTHER_WAY.isdisjoint(reading.words)
            side = next(iter(sides), _turned(order.side) if turned else order.side)
            new = order._replace(side=side, degrees=reading.amounts[0].value if reading.amounts else order.degrees)
        found.append(new)
    return tuple(found)


def _turned(side: str) -> str:
    return "left" if side == "right" else "right"


def _each_changed(reading: Reading, named: list[tuple[int, str]], old: _Sum) -> tuple[_Told, ...] | None:
    """Return the orders with each that a turn gives in the place of the one of its control, or beside all."""
    new = orders_of(reading)
    if not new and len(reading.amounts) < 2 and (named or len(old.orders) == 1):
        at_side = next((k for k, w in enumerate(reading.words) if w in SIDES), None)
        whose = named[0][1] if named else old.orders[0].whose
        new = [Order(whose, 0, next(iter(reading.amounts), None), at_side)]
    found = list(old.orders)
    for order in new:
        at = _which(order.whose, old)
        side = SIDES[reading.words[order.side]] if order.side is not None else ""
        if at is not None:
            found[at] = _replaced(found[at], order, side, reading)
        elif order.amount is not None and side and _is_new(order, old, reading):
            found.append(_Told(order.whose, _figure(order.amount), side))
        else:
            return None
    return tuple(found) if new else None


def _replaced(old: _Told, order: Order, side: str, reading: Reading) -> _Told:
    side = side or (_turned(old.side) if not OTHER_WAY.isdisjoint(reading.words) else old.side)
    if order.amount is None:
        return old._replace(side=side)
    figure = _figure(order.amount)
    more = not _ADDING.isdisjoint(reading.words[: order.amount.start])
    if more and old.degrees is not None and figure is not None and side == old.side:
        figure += old.degrees
    return _Told(old.whose, figure, side)


def _which(whose: str, old: _Sum) -> int | None:
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
    return rest[0] if len(rest) == 1 == len(named) else None


def _is_new(order: Order, old: _Sum, reading: Reading) -> bool:
    """Return whether an order comes beside those told: of pedals, or of the tiller that nothing was said of."""
    if order.whose == PEDALS:
        return True
    tillers = [o for o in old.orders if o.whose != PEDALS]
    said = bool(tillers) and (tillers[0].whose in SEATS or tillers[0].whose == "mine")
    return len(tillers) < 2 and (said or not tillers or not _JOINING.isdisjoint(reading.words))
