"""One question at several amounts: "tiller limit at 20, 40 and 60 knots" is asked at each, and each is told."""

from __future__ import annotations

from assistant.conversation.reading_turns.readings import question_of
from assistant.frozen import NamedTuple
from assistant.knowledge.records import Model, Schedule
from assistant.quantities.amounts import Amount
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_inputs import cued_parts, deviation
from assistant.resolving.results import Choices, Declined, ModelResult, Needed, Result, ScheduleResult

_LISTING = frozenset((",", "and", "or", "&"))
_BETWEEN = _LISTING | {"then", "at", "for"}
_MOST = 4
_ONE_OF_THEM = (ScheduleResult, ModelResult, Choices, Needed, Declined)


class AtAmount(NamedTuple):
    """One of the amounts that a question lists, in their common unit, with what it gives there."""

    amount: Amount
    question: Question
    result: Result


def at_each_amount(question: Question, result: Result, knowledge: Knowledge) -> list[AtAmount]:
    """Return what a question gives at each amount that it lists, where one schedule or calculation answers them all."""
    amounts = _listed(question)
    if not isinstance(result, _ONE_OF_THEM) or len(amounts) < 2:
        return []
    from assistant.conversation.on_calculations.calculated_lately import (
        calculation_of,  # most questions list no amounts
    )

    unit = amounts[-1].unit
    found = [_at(a._replace(unit=a.unit or unit), amounts, question, knowledge) for a in amounts]
    told = [each.result for each in found]
    calculations = [calculation_of(each) for each in told]
    ids = {each.id if each else "" for each in calculations}
    if len(ids) != 1 or "" in ids or any(told.count(each) > 1 for each in told):
        return []
    if _apart(calculations[0], amounts, question, knowledge):
        return []
    whole = calculation_of(result)
    if whole and (whole.id not in ids or not (result in told or _compares(result))):
        return []  # it needs them all: "from 400 and 200"
    return found


def _apart(record: Model | Schedule | None, amounts: list[Amount], question: Question, knowledge: Knowledge) -> bool:
    """Return whether the words beside amounts give them to several inputs: "ISA plus 15, 10 tailwind"."""
    if not isinstance(record, Model):
        return False
    apart = deviation(record, question)
    cued = {start: name for name, start in cued_parts(record, question, knowledge).items()}
    return apart in amounts or len({cued[a.start] for a in amounts if a.start in cued}) > 1


def _compares(result: Result) -> bool:
    """Return whether one of the amounts was taken for a result to compare with."""
    return getattr(result, "against", None) is not None


def _listed(question: Question) -> list[Amount]:
    """Return the amounts that a question lists, one after the other, in one unit."""
    words = question.reading.words
    runs: list[list[Amount]] = []
    for amount in question.reading.amounts:
        between = words[runs[-1][-1].end : amount.start] if runs else ()
        lists = not _LISTING.isdisjoint(between) and _BETWEEN.issuperset(between)
        if runs and lists and _of_one_unit(runs[-1][-1], amount):
            runs[-1].append(amount)
        else:
            runs.append([amount])
    found = [run for run in runs if len(run) > 1]
    return found[0] if len(found) == 1 and len(found[0]) <= _MOST else []


def _of_one_unit(one: Amount, other: Amount) -> bool:
    return one.unit in (None, "count") or one.unit == other.unit


def _at(amount: Amount, amounts: list[Amount], question: Question, knowledge: Knowledge) -> AtAmount:
    from assistant.conversation.reading_turns.like_amounts import unit_word

    words = question.reading.words
    own = [f"{amount.value:.10g}", *([unit_word(amount.unit)] if amount.unit else [])]
    text = " ".join((*words[: amounts[0].start], *own, *words[amounts[-1].end :]))
    alone = question_of(text, knowledge, question.variant)
    return AtAmount(amount, alone, resolve_scored(alone, knowledge).result)
