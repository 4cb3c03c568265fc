"""The sum of orders told last with what a turn changes of it: "feet off the pedals", "both right, but at 35 knots".

The sum is taken apart into its orders and its speed, the turn is laid into them, and the whole is said anew, so that a
turn may change several at once. Where the sum said anew does not come out as it was told, it was not understood, and
nothing is taken for such a turn.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.conversation.context import Context
from assistant.conversation.on_calculations.orders_changed import (
    ADDING,
    FEET,
    JOINING,
    OFF,
    Sum,
    Told,
    changed,
    figure,
    speed_of,
    without,
)  # fmt: skip
from assistant.conversation.on_figures.told_again import asked_back
from assistant.conversation.reading_turns.like_amounts import unit_word
from assistant.conversation.reading_turns.other_orders import PEDALS, SEATS, SIDES, Order, controls_named, orders_of
from assistant.conversation.reading_turns.readings import question_of
from assistant.knowledge.records import Model
from assistant.quantities.amounts import Amount
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import Scored
from assistant.resolving.deflections import deflections
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.orders_shared import Deflection
from assistant.resolving.results import ModelResult, Needed, Result
from assistant.resolving.steering_order import resolve_order
from assistant.understanding.mentions import Reading

_MOST_WORDS = 16
_SURE = 0.9
_PLACES = 6
_ORDERS = "total_order"
_BESIDE = OFF | FEET | ADDING | JOINING | SIDES.keys() | {
    "same", "inputs", "full", "of", "again", "holds", "held", "turn", "turns", "turned", "turning", "pedal", "pedals",
    "at", "go", "centred", "centered", "neutral", "free", "straight", "released",
    "over", "all", "both", "them", "everything", "wait", "hang", "was", "goes", "way", "his", "hers", "mine", "other",
    "top", "one", "on", "let", "lets", "that", "push", "press", "kick", "hard",
}  # fmt: skip
_LETTING, _WHO = frozenset({"let", "lets", "letting"}), frozenset({"one", "other", "he", "she", "they", "i"})
_BRIEF = 9
_NAMES = {"left": "captain tiller", "right": "first officer tiller", PEDALS: PEDALS, "": "tiller", "mine": "my tiller"}
_OTHER_TILLER = "the other tiller"


def orders_again(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the sum of orders told last as a turn changes it, or None where the turn says something else too."""
    told, before = context.result, context.asked
    if before is None:
        return None
    if isinstance(told, Needed) and _is_sum(told.record) and _lets_go(alone, told.record, knowledge):
        return _still_lacking(alone, told, context, knowledge)
    if not isinstance(told, ModelResult) or not _is_sum(told.model):
        return None
    if len(alone.reading.words) > _MOST_WORDS or not _says_no_more(alone, told.model, knowledge):
        return None
    if isinstance(first.result, ModelResult) and len(deflections(alone, knowledge)) > 1:
        return None  # a sum of its own
    old = _taken_apart(before, told, knowledge)
    new = changed(alone, context, old, knowledge) if old else None
    if new is None and _lets_go(alone, told.model, knowledge):
        unclear = asked_back(context, knowledge)
        return (alone, unclear) if unclear else None
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


def _still_lacking(
    alone: Question, told: Needed, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return a sum that lacks its speed without the order of who lets go; what it lacks is asked for once more."""
    before = context.asked
    assert before is not None
    orders = tuple(t for o in orders_of(before.reading) if (t := _told(o, before.reading)))
    new = changed(alone, context, Sum(orders, None), knowledge) if orders and all(o.side for o in orders) else None
    if new is None or not isinstance(told.record, Model):
        unclear = asked_back(context, knowledge)
        return (alone, unclear) if unclear else None
    question = _said_anew(new, before, before.variant, knowledge)
    found = resolve_order(knowledge.record(told.record.id, before.variant), question, knowledge)
    return (question.with_text(alone.reading.text), found) if isinstance(found, Needed) else None


def _is_sum(record: object) -> bool:
    return isinstance(record, Model) and record.function == _ORDERS


def _lets_go(alone: Question, record: object, knowledge: Knowledge) -> bool:
    """Return whether a turn says that somebody lets go of a control, and no more."""
    words = frozenset(alone.reading.words)
    whose = bool(controls_named(alone.reading)) or not words.isdisjoint(_WHO)
    lets = "go" in words and not words.isdisjoint(_LETTING)
    brief = len(alone.reading.words) <= _BRIEF and not alone.reading.amounts
    return isinstance(record, Model) and brief and whose and lets and _says_no_more(alone, record, knowledge)


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


def _said_anew(new: Sum, before: Question, variant: str, knowledge: Knowledge) -> Question:
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


def _degrees(order: Told) -> str:
    return "full" if order.degrees is None else f"{order.degrees:.10g} degrees"


def _taken_apart(before: Question, told: ModelResult, knowledge: Knowledge) -> Sum | None:
    """Return the orders that were summed, if their sum said anew comes out as it was told."""
    speed = speed_of(before.reading) or _bare_speed(before, knowledge)
    named = tuple(t for o in orders_of(without(before.reading, speed)) if (t := _told(o, before.reading)))
    counted = tuple(_counted(deflections(before, knowledge)))
    for orders in (named, counted):
        if orders and all(o.side for o in orders):
            again = _said_anew(Sum(orders, speed), before, before.variant, knowledge)
            found = resolve_order(told.model, again, knowledge)
            if isinstance(found, ModelResult) and _comes_to(found) == _comes_to(told):
                return Sum(orders, speed)
    return None


def _comes_to(result: ModelResult) -> list[tuple[float, str]]:
    return [(round(value.value, _PLACES), value.under) for value in result.values]


def _told(order: Order, reading: Reading) -> Told | None:
    if order.amount is None:
        return None
    side = SIDES[reading.words[order.side]] if order.side is not None else ""
    return Told(order.whose, figure(order.amount), side)


def _counted(orders: list[Deflection]) -> Iterator[Told]:
    """Yield the order of each control; one of both tillers is that of either seat."""
    for k, order in enumerate(orders):
        side = {1: "right", -1: "left"}.get(order.side, "")
        both = order.control != PEDALS and order.number == len(SEATS) and order.part == 1.0
        for seat in sorted(SEATS) if both else ("other" if k else "",):
            yield Told(PEDALS if order.control == PEDALS else seat, order.degrees, side)


def _bare_speed(before: Question, knowledge: Knowledge) -> Amount | None:
    taken = {d.place for d in deflections(before, knowledge)}
    bare = [a for a in before.reading.amounts if a.unit is None and a.start not in taken]
    return bare[-1] if bare else None
