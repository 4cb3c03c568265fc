"""How an amount stands to a limit or to bands, and where a limit holds."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.knowledge.records import BandRule, Bands, Limit, Value
from assistant.physics.airspeed import cas_from_mach
from assistant.physics.errors import OutOfRange
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.beneath import is_beneath
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BandResult, Check
from assistant.resolving.state_asked import left_open
from assistant.resolving.tables import outputs, results_with
from assistant.understanding.bounds_said import bound_side
from assistant.understanding.states import passes

_FAR = 50.0
_LITTLE, _DUST = 1e-6, 1e-9
_WHOLE = 100.0
_LEAST_SHARE = 0.1
"""Two readings of the same thing are of one order of magnitude."""
_ONE_OF_TWO = frozenset({"is", "the", "coolest", "hottest", "coldest", "warmest", "lowest", "highest"})


def bound_value(limit: Limit) -> Value | None:
    """Return the figure that an amount is held against."""
    return limit.maximum or limit.minimum or limit.value


def said_of(name: str, amounts: Sequence[Amount], words: Sequence[str]) -> list[Amount]:
    """Return the bare numbers that are said of what decides whether a limit applies: "12 in a turn of 70"."""
    own = {form for word in name.split() for form in (word, f"{word}s")}
    bare = [a for a in amounts if a.unit is None] if len(amounts) > 1 else []
    behind = [a for a in bare if words[a.start - 1] == "of" and words[a.start - 2] in own and a.start > 1]
    return behind or [a for a in bare if not own.isdisjoint(words[a.end : a.end + 1])]


def applies(limit: Limit, question: Question, know: Knowledge) -> bool | None:
    """Return whether a limit holds where the question's other amounts stand; None when that is not said."""
    for name, test, value, unit in limit.applies:
        amounts = [a for a in question.reading.amounts if a.unit is not None and fits(a, unit, know.units) is not None]
        amounts = amounts or said_of(name, question.reading.amounts, question.reading.words)
        amounts = amounts or [a for a in question.reading.amounts if a.unit is None and 0.1 <= a.value / value <= 10]
        if not amounts:
            return None
        given = fits(amounts[0], unit, know.units)
        if given is None or not passes(test, given + _beyond(amounts[0], question), value):
            return False
    return True


def is_far(check: Check, amount: Amount) -> bool:
    """Return whether an amount with its unit is of another order of magnitude than the limit: seconds for hours."""
    if amount.unit is None or not amount.value or not check.bound or check.unit in ("degC", "degF"):
        return False
    return not 1 / _FAR < abs(check.given / check.bound) < _FAR


def is_bound(amount: Amount, question: Question) -> bool:
    """Return whether an amount is named as a bound: "below 2,000", "more than 60"."""
    return _beyond(amount, question) != 0.0


def _beyond(amount: Amount, question: Question) -> float:
    """Return a little more or less for an amount that is named as a bound: "a turn of more than 60 degrees"."""
    return _LITTLE * bound_side(question.reading.words, amount.start)


def holds(limit: Limit, question: Question, know: Knowledge) -> bool | None:
    """Return whether the state that a limit depends on is given: None when the question gives none."""
    if not limit.when or not question.conditions:
        return None
    undecided = left_open(question, know)
    given = {c.input: c.value for c in question.conditions if undecided.isdisjoint(c.where)}
    found: list[bool | None] = [is_so(name, value, given, know) for name, value in limit.when]
    if any(h is False for h in found):
        return False
    return None if any(h is None for h in found) else True


def is_so(name: str, value: str, given: dict[str, str], know: Knowledge) -> bool | None:
    """Return whether an input or a table's result (`table.output`) has a value in a state; None where that is open."""
    if name in given:
        return given[name] == value
    if "." not in name:
        return None
    table_id, output = name.split(".", 1)
    table = know.base.records[table_id]
    inputs = {k: v for k, v in given.items() if k in table.inputs}
    results = {k.split(".", 1)[1]: v for k, v in given.items() if k.startswith(table_id + ".")}
    if not inputs and not results:
        return None
    if not results:
        return bool(outputs(table, inputs, know.base).get(output) == value)
    values = results_with(table, inputs, results, output, know.base)
    return None if len(values) != 1 else values == {value}


def check(limit: Limit, amount: Amount, question: Question, know: Knowledge) -> Check | None:
    """Return how an amount stands to a limit; exactly at it is within."""
    figure = bound_value(limit)
    if figure is None:
        return None
    given = fits(amount, figure.unit, know.units)
    if given is None:
        return None
    try:
        bound, source = _lower(limit, question, know) or (figure.value, "")
    except OutOfRange:  # an altitude without an atmosphere: which of the two is lower cannot be told
        return None
    within = True
    step = _beyond(amount, question)
    if limit.maximum:
        within = given + step <= bound + _DUST
    if limit.minimum and within:
        least = limit.minimum.value
        within = given + step >= least - _DUST
        if not within or not limit.maximum or abs(given - least) < _DUST:
            bound = least
    return Check(limit, given, figure.unit, bound, within, source, _side(step, given, bound))


def _side(step: float, given: float, bound: float) -> str:
    """Return on which side of an amount all is meant that a question asks about, where that is all on one of the
    bound's.
    """
    if step < 0 and given <= bound + _DUST:
        return "below"
    return "above" if step > 0 and given >= bound - _DUST else ""


def _lower(limit: Limit, question: Question, know: Knowledge) -> tuple[float, str] | None:
    """Return the lower of an airspeed and a Mach limit at the altitude that the question gives."""
    if not (limit.maximum and limit.second and limit.second.unit == "Mach"):
        return None
    for amount in question.reading.amounts:
        altitude = fits(amount, "ft", know.units) if amount.unit else None
        if altitude is not None and amount.unit != limit.maximum.unit:
            metres = know.units.to_si(altitude, "ft")
            mach = know.units.from_si(cas_from_mach(limit.second.value, metres), limit.maximum.unit)
            if mach < limit.maximum.value:
                return mach, f"Mach {limit.second.value:.2f} at {altitude:,.0f} ft, standard atmosphere"
    return None


def may_be_difference(amount: Amount, question: Question) -> bool:
    """Return whether a temperature may be a difference: its unit says so, or one is spoken of, by more than "the
    coolest", which tells one of two readings.
    """
    told = [m for m in question.reading.mentions if m.holds("uneven")]
    return amount.unit == "K" or any(not _ONE_OF_TWO.issuperset(m.text.split()) for m in told)


def judge(bands: Bands, question: Question, know: Knowledge, amounts: Sequence[Amount]) -> BandResult | None:
    """Return the band that the reading among a record's own amounts falls in, or None when none is given."""
    fitting = [(a, v) for a in amounts if (v := _band_value(a, bands, question, know)) is not None]
    measured = [pair for pair in fitting if pair[0].unit is not None] or fitting
    if bands.unit == "K" and len(fitting) > 1:
        measured = fitting  # "80, 110, 95 and 240 °C": the unit is said once
    if not measured:
        return None
    given = measured[-1][1]
    if given > 0 and is_beneath(measured[-1][0], bands, question):
        given = -given
    if bands.unit == "K" and len(measured) == 1 and not may_be_difference(measured[0][0], question):
        return None  # one reading is no difference, unless it is said to be one
    if bands.unit == "K" and len(measured) > 1:
        # Two readings, and a rule on how far apart they may be: their difference is meant.
        within = next((v for a, v in measured if is_span(a, question)), None)
        readings = [v for _, v in measured]
        if within is None and min(readings) < _LEAST_SHARE * max(readings):
            return None  # "at 251: surely one degree does not matter"
        given = max(readings) - min(readings) if within is None else within
    reference = know.figure(bands.reference, question.variant) if bands.reference else None
    step = _beyond(measured[-1][0], question) if len(measured) == 1 else 0.0
    for rule in bands.rules:
        value = rule.value
        if rule.unit in ("percent", "factor") and reference:
            value = reference.value * (rule.value / 100 if rule.unit == "percent" else rule.value)
        if passes(rule.test, given + step, value):
            beyond = _side(step, given, value)
            return BandResult(bands, given, rule, reference.value if reference else None, beyond)
    return None


def is_span(amount: Amount, question: Question) -> bool:
    """Return whether an amount says how near readings are to each other: "within 30 degrees of it"."""
    words = question.reading.words
    before, after = words[max(0, amount.start - 1) : amount.start], words[amount.end : amount.end + 1]
    return before == ("within",) and after == ("of",)


def _band_value(amount: Amount, bands: Bands, question: Question, know: Knowledge) -> float | None:
    if amount.unit is None and bands.unit == "percent" and amount.value > _WHOLE:
        return None  # "tyres 185 ok" gives no share
    if amount.unit is not None:
        value = fits(amount, bands.unit, know.units)
        if value is None and amount.unit == "percent" and bands.reference:
            figure = know.figure(bands.reference, question.variant)
            low = (
                question.reading.has("minimum", "below", "under_inflation")
                or "below" in question.reading.words
                or "low" in question.reading.words
                or "under" in question.reading.words
            )
            if figure:
                return figure.value * (1 - amount.value / 100 if low else amount.value / 100)
        return value
    figure = know.figure(bands.reference, question.variant) if bands.reference else None
    scale = figure.value if figure else max((abs(r.value) for r in bands.rules), default=0.0)
    return amount.value if not scale or 0.05 <= abs(amount.value) / scale <= 10 or amount.value == 0 else None


def rule_value(rule: BandRule, reference: float | None) -> float:
    """Return the figure of a band's test in the bands' unit."""
    if rule.unit == "percent" and reference is not None:
        return reference * rule.value / 100
    return rule.value
