"""A turn under the states that a scenario has given, where they bear on what it asks."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.readings import carried
from assistant.conversation.traits import FAR_BETTER, FEW, GOOD, LONG, OPEN
from assistant.resolving import tables as state_tables
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import FactResult, LimitResult, Result, TableResult
from assistant.understanding.states import Condition


def clearly_carried(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return a question that answers by itself, and far better on the subject and under the states given before."""
    if context.asked is None or len(alone.reading.words) > LONG:
        return None
    question = carried(alone, context, context.asked.conditions or context.scenario, knowledge)
    third = resolve_scored(question, knowledge)
    ahead = 0.0 if _speaks_of_states(third, context.asked.conditions, knowledge) else FAR_BETTER
    better = third.score >= first.score + ahead and not isinstance(third.result, OPEN)
    return (question, third.result) if better else None


def _speaks_of_states(scored: Scored, given: tuple[Condition, ...], knowledge: Knowledge) -> bool:
    """Return whether a record speaks of a thing whose state was given before."""
    said = knowledge.matcher.vocabulary(scored.record) if scored.record else frozenset()
    return any(knowledge.base.inputs[c.input].term in said for c in given if not c.is_result and not c.implied)


def in_scenario(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return a short question on a result of the states that a scenario has given."""
    if context.asked is None or not context.scenario:
        return None
    if len(alone.reading.words) > (LONG if alone.conditions else 2 * FEW):
        return None
    if alone.conditions and not _all_well(alone, context, knowledge):
        return None
    bare = all(m.holds("when_word") for m in alone.reading.mentions)
    if bare or alone.reading.has("who", "where", "why"):
        return None  # these are no results of a state
    question = carried(alone, context, context.asked.conditions or context.scenario, knowledge)
    third = resolve_scored(question, knowledge)
    if isinstance(third.result, (FactResult, LimitResult)) and third.score >= first.score:
        said = _speaks_of_states(third, question.conditions, knowledge)
        return (question, third.result) if said else None
    if not isinstance(third.result, TableResult) or third.result == context.result:
        return None
    if third.result.asked and third.score >= first.score:
        return question, third.result
    # What the states change is not told as if they were normal: "how do I extend?", with a system lost.
    plain = not alone.reading.amounts and not alone.reading.asked & QUANTITIES
    changed = plain and third.score >= GOOD and _changes(third.result, question.conditions, knowledge)
    return (question, third.result) if changed else None


def _all_well(alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn says only of other things than those of the scenario that they are well."""
    inputs = knowledge.base.inputs
    told = {c.input for c in context.scenario}
    states = [c for c in alone.conditions if not c.is_result]
    return all(c.input not in told and c.value == state_tables.normal(inputs[c.input]) for c in states)


def _changes(result: TableResult, given: tuple[Condition, ...], knowledge: Knowledge) -> bool:
    """Return whether a table's results are others under the states given than with all normal."""
    states = {c.input: c.value for c in given if not c.is_result}
    now, normal = (state_tables.outputs(result.table, state, knowledge.base) for state in (states, {}))
    return now != normal
