"""What other states than those told before change: a thing comes back, changes over, or the last is put right."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_states.in_scenario import last_told, states_given, told_table
from assistant.conversation.reading_turns.readings import carried, merged
from assistant.conversation.reading_turns.traits import ASKING, begins_asking
from assistant.knowledge.records import StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Result, TableResult, TablesResult
from assistant.understanding.binding import value_meant
from assistant.understanding.condition import alike
from assistant.understanding.mentions import STATE, Reading
from assistant.understanding.states import Condition, opens_turn

ADDING = frozenset({
    "too", "also", "well", "another", "now", "then", "plus", "and", "next", "later", "additionally", "add",
    "adding", "besides", "addition", "worse",
})  # fmt: skip
FURTHER = ADDING - {"and"}
"""Those words by which alone something is added."""
POINTING = frozenset({"it", "that", "they", "its"})
_BESIDE = ADDING | POINTING | frozenset({
    "is", "are", "s", "if", "what", "about", "ok", "so", "again", "once", "when", "with", "been", "has", "was", "comes",
    "come", "came", "gets", "but", "how", "the", "suppose", "say", "still", "i", "we", "they", "he", "she", "no", "put",
    "got", "have", "ve", "just", "never", "not", "did", "had", "actually", "sorry", "oh", "go", "goes", "went", "let",
    "switch", "switched", "turn", "turned", "flick", "flicked", "set", "select", "selected", "to", "my", "our", "do",
})  # fmt: skip
_MERELY = frozenset({"and", "now", "then", "if", "what", "again", "back", "ok", "so", "with", "when", "how", "about"})
"""Words beside a state that says no more than itself of what was told."""
_BRIEF = 8
_HOLDING = frozenset({"hang", "hold", "wait", "on", "no", "sorry"})
_OPENING = _HOLDING | frozenset({
    "so", "ok", "okay", "right", "hm", "hmm", "oh", "ah", "fine", "but", "um", "uh", ",", ".",
})  # fmt: skip
_REPLACING = frozenset({"instead", "only", "rather", "just", "alone"})
_UNDOING = frozenset({"disregard", "forget", "cancel", "scrap", "ignore", "undo", "scratch", "drop"})
_TELLING = ADDING | _UNDOING | frozenset({
    "ok", "okay", "right", "oh", "ah", "no", "hm", "good", "fine", "news", "again", "back", "all", "after", "turns",
    "turn", "turned", "out", "actually", "suppose", "say", "if", "what", "imagine", "and", "so", "the", "that", "one",
    "we", "got", "get", "it", "is", "to", "be", "top", "of", "on",
})  # fmt: skip
"""Words beside the states that a turn tells."""
_LATELY = frozenset({"has", "have", "is", "s", "had", "ve", "was", "we", "i", "it", "and"})


def replaces(reading: Reading) -> bool:
    """Return whether a turn puts its state in the place of the others: "just System 1"; "has just failed" is added."""
    words = reading.words
    said = {k for k, word in enumerate(words) if word in _REPLACING}
    lately = {k for m in reading.mentions if m.says_state for k in (m.start - 1, *m.taken)}  # "system 1 | just let go"
    return any(words[k] != "just" or not k or not (words[k - 1] in _LATELY or k in lately) for k in said)


def together(results: list[TableResult]) -> Result:
    """Return the results of several tables as one."""
    return results[0] if len(results) == 1 else TablesResult(tuple(results))


def changed_back(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what holds once the thing spoken of last is in the other state that a turn says, and no more: "pulled out
    again", "it comes back".
    """
    words, given = alone.reading.words, states_given(context) if context.scenario or told_table(context) else ()
    if not isinstance(context.result, (TableResult, TablesResult)):
        given = tuple(c for c in given if not c.implied)  # what comes back is the label by which it was told
    if not given or alone.conditions or alone.reading.amounts or len(words) > _BRIEF:
        return None
    said = [m for m in alone.reading.mentions if any(c.startswith(STATE) for c in m.concepts)]
    said = [m for m in said if not opens_turn(m, alone.reading) and not knowledge.lexicon.families_of(m.concepts)]
    spoken = {k for m in said for k in m.taken}
    beside = _BESIDE.union(*(_thing_words(c, knowledge) for c in given if not c.is_result))
    if not said or not beside.issuperset(w for k, w in enumerate(words) if k not in spoken and w[0].isalpha()):
        return None
    new = tuple(c for one in given for c in of_the_last(alone, context._replace(scenario=(one,)), knowledge))
    named = POINTING.union(*(_thing_words(c, knowledge) for c in given if c.input == new[0].input)) if new else POINTING
    only = _MERELY.issuperset(w for k, w in enumerate(words) if k not in spoken and w[0].isalpha())  # "and on?"
    if len(new) != 1 or (all(m.weak for m in said) and named.isdisjoint(words) and not only):
        return None
    now = (*(c._replace(where=()) for c in given if c.input != new[0].input), *new)
    results = results_changed(context._replace(scenario=given), now, knowledge)
    if not results:
        return None
    return carried(alone, context, now, knowledge)._replace(conditions=now), together(results)


def kind_back(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what holds once the things told of that have failed and are called by their kind work again: "hydraulics
    are fine again", "the hydraulics are back".
    """
    from assistant.conversation.on_states.kinds_back import working_again  # few turns need it

    now = working_again(alone, context, knowledge)
    results = results_changed(context, now, knowledge) if now else []
    if not results:
        return None
    return carried(alone, context, now, knowledge)._replace(conditions=now), together(results)


def _thing_words(condition: Condition, knowledge: Knowledge) -> frozenset[str]:
    """Return the words of the short names of a thing: "the | button | released"."""
    term = knowledge.base.terms[knowledge.base.inputs[condition.input].term]
    return frozenset(word for name in term.names if name.count(" ") <= 1 for word in name.lower().split())


def changed_over(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what holds once things told of are in the states that a turn gives, and says no more than these: "the
    lever is stowed, and the steering controller has failed".
    """
    given = {c.input: c.value for c in context.scenario}
    if not given or alone.reading.amounts or not any(given.get(c.input, c.value) != c.value for c in alone.conditions):
        return None
    said = {k for c in alone.conditions for k in c.where}
    telling = knowledge.matcher.telling(alone.reading)
    more = any(not said.issuperset(m.taken) and not _HOLDING.issuperset(m.text.split()) for m in telling)
    if more or begins_asking(alone) or any(c.is_result for c in alone.conditions):
        return None
    now = carried(alone, context, context.scenario, knowledge).conditions
    results = results_changed(context, now, knowledge)
    question = merged(alone, context, knowledge, False)[0]._replace(conditions=now)
    return (question, together(results)) if results else None


def only_states_told(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what holds with the states that a turn tells and nothing else, beside those told before: "System 1 is
    working again". One of the kind of a thing that has failed may be meant in its place, and is left.
    """
    given = {c.input: c.value for c in states_given(context)}
    new = [c for c in alone.conditions if not c.is_result]
    if not given or not new or len(new) < len(alone.conditions):
        return None
    if opens_asking(alone) or replaces(alone.reading):
        return None
    if not _UNDOING.isdisjoint(alone.reading.words):
        new = [c._replace(value=knowledge.states.normal(c.input)) for c in new if given.get(c.input) == c.value] or new
    adds = not FURTHER.isdisjoint(alone.reading.words)
    if all(given.get(c.input) == c.value for c in new):
        return None
    if not adds and any(_in_its_place(c, given, knowledge) for c in new):
        return None
    said = {k for c in new for k in range(min(c.where, default=0), max(c.where, default=-1) + 1)}
    if not said or any(a.start not in said for a in alone.reading.amounts):
        return None
    said |= {k for k, word in enumerate(alone.reading.words) if word in _TELLING}
    if any(not said.issuperset(m.taken) for m in alone.reading.mentions if not (m.weak or m.passing)):
        return None
    now = tuple(Condition(name, value) for name, value in given.items() if name not in {c.input for c in new})
    told = context.scenario or last_told(context, knowledge)
    results = results_changed(context, (*now, *new), knowledge) if told else []
    question = carried(alone, context, now, knowledge)._replace(conditions=(*now, *new))
    return (question, together(results)) if results else None


def changed_to(now: tuple[Condition, ...], context: Context, knowledge: Knowledge) -> Result | None:
    """Return the results that other states than those told before change."""
    results = results_changed(context, now, knowledge) or _what_knows_of(now, knowledge)
    return together(results) if results else None


def _what_knows_of(now: tuple[Condition, ...], knowledge: Knowledge) -> list[TableResult]:
    """Return the table that knows of the state told last, and of most that was told before."""
    found = [table for table in state_tables.tables(knowledge.base) if _touches(table, now[-1:])]
    best = max(found, key=lambda table: sum(c.input in table.inputs for c in now), default=None)
    return [TableResult(best, (state_tables.row(best, now, knowledge.base),), ())] if best else []


def _touches(table: StateTable, states: tuple[Condition, ...]) -> bool:
    return any(c.input in table.inputs for c in states)


def opens_asking(alone: Question) -> bool:
    """Return whether a turn opens by asking, though not what there is "if" something fails."""
    opening = next((w for w in alone.reading.words if w not in ADDING and w not in _OPENING), "")
    return opening in ASKING and not {"if", "about"}.intersection(alone.reading.words[:4])


def _in_its_place(new: Condition, given: dict[str, str], knowledge: Knowledge) -> bool:
    """Return whether a failure may be told in the place of one of its like."""
    known = knowledge.states
    failed = [name for name, value in given.items() if name in known.failures and value == known.failed(name)]
    return new.input not in given and any(alike(new.input, name, known) for name in failed)


def of_the_last(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Condition, ...]:
    """Return the state of the thing, of those in a scenario, that was spoken of last and that the words fit."""
    states = [m for m in alone.reading.mentions if any(c.startswith(STATE) for c in m.concepts)]
    states = [m for m in states if not opens_turn(m, alone.reading)]
    for condition in reversed(context.scenario):
        for mention in states:
            value = value_meant(condition.input, mention, knowledge.states)
            if value is not None and value != condition.value:
                return (Condition(condition.input, value, where=mention.taken),)
    return ()


def results_changed(context: Context, now: tuple[Condition, ...], knowledge: Knowledge) -> list[TableResult]:
    """Return the table that answered last, and those whose results the new failure changes."""
    told = last_told(context, knowledge)
    last, asked = (told.table.id, told.asked) if told else ("", ())
    states = tuple(c for c in now if not c.is_result)
    before = {c.input: c.value for c in context.scenario}
    after = {c.input: c.value for c in states}
    before = {} if before == after else before  # told already: all that they change is told once more
    found: list[TableResult] = []
    for table in state_tables.tables(knowledge.base):
        was, is_now = (state_tables.outputs(table, state, knowledge.base) for state in (before, after))
        if table.id != last and was == is_now:
            continue
        row = state_tables.row(table, states, knowledge.base)
        result = TableResult(table, (row,), asked if table.id == last else ())
        found.insert(0, result) if table.id == last else found.append(result)
    new = tuple(c for c in states if before.get(c.input) != c.value)
    if not new or not found or found[0].table.id != last or _touches(found[0].table, new):
        return found
    if not _touches(found[0].table, states):
        return found[1:] or _what_knows_of((*states, *new), knowledge) or found  # it tells nothing of any of them
    if len(found) == 1:
        return [*found, *_what_knows_of((*states, *new), knowledge)]
    return found
