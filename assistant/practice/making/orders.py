"""Questions on a steering controller that sums the orders of two tillers and the pedals, each held to its limit."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.knowledge.records import Model, Schedule
from assistant.physics.schedule import value_at
from assistant.practice.making.drafting import COMPUTED, Desk, bare
from assistant.practice.making.question import CALCULATION, Draft, Expected, Key

FUNCTION = "total_order"
"""The function whose models are asked here: right is positive, as it sums them."""
_LINES = 2
_SIDES = {1: "right", -1: "left"}


def order_drafts(record: Model, desk: Desk) -> Iterator[Draft]:
    """Yield orders of both tillers and the pedals at a fresh speed."""
    extra = dict(record.extra)
    tiller: Schedule = desk.record(extra["tiller_schedule"])
    pedals: Schedule = desk.record(extra["pedal_schedule"])
    maximum = desk.know.figure(next(i.default for i in record.inputs if i.id == "maximum"), desk.variant)
    if maximum is None:
        return
    for _ in range(_LINES):
        speed = float(desk.chance.randint(5, round(tiller.points[-1][0] * 0.9)))
        limits = value_at(tiller.points, speed), value_at(pedals.points, speed)
        orders = [desk.chance.choice((-1, 1)) * 5.0 * desk.chance.randint(1, 8) for _ in range(2)]
        feet = desk.chance.choice((-1, 1)) * float(desk.chance.randint(1, round(pedals.points[0][1])))
        total = _held(_held(sum(orders), limits[0]) + _held(feet, limits[1]), maximum.value)
        if abs(total) > 0.5:
            yield _draft(record, speed, orders, feet, total, desk)


def _held(order: float, limit: float) -> float:
    return max(-limit, min(limit, order))


def _draft(record: Model, speed: float, orders: list[float], feet: float, total: float, desk: Desk) -> Draft:
    parts = zip(("left tiller", "right tiller", "pedals"), (*orders, feet), strict=True)
    given = ", ".join(f"{name} {desk.shown(abs(order), 'deg')} {_side(order)}" for name, order in parts)
    given += f", ground speed {desk.shown(speed, 'kt')}"
    key = Key(values=(Expected(f"{record.output} to the {_side(total)}", abs(total), record.output_unit, COMPUTED),))
    wordings = desk.wording.sentences("calculation", of=bare(record.of), given=given)
    hint = desk.hint("unit", record.sources, unit=desk.unit_name(record.output_unit))
    return Draft(CALCULATION, record.id, record.topic, key, (wordings,), hint, 3)


def _side(order: float) -> str:
    return _SIDES[1 if order > 0 else -1]
