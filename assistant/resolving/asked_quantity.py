"""The quantity that a question asks for and the one that a result gives: "how long" wants no temperature."""

from __future__ import annotations

from assistant.knowledge.records import Model
from assistant.resolving import limits as limit_rules
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CheckResult, LimitResult, ModelResult, Needed, Result, ScheduleResult
from assistant.understanding.mentions import Reading

QUANTITIES = frozenset({
    "speed", "duration", "temperature", "pressure", "angle", "mass", "length", "altitude", "energy", "deceleration",
    "count", "ratio", "factor",
})  # fmt: skip
AS_ASKED = {"time": "duration", "acceleration": "deceleration", "temperature_difference": "temperature"}
_LEVELS = (5_000, 50_000)
"""Bare numbers that are altitudes in feet, where no mass is spoken of: "VLE at 30,000"."""
_AS_GIVEN = {"time": "duration", "acceleration": "deceleration"}


def quantity_of(result: Result, know: Knowledge) -> str:
    """Return the quantity that a computed result is of, as questions name it."""
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
    dimension = know.units.get(unit).dimension
    if unit == "ft":
        return "altitude"
    return AS_ASKED.get(dimension, dimension)


def asked_of(reading: Reading) -> frozenset[str]:
    """Return the quantities that a question asks for: those of the unit that it wants them in, or those it names."""
    return frozenset(reading.unit.quantities) if reading.unit else reading.asked & QUANTITIES


def is_asked(mine: str, asked: frozenset[str]) -> bool:
    """Return whether a quantity is among those asked for; a share is a ratio and a factor alike."""
    return mine in asked or (mine in ("ratio", "factor") and bool(asked & {"ratio", "factor"}))


def _is_mass(question: Question) -> bool:
    return question.reading.has("mass", "take_off", "landing", "weight")


def _is_level(value: float) -> bool:
    """Return whether a bare number may be a height in feet: whole hundreds, of their size."""
    return _LEVELS[0] <= value <= _LEVELS[1] and value % 100 == 0


def given_concepts(question: Question, know: Knowledge) -> set[str]:
    """Return the concepts that the question's amounts supply: knots say that a speed is meant."""
    given: set[str] = set(question.reading.unit.quantities if question.reading.unit else ())
    for amount in question.reading.amounts:
        given.add(f"#{amount.value:g}")
        if amount.unit is None and _is_level(amount.value) and not _is_mass(question):
            given.add("altitude")
        if amount.unit:
            dimension = know.units.get(amount.unit).dimension
            given.add(_AS_GIVEN.get(dimension, dimension))
            if amount.unit == "deg":
                given.add("temperature")
            if amount.unit in ("ft", "m"):
                given.add("altitude")
    return given
