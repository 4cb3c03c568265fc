"""A turn that stands by itself beside the states given: "tiller max", "when does autobrake disarm", "what is TOW PIN".

A figure, a label or a rule that is asked for in full is told as it stands; what follows from a failure told before is
for a turn that asks of what works now, whether something does, or how it is done.
"""

from __future__ import annotations

from assistant.answering.parts import conditions_words
from assistant.answering.states import output_words
from assistant.conversation.context import Context
from assistant.conversation.on_states.in_scenario import states_given
from assistant.conversation.reading_turns.readings import things_named
from assistant.conversation.reading_turns.traits import CLEAR, FULL, GOOD, OPEN, STATED
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import (
    BandResult,
    CheckResult,
    LimitResult,
    LossResult,
    Result,
    ScheduleResult,
    TableResult,
    TablesResult,
)
from assistant.resolving.state_asked import is_normal, is_well, output_matches
from assistant.understanding.clauses import asks_whether
from assistant.understanding.mentions import STATE

_TOLD = (*STATED, ScheduleResult)
_OF_STATES = (TableResult, TablesResult, LossResult)
_JUDGED = (BandResult, CheckResult)
_FAIRLY = 0.6
_LEANING = frozenset({
    "it", "that", "this", "they", "them", "its", "then", "still", "left", "now", "instead", "remaining", "use", "get",
    "have", "got", "lost", "else", "anyway", "with", "needed", "required",
})  # fmt: skip
"""Words of turns that ask of what was told, or of what there is now."""
_LIMITS = frozenset({"limit", "limits"})
_MANNER = frozenset({"do", "can", "would", "should", "must", "will", "am", "about"})
"""Words after "how" by which it is asked how something is done under the states: "how do I extend"."""
_TAKING_NOTE = frozenset({"so", "and", "ok", "okay", "then", "right", "well", "but", "now", ","})
_HELPING = frozenset({"does", "do", "is", "are", "can", "could", "will", "would", "may", "should", "has", "have"})
_CHOOSING = frozenset({"which", "landing"})
"""Words by which it is asked what to choose, which the states may leave nothing of."""
_MEANING = (("what", "is"), ("what", "are"), ("what", "s"), ("whats",), ("what", "does"))


def stands_apart(
    alone: Question, first: Scored, told: tuple[Question, Result], context: Context, knowledge: Knowledge
) -> bool:
    """Return whether a turn that would be told what follows from states given before asks for something of its own."""
    question, result = told
    if not isinstance(result, _OF_STATES) or _tells_a_state(alone, question, context):
        return False
    if isinstance(result, LossResult) and alone.reading.amounts:
        return True  # nothing that is lost takes an amount in
    if isinstance(result, TableResult) and isinstance(first.result, OPEN) and _asks_bound(alone):
        return not _asks_of_now(alone) and not _leans(alone)  # no result of a state is a bound
    if not isinstance(first.result, _TOLD):
        return False
    if alone.reading.amounts:
        judged = isinstance(first.result, _JUDGED) and first.score >= _FAIRLY
        return judged or (_asks_bound(alone) and isinstance(first.result, ScheduleResult) and first.score >= CLEAR)
    if not things_named(alone.reading, knowledge):
        return False
    return _asks_when(alone, first) or _asks_something_else(alone, first, result, knowledge)


def _asks_when(alone: Question, first: Scored) -> bool:
    """Return whether a turn asks in full when something happens: no result of a state is a time."""
    opening = next((w for w in alone.reading.words if w not in _TAKING_NOTE), "")
    return "when" in alone.reading.words[:3] and opening not in _HELPING and first.score >= CLEAR


def _asks_something_else(
    alone: Question, first: Scored, result: TableResult | TablesResult | LossResult, knowledge: Knowledge
) -> bool:
    """Return whether a turn asks, and leans on nothing, for what no result of the states is."""
    if _leans(alone) or _asks_of_now(alone):
        return False
    if isinstance(result, LossResult):
        return first.score >= CLEAR
    bound = _asks_bound(alone)
    if bound and first.score >= (_FAIRLY if isinstance(first.result, LimitResult) else FULL):
        return True
    if first.score >= GOOD and _names_label(alone, knowledge):
        return True
    enough = GOOD if any(alone.reading.words[: len(way)] == way for way in _MEANING) else CLEAR
    return first.score >= enough and not _explained(alone, result, knowledge)


def _names_label(alone: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn names a label that shows in a state: "RESERVE BRAKE memo" asks what it means."""
    return any(not m.concepts.isdisjoint(knowledge.states.shows) for m in alone.reading.mentions)


def _asks_bound(alone: Question) -> bool:
    return alone.reading.has("maximum", "minimum") or not _LIMITS.isdisjoint(alone.reading.words)


def held(first: Result, result: Result, context: Context, knowledge: Knowledge) -> str:
    """Return a line on the states told before which leave nothing of what a figure or a list is of, or "": "Still held:
    System 1 lost. The nose wheels castor."
    """
    if context.supposed or not isinstance(result, TableResult) or len(result.rows) != 1:
        return ""
    given = tuple(c for c in result.rows[0].conditions if not c.is_result)
    if not given or not (result.asked or isinstance(first, (LimitResult, ScheduleResult))):
        return ""
    output = (*result.asked, result.table.outputs[0].id)[0]
    value = dict(result.rows[0].outputs)[output]
    if is_normal(result.table, output, value, knowledge):
        return ""
    return f"Still held: {conditions_words(given, knowledge)}. {output_words(result.table, output, value)}."


def _tells_a_state(alone: Question, question: Question, context: Context) -> bool:
    """Return whether a turn gives a state itself, or changes those that were given."""
    if any(not (c.is_result or c.implied) for c in alone.conditions):
        return True
    before = {(c.input, c.value) for c in (*states_given(context), *context.scenario)}
    return any((c.input, c.value) not in before for c in question.conditions if not c.is_result)


def _leans(alone: Question) -> bool:
    """Return whether a turn points at what was told, or asks the same for another thing: "and for parking"."""
    return not _LEANING.isdisjoint(alone.reading.words) or "for" in alone.reading.words[:2]


def of_another_sense(alone: Question, question: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn is one word for a state that may as well say another thing, and what it follows was made a
    failure by it: "dry", of a runway, after the autobrake.
    """
    said = alone.reading.mentions
    if len(alone.reading.words) != 1 or len(said) != 1 or alone.conditions:
        return False
    if not any(c.startswith(STATE) for c in said[0].concepts):
        return False
    failed = any(c.where and (c.is_result or not is_well(c, knowledge)) for c in question.conditions)
    return failed and bool(knowledge.lexicon.families_of(said[0].concepts))


def _asks_of_now(alone: Question) -> bool:
    """Return whether a turn asks for yes or no, how something is done, or what to choose."""
    words = alone.reading.words
    opening = next((w for w in words if w not in _TAKING_NOTE), "")
    if asks_whether(words) or opening in _HELPING or not _CHOOSING.isdisjoint(words):
        return True
    how = words.index("how") if "how" in words[:3] else None
    return how is not None and not _MANNER.isdisjoint(words[how + 1 : how + 2])


def _explained(alone: Question, result: TableResult | TablesResult, knowledge: Knowledge) -> bool:
    """Return whether the results told are all that a turn asks for by name: "what colour are the bars"."""
    told = result.results if isinstance(result, TablesResult) else (result,)
    known = frozenset[str]()
    asked = {(each.table.id, output) for each in told for output in each.asked}
    for each in told:
        known |= frozenset().union(*(knowledge.phrase(o.label).concepts for o in each.table.outputs))
    for match in output_matches(alone, knowledge, ()):
        if (match.record, match.output) in asked and match.whole:
            known |= match.concepts
    return all(_is_known(m.concepts, known) for m in knowledge.matcher.telling(alone.reading))


def _is_known(concepts: frozenset[str], known: frozenset[str]) -> bool:
    return not known.isdisjoint(concepts) or all(c.startswith(STATE) for c in concepts)
