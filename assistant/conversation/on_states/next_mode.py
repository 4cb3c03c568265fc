"""The mode that comes after the one told, and what it takes: "and what comes after that?"."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_states.in_scenario import last_told, row_told, states_given
from assistant.conversation.reading_turns.readings import carried
from assistant.knowledge.records import StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CauseResult, LossResult, Result
from assistant.resolving.state_asked import is_well
from assistant.resolving.state_causes import CHANGING
from assistant.understanding.states import Condition

_LONG = 9
_NEXT = frozenset({"next", "after", "beyond", "below", "follows", "worse", "further", "lower", "then"})
_BESIDE = _NEXT | frozenset({
    "what", "whats", "which", "and", "ok", "okay", "so", "then", "comes", "come", "is", "s", "would", "will", "be",
    "that", "this", "it", "the", "mode", "modes", "one", "in", "line", "down", "step", "level", "if", "goes", "fails",
    "too", "as", "well", "do", "i", "we", "get", "go", "drop", "to", "on", "from", "there", "here", "than", "still",
    "for", "me", "us", "my", "when", "even", "gets", "things", "braking", "brakes", "brake", "fallback", "falls",
    "back",
})  # fmt: skip


_SHORTLY = frozenset({
    "and", "ok", "okay", "so", "then", "after", "that", "next", "the", "one", "mode", "this", "below", "beyond",
    "worse", "lower",
})  # fmt: skip


def next_mode(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what leads from the mode told last to the next one, under the states given, where just that is asked."""
    words = [w for w in alone.reading.words if w[0].isalpha()]
    if _NEXT.isdisjoint(words) or len(words) > _LONG or not _BESIDE.issuperset(words):
        return None
    if alone.conditions or alone.reading.amounts:
        return None
    if {"what", "whats", "which"}.isdisjoint(words) and not _SHORTLY.issuperset(words):
        return None
    given = _failed(context, knowledge)
    table = _table(context, given, knowledge)
    output = next((o for o in table.outputs if o.id in CHANGING), None) if table and given else None
    if table is None or output is None:
        return None
    values = [value for value, _, _ in output.values]
    now = state_tables.outputs(table, {c.input: c.value for c in given}, knowledge.base)[output.id]
    question = carried(alone, context, given, knowledge)
    for value in values[values.index(now) + 1 :]:
        found = state_tables.causes(table, output.id, value, knowledge, False, given)
        if found.sets:
            return question, found
    return question, row_told(table, given, (output.id,), knowledge)


def _failed(context: Context, knowledge: Knowledge) -> tuple[Condition, ...]:
    """Return the failures told of, with those that what was told last added to them where only one set does."""
    given = tuple(c for c in states_given(context) if not is_well(c, knowledge))
    if isinstance(context.result, CauseResult) and context.result.given and len(context.result.sets) == 1:
        return (*given, *(Condition(name, value) for name, value in context.result.sets[0]))
    return given


def _table(context: Context, given: tuple[Condition, ...], knowledge: Knowledge) -> StateTable | None:
    """Return the table that told a mode last, or one that the failures told of change the mode of."""
    if isinstance(context.result, CauseResult):
        return context.result.table
    told = last_told(context, knowledge)
    if told:
        return None if told.asked and CHANGING.isdisjoint(told.asked) else told.table
    if not isinstance(context.result, LossResult):
        return None
    lost = (table for table, output, _ in context.result.lost if output in CHANGING)
    return next(lost, None)
