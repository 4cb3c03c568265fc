"""Which controls have any effect in the states that a question gives: with the pedals taken out, they order nothing.

A model's `extra` names the output of a state table for a control, and the values with which it works:
`pedals_work: "steering.pedals_steer: yes"`.
"""

from __future__ import annotations

from assistant.frozen import NamedTuple
from assistant.knowledge.records import Model, StateTable
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import TableResult
from assistant.resolving.tables import normal, row


class OutOfUse(NamedTuple):
    """A control that orders nothing, the words for that, and the row of the table that tells it."""

    control: str
    says: str
    state: TableResult


def out_of_use(model: Model, question: Question, know: Knowledge) -> tuple[OutOfUse, ...]:
    """Return the controls of a model that have no effect in the states given, as its tables tell."""
    found = []
    for name, told in model.extra:
        if not name.endswith("_work"):
            continue
        place, _, values = told.partition(":")
        table_id, _, output = place.partition(".")
        state = _state(know.base.records[table_id], output, question, know)
        value = dict(state.rows[0].outputs)[output] if state else ""
        if state and value not in values.split():
            found.append(OutOfUse(name.removesuffix("_work"), _says(state.table, output, value), state))
    return tuple(found)


def _state(table: StateTable, output: str, question: Question, know: Knowledge) -> TableResult | None:
    """Return the row of a table in the states given; None where all that is given is normal."""
    given = [c for c in question.conditions if c.input in table.inputs and not c.asked]
    if all(c.value == normal(know.base.inputs[c.input]) for c in given):
        return None
    return TableResult(table, (row(table, given, know.base),), (output,))


def _says(table: StateTable, output: str, value: str) -> str:
    told = next(o for o in table.outputs if o.id == output)
    return next((says for name, says, _ in told.values if name == value), "")
