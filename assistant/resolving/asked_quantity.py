"""The quantity that a question asks for and the one that a result gives: "how long" wants no temperature."""

from __future__ import annotations

from assistant.knowledge.records import Model
from assistant.resolving import limits as limit_rules
from assistant.resolving.knowing import MOVING_THE_GEAR, Knowledge, Question
from assistant.resolving.results import (
    BandResult,
    CheckResult,
    FactResult,
    LimitResult,
    ModelResult,
    Needed,
    ProcedureResult,
    Result,
    ScheduleResult,
)
from assistant.resolving.which_has_it import asks_which_has_it
from assistant.understanding.asked_units import AskedUnit
from assistant.understanding.mentions import BOUNDS, Mention, Reading

QUANTITIES = frozenset({
    "speed", "duration", "temperature", "pressure", "angle", "mass", "length", "altitude", "energy", "deceleration",
    "count", "ratio", "factor",
})  # fmt: skip
_SIZES = frozenset({"mass", "length", "duration", "pressure", "temperature"})
_MEASURES = frozenset(("long", "heavy", "wide", "high", "tall", "thick", "deep", "big", "large", "broad", "narrow"))
AS_ASKED = {"time": "duration", "acceleration": "deceleration", "temperature_difference": "temperature"}
NOT_TOLD = 0.33
"""Share of its score that a result keeps which has no figure of the size, or in the unit, that is asked for."""
_BOUND_NAMES = frozenset({"maximum", "max", "minimum", "min", "highest", "lowest", "least", "smallest"})
_FAR = frozenset({"length", "altitude"})
_HOW_FAR = frozenset(("far", "further", "furthest", "farther", "farthest"))
_SWUNG = frozenset(("swing", "swings", "swung", "swivel", "swivels"))
_MEASURED = frozenset({"length", "mass"})
_LONG = frozenset({"duration", "length"})
"""What only a figure tells of a thing."""
_LASTING = ("duration",)
_LEVELS = (5_000, 50_000)
"""Bare numbers that are altitudes in feet, where no mass is spoken of: "VLE at 30,000"."""
_HEAVY = 20_000
"""Bare numbers that are masses in kilograms, where a take-off or landing is spoken of: "landing at 49,800"."""
_SLOWER, _FASTER = 5 / 6, 7 / 5
"""Shares of the limits for moving the gear between which a bare number is an airspeed in knots, where it is moved:
"207 and the legs still coming up".
"""
_SAID = (FactResult, ProcedureResult)
"""Results that are stated, and computed of nothing."""
_AS_GIVEN = {"time": "duration", "acceleration": "deceleration"}


def quantity_of(result: Result, know: Knowledge) -> str:
    """Return the quantity that a computed result is of, as questions name it."""
    if isinstance(result, _SAID):
        return ""  # nearly all results are
    unit = ""
    if isinstance(result, ModelResult) and result.values:
        unit = result.values[0].unit
    elif isinstance(result, Needed) and isinstance(result.record, Model):
        unit = result.record.output_unit
    elif isinstance(result, ScheduleResult) and result.given == result.given:
        unit = result.schedule.output_unit if result.value is not None else result.schedule.input_unit
    elif isinstance(result, CheckResult):
        unit = result.checks[0].unit
    elif isinstance(result, LimitResult):
        figure = limit_rules.bound_value(result.limits[0])
        unit = figure.unit if figure else ""
    if not unit:
        return ""
    return "altitude" if unit == "ft" else _measured_in(unit, know)


def _measured_in(unit: str, know: Knowledge) -> str:
    """Return the quantity that a unit measures, as questions name it."""
    dimension = know.units.get(unit).dimension
    return AS_ASKED.get(dimension, dimension)


def asked_of(reading: Reading) -> frozenset[str]:
    """Return the quantities that a question asks for: those of the unit that it wants them in, or those it names; how
    far something is turned is an angle.
    """
    if reading.unit:
        return frozenset(reading.unit.quantities)
    asked = reading.asked & QUANTITIES
    return asked | {"angle"} if "length" in asked and _is_turned(reading) else asked


def _is_turned(reading: Reading) -> bool:
    """Return whether it is asked how far something turns, which is no way that is covered."""
    far = not _HOW_FAR.isdisjoint(reading.words)
    return far and (reading.says("turn") or (reading.says("tow") and not _SWUNG.isdisjoint(reading.words)))


def is_asked(mine: str, asked: frozenset[str]) -> bool:
    """Return whether a quantity is among those asked for; a share is a ratio and a factor alike, and what is in feet
    may be a length as well as an altitude.
    """
    if mine == "altitude" and "length" in asked:
        return True
    return mine in asked or (mine in ("ratio", "factor") and bool(asked & {"ratio", "factor"}))


def is_told_in(result: Result, reading: Reading, know: Knowledge) -> bool:
    """Return whether a figure of a result may be said in the unit that is wanted outright: no angle is in mm, and "how
    many days" is no temperature.
    """
    if not reading.unit or not (reading.unit.outright or reading.unit.quantities == _LASTING):
        return True
    units = _units_told(result, know)
    if units is None or isinstance(result, ProcedureResult):
        return True
    if isinstance(result, FactResult) and not units and "length" in reading.unit.quantities:
        return False  # a statement without a figure is in no unit; "a filled-in bar" asks for none
    wanted = frozenset(reading.unit.quantities)
    return not units or any(is_asked(_measured_in(unit, know), wanted) for unit in units)


def tells_outright(result: Result, told: frozenset[str], reading: Reading, know: Knowledge) -> bool:
    """Return whether a result may tell the amount that is asked for outright. told: the concepts of the way of asking
    that was met.
    """
    if isinstance(result, FactResult) and not _tells_size(result, reading, know):
        return False
    if isinstance(result, ProcedureResult) and not _drill_tells(result, reading, know):
        return False
    return _tells_how_long(result, told, reading, know)


def _drill_tells(result: ProcedureResult, reading: Reading, know: Knowledge) -> bool:
    """Return whether a drill may tell the size that is asked for outright: not how hot, nor a bound of no step."""
    if _tells_no(reading.unit, result, know):
        return False
    sizes, measured = _sizes_asked(reading)
    if "temperature" in reading.named & sizes:
        return False
    return not measured or tells_quantity(result, sizes, know)


def _tells_no(unit: AskedUnit | None, result: ProcedureResult, know: Knowledge) -> bool:
    """Return whether no step has a figure in the kind of unit that is wanted: "residual braking, above what psi"."""
    return unit is not None and not tells_quantity(result, frozenset(unit.quantities), know)


def _tells_size(result: FactResult, reading: Reading, know: Knowledge) -> bool:
    """Return whether a statement may tell a size that is asked for outright: it has a figure, and of that kind."""
    sizes, measured = _sizes_asked(reading) if not reading.named.isdisjoint(_SIZES) else (frozenset(), False)
    if not sizes:
        return True
    fact = result.fact
    told = {_measured_in(v.unit, know) for v in fact.values if v.unit}
    if told:
        return not sizes.isdisjoint(told)
    return not measured or any(c.isdigit() for c in fact.says)


def _tells_how_long(result: Result, told: frozenset[str], reading: Reading, know: Knowledge) -> bool:
    """Return whether a result may tell how long, where that is asked: it has a time, a length, or says until when; a
    whole drill is told only where it was asked for so. told: the concepts of the way of asking that was met.
    """
    if "duration" not in reading.asked or not any(m.text.startswith("how ") for m in reading.mentions):
        return True
    if isinstance(result, ProcedureResult) and result.step is None:
        return "duration" in told
    units = _units_told(result, know)
    if units is None or (isinstance(result, FactResult) and "until" in result.fact.says):
        return True
    return not _LONG.isdisjoint(_measured_in(unit, know) for unit in units)


def measure_asked(reading: Reading) -> frozenset[str]:
    """Return the measure of a thing that is asked for outright, where that is a quantity."""
    return next((m.concepts for m in reading.mentions if m.measure), frozenset()) & QUANTITIES


def tells_measure(result: Result, told: frozenset[str], reading: Reading, know: Knowledge) -> bool:
    """Return whether a result gives the measure of a thing that is asked for outright, where that is a quantity: the
    pressure of a tyre is not its temperature. told: the concepts of the way of asking that was met.
    """
    asked = measure_asked(reading)
    if not asked:
        return True
    units = None if isinstance(result, ScheduleResult) else _units_told(result, know)
    mine = {quantity_of(result, know)} if units is None else {_measured_in(unit, know) for unit in units}
    if isinstance(result, (FactResult, ProcedureResult)):
        stated = not asked.isdisjoint(told) and asked.isdisjoint(_MEASURED)
        return stated or any(is_asked(each, asked) for each in mine)
    return "" in mine or any(is_asked(each, asked) or {each, *asked} <= _FAR for each in mine)


def tells_quantity(result: Result, asked: frozenset[str], know: Knowledge) -> bool:
    """Return whether a figure that a result tells is of one of some quantities."""
    return any(is_asked(_measured_in(unit, know), asked) for unit in _units_told(result, know) or ())


def _units_told(result: Result, know: Knowledge) -> set[str] | None:
    """Return the units of the figures that a result tells; None of one of which they are not known."""
    if isinstance(result, FactResult):
        return {v.unit for v in result.fact.values or know.amounts(result.fact.says) if v.unit}
    if isinstance(result, ProcedureResult):
        steps = result.procedure.steps
        told = steps if result.step is None else steps[result.step : result.step + 1]
        return {amount.unit for step in told for amount in know.amounts(step.do) if amount.unit}
    if isinstance(result, ScheduleResult):
        return {result.schedule.output_unit, result.schedule.input_unit}
    if isinstance(result, LimitResult):
        return {figure.unit for figure in map(limit_rules.bound_value, result.limits) if figure}
    if not isinstance(result, BandResult):
        return None
    texts = (result.bands.says, *(rule.says for rule in result.bands.rules))
    return {result.bands.unit, *(a.unit for text in texts for a in know.amounts(text) if a.unit)}


def _sizes_asked(reading: Reading) -> tuple[frozenset[str], bool]:
    """Return the sizes that are asked for by "how wide", "what pressure", "minimum pressure"; whether a thing's own
    measure or a bound is, which only a figure tells.
    """
    found: set[str] = set()
    measured = False
    bounds = {m.end for m in reading.mentions if not m.concepts.isdisjoint(BOUNDS)}
    if asks_which_has_it(reading, QUANTITIES):
        return frozenset(), False
    bounds |= {m.end for m in reading.mentions if m.start in bounds and m.concepts.isdisjoint(BOUNDS)}
    for mention in reading.mentions:
        sizes = mention.concepts & _SIZES
        how = _asks_measure(mention, reading) or mention.text == "how hot"
        before = reading.words[max(0, mention.start - 1) : mention.start]
        opens = mention.start == 0 and reading.words[mention.end : mention.end + 1] == ("of",)
        if sizes and (how or opens or before in (("what",), ("which",)) or mention.start in bounds):
            found |= sizes
            measured = measured or how or mention.start in bounds
    return frozenset(found), measured


def other_bound(result: Result, reading: Reading) -> str:
    """Return the bound that a question asks for by its name where a limit is just the other one: a maximum is no answer
    to "minimum speed for the gear".
    """
    if not isinstance(result, LimitResult) or len(result.limits) > 1 or (reading.amounts and result.claimed is None):
        return ""
    limit, named = result.limits[0], [m for m in reading.mentions if m.text.removeprefix("the ") in _BOUND_NAMES]
    if len(named) != 1 or bool(limit.maximum) == bool(limit.minimum):
        return ""
    asked = next(iter(named[0].concepts & BOUNDS), "")
    return asked if asked == ("minimum" if limit.maximum else "maximum") else ""


def _asks_measure(mention: Mention, reading: Reading) -> bool:
    """Return whether the measure of a thing is asked for: "how heavy is a wheel", and no "how long may it stay"."""
    words = mention.text.split()
    if len(words) != 2 or words[0] != "how" or words[1] not in _MEASURES:
        return False
    last = reading.mentions[-1]
    return words[1] != "long" or (
        reading.words[mention.end : mention.end + 1] in (("is",), ("are",))
        and last.end >= len(reading.words) - 1
        and not (last.is_plain or any(c[0] in "@=" for c in last.concepts))
    )


def _is_mass(question: Question) -> bool:
    return question.reading.has("mass", "take_off", "landing", "weight")


def _is_level(value: float) -> bool:
    """Return whether a bare number may be a height in feet: whole hundreds, of their size."""
    return _LEVELS[0] <= value <= _LEVELS[1] and value % 100 == 0


def _is_flown(value: float, know: Knowledge) -> bool:
    """Return whether a bare number is of the size of the airspeeds at which the gear of this type is moved."""
    limits = know.gear_speeds
    return bool(limits) and min(limits) * _SLOWER <= value <= max(limits) * _FASTER


def given_concepts(question: Question, know: Knowledge) -> set[str]:
    """Return the concepts that the question's amounts supply: knots say that a speed is meant."""
    given: set[str] = set(question.reading.unit.quantities if question.reading.unit else ())
    for amount in question.reading.amounts:
        given.add(f"#{amount.value:g}")
        if amount.unit is None and _is_level(amount.value) and not _is_mass(question):
            given.add("altitude")
        if amount.unit is None and amount.value >= _HEAVY and _is_mass(question):
            given.add("mass")
        if amount.unit is None and question.reading.has(*MOVING_THE_GEAR) and _is_flown(amount.value, know):
            given.add("speed")
        if amount.unit is None and amount.value < 0:
            given.add("temperature")  # nothing else that is spoken of here is below zero
        if amount.unit:
            dimension = know.units.get(amount.unit).dimension
            given.add(_AS_GIVEN.get(dimension, dimension))
            if amount.unit == "deg":
                given.add("temperature")
            if amount.unit in ("ft", "m"):
                given.add("altitude")
    return given
