"""What shows with the states that a scenario has given: "what would tell me that on the flight deck?"."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_states.in_scenario import row_told, states_given, told_table
from assistant.conversation.reading_turns.readings import carried
from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.labels_told import labels_of
from assistant.resolving.results import FactResult, Result
from assistant.resolving.state_shown import asks_what_shows, shown_with

_LONG = 12

def indication_asked(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what is known of the labels that show in the states given, where a turn asks no more than what shows."""
    words, given = alone.reading.words, states_given(context)
    if not given or len(words) > _LONG or alone.conditions or not asks_what_shows(words):
        return None
    if told_table(context) is None and not context.scenario:
        return None
    facts = tuple(labels_of(given, knowledge))
    shown = shown_with(given, knowledge)
    if shown and shown.asked and shown != context.result:
        return carried(alone, context, given, knowledge), shown
    if not facts:
        return None
    question = carried(alone, context, given, knowledge)
    table = told_table(context) or next(t for t in state_tables.tables(knowledge.base) if given[0].input in t.inputs)
    if len(facts) == 1 and FactResult(facts[0]) != context.result:
        return question, FactResult(facts[0])
    return question, row_told(table, given, (), knowledge)._replace(labels=facts)
