"""A turn that gives something to a calculation that is open: one that was asked back for, or that a verdict leads to.

"Fans on", after a cooling time that lacks what to reach, is no question about fans: it belongs to what is asked.
And "how long?" or "20 outside", after a temperature above the maximum, goes on to the time that it takes to come
down to it.
"""

from __future__ import annotations

from collections.abc import Mapping

from assistant.conversation.context import Context
from assistant.conversation.on_calculations.calculations import record_of
from assistant.conversation.reading_turns.given_inputs import Given, choices_of, given_before, in_words, worked_out
from assistant.conversation.reading_turns.readings import merged
from assistant.conversation.reading_turns.traits import ASKING, GOOD, OPEN, names_unknown
from assistant.knowledge.records import Model, ModelInput
from assistant.quantities.amounts import Amount
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CheckResult, ModelResult, Needed, Result

_MOST_WORDS = 10


def open_calculation(
    alone: Question, corrects: bool, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the open calculation with what a turn gives to it, or None where the turn asks something else."""
    if context.asked is None or len(alone.reading.words) > _MOST_WORDS or alone.named_variant:
        return None
    if isinstance(context.result, Needed):
        return _corrected(alone, context, knowledge) if corrects else _with_a_choice(alone, context, knowledge)
    if corrects:
        return None
    if isinstance(context.result, CheckResult):
        return _after_a_verdict(alone, context, knowledge)
    return _from_what_came_out(alone, context, knowledge) if isinstance(context.result, ModelResult) else None


def _with_a_choice(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what was asked back for with the choice that a turn makes in its words: "fans on"."""
    assert isinstance(context.result, Needed) and context.asked is not None
    model = context.result.record
    if not isinstance(model, Model) or alone.reading.amounts or not ASKING.isdisjoint(alone.reading.words[:1]):
        return None
    choices = choices_of(model, alone, knowledge)
    if not choices or alone.reading.asked & QUANTITIES or names_unknown(model.id, alone, knowledge):
        return None
    question, _ = merged(alone, context, knowledge, False)  # a bare number keeps the part that it may still take
    result = resolve_scored(question, knowledge).result
    if record_of(result) == model.id and _lacks_less(result, context.result):
        return question, result
    # A word that chooses nothing by itself ("idle") does so in the whole phrase of the choice.
    old = given_before(model, context.asked, knowledge)
    return _worked_out(model, Given({}, choices), old, alone, context, knowledge)


def _lacks_less(result: Result, before: Needed) -> bool:
    """Return whether less is asked back for than before, or nothing."""
    return not isinstance(result, Needed) or set(result.names) < set(before.names)


def _corrected(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what was asked back for with the one bare amount of a correction in the place of the nearest given."""
    assert isinstance(context.result, Needed) and context.asked is not None
    model, amounts = context.result.record, alone.reading.amounts
    if not isinstance(model, Model) or len(amounts) != 1 or any(not m.weak for m in alone.reading.mentions):
        return None
    old, amount = given_before(model, context.asked, knowledge), amounts[0]
    like = {name: past for name, past in old.amounts.items() if amount.unit in (None, past.unit) and past.value}
    if not like or not amount.value:
        return None
    name = min(like, key=lambda each: abs(like[each].value - amount.value))
    new = Given({name: like[name]._replace(value=amount.value, raw=amount.raw)}, {})
    return _worked_out(model, new, old, alone, context, knowledge)


def _after_a_verdict(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the calculation that leads from the amount just judged to the limit that it was held against."""
    assert isinstance(context.result, CheckResult) and context.asked is not None
    checks = [check for check in context.result.checks if not check.within]
    amounts = context.asked.reading.amounts
    if len(checks) != 1 or len(amounts) != 1:
        return None
    for model, target in _leading_to(checks[0].limit.id, knowledge):
        start = _start(model)
        given = _given_by(alone, model, target, knowledge)
        if given is None or names_unknown(model.id, alone, knowledge):
            continue
        phrase = next(words for words, value, _ in target.choices if value == checks[0].limit.id)
        judged = amounts[0]._replace(unit=amounts[0].unit or start.unit)
        old = Given({start.id: judged}, {target.id: phrase.split(";")[0].strip()})
        return _worked_out(model, given, old, alone, context, knowledge)
    return None


def _from_what_came_out(
    alone: Question, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the calculation that starts from what came out last, for a turn that asks for its result and chooses what
    it leads to: "how long until take-off at 10 degrees?", after a brake temperature.
    """
    told = context.result
    if not isinstance(told, ModelResult) or told.solved or len(told.values) != 1 or not alone.reading.asked:
        return None
    for model, target in _leading_to("", knowledge):
        start, came = _start(model), told.values[0]
        if came.unit != start.unit or model.id == told.model.id or model.output not in alone.reading.asked:
            continue
        choices = choices_of(model, alone, knowledge)
        given = _given_by(alone, model, None, knowledge) if target.id in choices else None
        if given is None or names_unknown(model.id, alone, knowledge):
            continue
        old = Given({start.id: Amount(0, 0, round(came.value, 1), came.unit, "", False, False)}, {})
        return _worked_out(model, given, old, alone, context, knowledge)
    return None


def _start(model: Model) -> ModelInput:
    """Return the input that a calculation starts from: the greatest of its row."""
    return next(i for i in model.inputs if i.id == model.descending[0])


def _leading_to(limit: str, knowledge: Knowledge) -> list[tuple[Model, ModelInput]]:
    """Return the calculations that come down to a limit, or to any, with the input that chooses it."""
    models = (knowledge.base.records[name] for name in knowledge.base.ids("models"))
    return [
        (model, item)
        for model in models
        if isinstance(model, Model) and any(i.id == model.descending[0] for i in model.inputs if model.descending)
        for item in model.inputs
        if item.id in model.descending[1:] and any(limit in ("", value) for _, value, _ in item.choices)
    ]


def _given_by(alone: Question, model: Model, target: ModelInput | None, knowledge: Knowledge) -> Given | None:
    """Return what a turn gives of a calculation beside the amount judged, or nothing where it asks for its result; None
    where it does neither.
    """
    asks = model.output in alone.reading.asked
    if asks and not alone.reading.amounts:
        first = resolve_scored(alone, knowledge)  # "how long must the fans be off?" has an answer of its own
        asks = first.score < GOOD or isinstance(first.result, (*OPEN, ModelResult))
        if not asks:
            return None
    chosen = choices_of(model, alone, knowledge)
    choices = {name: phrase for name, phrase in chosen.items() if target is None or name != target.id}
    amounts = _led(alone, model, chosen)
    if len(amounts) < len(alone.reading.amounts) or not (asks or choices or amounts):
        return None
    others = (alone.reading.asked & QUANTITIES) - {model.output} - {i.quantity for i in model.inputs}
    return None if others else Given(amounts, choices)


def _led(alone: Question, model: Model, chosen: Mapping[str, str]) -> dict[str, Amount]:
    """Return the amounts of a turn that a word beside them gives to an input, other than the one that comes first; a
    lone one of a question for the result is the last of the row.
    """
    cued = {i.id: set(i.cues.split()) for i in model.inputs if i.id not in (*model.descending[:1], *chosen)}
    words = alone.reading.words
    found: dict[str, Amount] = {}
    for amount in alone.reading.amounts:
        near = {*words[max(0, amount.start - 3) : amount.start], *words[amount.end : amount.end + 3]}
        name = next((i for i, cues in cued.items() if cues & near and i not in found), None)
        if name is None and model.output in alone.reading.asked and len(alone.reading.amounts) == 1:
            name = model.descending[-1]
        item = next((i for i in model.inputs if i.id == name), None)
        if item is not None and amount.unit in (None, "deg", item.unit):
            found[item.id] = amount._replace(unit=item.unit)
    return found


def _worked_out(
    model: Model, new: Given, old: Given, alone: Question, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    variant = context.asked.variant if context.asked else ""
    text = " , ".join((model.of, *in_words(model, new, old)))
    question, result = worked_out(text, model, variant, knowledge)
    return None if result is None else (question.with_text(alone.reading.text), result)
