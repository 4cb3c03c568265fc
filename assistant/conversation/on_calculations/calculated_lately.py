"""A turn of a figure on a calculation told lately, or on one that takes the figure just told.

"And the width at fifty?", after a side question, is asked of the pavement calculated before it; "sixteen hundred metres
becomes what?", after a factor, of the calculation that multiplies by it.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.answering.parts import condition_words
from assistant.conversation.context import LATELY, Context
from assistant.conversation.reading_turns.given_inputs import Given, given_before, in_words, worked_out
from assistant.conversation.reading_turns.like_amounts import unit_word
from assistant.conversation.reading_turns.readings import merged, question_of, things_named
from assistant.conversation.reading_turns.traits import CLEAR, GOOD, LONG, OPEN, names_unknown
from assistant.knowledge.records import Model, Schedule
from assistant.resolving.amounts_for import fits
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import bound_value
from assistant.resolving.results import (
    FactResult,
    LimitResult,
    ModelResult,
    Needed,
    ProcedureResult,
    Result,
    ScheduleResult,
    limits_of,
)  # fmt: skip

_ANSWERING = 0.85
_BRIEF = 5
_LEAST_ALTITUDE = 1000.0
_TIMES = 3.0
"""How many times larger or smaller than a limit a bare figure is that is not held against it."""
_ONWARD = frozenset({"so", "and", "then", "now", "per", "each", "for", "into"})
_GOING_ON = frozenset({"so", "then", "and", "with", "for", "ok", "say", "from", "of", "now"})
"""Words beside a bare amount by which it is put into what was told: "1300 then"."""
_POINTING = frozenset({"that", "it", "this", "those"})
_BETWEEN = (FactResult, ProcedureResult)
"""Side questions that take no figure themselves."""


def calculated_lately(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the calculation that a turn's figure is meant for, where the turn does not answer clearly by itself."""
    if not alone.reading.amounts or len(alone.reading.words) > LONG:
        return None
    if alone.conditions and not isinstance(first.result, Needed):
        return None
    if first.score >= CLEAR and not isinstance(first.result, OPEN):
        return None
    found = _lately(alone, first, context, knowledge) or _taking_the_figure(alone, first, context, knowledge)
    return found or _of_what_was_spoken_of(alone, first, context, knowledge)


def _lately(alone: Question, first: Scored, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the calculation before a side question, with the turn's figure in the place of its like."""
    between = isinstance(context.result, _BETWEEN) or _cannot_be(context.result, alone, knowledge)
    if not between and not isinstance(first.result, Needed):
        return None
    for past in context.earlier[:LATELY]:
        record = calculation_of(past.result)
        if record is None or names_unknown(record.id, alone, knowledge):
            continue
        before = context._replace(asked=past.asked, result=past.result, answer=past.answer)
        question, whole = merged(alone, before, knowledge, False)
        found = resolve_scored(question, knowledge)
        again = calculation_of(found.result)
        lacking = isinstance(first.result, Needed) and first.result.record.id == record.id
        if not between and not lacking:
            return None
        if whole or lacking or first.score < found.score:
            return (question, found.result) if again and again.id == record.id else None
    return None


def _cannot_be(told: Result | None, alone: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn's amount is far from being held against the one limit told last."""
    figure = bound_value(told.limits[0]) if isinstance(told, LimitResult) and len(told.limits) == 1 else None
    if figure is None or not figure.value:
        return False
    return all(
        fits(a, figure.unit, knowledge.units) is None
        or (a.unit is None and not figure.value / _TIMES <= a.value <= figure.value * _TIMES)
        for a in alone.reading.amounts
    )


def _taking_the_figure(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the calculation that takes the figure told last, of the turn's amount."""
    told = {limit.id for limit in limits_of(context.result)}
    other = _with_another_figure(told, alone, context, knowledge)
    if other:
        return other
    fitting = [m for m in _models(told, knowledge) if _fitting(m, told, alone, knowledge)]
    if isinstance(first.result, OPEN) and isinstance(context.result, _BETWEEN):
        fitting += _of_the_paragraph(context, knowledge)
    for model in fitting:
        if names_unknown(model.id, alone, knowledge):
            continue
        chosen = (says for i in model.inputs for _, value, says in i.choices if value in told)
        text = " , ".join((model.of, _with_unit(model, alone), *chosen))
        question = question_of(text, knowledge, alone.variant)
        found = resolve_scored(question, knowledge)
        again = calculation_of(found.result)
        if again and again.id == model.id and found.score > first.score:
            return question.with_text(alone.reading.text)._replace(context=True), found.result
    return None


def _with_another_figure(
    told: set[str], alone: Question, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the calculation before with a turn's amount for the figure that it took as usual, and that was told since:
    "2 m then", after "what clearance did you use?".
    """
    past = context.earlier[0] if context.earlier else None
    if past is None or not isinstance(past.result, ModelResult) or past.result.solved:
        return None
    if len(alone.reading.amounts) != 1 or _cannot_be(context.result, alone, knowledge):
        return None
    model, amount = past.result.model, alone.reading.amounts[0]
    item = next((i for i in model.inputs if i.default in told and i.cues), None)
    if item is None or fits(amount, item.unit, knowledge.units) is None or names_unknown(model.id, alone, knowledge):
        return None
    new = Given({item.id: amount._replace(unit=amount.unit or item.unit)}, {})
    words = in_words(model, new, given_before(model, past.asked, knowledge))
    question, result = worked_out(" , ".join((model.of, *words)), model, past.asked.variant, knowledge)
    if not isinstance(result, ModelResult) or not result.values:
        return None
    return question.with_text(alone.reading.text), result


def _with_unit(model: Model, alone: Question) -> str:
    """Return the words of a turn, its one bare amount in the unit of the one thing that a calculation lacks."""
    lacking = _lacking(model)
    words = [*alone.reading.words]
    if len(lacking) == 1 and _is_led(alone, lacking[0]):
        words.insert(alone.reading.amounts[0].end, unit_word(lacking[0]))
    return " ".join(words)


def _of_what_was_spoken_of(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the calculation that a turn's amount gives all to, with a thing that the last questions named."""
    named = things_named(alone.reading, knowledge)
    if first.score >= GOOD or not (named or any(a.unit for a in alone.reading.amounts)):
        return None
    asked = (context.asked, *(past.asked for past in context.earlier[:LATELY]))
    things = (m for before in asked if before for m in things_named(before.reading, knowledge))
    words = " ".join(alone.reading.words).rstrip("?. ")
    states = (condition_words(c, knowledge) for c in context.scenario if not c.is_result)
    for name in dict.fromkeys((*states, *(m.text for m in things))):
        question = question_of(f"{words} , {name}", knowledge, alone.variant)
        found = resolve_scored(question, knowledge)
        if isinstance(found.result, ModelResult) and found.score >= CLEAR:
            return question.with_text(alone.reading.text)._replace(context=True), found.result
    return None


def onward(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return another calculation on all that the last one was given, which a turn goes on to: "so how much into each
    brake in an RTO?", after the energy of the aeroplane.
    """
    told = calculation_of(context.result)
    words = alone.reading.words
    if told is None or alone.reading.amounts or len(words) > LONG or isinstance(first.result, ModelResult):
        return None
    if _ONWARD.isdisjoint(words[:2]) and _POINTING.isdisjoint(words):
        return None
    question, _ = merged(alone, context, knowledge, False)
    found = resolve_scored(question, knowledge)
    model = calculation_of(found.result)
    asked = alone.reading.asked & QUANTITIES
    least = _ANSWERING if asked or ("how" in words and "much" in words) else max(_ANSWERING, first.score)
    if model is None or model.id == told.id or found.score < least:
        return None
    gives = asked <= {getattr(model, "output", "")} and not names_unknown(model.id, alone, knowledge)
    return (question, found.result) if gives else None


def _models(told: set[str], knowledge: Knowledge) -> Iterator[Model]:
    for name in knowledge.base.ids("models") if told else ():
        record = knowledge.base.records[name]
        if isinstance(record, Model) and not told.isdisjoint(_figures(record)):
            yield record


def _of_the_paragraph(context: Context, knowledge: Knowledge) -> list[Model]:
    """Return the calculations of the paragraph that the last answer rests on, which lack one thing."""
    record = knowledge.base.records.get(context.answer.entry) if context.answer else None
    near = set(getattr(record, "sources", ()))
    models = (knowledge.base.records[name] for name in knowledge.base.ids("models"))
    return [m for m in models if near & set(m.sources) and sum(not i.default for i in m.inputs) == 1]


def _figures(model: Model) -> Iterator[str]:
    """Yield the figures of the type that a calculation takes by default, or by a choice."""
    for item in model.inputs:
        yield item.default
        yield from (value for _, value, _ in item.choices)


def _fitting(model: Model, told: set[str], alone: Question, knowledge: Knowledge) -> bool:
    """Return whether an amount has the unit of an input that a calculation lacks, and none that of the figure told; or
    a turn asks for what it gives: "how far from 125?".
    """
    asked = alone.reading.asked & {model.output, *(("distance",) if model.output == "length" else ())}
    lacking = _lacking(model)
    own = [item.unit for item in model.inputs if item.default in told]
    led = len(lacking) == 1 and _is_led(alone, lacking[0])
    given = [a for a in alone.reading.amounts if a.unit is not None or asked or led]
    fit = (fits(a, unit, knowledge.units) is not None for a in given for unit in lacking)
    return any(fit) and not any(a.unit == unit for a in given for unit in own)


def _lacking(model: Model) -> list[str]:
    """Return the units of the amounts that a calculation takes and has no usual figure for."""
    return [item.unit for item in model.inputs if not item.default and (item.cues or not item.choices)]


def _is_led(alone: Question, unit: str) -> bool:
    """Return whether a turn is no more than one bare amount behind "at", or below zero, of the size of a unit, or
    goes on with one.
    """
    amounts, words = alone.reading.amounts, alone.reading.words
    if len(amounts) != 1 or amounts[0].unit is not None or len(words) > _BRIEF:
        return False
    led = amounts[0].value < 0 or (bool(amounts[0].start) and words[amounts[0].start - 1] == "at")
    led = led or (_GOING_ON.issuperset(w for w in words if w[0].isalpha()) and not _GOING_ON.isdisjoint(words))
    return led and (unit != "ft" or amounts[0].value >= _LEAST_ALTITUDE)


def calculation_of(result: Result | None) -> Model | Schedule | None:
    """Return the calculation or the schedule that a result is of."""
    if isinstance(result, ModelResult):
        return result.model
    return result.schedule if isinstance(result, ScheduleResult) else None
