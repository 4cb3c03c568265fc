"""A short turn with what it leaves unsaid in its words: the states given, the result told, the thing spoken of.

What a record knows of both is meant, before what answers the turn alone: "doors?", with the free-fall lever pulled,
"max pressure?", in a mode, "biggest angle?", of a tow.
"""

from __future__ import annotations

from assistant.answering.parts import condition_words
from assistant.answering.states import output_words
from assistant.conversation.context import Context
from assistant.conversation.on_states.in_scenario import states_given, told_table
from assistant.conversation.reading_turns.readings import carried, question_of, things_named
from assistant.conversation.reading_turns.traits import OPEN
from assistant.knowledge.records import StateTable, Value
from assistant.resolving import limits as limit_rules
from assistant.resolving import tables as state_tables
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import FactResult, LimitResult, Result, TableResult
from assistant.understanding.states import Condition

_LONG = 9
_SURE = 0.85
_SHORT = 5
_STRANGE = frozenset({"why", "else", "when", "normally", "usually"})
"""Words of turns that ask of what was told itself, or leave the states given."""


def under_states(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return what a record that knows of the states given says to a short turn under them."""
    words, given = alone.reading.words, list(states_given(context))
    if context.asked is None or not context.asked.conditions or not given or alone.conditions or alone.reading.amounts:
        return None
    table, told = told_table(context), _state_told(context, knowledge)
    if not (table or told) or len(words) > _LONG or not _STRANGE.isdisjoint(words):
        return None
    if all(knowledge.matcher.is_soft(m) for m in alone.reading.mentions):
        return None
    mores = [_states(given, knowledge), *told]
    applies = _applying(alone, context, knowledge)
    if table and not applies:
        mores += _results(table, given, knowledge)
    found = [scored for more, known in mores for scored in _with(more, known, alone, first, context, knowledge)]
    manner = "how" in words[:3]  # how it is done is no result of the states
    best = max(found, key=lambda pair: (manner and isinstance(pair[1].result, FactResult), pair[1].score), default=None)
    kept = tuple(c._replace(where=()) for c in given)  # what was only told stays no state that was given
    if best is None:
        return None
    if applies and applies[1].score >= best[1].score and applies[1].result != context.result:
        return applies[0], applies[1].result  # "what pressure?", and not the one below which a system is lost
    question = best[0]._replace(conditions=kept)
    return question, _strictest(best[1].result, question, alone, knowledge)


def _strictest(result: Result, question: Question, alone: Question, knowledge: Knowledge) -> Result:
    """Return the limit that a mode brings, or a lower one of what a turn names that holds under the states as well."""
    if not isinstance(result, LimitResult) or not result.limits[0].when:
        return result
    best = result.limits[0]
    for name in knowledge.base.ids("limits"):
        other = knowledge.record(name, question.variant)
        if other.when and _lower(other.maximum, best.maximum) and _knows_all(name, alone, knowledge):
            best = other if limit_rules.holds(other, question, knowledge) else best
    return result if best is result.limits[0] else LimitResult((best,), question.conditions)


def _lower(one: Value | None, other: Value | None) -> bool:
    return one is not None and other is not None and one.unit == other.unit and one.value < other.value


def _state_told(context: Context, knowledge: Knowledge) -> list[tuple[str, frozenset[str]]]:
    """Return the name of a state that a statement told lately says follows: "is extended by free fall"."""
    facts = (result.fact for result in context.told_lately if isinstance(result, FactResult))
    said = frozenset(c for f in facts for c in knowledge.phrase(f.says).concepts) & knowledge.states.sets.keys()
    return [(knowledge.base.terms[name].names[0], frozenset({name})) for name in sorted(said)]


def _states(given: list[Condition], knowledge: Knowledge) -> tuple[str, frozenset[str]]:
    """Return states in words, with the things that they are of; a name that says one by itself goes before others."""
    says = {tuple(states[0]): name for name, states in knowledge.states.sets.items() if len(states) == 1}
    failures = knowledge.states.failures
    names = ["" if c.input in failures else says.get((c.input, c.value), "") for c in given]
    words = [
        knowledge.base.terms[name].names[0] if name in knowledge.base.terms else condition_words(c, knowledge)
        for c, name in zip(given, names, strict=True)
    ]
    things = {knowledge.base.inputs[c.input].term for c in given}
    return " and ".join(words), frozenset(things.union(filter(None, names)))


def _with(
    more: str, known: frozenset[str], alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> list[tuple[Question, Scored]]:
    """Return what a turn gives with more words, from a record that knows of what they name and of its own things."""
    words = " ".join(alone.reading.words).rstrip("?. ")
    question = question_of(f"{words} , {more}", knowledge, context.asked.variant if context.asked else "")
    scored = resolve_scored(question, knowledge)
    if scored.score < max(_SURE, first.score) or scored.result == context.result:
        return []
    figure = isinstance(first.result, LimitResult) and bool(alone.reading.asked & QUANTITIES)
    stated = (LimitResult,) if figure else (FactResult, LimitResult)
    told = isinstance(scored.result, stated) and _knows(scored.record, known, knowledge)
    follows = isinstance(scored.result, TableResult) and bool(scored.result.asked) and first.score < _SURE
    meant = follows or (told and _knows_all(scored.record, alone, knowledge))
    return [(question.with_text(alone.reading.text)._replace(context=True), scored)] if meant else []


def _applying(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Scored] | None:
    """Return the limit that holds under the states given which a turn asks for, of what was spoken of."""
    question = carried(alone, context, context.scenario, knowledge)
    scored = resolve_scored(question, knowledge)
    found = isinstance(scored.result, LimitResult) and bool(scored.result.limits[0].when)
    return (question, scored) if found else None


def _results(table: StateTable, given: list[Condition], knowledge: Knowledge) -> list[tuple[str, frozenset[str]]]:
    """Return the first result of a table under some states, in its words and by the name of what it is, each with what
    it names.
    """
    output = table.outputs[0].id
    value = state_tables.outputs(table, {c.input: c.value for c in given}, knowledge.base)[output]
    said = [output_words(table, output, value)]
    said += knowledge.base.terms[value].names[:1] if value in knowledge.base.terms else []
    return [(words, _things(words, knowledge)) for words in said]


def _things(words: str, knowledge: Knowledge) -> frozenset[str]:
    own = knowledge.matcher.telling(knowledge.phrase(words))
    return frozenset(c for m in own for c in m.concepts if c[0].isalpha())


def _knows(record: str, things: frozenset[str], knowledge: Knowledge) -> bool:
    return bool(record) and not knowledge.matcher.vocabulary(record).isdisjoint(things)


def _knows_all(record: str, alone: Question, knowledge: Knowledge) -> bool:
    """Return whether a record knows of every thing that a turn names itself."""
    said = knowledge.matcher.vocabulary(record)
    things = knowledge.matcher.telling(alone.reading)
    return all(not said.isdisjoint(m.concepts) for m in things)


def of_the_subject(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the figure of the thing spoken of before that a few words ask for, where what answers them by themselves
    knows nothing of it.
    """
    before = context.asked
    if before is None or not isinstance(first.result, LimitResult) or len(alone.reading.words) > _SHORT:
        return None
    if alone.conditions or alone.reading.amounts or not isinstance(context.result, (LimitResult, FactResult)):
        return None
    families = knowledge.lexicon.families_of
    mine = families(alone.reading.concepts)
    things = [m for m in things_named(before.reading, knowledge) if not mine & families(m.concepts)]
    if not things or any(_knows(first.record, m.concepts, knowledge) for m in things):
        return None
    words = " ".join(alone.reading.words).rstrip("?. ")
    for thing in things:
        question = question_of(f"{words} , {thing.text}", knowledge, before.variant)
        scored = resolve_scored(question, knowledge)
        if isinstance(scored.result, OPEN) or scored.score < first.score or scored.result == context.result:
            continue
        known = _knows(scored.record, thing.concepts, knowledge) and _knows_all(scored.record, alone, knowledge)
        if known and isinstance(scored.result, LimitResult):
            return question.with_text(alone.reading.text)._replace(context=True), scored.result
    return None
