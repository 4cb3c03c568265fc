"""Sum the orders of two tillers and the pedals as a steering controller does, each held to its limit.

Right is positive. Two tillers' orders add with their signs; pedals are one movement for both pilots and count
once. "Full" is the limit at the speed given.
"""

from __future__ import annotations

from assistant.knowledge.records import Model, Schedule
from assistant.physics.schedule import value_at
from assistant.quantities.show import round_shown
from assistant.resolving.amounts_for import fits
from assistant.resolving.controls_in_use import OutOfUse, out_of_use
from assistant.resolving.controls_named import leaves_centred
from assistant.resolving.deflections import deflections, left_out
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.orders_shared import Deflection, opposed, same_way
from assistant.resolving.results import ModelResult, ModelValue, Needed, TableResult

_TOGETHER = frozenset(("total", "together", "combined", "sum", "altogether", "both", "all"))


def resolve_order(model: Model, question: Question, know: Knowledge) -> ModelResult | Needed | TableResult | None:
    """Return the total order at the speed given, what is missing for it, or the state in which nothing orders."""
    found = deflections(question, know)
    if not found or (_is_one_in_full(found) and not leaves_centred(question.reading.words)):
        return None
    idle = out_of_use(model, question, know)
    without_tiller = next((one.state for one in idle if one.control == "tiller"), None)
    if without_tiller:
        return without_tiller  # nothing orders: the state answers
    extra = dict(model.extra)
    tiller: Schedule = know.record(extra["tiller_schedule"], question.variant)
    pedal: Schedule = know.record(extra["pedal_schedule"], question.variant)
    speed = _speed(tiller, found, question, know)
    if speed is None and _cancel(found):
        speed = 0.0  # whatever the speed
    maximum = know.figure(next(i.default for i in model.inputs if i.id == "maximum"), question.variant)
    if speed is None:
        return Needed(model, ("the ground speed",), ("speed",))
    if maximum is None:
        return None
    found = opposed(found, question)
    unsaid = all(not d.side for d in found)
    if _pressed_apart(found):
        return Needed(model, ("one order of the pedals, which both pilots press as one",), ("side",))
    if left_out(found, question):
        return Needed(model, ("how far each control is turned",), ("degrees",))
    if unsaid and (same_way(question.reading.words) or not _TOGETHER.isdisjoint(question.reading.words)):
        found = [d._replace(side=1) for d in found]
    if (
        len({d.control for d in found} | {d.place for d in found}) > 1
        and len(found) > 1
        and any(not d.side for d in found)
    ):
        return Needed(model, ("which way each control is turned, left or right",), ("side",))
    limits = {"tiller": value_at(tiller.points, speed), "pedals": value_at(pedal.points, speed)}
    limits.update({one.control: 0.0 for one in idle})
    summed = _sum(model, found, limits, maximum.value, speed, know, (*model.sources, *tiller.sources[:1]))
    summed = _without_side(summed) if unsaid else summed
    return _with_idle(summed, idle)


def _is_one_in_full(found: list[Deflection]) -> bool:
    """Return whether all that is said is one control turned in full to no side, as its limit is asked for."""
    return len(found) == 1 and not found[0].side and found[0].number == 1 and found[0].part == 1.0


def _with_idle(result: ModelResult, idle: tuple[OutOfUse, ...]) -> ModelResult:
    """Return a sum with what is said of the controls that order nothing."""
    if not idle:
        return result
    says = "; ".join(one.says[0].lower() + one.says[1:] for one in idle)
    values = tuple(v._replace(under="; ".join(filter(None, (v.under, says)))) for v in result.values)
    return result._replace(values=values)


def _pressed_apart(found: list[Deflection]) -> bool:
    """Return whether the pedals are said to be pressed in two ways at once, which they cannot be."""
    return len({(d.side, d.degrees) for d in found if d.control == "pedals"}) > 1


def _without_side(result: ModelResult) -> ModelResult:
    """Return a sum without its side, where the question names none."""
    values = tuple(v._replace(under="", working=v.working.replace(" right", "")) for v in result.values)
    return result._replace(values=values)


def _cancel(found: list[Deflection]) -> bool:
    """Return whether two tillers are turned alike, one to each side, and nothing else is."""
    if len(found) != 2 or any(d.control != "tiller" or not d.side for d in found):
        return False
    return found[0].side == -found[1].side and found[0].degrees == found[1].degrees


def _speed(tiller: Schedule, found: list[Deflection], question: Question, know: Knowledge) -> float | None:
    for amount in question.reading.amounts:
        if amount.unit and amount.unit != "deg" and (value := fits(amount, tiller.input_unit, know.units)) is not None:
            return value
    taken = {d.place for d in found}
    bare = [a for a in question.reading.amounts if a.unit is None and a.start not in taken]
    return bare[-1].value if bare else None


def _sum(
    model: Model, found: list[Deflection], limits: dict[str, float], maximum: float, speed: float, know: Knowledge,
    sources: tuple[object, ...],
) -> ModelResult:  # fmt: skip
    def show(value: float) -> str:
        return round_shown(abs(value), "deg", know.units) + (" right" if value > 0 else " left" if value < 0 else "")

    sided = all(d.side for d in found)
    totals = {"tiller": 0.0, "pedals": 0.0}
    raw = {"tiller": 0.0, "pedals": 0.0}
    for item in found:
        degrees = item.part * limits[item.control] if item.degrees is None else item.degrees
        raw[item.control] += degrees * (item.side or 1) * item.number
    parts = []
    for control, name in (("tiller", "tillers"), ("pedals", "pedals")):
        limit = limits[control]
        totals[control] = max(-limit, min(limit, raw[control]))
        if any(d.control == control for d in found):
            held = "" if abs(raw[control]) <= limit + 1e-9 else f", held to {show(limit).split(' ')[0]}"
            parts.append(f"{name} {show(raw[control]) if sided else show(abs(raw[control])).split(' ')[0]}{held}")
    total = max(-maximum, min(maximum, totals["tiller"] + totals["pedals"]))
    limit_words = ", ".join(
        f"{name} limit {show(limits[c]).split(' ')[0]}" for c, name in (("tiller", "tiller"), ("pedals", "pedal"))
    )
    working = f"at {round_shown(speed, 'kt', know.units)}: {limit_words}; " + "; ".join(parts)
    working += f"; total {show(total)}, held to {show(maximum).split(' ')[0]} either way"
    side = "" if not sided else "right" if total > 1e-9 else "left" if total < -1e-9 else "straight ahead"
    value = ModelValue(abs(total), "deg", "angle", side, working)
    return ModelResult(model, (value,), model.assumes, "", tuple(dict.fromkeys(sources)))  # type: ignore[arg-type]
