"""A turn that goes on from what was calculated last to another calculation, which takes that as one of its inputs.

"How long to cool to 100 from there?", after a brake temperature, and "what radius is that?", after a tiller limit or a
sum of orders, are of the value that came out; and what was given for the last calculation holds for the next one
before any figure that would be taken where nothing is given.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.given_inputs import Given, choices_of, given_before, in_words
from assistant.conversation.reading_turns.like_amounts import unit_word
from assistant.conversation.reading_turns.readings import question_of
from assistant.conversation.reading_turns.traits import names_unknown
from assistant.frozen import NamedTuple
from assistant.knowledge.records import Model, ModelInput
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_inputs import bind
from assistant.resolving.models import resolve_model
from assistant.resolving.ranking import candidates
from assistant.resolving.results import ModelResult, Needed, Result, ScheduleResult
from assistant.understanding.mentions import BOUNDS

_MOST_WORDS = 14
_LEAST = 0.45
_POINTING = frozenset({"that", "there", "this", "it", "those", "them", "then"})
_FROM = frozenset({"from", "at", "with", "of"})
_DUST = 0.06
_FURTHER = frozenset({"degC", "deg", "kt"})
"""Units of results that another calculation goes on from."""


class _Told(NamedTuple):
    """What came out last, in its unit, and the calculation that it came out of."""

    value: float
    unit: str
    record: str


class _Taken(NamedTuple):
    """The input of another calculation that a value which came out is taken up as."""

    told: _Told
    item: ModelInput


def from_the_result(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the other calculation that a turn asks for on what came out last, or on what that was made of."""
    before, told = context.asked, _told(context.result)
    words = alone.reading.words
    if before is None or told is None or not words or len(words) > _MOST_WORDS:
        return None
    points = not _POINTING.isdisjoint(words)
    for model in _models(alone, first, knowledge):
        if model.id == told.record or names_unknown(model.id, alone, knowledge):
            continue
        variant = alone.variant if alone.named_variant else before.variant
        shared = _given_before(model, alone, context, knowledge)
        if shared:
            return _calculated(shared, model, alone, variant, knowledge)
        item = _taken_up(model, told, knowledge)
        asks = model.output in alone.reading.asked
        if item is not None and (points or (asks and not item.default)):
            text = _with_value(words, told, item)
            found = _calculated(text, model, alone, variant, knowledge, _Taken(told, item))
            if found:
                return found
    return None


def with_what_was_given(
    alone: Question, question: Question, result: Result, context: Context, knowledge: Knowledge
) -> tuple[Question, Result]:
    """Return how a turn was understood; another calculation than the last takes what was given for that one before
    what it would take as usual: "and the outer legs", after the nose wheels at 60 degrees.
    """
    told = context.result
    if not isinstance(result, ModelResult) or not isinstance(told, ModelResult) or result.model.id == told.model.id:
        return question, result
    if result.solved or not BOUNDS.isdisjoint(alone.reading.concepts):
        return question, result
    if any(i.default and i.cues and i.assumed in result.assumed for i in result.model.inputs):
        text = _given_before(result.model, alone, context, knowledge)
        found = _calculated(text, result.model, alone, question.variant, knowledge) if text else None
        return found or (question, result)
    return question, result


def _told(result: Result | None) -> _Told | None:
    """Return the one value that a calculation or a schedule gave, where another may go on from it."""
    if isinstance(result, ScheduleResult) and result.value is not None:
        return _Told(result.value, result.schedule.output_unit, result.schedule.id)
    if not isinstance(result, ModelResult) or result.solved or len(result.values) != 1:
        return None
    return _Told(result.values[0].value, result.values[0].unit, result.model.id)


def _models(alone: Question, first: Scored, knowledge: Knowledge) -> Iterator[Model]:
    """Yield the calculations that a turn may ask for by itself."""
    seen = set()
    for result in (first.result, *_fitting(alone, knowledge)):
        model = getattr(result, "model", None) or getattr(result, "record", None)
        if isinstance(result, (ModelResult, Needed)) and isinstance(model, Model) and model.id not in seen:
            seen.add(model.id)
            yield knowledge.base.records[model.id]


def _fitting(alone: Question, knowledge: Knowledge) -> Iterator[Result]:
    found = candidates(alone, knowledge)[:3]
    return (c.result for c in found if c.score >= _LEAST)


def _given_before(model: Model, alone: Question, context: Context, knowledge: Knowledge) -> str:
    """Return a calculation in words with what the last one was given of an input that it would take as usual; ""
    where it would take none so.
    """
    last, before = getattr(context.result, "model", None), context.asked
    if not isinstance(last, Model) or before is None or alone.reading.amounts:
        return ""
    old = given_before(last, before, knowledge)
    own = {i.id: i for i in last.inputs}
    usual = [i for i in model.inputs if i.default and i.cues and i.id in old.amounts and own[i.id].unit == i.unit]
    if not usual or any(not i.default and not i.choices and i.id not in old.amounts for i in model.inputs):
        return ""
    kept = {i.id: old.amounts[i.id] for i in model.inputs if i.id in old.amounts}
    new = Given({}, choices_of(model, alone, knowledge))
    return " , ".join((model.of, *in_words(model, new, Given(kept, old.choices))))


def _taken_up(model: Model, told: _Told, knowledge: Knowledge) -> ModelInput | None:
    """Return the input of a calculation that a value which came out is."""
    if told.unit not in _FURTHER:
        return None
    amount = Amount(0, 0, told.value, told.unit, "", False, False)
    fitting = [i for i in model.inputs if i.cues and fits(amount, i.unit, knowledge.units) is not None]
    return next((i for i in fitting if i.id in model.descending), None) or next(iter(fitting), None)


def _with_value(words: tuple[str, ...], told: _Told, item: ModelInput) -> str:
    """Return a turn with what came out in the place of the word that points at it, or before all."""
    value = (f"{told.value:.10g}", unit_word(told.unit))
    for k in range(len(words) - 1, 0, -1):
        if words[k] in _POINTING and words[k - 1] in _FROM:
            return " ".join((*words[: k - 1], item.cues.split()[0], *value, *words[k + 1 :]))
    rest = [w for w in words if w not in _POINTING]
    return " ".join((*rest, ",", item.cues.split()[0], *value))


def _calculated(
    text: str, model: Model, alone: Question, variant: str, knowledge: Knowledge, taken: _Taken | None = None
) -> tuple[Question, Result] | None:
    """Return a calculation in words with its result, or what it lacks besides what it takes up."""
    question = question_of(text, knowledge, variant)._replace(variant=variant, context=True)
    own = knowledge.record(model.id, variant)
    binding = bind(own, question, knowledge)
    if taken:
        start = binding.places.get(taken.item.id)
        amount = next((a for a in question.reading.amounts if a.start == start), None)
        if amount is None or abs(amount.value - taken.told.value) > _DUST:
            return None
    result = resolve_model(own, binding, question, knowledge)
    asked = question.with_text(alone.reading.text)
    if isinstance(result, ModelResult) and result.values and not result.note:
        return asked, result
    return (asked, result) if isinstance(result, Needed) and taken else None
