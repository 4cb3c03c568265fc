"""Run the physics function of a planning model on what its inputs are bound to, or find the input for a result."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import product

from assistant.knowledge.records import Limit, Model, ModelInput, Source
from assistant.physics.errors import OutOfRange
from assistant.physics.solve import solve_monotonic
from assistant.quantities.show import given_shown, round_shown
from assistant.resolving.functions import Function
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_choices import Bound
from assistant.resolving.model_inputs import Binding
from assistant.resolving.results import ModelResult, ModelValue


def ceiling(item: ModelInput, question: Question, know: Knowledge) -> Limit | None:
    """Return the maximum that an input is taken at where it is not given: it may be no greater."""
    return maximum_named(item.default, question, know)


def maximum_named(name: str, question: Question, know: Knowledge) -> Limit | None:
    """Return the limit of a name, where it is one with a maximum."""
    found = know.record(name, question.variant) if name in know.base.records else None
    return found if isinstance(found, Limit) and found.maximum else None


def _combinations(binding: Binding) -> Iterator[dict[str, Bound]]:
    names = list(binding.given)
    for choice in product(*(binding.given[name] for name in names)):
        yield dict(zip(names, choice, strict=True))


def in_si(model: Model, bound: Mapping[str, Bound], know: Knowledge) -> dict[str, float]:
    """Return the inputs of a model in SI units."""
    found: dict[str, float] = {}
    for item in model.inputs:
        if item.id in bound:
            found[item.id] = know.units.to_si(bound[item.id].value, item.unit)
    return found


def run(model: Model, runs: Function, binding: Binding, know: Knowledge) -> ModelResult:
    """Return the result of a model, once for each alternative that is left open."""
    values: list[ModelValue] = []
    note = ""
    for bound in _combinations(binding):
        inputs = in_si(model, bound, know)
        try:
            result = know.units.from_si(runs.call(inputs), model.output_unit)
            extra = _extra(runs, inputs, know)
        except (OutOfRange, ValueError, ZeroDivisionError, OverflowError) as error:
            note = str(error)
            continue
        under = ", ".join(b.says for b in bound.values() if b.says)
        values.append(
            ModelValue(result, model.output_unit, model.output, under, working_of(model, runs, bound, know), extra)
        )
    return ModelResult(model, tuple(values), assumed_of(model, binding), "", sources_of(model, binding), note)


def solve(
    model: Model, runs: Function, binding: Binding, item: ModelInput, question: Question, know: Knowledge
) -> ModelResult | None:
    """Return what an input must be for the result that is given, once for each alternative that is left open."""
    assert binding.output is not None
    target = know.units.to_si(binding.output, model.output_unit)
    values: list[ModelValue] = []
    note = ""
    for bound in _combinations(binding):
        inputs = in_si(model, bound, know)

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
            working_of(model, runs, {name: b for name, b in bound.items() if name != item.id}, know)
            + f"; {model.of} {round_shown(binding.output, model.output_unit, know.units)}"
        )
        values.append(ModelValue(value, item.unit, item.quantity, under, working))
    assumed = tuple(a for a in assumed_of(model, binding) if a != item.assumed)
    held = ceiling(item, question, know)
    return ModelResult(model, tuple(values), assumed, item.id, sources_of(model, binding), note, limit=held)


_RANGES = {
    "speed": (0.01, 400.0), "mass": (1.0, 1e7), "length": (0.01, 1e6), "pressure": (0.0, 1e9), "angle": (0.001, 1.5707),
    "temperature": (1.0, 3000.0), "altitude": (-1000.0, 19_900.0), "deceleration": (0.01, 100.0),
    "acceleration": (0.01, 100.0), "duration": (0.0, 1e6), "energy": (0.0, 1e12),
}  # fmt: skip


def _extra(runs: Function, inputs: dict[str, float], know: Knowledge) -> tuple[tuple[str, float, str], ...]:
    if runs.extra is None:
        return ()
    return tuple((name, know.units.from_si(value, unit), unit) for name, value, unit, _ in runs.extra(inputs))


def working_of(model: Model, runs: Function, bound: Mapping[str, Bound], know: Knowledge) -> str:
    """Return how a result came about: the formula, and what each input was."""
    parts = []
    for item in model.inputs:
        if item.id in bound:
            shown = given_shown(bound[item.id].value, item.unit, know.units)
            parts.append(f"{item.id.replace('_', ' ')} {shown}")
    return f"{runs.formula}; " + ", ".join(parts)


def assumed_of(model: Model, binding: Binding) -> tuple[str, ...]:
    """Return what a calculation takes for granted."""
    given = {(i.unit, i.default) for i in model.inputs if i.id in binding.by_amount}  # "no wind", with a headwind
    open_inputs = (i for i in model.inputs if (i.unit, i.default) not in given)
    assumed = [b.assumed for i in open_inputs for b in binding.given.get(i.id, ()) if b.assumed]
    return tuple(dict.fromkeys((*assumed, *model.assumes)))


def sources_of(model: Model, binding: Binding) -> tuple[Source, ...]:
    """Return the paragraphs that a calculation rests on."""
    found = list(model.sources)
    for bounds in binding.given.values():
        found.extend(s for b in bounds for s in b.source)
    return tuple(dict.fromkeys(found))
