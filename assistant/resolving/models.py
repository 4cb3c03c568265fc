"""Planning models: run the physics function that the inputs of a model are bound to, or say what it lacks."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import product

from assistant.knowledge.records import Limit, Model, ModelInput, Source
from assistant.physics.errors import OutOfRange
from assistant.physics.solve import solve_monotonic
from assistant.quantities.show import given_shown, round_shown
from assistant.resolving.functions import Function, function
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_choices import Bound, chosen
from assistant.resolving.model_inputs import Binding
from assistant.resolving.results import ModelResult, ModelValue, Needed

_FAR, _DUST = 3.0, 1e-9
"""How many times larger or smaller than a result a bare figure may be that is held against it."""


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
    return bool(item.default) or not chosen(item, question, know)


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
