"""A turn under the states that a scenario has given, where they bear on what it asks."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import carried
from assistant.conversation.reading_turns.traits import FAR_BETTER, FEW, GOOD, LONG, OPEN, names_thing
from assistant.knowledge.records import StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.loss_asked import asks_what_is_left, asks_what_is_out
from assistant.resolving.ranking import candidates
from assistant.resolving.results import (
    BandResult,
    CheckResult,
    FactResult,
    LimitResult,
    LossResult,
    Result,
    TableResult,
    TablesResult,
)
from assistant.resolving.state_asked import output_matches
from assistant.understanding.states import Condition

_NEARLY = 0.9
"""Share of a way of asking for a result that is enough where the states were given with it."""
_BESIDE = 0.05
"""How far ahead of a reading by itself a record of the paragraph just told must be."""
_NAMING = frozenset({
    "and", "so", "ok", "okay", "then", "now", "well", "the", "a", "my", "any", "what", "about", "how", "is", "are",
    "of", "still", "there", "with", "that", "do", "i", "have", "got", "working", "available", "for", "s",
})  # fmt: skip
"""Words beside the name of a result that ask no more than what it is."""


def clearly_carried(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return a question that answers by itself, and far better on the subject and under the states given before."""
    if context.asked is None or len(alone.reading.words) > LONG or _asks_meaning(alone, first):
        return None
    question = carried(alone, context, context.asked.conditions or context.scenario, knowledge)
    third = resolve_scored(question, knowledge)
    ahead = _BESIDE if _stands_beside(third, context, knowledge) else FAR_BETTER
    if _speaks_of_states(third, context.asked.conditions, knowledge):
        ahead = 0.0
    better = third.score >= first.score + ahead and not isinstance(third.result, OPEN)
    return (question, third.result) if better else None


def _asks_meaning(alone: Question, first: Scored) -> bool:
    """Return whether a turn asks no more than what a thing is, and is told: "what's locked-wheel protection"."""
    opens = alone.reading.words[:2] in (("what", "is"), ("what", "are"))
    told = isinstance(first.result, FactResult) and first.score >= GOOD
    return opens and told and not alone.reading.asked & QUANTITIES


def loss_asked(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return all that goes with the states given, to a turn that asks only what is lost: "what do I lose?"."""
    losing = context.asked and (
        alone.reading.asks_loss or asks_what_is_out(alone.reading) or asks_what_is_left(alone.reading)
    )
    if context.asked is None or not losing or alone.conditions or names_thing(alone, knowledge):
        return None
    question = carried(alone, context, context.asked.conditions or context.scenario, knowledge)
    found = (c.result for c in candidates(question, knowledge) if isinstance(c.result, LossResult))
    result = next(found, None)
    return (question, result) if result and result != context.result else None


def _stands_beside(scored: Scored, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a record stands in the paragraph that the last answer rests on: "do I raise the gear then?"."""
    told = knowledge.base.records.get(context.answer.entry) if context.answer else None
    found = knowledge.base.records.get(scored.record)
    return bool(set(getattr(told, "sources", ())) & set(getattr(found, "sources", ())))


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
    when = all(m.holds("when_word") for m in alone.reading.mentions)
    if when or alone.reading.has("who", "where", "why"):
        return None  # these are no results of a state
    question = carried(alone, context, context.asked.conditions or context.scenario, knowledge)
    third = resolve_scored(question, knowledge)
    if isinstance(third.result, (FactResult, LimitResult)) and third.score >= first.score:
        said = _speaks_of_states(third, question.conditions, knowledge)
        return (question, third.result) if said else None
    if not isinstance(third.result, TableResult) or third.result == context.result:
        return None
    bare = not alone.conditions and not alone.reading.amounts and not names_thing(alone, knowledge)
    if bare and not third.result.asked and isinstance(context.result, (CheckResult, BandResult)):
        return context.asked.with_text(alone.reading.text), context.result  # a verdict says what is to be done
    subject = told_table(context)
    if subject and subject.id != third.result.table.id and bare:
        # "So what do I use instead?" stays with what was asked about.
        return question, row_told(subject, question.conditions, (), knowledge)
    if third.result.asked and third.score >= first.score:
        return question, third.result
    # What the states change is not told as if they were normal: "how do I extend?", with a system lost.
    plain = not alone.reading.amounts and not alone.reading.asked & QUANTITIES
    changed = plain and third.score >= GOOD and _changes(third.result, question.conditions, knowledge)
    return (question, third.result) if changed else None


def result_named(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the one result under the states given that a turn of few words only names: "bars?", "the mode then"."""
    given = states_given(context)
    reading = alone.reading
    if context.asked is None or not given or alone.conditions or reading.amounts or len(reading.words) > FEW + 2:
        return None
    if not context.scenario and told_table(context) is None:
        return None
    if not _NAMING.issuperset(w for w in reading.words if w[0].isalpha() and not _in_thing(w, alone, knowledge)):
        return None
    if "how" in reading.words and "do" in reading.words:
        return None  # how it is done is asked
    kinds = {knowledge.lexicon.kinds.get(c, "") for m in reading.mentions for c in m.concepts}
    named = knowledge.matcher.telling(reading)
    if len(named) != 1 or not kinds.isdisjoint(("ask", "ask!", "quantity")):
        return None
    for table in _tables(context, given, knowledge):
        labels = {o.id: knowledge.phrase(o.label) for o in table.outputs}
        outputs = [o for o, label in labels.items() if label.concepts & named[0].concepts]
        outputs = [o for o in outputs if labels[o].words == tuple(named[0].text.split())] or outputs
        if len(outputs) == 1:
            return carried(alone, context, given, knowledge), row_told(table, given, tuple(outputs), knowledge)
    return None


def row_told(
    table: StateTable, given: tuple[Condition, ...], asked: tuple[str, ...], knowledge: Knowledge
) -> TableResult:
    """Return what a table tells under some states, and which of them it does not depend on."""
    unaffected = tuple(c for c in given if c.input not in table.inputs and not c.is_result)
    return TableResult(table, (state_tables.row(table, given, knowledge.base),), asked, unaffected)


def _in_thing(word: str, alone: Question, knowledge: Knowledge) -> bool:
    """Return whether a word is one by which a turn names a thing."""
    return any(word in m.text.split() for m in knowledge.matcher.telling(alone.reading))


def _tables(context: Context, given: tuple[Condition, ...], knowledge: Knowledge) -> list[StateTable]:
    """Return the state tables, the one told last first, then those that some states bear on."""
    last = told_table(context)
    names = {c.input for c in given}
    found = state_tables.tables(knowledge.base)
    return sorted(found, key=lambda t: (last is None or t.id != last.id, not names.intersection(t.inputs)))


def states_given(context: Context) -> tuple[Condition, ...]:
    """Return the states of the question before, or else of the scenario."""
    last = tuple(c for c in context.asked.conditions if not c.is_result) if context.asked else ()
    return last or tuple(c for c in context.scenario if not c.is_result)


def told_table(context: Context) -> StateTable | None:
    """Return the state table whose results were told last, or lately."""
    return next((result.table for result in context.told_lately if isinstance(result, TableResult)), None)


def at_another_reading(
    alone: Question, whole: Question, context: Context, knowledge: Knowledge
) -> Result | None:
    """Return the results told last where a turn gives nothing but another reading of the thing told of: "and 2,100"."""
    told, reading = context.result, alone.reading
    results = told.results if isinstance(told, TablesResult) else (told,)
    results = tuple(each for each in results if isinstance(each, TableResult))
    if not results or not reading.amounts or any(not m.weak for m in reading.mentions):
        return None
    said = {reading.words[a.start] for a in reading.amounts}
    places = {k for k, word in enumerate(whole.reading.words) if word in said}
    read = {c.input for c in whole.conditions if not places.isdisjoint(c.where)}
    if not any(read.intersection(each.table.inputs) for each in results):
        return None
    found = tuple(row_told(each.table, whole.conditions, each.asked, knowledge) for each in results)
    return found[0] if len(found) == 1 else TablesResult(found)


def last_told(context: Context, knowledge: Knowledge) -> TableResult | None:
    """Return the result of states that was told last; or the one that was asked for, where a statement answered."""
    result, asked = context.result, context.asked
    if isinstance(result, TablesResult):
        return result.results[0]
    if isinstance(result, TableResult) or asked is None:
        return result if isinstance(result, TableResult) else None
    given = tuple(c for c in asked.conditions if not c.is_result)
    if not given or not isinstance(result, (FactResult, LimitResult)):
        return None
    for match in output_matches(asked, knowledge, [k for c in given for k in c.where], given):
        table = next(t for t in state_tables.tables(knowledge.base) if t.id == match.record)
        if match.covered >= _NEARLY and any(c.input in table.inputs for c in given):
            return row_told(table, given, (match.output,), knowledge)
    return None


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
