"""Bind the question's amounts and a type's figures to the inputs of a planning model."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.frozen import NamedTuple
from assistant.knowledge.records import Model, ModelInput
from assistant.physics.atmosphere import temperature
from assistant.physics.errors import OutOfRange
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import Part, assign, cued, fits, is_of_all, part
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_choices import Bound, choice_value, chosen, is_part
from assistant.resolving.sought import is_own, may_be_given, setting_sought, sought_input

_OUTPUT = "(output)"
_SMALL = 3
"""Letters of words that name nothing: "of a"."""
_LEAD = 2
"""Words before an amount among which one may say what it is: "down to 120", "must be at 150"."""
_TONNES = 200.0
"""A mass of an aeroplane said without a unit and below this is in tonnes."""
ISA = "isa"
_WHOLE = 100.0
_LOW = frozenset({"low", "below", "under", "underinflated", "less", "down"})
_RATED = frozenset({"limit", "rated", "rating", "maximum", "max"})
_READ = frozenset(("already", "at", "from", "reading", "read", "reads", "showing", "show", "shows"))
"""Words before a temperature that is read off something."""
_NEARLY = 0.005
"""How far, of a limit, a figure in another unit may be from it and still be it."""
_DECELERATIONS = ("deceleration", "acceleration")


class Binding(NamedTuple):
    """The inputs of a model as far as the question and the type's figures give them."""

    given: Mapping[str, tuple[Bound, ...]]
    missing: tuple[ModelInput, ...]
    left: tuple[Amount, ...]
    output: float | None
    amounts_used: int
    cost: float = 0.0
    by_amount: frozenset[str] = frozenset()
    """How forced the parts of the amounts are: nothing beside them may say so."""
    places: Mapping[str, int] = {}
    """Where in the question the amount of an input begins."""
    sought: str = ""
    """The input that the question asks for."""


def bind(model: Model, question: Question, know: Knowledge) -> Binding:
    """Return what is given of a model's inputs, and which are missing."""
    by_words = {i.id: chosen(i, question, know) for i in model.inputs}
    sought = sought_input(model, question)
    if sought and any(a.unit and fits(a, model.output_unit, know.units) is not None for a in question.reading.amounts):
        by_words[sought] = []  # "how much lever travel makes 800 psi" chooses none of it
    for item in model.inputs:
        if by_words[item.id] and _given_outright(item, model, question, know):
            by_words[item.id] = []
    asked = [i for i in model.inputs if not by_words[i.id]]
    setting = setting_sought(model, question)
    parts = [_part(i) for i in asked if not is_own(i) and i.id != sought and i is not setting]
    # What words have chosen gives way to a figure that is measured, and to no bare number.
    replaced = [i for i in model.inputs if _gives_way(i, by_words[i.id], model, know)]
    parts += [_part(i)._replace(measured=True) for i in replaced]
    if may_be_given(model, sought, setting) and not _only_readings(model, question, know):
        parts.append(part(_OUTPUT, model.output_unit, _output_cues(model), True)._replace(result=True))
    apart = deviation(model, question)
    stated = [
        _measured(a, model, question)
        for a in question.reading.amounts
        if a is not apart
        and not _restates(a, by_words, model, know)
        and not _restates_own(a, model, question, know)
        and not chooses(a, model)
        and not _is_its_limit(a, model, question, know)
    ]
    amounts, left, cost = assign(stated, parts, question.reading.words, know.units, _order(model))
    amounts = _in_tonnes(amounts, model)
    given: dict[str, tuple[Bound, ...]] = {}
    missing: list[ModelInput] = []
    for item in model.inputs:
        bound = _bound(item, amounts, by_words[item.id], question, know)
        bound = bound or _standard(item, model, amounts, apart, question, know)
        if bound:
            given[item.id] = bound
        else:
            missing.append(item)
    output = amounts.get(_OUTPUT)
    of_all = (a for a in left if not is_of_all(a, question.reading.words))
    left = [a for a in of_all if not _is_figure(a, model, given, know)]
    left = _lowered(left, model, given, question) if left else left
    return Binding(
        given, tuple(missing), tuple(left), output[0] if output else None, len(amounts), cost, frozenset(amounts),
        {name: amount.start for name, (_, amount) in amounts.items()}, sought,
    )  # fmt: skip


def _given_outright(item: ModelInput, model: Model, question: Question, know: Knowledge) -> bool:
    """Return whether an amount is given for an input that words choose as well: one that is led to from another
    ("to go from 300 to 120"), or by a word of it where each input of its kind has one ("must be at 150 before
    departure, reads 360, outside 20").
    """
    cues = item.cues.split()
    if item.default or "to" not in cues:
        return False
    words = question.reading.words
    kin = [a for a in question.reading.amounts if fits(a, item.unit, know.units) is not None]
    if {"from", "to"} <= {words[a.start - 1] for a in kin if a.start}:
        return True
    inputs = [i for i in model.inputs if i.quantity == item.quantity and not i.default]
    led = any(not set(cues).isdisjoint(words[max(0, a.start - _LEAD) : a.start]) for a in kin)
    return led and len(kin) >= len(inputs)


def _order(model: Model) -> tuple[str, ...]:
    """Return the parts of one quantity, the greatest first; the result may stand among the inputs."""
    return tuple(_OUTPUT if name == "output" else name for name in model.descending)


def _output_cues(model: Model) -> str:
    """Return the words that name the result and no input, where an input that may be left out could be meant for it:
    "pavement 35 m wide, clearance included".
    """
    alike = [i for i in model.inputs if i.unit == model.output_unit and i.cues and i.default not in ("", "both")]
    if not alike:
        return ""
    inputs = {word for item in model.inputs for word in item.cues.lower().split()}
    own = (word for word in model.of.lower().split() if word.isalpha() and len(word) > _SMALL)
    return " ".join(word for word in own if word not in inputs)


def _measured(amount: Amount, model: Model, question: Question) -> Amount:
    """Give a bare number the unit of the one quantity that the words before it name: "pumped to 182"."""
    if amount.unit is not None:
        return amount
    named = frozenset[str]()
    end = amount.start
    for mention in reversed(question.reading.mentions):
        if mention.end == end:
            if not mention.passing:
                named = mention.concepts - {"duration"}  # a time has its unit; "minutes 450 to 250" asks for one
                break
            end = mention.start  # "deceleration measured 1.9"
    if not named:
        return amount
    units = {i.unit for i in model.inputs if i.quantity in named and not is_own(i)}
    if units and model.output in named:
        units.add(model.output_unit)
    return amount._replace(unit=units.pop()) if len(units) == 1 else amount


def deviation(model: Model, question: Question) -> Amount | None:
    """Return the amount that is a difference from the standard atmosphere: "ISA+10"."""
    ends = {m.end for m in question.reading.mentions if m.holds(ISA)}
    takes = {"altitude", "temperature"} <= {i.quantity for i in model.inputs}
    found = (a for a in question.reading.amounts if a.start in ends and a.unit in (None, "deg", "degC", "K"))
    return next(found, None) if takes else None


def _standard(
    item: ModelInput, model: Model, amounts: Mapping[str, tuple[float, Amount]], apart: Amount | None,
    question: Question, know: Knowledge,
) -> tuple[Bound, ...]:  # fmt: skip
    """Return the temperature of the standard atmosphere at the altitude given, for a question that says so."""
    altitude = next((i for i in model.inputs if i.quantity == "altitude" and i.id in amounts), None)
    if item.quantity != "temperature" or altitude is None or not question.reading.has(ISA):
        return ()
    try:
        kelvin = temperature(know.units.to_si(amounts[altitude.id][0], altitude.unit))
    except OutOfRange:
        return ()
    said = f", {apart.value:+g} °C" if apart else ""
    value = know.units.from_si(kelvin + (apart.value if apart else 0.0), item.unit)
    return (Bound(value, "", f"the standard temperature at that altitude{said}"),)


def _only_readings(model: Model, question: Question, know: Knowledge) -> bool:
    """Return whether a difference of temperatures is what a model gives, and each temperature told is a reading:
    "brakes already at 100 °C".
    """
    if know.units.get(model.output_unit).dimension != "temperature_difference":
        return False
    words = question.reading.words
    told = [a for a in question.reading.amounts if fits(a, "degC", know.units) is not None]
    return bool(told) and all(a.start and words[a.start - 1] in _READ for a in told)


def _gives_way(item: ModelInput, chosen: list[Bound], model: Model, know: Knowledge) -> bool:
    """Return whether an amount may take the place of what words have chosen: "FIRM, at 1.9 m/s2", "nose at 130 psi"."""
    if not chosen or is_own(item):
        return False
    alike = know.units.get(item.unit).dimension == know.units.get(model.output_unit).dimension
    if item.quantity in _DECELERATIONS:
        return not alike
    return bool(item.default) and item.default != "both" and not alike and all(b.source for b in chosen)


def _in_tonnes(amounts: dict[str, tuple[float, Amount]], model: Model) -> dict[str, tuple[float, Amount]]:
    """Read a bare mass of something that moves in tonnes where it is far too small for kilograms: "48 at 130 kt"."""
    if not any(i.quantity == "speed" for i in model.inputs):
        return amounts
    small = {i.id for i in model.inputs if i.unit == "kg"}
    return {
        name: (value * 1000, amount) if name in small and amount.unit is None and value < _TONNES else (value, amount)
        for name, (value, amount) in amounts.items()
    }


def cued_parts(model: Model, question: Question, know: Knowledge) -> dict[str, int]:
    """Return the inputs of a model that words beside an amount name, with where the amount begins."""
    parts = [_part(i) for i in model.inputs if not is_own(i)]
    return cued(question.reading.amounts, parts, question.reading.words, know.units)


def _is_figure(amount: Amount, model: Model, given: Mapping[str, tuple[Bound, ...]], know: Knowledge) -> bool:
    """Return whether an amount only names the type's own figure that a calculation takes anyway."""
    return amount.unit is not None and any(
        fits(amount, item.unit, know.units) == bound.value
        for item in model.inputs
        if item.default
        for bound in given.get(item.id, ())
    )


def _restates(amount: Amount, chosen: Mapping[str, list[Bound]], model: Model, know: Knowledge) -> bool:
    """Return whether an amount only repeats the figure that words have chosen: "at 250 we can take off"."""
    return any(
        fits(amount, item.unit, know.units) == bound.value
        for item in model.inputs
        if item.quantity != "deceleration" and not item.default
        for bound in chosen[item.id]
    )


def _restates_own(amount: Amount, model: Model, question: Question, know: Knowledge) -> bool:
    """Return whether an amount only repeats a figure that a calculation takes anyway, beside the one that it needs:
    "right at 20 °C, and it is -20 °C now".
    """
    needed = {i.quantity for i in model.inputs if not is_own(i)}
    for item in model.inputs:
        figure = know.figure(item.default, question.variant) if is_own(item) and needed == {item.quantity} else None
        given = {fits(a, item.unit, know.units) for a in question.reading.amounts} - {None}
        if figure and len(given) > 1 and fits(amount, item.unit, know.units) == figure.value:
            return True
    return False


def _is_its_limit(amount: Amount, model: Model, question: Question, know: Knowledge) -> bool:
    """Return whether an amount only tells the limit of the result: "tyre speed limit 225 mph at 160 kt"."""
    before = question.reading.words[max(0, amount.start - 2) : amount.start]
    name = dict(model.extra).get("limit", "")
    figure = know.figure(name, question.variant) if name and _RATED.intersection(before) else None
    value = fits(amount, figure.unit, know.units) if figure and amount.unit else None
    return figure is not None and value is not None and abs(value - figure.value) <= _NEARLY * figure.value


def _lowered(
    left: list[Amount], model: Model, given: dict[str, tuple[Bound, ...]], question: Question
) -> list[Amount]:
    """Return what is left of the amounts, where a share is how much the type's own pressure is low: "tyre 10% low"."""
    low = next((a for a in left if a.unit == "percent" and 0 < a.value < _WHOLE), None)
    item = next((i for i in model.inputs if i.quantity == "pressure" and (i.default or i.choices)), None)
    if low is None or item is None or _LOW.isdisjoint(question.reading.words) or item.id not in given:
        return left
    less = 1 - low.value / _WHOLE
    given[item.id] = tuple(
        b._replace(value=b.value * less, says=", ".join(filter(None, (b.says, f"{low.value:g}% low"))))
        for b in given[item.id]
    )
    return [a for a in left if a is not low]


def chooses(amount: Amount, model: Model) -> bool:
    """Return whether a part said in a word is one of the choices of an input: "half", of a lever."""
    return is_part(amount) and any(
        amount.raw == phrase.strip() for i in model.inputs for words, _, _ in i.choices for phrase in words.split(";")
    )


def _part(item: ModelInput) -> Part:
    made = part(item.id, item.unit, item.cues, bool(item.default))
    named = item.choices and not item.cues and item.unit == "factor"  # no bare number is the share of an event
    return made._replace(measured=True) if named else made


def _bound(
    item: ModelInput, amounts: Mapping[str, tuple[float, Amount]], chosen: list[Bound], question: Question,
    know: Knowledge,
) -> tuple[Bound, ...]:  # fmt: skip
    if item.id in amounts:
        value, _ = amounts[item.id]
        return (Bound(value, "", ""),)
    if chosen:
        return tuple(chosen)
    if item.default == "both":
        return tuple(b for c in item.choices if (b := choice_value(item, c[1], c[2], question, know)))
    if item.default:
        bound = choice_value(item, item.default, "", question, know)
        return (bound._replace(assumed=item.assumed),) if bound else ()
    return ()
