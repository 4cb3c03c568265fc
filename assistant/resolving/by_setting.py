"""Which setting of a control gives a result: "the gentlest autobrake that stops us within 1,300 m from 130 kt".

Each setting is calculated. Where the result is a distance or a time that is needed, the gentlest setting that needs
no more than what there is answers; where it tells the setting itself, the one that comes nearest does.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.knowledge.records import Model, ModelInput
from assistant.resolving.calculating import run
from assistant.resolving.functions import Function
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_choices import Bound, choice_value
from assistant.resolving.model_inputs import Binding
from assistant.resolving.results import ModelResult, ModelValue

_NEAR = 0.03
"""How far, as a share, a result may be from the one that a setting gives."""


def by_setting(
    model: Model, runs: Function, binding: Binding, item: ModelInput, question: Question, know: Knowledge
) -> ModelResult | None:
    """Return what each setting gives, with the one asked for; None when something else is missing."""
    names = dict.fromkeys(words for words, _, _ in item.choices)
    if any(not _settles(i, names) for i in binding.missing):
        return None
    values: list[ModelValue] = []
    result = None
    for words, _, says in item.choices:
        chosen = {i.id: _choice(i, words, question, know) for i in model.inputs if _settles(i, names)}
        found = {name: (bound,) for name, bound in chosen.items() if bound is not None}
        result = run(model, runs, binding._replace(given={**binding.given, **found}), know)
        values += [v._replace(under=says) for v in result.values]
    given = binding.output
    if result is None or not values or given is None:
        return None
    told = result._replace(values=tuple(values), solved=item.id, against=given)
    return told._replace(picked=_picked(model, item, values, given))


def _settles(item: ModelInput, names: dict[str, None]) -> bool:
    """Return whether the settings decide an input: the deceleration, and the delay with it."""
    return bool(item.choices) and all(words in names for words, _, _ in item.choices)


def _choice(item: ModelInput, words: str, question: Question, know: Knowledge) -> Bound | None:
    found: Iterator[tuple[str, str, str]] = (c for c in item.choices if c[0] == words)
    return next((choice_value(item, value, says, question, know) for _, value, says in found), None)


def _picked(model: Model, item: ModelInput, values: list[ModelValue], given: float) -> int | None:
    """Return the place of the setting that answers, the settings standing from the gentlest on."""
    if model.output == item.quantity:
        nearest = min(range(len(values)), key=lambda k: abs(values[k].value - given))
        return nearest if abs(values[nearest].value - given) <= _NEAR * given else None
    return next((k for k, value in enumerate(values) if value.value <= given), None)
