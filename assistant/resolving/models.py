"""Planning models: bind the question's amounts and a type's figures to a physics function, and run it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import product

from assistant.frozen import NamedTuple
from assistant.knowledge.records import Limit, Model, ModelInput, Source
from assistant.physics.atmosphere import temperature
from assistant.physics.errors import OutOfRange
from assistant.physics.solve import solve_monotonic
from assistant.quantities.amounts import Amount
from assistant.quantities.show import given_shown, round_shown
from assistant.resolving.amounts_for import Part, assign, cued, fits, part
from assistant.resolving.functions import Function, function
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import ModelResult, ModelValue, Needed
from assistant.understanding.clauses import STOPS
from assistant.understanding.words import stem

_OUTPUT = "(output)"
_FAR, _DUST = 3.0, 1e-9
"""How many times larger or smaller than a result a bare figure may be that is held against it."""
_SEEKING = frozenset({
    "what", "which", "longest", "greatest", "highest", "most", "maximum", "max", "largest", "biggest", "furthest",
    "farthest",
})  # fmt: skip
_BOUNDING = frozenset({"exceed", "exceeds"})
_EITHER = frozenset(("and", "or", "against", "versus", "vs", "compared", "/"))
_NEAR_BY = 4
_ENDING = 3
"""Words and marks in which a question may end."""
_SMALL = 3
"""Letters of words that name nothing: "of a"."""
_TONNES = 200.0
"""A mass of an aeroplane said without a unit and below this is in tonnes."""
_ISA = "isa"
_DECELERATIONS = ("deceleration", "acceleration")


class Bound(NamedTuple):
    """One way of setting an input: its value in the input's unit, what is said of it, whether it was assumed."""

    value: float
    says: str
    assumed: str
    source: tuple[Source, ...] = ()


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


def bind(model: Model, question: Question, know: Knowledge) -> Binding:
    """Return what is given of a model's inputs, and which are missing."""
    chosen = {i.id: _chosen(i, question, know) for i in model.inputs}
    asked = [i for i in model.inputs if not chosen[i.id]]
    sought = _sought(model, question)
    parts = [_part(i) for i in asked if not _is_own(i) and i.id != sought]
    # What words have chosen gives way to a figure that is measured, and to no bare number.
    replaced = [i for i in model.inputs if _gives_way(i, chosen[i.id], model, know)]
    parts += [_part(i)._replace(measured=True) for i in replaced]
    if model.inverse:
        parts.append(part(_OUTPUT, model.output_unit, _output_cues(model), True)._replace(result=True))
    apart = _deviation(model, question)
    stated = [
        _measured(a, model, question)
        for a in question.reading.amounts
        if a is not apart and not _restates(a, chosen, model, know)
    ]
    amounts, left, cost = assign(stated, parts, question.reading.words, know.units, model.descending)
    amounts = _in_tonnes(amounts, model)
    given: dict[str, tuple[Bound, ...]] = {}
    missing: list[ModelInput] = []
    for item in model.inputs:
        bound = _bound(item, amounts, chosen[item.id], question, know)
        bound = bound or _standard(item, model, amounts, apart, question, know)
        if bound:
            given[item.id] = bound
        else:
            missing.append(item)
    output = amounts.get(_OUTPUT)
    left = [a for a in left if not _is_figure(a, model, given, know)]
    return Binding(
        given, tuple(missing), tuple(left), output[0] if output else None, len(amounts), cost, frozenset(amounts),
        {name: amount.start for name, (_, amount) in amounts.items()},
    )  # fmt: skip


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
    units = {i.unit for i in model.inputs if i.quantity in named and not _is_own(i)}
    if units and model.output in named:
        units.add(model.output_unit)
    return amount._replace(unit=units.pop()) if len(units) == 1 else amount


def _deviation(model: Model, question: Question) -> Amount | None:
    """Return the amount that is a difference from the standard atmosphere: "ISA+10"."""
    ends = {m.end for m in question.reading.mentions if m.holds(_ISA)}
    takes = {"altitude", "temperature"} <= {i.quantity for i in model.inputs}
    found = (a for a in question.reading.amounts if a.start in ends and a.unit in (None, "deg", "degC", "K"))
    return next(found, None) if takes else None


def _standard(
    item: ModelInput, model: Model, amounts: Mapping[str, tuple[float, Amount]], apart: Amount | None,
    question: Question, know: Knowledge,
) -> tuple[Bound, ...]:  # fmt: skip
    """Return the temperature of the standard atmosphere at the altitude given, for a question that says so."""
    altitude = next((i for i in model.inputs if i.quantity == "altitude" and i.id in amounts), None)
    if item.quantity != "temperature" or altitude is None or not question.reading.has(_ISA):
        return ()
    try:
        kelvin = temperature(know.units.to_si(amounts[altitude.id][0], altitude.unit))
    except OutOfRange:
        return ()
    said = f", {apart.value:+g} °C" if apart else ""
    value = know.units.from_si(kelvin + (apart.value if apart else 0.0), item.unit)
    return (Bound(value, "", f"the standard temperature at that altitude{said}"),)


def _gives_way(item: ModelInput, chosen: list[Bound], model: Model, know: Knowledge) -> bool:
    """Return whether an amount may take the place of what words have chosen: "FIRM, at 1.9 m/s2", "nose at 130 psi"."""
    if not chosen or _is_own(item):
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
    parts = [_part(i) for i in model.inputs if not _is_own(i)]
    return cued(question.reading.amounts, parts, question.reading.words, know.units)


def _is_figure(amount: Amount, model: Model, given: Mapping[str, tuple[Bound, ...]], know: Knowledge) -> bool:
    """Return whether an amount only names the type's own figure that a calculation takes anyway."""
    return amount.unit is not None and any(
        fits(amount, item.unit, know.units) == bound.value
        for item in model.inputs
        if item.default
        for bound in given.get(item.id, ())
    )


def _sought(model: Model, question: Question) -> str:
    """Return the input that a question asks for, so that no amount of it may be that input: "at what temperature …".

    Only where nothing but the input is of the quantity asked for: else the result may be meant.
    """
    asked = question.reading.asked - {model.output}
    found = [i.id for i in model.inputs if i.quantity in asked and i.id in model.inverse]
    alike = [i for i in model.inputs if i.quantity in asked and not _is_own(i)]
    if len(found) == 1 == len(alike):
        return found[0]
    return next((i.id for i in model.inputs if i.id in model.inverse and _asked_by_name(model, i, question)), "")


def _asked_by_name(model: Model, item: ModelInput, question: Question) -> bool:
    """Return whether a word that sets an input apart from the result follows what asks: "what normal distance"."""
    if item.unit != model.output_unit:
        return False
    own = {stem(w) for w in item.cues.lower().split()} - {stem(w) for w in model.of.lower().split()}
    words = question.reading.words
    amounts = {a.start for a in question.reading.amounts if words[a.start] != "one"}  # "what was the normal one?"
    for k in (k for k, word in enumerate(words) if stem(word) in own):
        before = words[max(0, k - 4) : k]
        sought = _SEEKING.intersection(before) or _BOUNDING.intersection(words[k + 1 : k + 5]) or _ends_asking(words, k)
        if sought and _led(words, k + 1, model) not in amounts:
            return True
    return False


def _led(words: tuple[str, ...], at: int, model: Model) -> int:
    """Return where the name of an amount ends that begins before a place: "normal landing distance of | 1,600 m"."""
    name = {"of", "is"}.union(model.of.lower().split())
    while at < len(words) and words[at] in name:
        at += 1
    return at


def _ends_asking(words: tuple[str, ...], at: int) -> bool:
    """Return whether a question ends, after a mark, in what stands at a place: "2,400 m: normal distance?"."""
    return len(words) - at <= _ENDING and at > 1 and words[at - 1] in STOPS


def _restates(amount: Amount, chosen: Mapping[str, list[Bound]], model: Model, know: Knowledge) -> bool:
    """Return whether an amount only repeats the figure that words have chosen: "at 250 we can take off"."""
    return any(
        fits(amount, item.unit, know.units) == bound.value
        for item in model.inputs
        if item.quantity != "deceleration" and not item.default
        for bound in chosen[item.id]
    )


def _part(item: ModelInput) -> Part:
    return part(item.id, item.unit, item.cues, bool(item.default))


def _is_own(item: ModelInput) -> bool:
    """Whether the type's own figure settles an input: no words in a question could mean it."""
    return bool(item.default) and item.default != "both" and not item.cues


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
        return tuple(b for c in item.choices if (b := _choice_value(item, c[1], c[2], question, know)))
    if item.default:
        bound = _choice_value(item, item.default, "", question, know)
        return (bound._replace(assumed=item.assumed),) if bound else ()
    return ()


def _chosen(item: ModelInput, question: Question, know: Knowledge) -> list[Bound]:
    found: list[Bound] = []
    if item.default == "both" and _names_both(question.reading.words):
        return found
    for words, value, says in item.choices:
        if any(said(phrase.strip(), question, know) for phrase in words.split(";")):
            bound = _choice_value(item, value, says, question, know)
            if bound:
                found.append(bound)
    return found


def _names_both(words: tuple[str, ...]) -> bool:
    """Return whether a thing is named with and without, or on and off, so that both are asked for."""
    for one, other in (("with", "without"), ("on", "off")):
        if one in words and other in words:
            first, second = sorted((words.index(one), words.index(other)))
            if second - first <= _NEAR_BY and not _EITHER.isdisjoint(words[first + 1 : second]):
                return True
    return False


def said(phrase: str, question: Question, know: Knowledge) -> bool:
    """Return whether a question says what a phrase of the knowledge says, in whatever words."""
    meaning = know.phrase_meaning(phrase)
    if meaning.named and meaning.states:
        return meaning.states <= question.states
    return bool(meaning.named) and not any(senses.isdisjoint(question.reading.choosing) for senses in meaning.named)


def _choice_value(item: ModelInput, value: str, says: str, question: Question, know: Knowledge) -> Bound | None:
    try:
        return Bound(float(value), says, "")
    except ValueError:
        pass
    figure = know.figure(value, question.variant)
    if figure is None:
        return None
    record = know.record(value, question.variant)
    given = figure.value
    if figure.unit != item.unit and know.units.get(figure.unit).dimension == know.units.get(item.unit).dimension:
        given = know.units.convert(figure.value, figure.unit, item.unit)
    return Bound(given, says, "", record.sources)


def resolve_model(
    model: Model, binding: Binding, question: Question, know: Knowledge
) -> ModelResult | Needed | None:
    """Return the calculation, or what is missing for it, or None when the model cannot serve the question."""
    runs = function(model.function)
    if runs is None:
        return None
    missing = binding.missing
    if binding.output is not None and len(missing) == 1 and missing[0].id in model.inverse:
        return _solve(model, runs, binding, missing[0], question, know)
    if binding.output is not None and not missing:
        wanted = [i for i in model.inputs if i.id in model.inverse and i.id not in binding.by_amount]
        wanted = [i for i in wanted if i.quantity in question.reading.concepts and _is_open(i, question, know)]
        if len(wanted) == 1:
            return _solve(model, runs, binding, wanted[0], question, know)
    if missing:
        return Needed(model, tuple(i.ask or i.id for i in missing), tuple(i.id for i in missing))
    result = _run(model, runs, binding, know)
    against = binding.output if any(_of_its_size(binding, v.value, question) for v in result.values) else None
    over = tuple(_over(model, binding, question, know))
    return result._replace(against=against, limit=_limit_of(model, question, know), over=over)


def _of_its_size(binding: Binding, value: float, question: Question) -> bool:
    """Return whether a figure given besides all inputs may be the result: by its unit, or by its size without one."""
    given = binding.output
    if given is None:
        return False
    bare = any(a.unit is None and abs(a.value - given) < _DUST for a in question.reading.amounts)
    return not bare or abs(value) / _FAR <= abs(given) <= abs(value) * _FAR


def _limit_of(model: Model, question: Question, know: Knowledge) -> Limit | None:
    """Return the limit that a model's result is held to, if it names one."""
    return _maximum_named(dict(model.extra).get("limit", ""), question, know)


def _ceiling(item: ModelInput, question: Question, know: Knowledge) -> Limit | None:
    """Return the maximum that an input is taken at where it is not given: it may be no greater."""
    return _maximum_named(item.default, question, know)


def _maximum_named(name: str, question: Question, know: Knowledge) -> Limit | None:
    """Return the limit of a name, where it is one with a maximum."""
    found = know.record(name, question.variant) if name in know.base.records else None
    return found if isinstance(found, Limit) and found.maximum else None


def _over(model: Model, binding: Binding, question: Question, know: Knowledge) -> Iterator[tuple[Limit, float]]:
    """Yield the limits that an input given is above, with it: "pavement for a turn at 75° of steering"."""
    for item in model.inputs:
        limit = _ceiling(item, question, know) if item.id in binding.by_amount else None
        value = binding.given[item.id][0].value if limit else 0.0
        if limit and limit.maximum and limit.maximum.unit == item.unit and value > limit.maximum.value:
            yield limit, value


def _is_open(item: ModelInput, question: Question, know: Knowledge) -> bool:
    """Return whether an input may be what is asked for: no words have settled it, or they only say whose it is."""
    return bool(item.default) or not _chosen(item, question, know)


def _combinations(binding: Binding) -> Iterator[dict[str, Bound]]:
    names = list(binding.given)
    for choice in product(*(binding.given[name] for name in names)):
        yield dict(zip(names, choice, strict=True))


def _si(model: Model, bound: Mapping[str, Bound], know: Knowledge) -> dict[str, float]:
    found: dict[str, float] = {}
    for item in model.inputs:
        if item.id in bound:
            found[item.id] = know.units.to_si(bound[item.id].value, item.unit)
    return found


def _run(model: Model, runs: Function, binding: Binding, know: Knowledge) -> ModelResult:
    values: list[ModelValue] = []
    note = ""
    for bound in _combinations(binding):
        inputs = _si(model, bound, know)
        try:
            result = know.units.from_si(runs.call(inputs), model.output_unit)
            extra = _extra(runs, inputs, know)
        except (OutOfRange, ValueError, ZeroDivisionError, OverflowError) as error:
            note = str(error)
            continue
        under = ", ".join(b.says for b in bound.values() if b.says)
        values.append(
            ModelValue(result, model.output_unit, model.output, under, _working(model, runs, bound, know), extra)
        )
    return ModelResult(model, tuple(values), _assumed(model, binding), "", _sources(model, binding), note)


def _solve(
    model: Model, runs: Function, binding: Binding, item: ModelInput, question: Question, know: Knowledge
) -> ModelResult | None:
    assert binding.output is not None
    target = know.units.to_si(binding.output, model.output_unit)
    values: list[ModelValue] = []
    note = ""
    for bound in _combinations(binding):
        inputs = _si(model, bound, know)

        def at(x: float, inputs: dict[str, float] = inputs) -> float:
            return runs.call({**inputs, item.id: x})

        try:
            low, high = _RANGES.get(item.quantity, (0.0, 1e6))
            found = solve_monotonic(at, target, low, high)
        except (OutOfRange, ValueError, ZeroDivisionError, OverflowError) as error:
            note = str(error)
            continue
        value = know.units.from_si(found, item.unit)
        under = ", ".join(b.says for b in bound.values() if b.says)
        working = (
            _working(model, runs, {name: b for name, b in bound.items() if name != item.id}, know)
            + f"; {model.of} {round_shown(binding.output, model.output_unit, know.units)}"
        )
        values.append(ModelValue(value, item.unit, item.quantity, under, working))
    assumed = tuple(a for a in _assumed(model, binding) if a != item.assumed)
    held = _ceiling(item, question, know)
    return ModelResult(model, tuple(values), assumed, item.id, _sources(model, binding), note, limit=held)


_RANGES = {
    "speed": (0.01, 400.0), "mass": (1.0, 1e7), "length": (0.01, 1e6), "pressure": (0.0, 1e9), "angle": (0.001, 1.5707),
    "temperature": (1.0, 3000.0), "altitude": (-1000.0, 19_900.0), "deceleration": (0.01, 100.0),
    "acceleration": (0.01, 100.0), "duration": (0.0, 1e6), "energy": (0.0, 1e12),
}  # fmt: skip


def _extra(runs: Function, inputs: dict[str, float], know: Knowledge) -> tuple[tuple[str, float, str], ...]:
    if runs.extra is None:
        return ()
    return tuple((name, know.units.from_si(value, unit), unit) for name, value, unit, _ in runs.extra(inputs))


def _working(model: Model, runs: Function, bound: Mapping[str, Bound], know: Knowledge) -> str:
    parts = []
    for item in model.inputs:
        if item.id in bound:
            shown = given_shown(bound[item.id].value, item.unit, know.units)
            parts.append(f"{item.id.replace('_', ' ')} {shown}")
    return f"{runs.formula}; " + ", ".join(parts)


def _assumed(model: Model, binding: Binding) -> tuple[str, ...]:
    given = {(i.unit, i.default) for i in model.inputs if i.id in binding.by_amount}  # "no wind", with a headwind
    open_inputs = (i for i in model.inputs if (i.unit, i.default) not in given)
    assumed = [b.assumed for i in open_inputs for b in binding.given.get(i.id, ()) if b.assumed]
    return tuple(dict.fromkeys((*assumed, *model.assumes)))


def _sources(model: Model, binding: Binding) -> tuple[Source, ...]:
    found = list(model.sources)
    for bounds in binding.given.values():
        found.extend(s for b in bounds for s in b.source)
    return tuple(dict.fromkeys(found))
