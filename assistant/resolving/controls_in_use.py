"""Which controls have any effect in the states that a question gives: with the pedals taken out, they order nothing.

A model's `extra` names the output of a state table for a control, and the values with which it works:
`pedals_work: "steering.pedals_steer: yes"`.
"""

from __future__ import annotations

from assistant.frozen import NamedTuple
from assistant.knowledge.records import Model, Schedule, StateTable
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_inputs import Binding, bind
from assistant.resolving.results import ModelResult, Result, Row, TableResult
from assistant.resolving.tables import normal, results_with, row
from assistant.understanding.states import Condition

_WORK = "_work"


class OutOfUse(NamedTuple):
    """A control that orders nothing, the words for that, and the row of the table that tells it."""

    control: str
    says: str
    state: TableResult


def out_of_use(model: Model, question: Question, know: Knowledge, results: bool = False) -> tuple[OutOfUse, ...]:
    """Return the controls of a model that have no effect in the states given, as its tables tell.

    results: whether results of the tables that are told of count as well.
    """
    found = []
    for name, told in model.extra:
        if not name.endswith(_WORK):
            continue
        idle = _idle(told, question, know, results)
        if idle:
            output = idle.asked[0]
            says = _says(idle.table, output, dict(idle.rows[0].outputs)[output])
            found.append(OutOfUse(name.removesuffix(_WORK), says, idle))
    return tuple(found)


def moved_in_vain(schedule: Schedule, question: Question, know: Knowledge) -> TableResult | None:
    """Return the state in which the control of a schedule does nothing: "tiller limit at 30 kt, System 1 lost"."""
    return _idle(schedule.works, question, know, False) if schedule.works and question.conditions else None


def _idle(told: str, question: Question, know: Knowledge, results: bool) -> TableResult | None:
    """Return the row in which a result is none of those told, `table.output: values`; None where it is one of them."""
    place, _, values = told.partition(":")
    table_id, _, output = place.partition(".")
    table = know.base.records[table_id]
    state = _state(table, output, question, know) or (_told(table, output, question, know) if results else None)
    return state if state and dict(state.rows[0].outputs)[output] not in values.split() else None


def set_in_vain(model: Model, binding: Binding, question: Question, know: Knowledge) -> TableResult | None:
    """Return the state in which what a question sets does not work, so that nothing is calculated with it: "stopping
    distance FIRM with anti-skid lost". A figure of its own takes the place of the setting.
    """
    if not any(name.endswith(_WORK) for name, _ in model.extra):
        return None
    question = _with_labels(question, know)
    idle = out_of_use(model, question, know, True) if question.conditions else ()
    if not idle or not any(i.choices and i.id in binding.given and not i.default for i in model.inputs):
        return None
    if any(i.choices and not i.default and i.id in binding.by_amount for i in model.inputs):
        return None
    return idle[0].state


def _with_labels(question: Question, know: Knowledge) -> Question:
    """Return a question with what the labels that it names stand for: "stopping distance with ANTI-SKID LOST"."""
    shows = know.lexicon.shows
    named = [c for m in question.reading.mentions for c in m.concepts if c in shows]
    told = [Condition(name, value) for c in named for name, value in shows[c][1] if name in know.base.inputs]
    told = [c for c in told if all(c.input != each.input for each in question.conditions)]
    return question._replace(conditions=(*question.conditions, *told)) if told else question


def now_in_vain(
    turn: Question, asked: Question, result: Result | None, know: Knowledge
) -> tuple[Question, Result] | None:
    """Return what a turn's states make of a calculation with a setting that does not work in them."""
    if not isinstance(result, ModelResult) or turn.reading.amounts:
        return None
    if not any(name.endswith(_WORK) for name, _ in result.model.extra):
        return None
    told = _with_labels(turn, know).conditions
    if not told:
        return None
    under = asked._replace(conditions=told)
    idle = set_in_vain(result.model, bind(result.model, under, know), under, know)
    return (under, idle) if idle else None


def in_vain_under(
    question: Question, result: Result, scenario: tuple[Condition, ...], know: Knowledge
) -> tuple[Question, Result]:
    """Return a calculation as it is under the states given before it, where it is asked for without any."""
    if not isinstance(result, ModelResult) or question.conditions or not scenario:
        return question, result
    if not any(name.endswith(_WORK) for name, _ in result.model.extra):
        return question, result
    under = question._replace(conditions=scenario)
    idle = set_in_vain(result.model, bind(result.model, under, know), under, know)
    return (under, idle) if idle else (question, result)


def _state(table: StateTable, output: str, question: Question, know: Knowledge) -> TableResult | None:
    """Return the row of a table in the states given; None where all that is given is normal."""
    given = [c for c in question.conditions if c.input in table.inputs and not c.asked]
    if all(c.value == normal(know.base.inputs[c.input]) for c in given):
        return None
    return TableResult(table, (row(table, given, know.base),), (output,))


def _told(table: StateTable, output: str, question: Question, know: Knowledge) -> TableResult | None:
    """Return what always goes with a result of a table that is told of; None where it leaves the output open."""
    told = tuple(c for c in question.conditions if c.is_result and not c.asked and c.table == table.id)
    given = {c.output: c.value for c in told}
    if not given or output in given:
        return None
    values = results_with(table, {}, given, output, know.base)
    if len(values) != 1:
        return None
    return TableResult(table, (Row(told, ((output, values.pop()),), table.sources),), (output,))


def _says(table: StateTable, output: str, value: str) -> str:
    told = next(o for o in table.outputs if o.id == output)
    return next((says for name, says, _ in told.values if name == value), "")
