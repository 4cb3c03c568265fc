"""A bare reading after a limit: "we're at 57", after the maximum take-off mass, is held against it."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.conversation.context import LATELY, Context
from assistant.conversation.control_words.controls_of_changes import believes
from assistant.conversation.reading_turns.readings import carried, merged
from assistant.conversation.reading_turns.traits import GOOD, LONG, names_thing, names_unknown
from assistant.knowledge.records import Source
from assistant.quantities.amounts import Amount
from assistant.resolving import limits as limit_rules
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import (
    BandResult,
    BothResult,
    CheckResult,
    FactResult,
    LimitResult,
    ModelResult,
    Needed,
    ProcedureResult,
    Result,
)

_MOST_WORDS = 6
_WHETHER = frozenset({"do", "can", "may", "is", "ok", "okay", "alright", "fine", "allowed", "still", "enough"})
_POINTING = frozenset({"those", "these", "the", "other", "of"})
_TIMES = 3.0
"""How many times larger or smaller than a limit a bare figure may be that is held against it."""
_TONNE = 1000.0
_SAID = (FactResult, LimitResult, ProcedureResult)
_BEHIND = 0.2


def held_against(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the check of a turn's one amount against the limit told last, where the turn says nothing else."""
    told = context.result
    if not isinstance(told, LimitResult) or len(alone.reading.words) > _MOST_WORDS or names_thing(alone, knowledge):
        return None
    return _checked(alone, told, context, knowledge)


def whether_within(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the check of a reading against the limit told last, where a longer turn asks whether that may be and
    names nothing else: "we're parking for fourteen hours, do I leave it on?", after how long the brake holds.
    """
    told, words = context.result, alone.reading.words
    if not isinstance(told, LimitResult) or len(words) > LONG or _WHETHER.isdisjoint(words):
        return None
    if names_unknown(told.limits[0].id, alone, knowledge):
        return None
    return _checked(alone, told, context, knowledge) if any(a.unit for a in alone.reading.amounts) else None


def _checked(
    alone: Question, told: LimitResult, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    amounts = alone.reading.amounts
    if len(told.limits) != 1 or len(amounts) != 1 or context.asked is None:
        return None
    if alone.conditions or believes(alone.reading.text) or alone.reading.asked & QUANTITIES:
        return None
    at = amounts[0].start
    before = alone.reading.words[at - 1] if at else ""
    if before == "by" or (amounts[0].unit is None and before in _POINTING):
        return None  # "of those two"; "by 10 knots" is no reading
    limit = told.limits[0]
    amount = _in_unit(amounts[0], limit_rules.bound_value(limit), limit.maximum is None and limit.minimum is None)
    found = limit_rules.check(limit, amount, alone, knowledge) if amount else None
    if found is None:
        return None
    question = context.asked.with_text(alone.reading.text)._replace(variant=alone.variant)
    return question, CheckResult((found,))


def _in_unit(amount: Amount, figure: object, stated: bool) -> Amount | None:
    """Return an amount in the unit of a limit, a bare one where it is of its size; tonnes may go without saying."""
    unit, value = getattr(figure, "unit", ""), getattr(figure, "value", 0.0)
    if stated or not unit or not value:
        return None
    if amount.unit is not None:
        return amount
    if unit == "kg" and amount.value * _TONNE < value * _TIMES and amount.value > value / _TONNE / _TIMES:
        return amount._replace(value=amount.value * _TONNE, unit=unit)
    return amount._replace(unit=unit) if value / _TIMES <= amount.value <= value * _TIMES else None


def judged_lately(
    alone: Question, first: Scored, result: Result, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the check of a reading against a limit of what was spoken of before the last turn, where nothing that was
    told last judges it: "accumulator 1,500", in the middle of a pushback.
    """
    told, failures = (context.result, result), knowledge.states.failures
    bare = all(m.weak for m in alone.reading.mentions)
    if not alone.reading.amounts or bare or alone.reading.asked & QUANTITIES:
        return None
    if any(isinstance(each, (CheckResult, ModelResult, Needed)) for each in told):
        return None
    if not isinstance(context.result, _SAID):
        return None
    given = (c for c in (*context.scenario, *alone.conditions) if c.input in failures)
    if any(c.value == knowledge.states.failed(c.input) for c in given):
        return None
    for past in context.earlier[:LATELY]:
        before = context._replace(asked=past.asked, result=past.result, answer=past.answer, earlier=(), scenario=())
        question, _ = merged(alone, before, knowledge, False)
        found = resolve_scored(question, knowledge)
        if isinstance(found.result, CheckResult) and found.score >= GOOD and found.score > first.score - _BEHIND:
            return question, found.result
    return None


def verdict_again(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the verdict given last to a turn that only asks what is to be done, as it says so."""
    told, asked = context.result, context.asked
    verdicts = told if isinstance(told, BothResult) else (told,)
    judged = any(isinstance(each, (CheckResult, BandResult)) for each in verdicts)
    if not judged or asked is None or told is None or alone.reading.amounts:
        return None
    if not alone.reading.has("steps") or names_thing(alone, knowledge):
        return None
    question = carried(alone, context, asked.conditions, knowledge)
    further = resolve_scored(question, knowledge).result
    said = context.answer.text if context.answer else ""
    if isinstance(further, ProcedureResult) and _names_one(said, further.procedure.sources):
        return question, further
    return asked.with_text(alone.reading.text), told


def _names_one(text: str, sources: Iterable[Source]) -> bool:
    return any(f"{source.document} {source.paragraph}" in text for source in sources)
