"""Limits and bands: which amount is held against which limit, and how it stands."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

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
from assistant.understanding.weather import OUTSIDE_AIR, of_the_air

_PLACES = (("the", "ground"), ("the", "threshold"), ("the", "runway"))
_LISTING = frozenset({"and", ",", "&", "/", "plus", "the", "other", "others"})
_ROUTE = frozenset(("mile", "NM", "km"))
"""Units of the way ahead, and of no height."""
_THROUGH_AIR = ("ias", "cas", "tas")
_FAR = 50.0
_LITTLE, _DUST = 1e-6, 1e-9
_WHOLE = 100.0
_LEAST_SHARE = 0.1
"""Two readings of the same thing are of one order of magnitude."""
_ONE_OF_TWO = frozenset({"is", "the", "coolest", "hottest", "coldest", "warmest", "lowest", "highest"})
_TONNE = 1000.0
_HEAVIEST = 1.5
"""How many times a limit a bare number of tonnes may be: "is 231 too hot" is no mass."""


def bound_value(limit: Limit) -> Value | None:
    """Return the figure that an amount is held against."""
    return limit.maximum or limit.minimum or limit.value

def amount_for(limit: Limit, question: Question, know: Knowledge) -> Amount | None:
    """Return the amount of a question that a limit is about: one with its unit before a bare number."""
    figure = bound_value(limit)
    if figure is None or not question.reading.amounts:
        return None
    amounts = own_amounts(limit.id, question, know)
    applied = applied_to(limit, amounts, know, question.reading.words)
    # "Ten knots over", "by 8 kt": a difference, and no reading to hold against the limit.
    rest = [a for a in amounts if a not in applied and not _is_difference(a, question)]
    rest = [a for a in rest if not _other_basis(limit, a)]
    rest = [a for a in rest if not reads_a_state(a, question) or _names_thing(limit, a, question, know)]
    measured = [a for a in rest if a.unit is not None and fits(a, figure.unit, know.units) is not None]
    bare = [a for a in rest if a.unit is None and _plausible(a.value, figure)]
    found = measured or bare or _in_tonnes(rest, figure)
    if figure.unit == "K":
        if len(found) > 1:
            return None  # two readings are for the bands, which take their difference
        found = [a for a in found if _may_be_difference(a, question)]
    if len(found) > 1 and _listed(found, question.reading.words):
        # Several readings of one thing: the one nearest to the limit, or farthest beyond it, decides.
        return (max if limit.maximum else min)(found, key=lambda a: a.value)
    return found[-1] if found else None


def _in_tonnes(amounts: list[Amount], figure: Value) -> list[Amount]:
    """Return bare numbers that are a mass in tonnes: "landing weight 49.2, ok?"."""
    if figure.unit != "kg":
        return []
    most = _HEAVIEST * figure.value
    return [a._replace(unit="t") for a in amounts if a.unit is None and a.value * _TONNE <= most]


def own_amounts(record: str, question: Question, know: Knowledge) -> list[Amount]:
    """Return the amounts that are not said of another thing than a record is about: "main 185 and nose 130"."""
    amounts = _of_things(record, question, know)
    if len(amounts) < 2:
        return amounts
    explained = know.matcher.vocabulary(record)
    said: list[bool | None] = []
    end = 0
    for amount in amounts:
        named = [m for m in question.reading.mentions if end <= m.start and m.end <= amount.start and not m.weak]
        named = [m for m in named if not know.matcher.is_soft(m)]
        said.append(all(not explained.isdisjoint(m.concepts) for m in named) if named else None)
        end = amount.end
    if True not in said:
        return amounts
    return [a for a, mine in zip(amounts, said, strict=True) if mine is not False]


def _of_things(record: str, question: Question, know: Knowledge) -> list[Amount]:
    """Return the amounts that a record of a thing may take: not the temperature of the air."""
    amounts = question.reading.amounts
    air = of_the_air(question.reading)
    if not air:
        return list(amounts)
    about = know.phrase(know.base.records[record].of).mentions
    if about and OUTSIDE_AIR in about[0].concepts:
        return list(amounts)
    return [a for a in amounts if a.start not in air]


def _listed(amounts: list[Amount], words: tuple[str, ...]) -> bool:
    """Return whether amounts follow one another as in a list: "240, 250 and 260"."""
    return all(
        one.end < other.start and _LISTING.issuperset(words[one.end : other.start]) for one, other in pairwise(amounts)
    )


def reads_a_state(amount: Amount, question: Question) -> bool:
    """Return whether an amount is a reading of a thing, which says in which state that is."""
    return any(amount.start in c.where for c in question.conditions if not c.is_result)


def limits_a_reading(check: Check, question: Question, know: Knowledge) -> bool:
    """Return whether a check holds a reading of a thing against a limit, and not against where its state changes."""
    for amount in question.reading.amounts if check.limit.maximum or check.limit.minimum else ():
        read = [c.input for c in question.conditions if amount.start in c.where and not c.is_result]
        if not read or not _names_thing(check.limit, amount, question, know):
            continue
        return not any(check.bound == edge for name in read for edge in _edges(name, know))
    return False


def _edges(name: str, know: Knowledge) -> list[float]:
    """Return the readings of an input at which its state changes."""
    tests = know.states.numbers.get(name, ())
    return [one[1] for one, other in pairwise(tests) if one[3] != other[3]]


def _names_thing(limit: Limit, amount: Amount, question: Question, know: Knowledge) -> bool:
    """Return whether a limit is of the thing that an amount is a reading of."""
    read = [c for c in question.conditions if amount.start in c.where and c.input in know.base.inputs]
    figure = bound_value(limit)
    if figure and any(figure.value == edge for c in read for edge in _edges(c.input, know)):
        return True
    said = {k for c in read for k in c.where}
    named = frozenset(x for m in question.reading.mentions if said.intersection(m.taken) for x in m.concepts)
    # What a name only brings along is not what a limit is of, nor is "…, or what the accumulator holds if less".
    mentions = know.phrase(limit.of.partition(", or ")[0]).mentions
    about = frozenset().union(*(m.concepts for m in mentions if not m.names_result))
    return bool(about & named) or any(know.base.inputs[c.input].term in about for c in read)


def _is_difference(amount: Amount, question: Question) -> bool:
    words = question.reading.words
    after = words[amount.end : amount.end + 3]
    over = after[:1] == ("over",) and after[1:] not in _PLACES
    return over or bool(amount.start and words[amount.start - 1] == "by")


def _is_height(limit: Limit) -> bool:
    """Return whether a limit is of a height, which is said in feet."""
    figure = bound_value(limit)
    return figure is not None and figure.unit == "ft"


def _other_basis(limit: Limit, amount: Amount) -> bool:
    """Return whether an amount is of another kind than a limit: 155 kt IAS is no ground speed, four miles no height."""
    if amount.unit in _ROUTE and _is_height(limit):
        return True
    said = frozenset(amount.raw.lower().replace(",", " ").split())
    return "ground" in limit.basis and any(word.endswith(_THROUGH_AIR) for word in said)


def _plausible(value: float, figure: Value) -> bool:
    """A bare number is taken in the limit's unit only when it is of its order of magnitude."""
    return figure.value == 0 or 0.1 <= abs(value / figure.value) <= 10 or value == 0


def applied_to(limit: Limit, amounts: Sequence[Amount], know: Knowledge, words: Sequence[str]) -> list[Amount]:
    """Return the amounts that decide whether a limit applies."""
    found = []
    for name, _, value, unit in limit.applies:
        fitting = [a for a in amounts if a.unit is not None and fits(a, unit, know.units) is not None]
        fitting = fitting or _said_of(name, amounts, words)
        fitting = fitting or [a for a in amounts if a.unit is None and a.value == value]
        found.extend(fitting[:1])
    return found


def _said_of(name: str, amounts: Sequence[Amount], words: Sequence[str]) -> list[Amount]:
    """Return the bare numbers that are said of what decides whether a limit applies: "12 in a turn of 70"."""
    own = {form for word in name.split() for form in (word, f"{word}s")}
    bare = [a for a in amounts if a.unit is None] if len(amounts) > 1 else []
    behind = [a for a in bare if words[a.start - 1] == "of" and words[a.start - 2] in own and a.start > 1]
    return behind or [a for a in bare if not own.isdisjoint(words[a.end : a.end + 1])]


def applies(limit: Limit, question: Question, know: Knowledge) -> bool | None:
    """Return whether a limit holds where the question's other amounts stand; None when that is not said."""
    for name, test, value, unit in limit.applies:
        amounts = [a for a in question.reading.amounts if a.unit is not None and fits(a, unit, know.units) is not None]
        amounts = amounts or _said_of(name, question.reading.amounts, question.reading.words)
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


def _may_be_difference(amount: Amount, question: Question) -> bool:
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
    if bands.unit == "K" and len(measured) == 1 and not _may_be_difference(measured[0][0], question):
        return None  # one reading is no difference, unless it is said to be one
    if bands.unit == "K" and len(measured) > 1:
        # Two readings, and a rule on how far apart they may be: their difference is meant.
        readings = [v for _, v in measured]
        if min(readings) < _LEAST_SHARE * max(readings):
            return None  # "at 251: surely one degree does not matter"
        given = max(readings) - min(readings)
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
