"""One failure more: "and system 2 goes as well" adds to the states given before, whatever was asked last."""

from __future__ import annotations

from assistant.conversation.all_well import well_again
from assistant.conversation.context import Context
from assistant.conversation.in_scenario import last_told, states_given, told_table
from assistant.conversation.readings import carried, merged, question_of
from assistant.conversation.traits import ASKING, begins_asking
from assistant.knowledge.records import StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Result, TableResult, TablesResult
from assistant.understanding.binding import value_meant
from assistant.understanding.condition import alike
from assistant.understanding.mentions import STATE, Reading
from assistant.understanding.states import Condition, conditions, opens_turn

_ADDING = frozenset({
    "too", "also", "well", "another", "now", "then", "plus", "and", "next", "later", "additionally", "add",
    "adding", "besides", "addition", "worse",
})  # fmt: skip
_FURTHER = _ADDING - {"and"}
_IF = frozenset({"if", "with", "when", "once"})
POINTING = frozenset({"it", "that", "they", "its"})
_BESIDES = frozenset({"else", "rest", "other", "otherwise"})
_BESIDE = _ADDING | POINTING | frozenset({
    "is", "are", "s", "if", "what", "about", "ok", "so", "again", "once", "when", "with", "been", "has", "was", "comes",
    "come", "came", "gets", "but", "how", "the", "suppose", "say", "still", "i", "we", "they", "he", "she", "no", "put",
    "got", "have", "ve", "just", "never", "not", "did", "had", "actually", "sorry", "oh", "go", "goes", "went", "let",
    "switch", "switched", "turn", "turned", "flick", "flicked", "set", "select", "selected", "to", "my", "our", "do",
})  # fmt: skip
_MERELY = frozenset({"and", "now", "then", "if", "what", "again", "back", "ok", "so", "with", "when", "how", "about"})
"""Words beside a state that says no more than itself of what was told."""
_BOTH = _ADDING | frozenset({
    "both", "of", "them", "out", "lost", "gone", "failed", "fail", "together", "at", "once", "the", "two", "systems",
    "what", "if", "with", "so", "are", "about", "go", "ok", "how", "inop", "off", "down", "make", "it", "that", "were",
    "was", "had", "have", "we", "say", "suppose", "instead", "hyd", "hydraulic", "hydraulics", "is", "been", "be",
})  # fmt: skip
_TWO = 2
_BRIEF = 8
_HOLDING = frozenset({"hang", "hold", "wait", "on", "no", "sorry"})
_OPENING = _HOLDING | frozenset({
    "so", "ok", "okay", "right", "hm", "hmm", "oh", "ah", "fine", "but", "um", "uh", ",", ".",
})  # fmt: skip
_REPLACING = frozenset({"instead", "only", "rather", "just", "alone"})
_UNDOING = frozenset({"disregard", "forget", "cancel", "scrap", "ignore", "undo", "scratch", "drop"})
_TELLING = _ADDING | _UNDOING | frozenset({
    "ok", "okay", "right", "oh", "ah", "no", "hm", "good", "fine", "news", "again", "back", "all", "after", "turns",
    "turn", "turned", "out", "actually", "suppose", "say", "if", "what", "imagine", "and", "so", "the", "that", "one",
    "we", "got", "get", "it", "is", "to", "be", "top", "of", "on",
})  # fmt: skip
"""Words beside the states that a turn tells."""
_LATELY = frozenset({"has", "have", "is", "s", "had", "ve", "was", "we", "i", "it", "and"})


def other_scenario(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what holds with the states given before and those of a turn that only changes them."""
    ways = (
        all_else_normal, added, supposed_beside, both_of_them, kind_back, changed_back, changed_over, only_states_told,
    )  # fmt: skip
    return next((found for way in ways if (found := way(alone, context, knowledge))), None)


def added(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what holds with a further failure: the table asked last, then every other whose results it changes.

    None where the turn gives no state that the scenario lacks, or asks something of its own.
    """
    words = set(alone.reading.words)
    words |= {"plus"} if _on_top(alone.reading.words) else set()
    known = {(c.input, c.value) for c in context.scenario}
    adds = _ADDING & words or "with" in alone.reading.words[:2]
    if not known or not adds or replaces(alone.reading):
        return None
    alone = _with_failures(alone, context, knowledge)
    new = [c for c in alone.conditions if not c.is_result and not c.implied]
    if not new or {(c.input, c.value) for c in new} <= known:
        return None
    if _asks_more(alone, knowledge):
        return _asked_with(alone, context, knowledge) if _FURTHER & words else None
    given = carried(alone, context, context.scenario, knowledge).conditions
    question = merged(alone, context, knowledge, False)[0]._replace(conditions=given)
    results = _changed(context, question.conditions, knowledge)
    return (question, _together(results)) if results else None


def supposed_beside(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what holds with a failure that was told, where a turn asks what if something else fails too.

    "We have lost System 1" is the situation; "does the parking brake hold if the accumulator is empty" is asked in it.
    """
    failed = [c for c in context.scenario if not c.is_result and c.value != knowledge.states.normal(c.input)]
    new = {c.input for c in alone.conditions if c.where and not c.is_result and not c.implied}
    if context.supposed or not failed or not new or not new.isdisjoint(c.input for c in context.scenario):
        return None
    if _IF.isdisjoint(alone.reading.words) or replaces(alone.reading) or not _asks_more(alone, knowledge):
        return None
    return _asked_with(alone, context, knowledge)


def _on_top(words: tuple[str, ...]) -> range:
    """Return where "on top of that" stands, by which something is added."""
    at = words.index("top") if "top" in words else 0
    return range(at - 1, at + 2) if at and (words[at - 1], *words[at + 1 : at + 2]) == ("on", "of") else range(0)


def replaces(reading: Reading) -> bool:
    """Return whether a turn puts its state in the place of the others: "just System 1"; "has just failed" is added."""
    words = reading.words
    said = {k for k, word in enumerate(words) if word in _REPLACING}
    lately = {k for m in reading.mentions if m.says_state for k in (m.start - 1, *m.taken)}  # "system 1 | just let go"
    return any(words[k] != "just" or not k or not (words[k - 1] in _LATELY or k in lately) for k in said)


def _together(results: list[TableResult]) -> Result:
    return results[0] if len(results) == 1 else TablesResult(tuple(results))


def _asked_with(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the result that a turn itself asks for with its failure added: "next the switch is put OFF. Mode?"."""
    question = carried(alone, context, context.scenario, knowledge)
    result = resolve_scored(question, knowledge).result
    return (question, result) if isinstance(result, TableResult) and result.asked else None


def without_states(alone: Question, context: Context, knowledge: Knowledge) -> Context:
    """Return the conversation with no state given any more, after a turn by which all is normal again."""
    before = context.asked
    if before is None or not says_all_normal(alone.reading) or not (before.conditions or context.scenario):
        return context
    places = {k for c in before.conditions for k in c.where}
    rest = " ".join(w for k, w in enumerate(before.reading.words) if k not in places)
    asked = question_of(rest, knowledge, before.variant)._replace(background=before.background, conditions=())
    return context._replace(asked=asked, scenario=())


def both_of_them(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what holds with two failures together that were told of one after the other: "and both?"."""
    words = {w for w in alone.reading.words if w[0].isalpha()}
    if "both" not in words or not _BOTH.issuperset(words) or context.asked is None or alone.reading.amounts:
        return None
    asked = (*(past.asked for past in context.earlier[:1]), context.asked)
    own = (question_of(each.reading.text, knowledge, each.variant).conditions for each in asked)
    told = [c for each, said in zip(asked, own, strict=True) for c in (each.conditions or said)]
    failures = knowledge.states.failures
    failed = {c.input: c for c in told if c.input in failures and c.value == knowledge.states.failed(c.input)}
    if len(failed) == 1:
        failed |= _its_like(next(iter(failed.values())), knowledge)
    if len(failed) != _TWO:
        return None
    now = tuple(c._replace(where=()) for c in failed.values())
    tables = (result for result in context.told_lately[:_TWO] if isinstance(result, TableResult))
    results = _changed(context._replace(result=next(tables, context.result)), now, knowledge)
    question = carried(alone, context, now, knowledge)._replace(conditions=now)
    return (question, _together(results)) if results else None


def _its_like(condition: Condition, knowledge: Knowledge) -> dict[str, Condition]:
    """Return the one other thing of the kind of one that has failed, as failed too: "make it both"."""
    known = knowledge.states
    like = [name for name in known.failures if alike(name, condition.input, known)]
    return {like[0]: Condition(like[0], known.failed(like[0]))} if len(like) == 1 else {}


def says_all_normal(reading: Reading) -> bool:
    """Return whether a text says that everything is normal, and not only everything else."""
    named = (m for m in reading.mentions if m.holds("all_normal"))
    return well_again(reading.words) or any(_BESIDES.isdisjoint(m.text.split()) for m in named)


def all_else_normal(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return a turn under the states given before, where it says that everything else is normal."""
    before = context.asked
    given = (before.conditions if before else ()) or context.scenario
    if not given or alone.conditions or says_all_normal(alone.reading) or not alone.reading.has("all_normal"):
        return None
    question = carried(alone, context, given, knowledge)
    result = resolve_scored(question, knowledge).result
    return (question, result) if isinstance(result, (TableResult, TablesResult)) else None


def _with_failures(alone: Question, context: Context, knowledge: Knowledge) -> Question:
    """Return a turn with the things that it only names as failed, after a failure: "and system 1 too"; or with the
    state that it gives the thing spoken of last: "and if it's empty?".
    """
    words = alone.reading.words
    if not alone.conditions and POINTING.intersection(words) and "add" not in words and not _on_top(words):
        return alone._replace(conditions=of_the_last(alone, context, knowledge))
    failures = knowledge.states.failures
    after_failure = any(c.input in failures and c.value == knowledge.states.failed(c.input) for c in context.scenario)
    if alone.conditions or not after_failure or alone.reading.amounts:
        return alone
    return alone._replace(conditions=tuple(conditions(alone.reading, knowledge.states, knowledge.units, True)))


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
    results = _changed(context._replace(scenario=given), now, knowledge)
    if not results:
        return None
    return carried(alone, context, now, knowledge)._replace(conditions=now), _together(results)


def kind_back(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what holds once the things told of that have failed and are called by their kind work again: "hydraulics
    are fine again", "the hydraulics are back".
    """
    from assistant.conversation.kinds_back import working_again  # few turns need it

    now = working_again(alone, context, knowledge)
    results = _changed(context, now, knowledge) if now else []
    if not results:
        return None
    return carried(alone, context, now, knowledge)._replace(conditions=now), _together(results)


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
    results = _changed(context, now, knowledge)
    question = merged(alone, context, knowledge, False)[0]._replace(conditions=now)
    return (question, _together(results)) if results else None


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
    adds = not _FURTHER.isdisjoint(alone.reading.words)
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
    results = _changed(context, (*now, *new), knowledge) if told else []
    question = carried(alone, context, now, knowledge)._replace(conditions=(*now, *new))
    return (question, _together(results)) if results else None


def changed_to(now: tuple[Condition, ...], context: Context, knowledge: Knowledge) -> Result | None:
    """Return the results that other states than those told before change."""
    results = _changed(context, now, knowledge) or _what_knows_of(now, knowledge)
    return _together(results) if results else None


def _what_knows_of(now: tuple[Condition, ...], knowledge: Knowledge) -> list[TableResult]:
    """Return the table that knows of the state told last, and of most that was told before."""
    found = [table for table in state_tables.tables(knowledge.base) if _touches(table, now[-1:])]
    best = max(found, key=lambda table: sum(c.input in table.inputs for c in now), default=None)
    return [TableResult(best, (state_tables.row(best, now, knowledge.base),), ())] if best else []


def _touches(table: StateTable, states: tuple[Condition, ...]) -> bool:
    return any(c.input in table.inputs for c in states)


def opens_asking(alone: Question) -> bool:
    """Return whether a turn opens by asking, though not what there is "if" something fails."""
    opening = next((w for w in alone.reading.words if w not in _ADDING and w not in _OPENING), "")
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


def _asks_more(alone: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn names more than its states, and the words in between: "down to 1,300"."""
    said = {k for c in alone.conditions for k in c.where}
    said |= {k for c in alone.conditions if c.where for k in range(min(c.where), max(c.where))}
    said |= {*_on_top(alone.reading.words), *(k for k, w in enumerate(alone.reading.words) if w in ("add", "adding"))}
    return any(not knowledge.matcher.is_soft(m) and not said.issuperset(m.taken) for m in alone.reading.mentions)


def _changed(context: Context, now: tuple[Condition, ...], knowledge: Knowledge) -> list[TableResult]:
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
