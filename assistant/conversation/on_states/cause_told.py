"""A cause told after a procedure whose title names a result: "System 2 lost", after "no braking on landing".

The title is what was to be done for, and no state of the aeroplane that holds from here on: what is told is worked out
by itself.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_states.in_scenario import row_told
from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import ProcedureResult, Result


def cause_told(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what a cause leaves of the result that the procedure told last is for; None where a turn tells none."""
    if not isinstance(context.result, ProcedureResult) or context.asked is None or alone.reading.amounts:
        return None
    named = {c.table: c.output for c in context.asked.conditions if c.is_result}
    told = tuple(c for c in alone.conditions if not c.is_result)
    if not named or not told or len(told) < len(alone.conditions):
        return None
    said = {k for c in told for k in c.where}
    if any(not (m.weak or m.passing or said.issuperset(m.taken)) for m in alone.reading.mentions):
        return None  # it asks something of its own
    for table in state_tables.tables(knowledge.base):
        state = {c.input: c.value for c in told}
        usual = state_tables.outputs(table, {}, knowledge.base)
        if table.id in named and state_tables.outputs(table, state, knowledge.base) != usual:
            return alone, row_told(table, told, (named[table.id],), knowledge)
    return None
