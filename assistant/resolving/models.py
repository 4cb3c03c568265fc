"""Planning models: what of a model is asked for, and whether enough is given for it, or what it lacks."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.knowledge.records import Limit, Model, ModelInput
from assistant.resolving.by_setting import by_setting
from assistant.resolving.calculating import ceiling, maximum_named, run, solve
from assistant.resolving.functions import Function, function
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_choices import chosen
from assistant.resolving.model_inputs import Binding
from assistant.resolving.results import ModelResult, Needed
from assistant.resolving.sought import setting_sought
from assistant.understanding.clauses import asks_whether

_FAR, _DUST = 3.0, 1e-9
"""How many times larger or smaller than a result a bare figure may be that is held against it."""


def resolve_model(
    model: Model, binding: Binding, question: Question, know: Knowledge
) -> ModelResult | Needed | None:
    """Return the calculation, or what is missing for it, or None when the model cannot serve the question."""
    runs = function(model.function)
    if runs is None:
        return None
    setting = setting_sought(model, question) if binding.output is not None else None
    if setting is not None and setting in binding.missing:
        return by_setting(model, runs, binding, setting, question, know)
    if binding.sought:
        solved = _sought(model, runs, binding, question, know)
        if solved is not None:
            return solved
    missing = binding.missing
    if binding.output is not None and len(missing) == 1 and missing[0].id in model.inverse:
        return solve(model, runs, binding, missing[0], question, know)
    if binding.output is not None and not missing and not asks_whether(question.reading.words):
        wanted = [i for i in model.inputs if i.id in model.inverse and i.id not in binding.by_amount]
        wanted = [i for i in wanted if i.quantity in question.reading.concepts and _is_open(i, question, know)]
        if len(wanted) == 1:
            return solve(model, runs, binding, wanted[0], question, know)
    if missing:
        return Needed(model, tuple(i.ask or i.id for i in missing), tuple(i.id for i in missing))
    result = run(model, runs, binding, know)
    against = binding.output if any(_of_its_size(binding, v.value, question) for v in result.values) else None
    over = tuple(_over(model, binding, question, know))
    return result._replace(against=against, limit=_limit_of(model, question, know), over=over)


def _sought(
    model: Model, runs: Function, binding: Binding, question: Question, know: Knowledge
) -> ModelResult | Needed | None:
    """Return what the input must be that is asked for, at the result given or else at the result's limit; or what is
    lacking for it. None where it may stay as it is assumed.
    """
    item = next(i for i in model.inputs if i.id == binding.sought)
    lacking = [i for i in binding.missing if i.id != item.id]
    limit = _limit_of(model, question, know) if binding.output is None else None
    output = know.figure(limit.id, question.variant) if limit else None
    if output is not None and not lacking and binding.by_amount:
        at = know.units.convert(output.value, output.unit, model.output_unit)
        solved = solve(model, runs, binding._replace(output=at), item, question, know)
        return solved._replace(to=limit) if solved else None
    if binding.output is not None and not lacking:
        return solve(model, runs, binding, item, question, know)
    if item.default or not binding.amounts_used:
        return None
    asks = [i.ask or i.id for i in lacking] + ([f"the {model.of}"] if binding.output is None else [])
    return Needed(model, tuple(asks), (*(i.id for i in lacking), *([model.output] if binding.output is None else [])))


def _of_its_size(binding: Binding, value: float, question: Question) -> bool:
    """Return whether a figure given besides all inputs may be the result: by its unit, or by its size without one."""
    given = binding.output
    if given is None:
        return False
    bare = any(a.unit is None and abs(a.value - given) < _DUST for a in question.reading.amounts)
    return not bare or abs(value) / _FAR <= abs(given) <= abs(value) * _FAR


def _limit_of(model: Model, question: Question, know: Knowledge) -> Limit | None:
    """Return the limit that a model's result is held to, if it names one."""
    return maximum_named(dict(model.extra).get("limit", ""), question, know)


def _over(model: Model, binding: Binding, question: Question, know: Knowledge) -> Iterator[tuple[Limit, float]]:
    """Yield the limits that an input given is above, with it: "pavement for a turn at 75° of steering"."""
    for item in model.inputs:
        limit = ceiling(item, question, know) if item.id in binding.by_amount else None
        value = binding.given[item.id][0].value if limit else 0.0
        if limit and limit.maximum and limit.maximum.unit == item.unit and value > limit.maximum.value:
            yield limit, value


def _is_open(item: ModelInput, question: Question, know: Knowledge) -> bool:
    """Return whether an input may be what is asked for: no words have settled it, or they only say whose it is."""
    return bool(item.default) or not chosen(item, question, know)
