"""A result of the state tables that a short turn asks for, under the states that a scenario has given.

"Do I get autobrake?", after a system that was lost, asks what these states leave of it and not what autobrake is; and
"all working again" asks for what was told last as it is then.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.control_words.all_well import points_at_one, says_all_normal, well_again
from assistant.conversation.on_states.in_scenario import last_told, row_told, states_given, told_table
from assistant.conversation.on_states.states_changed import changed_to, opens_asking
from assistant.conversation.reading_turns.readings import carried
from assistant.conversation.reading_turns.traits import FEW, GOOD, OPEN
from assistant.knowledge.records import StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CheckResult, FactResult, LimitResult, LossResult, Result, Row, TableResult
from assistant.resolving.state_asked import is_normal, is_well, output_matches
from assistant.understanding.clauses import asks_whether
from assistant.understanding.matching import Match
from assistant.understanding.mentions import ALL_WELL, STATE, Mention
from assistant.understanding.states import Condition

_LONG = 11
_FITS, _WHOLE = 0.6, 0.9
_LEAVING = frozenset({
    "why", "when", "to", "where", "who", "whose", "else", "normally", "usually", "long", "often", "instead", "without",
})  # fmt: skip
"""Words of turns that ask for no result of the states given."""
_AS_USUAL = frozenset({"normally", "usually"})
"""Of these, what asks of the states given whether it is as ever: "can I extend the gear normally?"."""
_ASKING_SO = frozenset({"can", "small_words", "both", "list_all", "lose"})
"""Concepts that only say that something is asked."""
_BESIDE = frozenset({
    "reset", "again", "say", "suppose", "clear", "cleared", "back", "start", "if", "with", "now", "just", "ok",
    "okay", "right", "fine", "good", "we", "got", "so", "and",
})  # fmt: skip
_TAKING_NOTE = frozenset({"so", "and", "ok", "okay", "then", "right", "well", ","})
_HAVING, _WE = frozenset({"have", "had", "will", "would", "did", "am"}), frozenset({"i", "we", "you", "they"})
"""How a turn asks of what somebody has."""
_LOOKING = frozenset({"look", "looks", "show", "appear"})
"""How a thing looks is a result, and not how it works."""
_MEANING = (("what", "is"), ("what", "are"), ("what", "does"), ("what", "s"), ("whats",))


def result_asked(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the result that a short turn asks for by nothing but its name, under the states given before."""
    given = states_given(context) or _results_given(context)
    told = told_table(context) is not None or bool(context.asked and context.asked.conditions and context.scenario)
    told = told or bool(context.scenario) or all(c.is_result for c in given)
    if not given or not (told or isinstance(context.result, LossResult)) or not _may_ask(alone, given, context):
        return None
    if isinstance(context.result, LimitResult) and all(c.is_result for c in given):
        return None  # a figure was told of a thing by a name that holds a result: "normal extension time"
    found = _named(alone) or output_asked(alone, given, knowledge)
    if found is None:
        return None
    name, output = found
    table = next(t for t in state_tables.tables(knowledge.base) if t.id == name)
    if not told and all(c.input not in table.inputs for c in given):
        return None  # what a name only brings along does not touch it, which a statement may say
    result = _row(table, given, output, knowledge)
    if result is None:
        return None
    if not isinstance(first.result, OPEN) and _asks_manner(alone, first) and _is_usual(result, output, knowledge):
        return None
    question = carried(alone, context, given, knowledge)
    return question._replace(conditions=tuple(c for c in question.conditions if not c.is_result)), result


def _may_ask(alone: Question, given: tuple[Condition, ...], context: Context) -> bool:
    """Return whether a turn may ask for a result of what was given: it is short, and tells no state of its own."""
    words = alone.reading.words
    if context.asked is None or alone.reading.amounts or len(words) > _LONG or alone.unsaid:
        return False
    # What a name only brings along is explained by the way of asking that holds it: "normal or free fall?".
    if any(not c.implied and not (c.is_result and (c.asked or _opens(alone))) for c in alone.conditions):
        return False
    if alone.conditions and all(c.is_result for c in given):
        return False
    if isinstance(context.result, (LimitResult, CheckResult)) and "for" in words[:2]:
        return False  # the figure is asked for what is named instead: "and for putting the gear down normally"
    said = {k for c in alone.conditions for k in c.where}
    said |= {k for m in alone.reading.mentions if m.holds("lose") for k in m.taken}
    leaving = _LEAVING - _AS_USUAL if asks_whether(words) else _LEAVING
    return not any(word in leaving for k, word in enumerate(words) if k not in said)


def _results_given(context: Context) -> tuple[Condition, ...]:
    """Return the results that the question before gave, where it gave no state: "on the accumulator alone"."""
    before = context.asked.conditions if context.asked else ()
    return tuple(c for c in before if c.is_result and not c.asked)


def _row(
    table: StateTable, given: tuple[Condition, ...], output: str, knowledge: Knowledge
) -> TableResult | None:
    """Return the row of a table under some states, or what always goes with results that were given instead."""
    if not all(c.is_result for c in given):
        return row_told(table, given, (output,), knowledge)
    told = {c.output: c.value for c in given if c.table == table.id}
    found = [(o.id, state_tables.results_with(table, {}, told, o.id, knowledge.base)) for o in table.outputs]
    sure = tuple((name, values.pop()) for name, values in found if len(values) == 1)
    if not told or output not in dict(sure):
        return None
    row = Row(tuple(c for c in given if c.table == table.id), sure, table.sources)
    return TableResult(table, (row,), (output,))


def _opens(alone: Question) -> bool:
    """Return whether a turn opens by asking, or asks whether something is there: "with anti-skid?", "have we …"."""
    words = [w for w in alone.reading.words if w not in _TAKING_NOTE]
    have = words[:1] != [] and words[0] in _HAVING and words[1] in _WE
    return have or opens_asking(alone) or (alone.reading.words[0] == "with" and len(alone.reading.words) <= FEW)


def _named(alone: Question) -> tuple[str, str] | None:
    """Return the table and the one result that a turn asks whether it is so: "does the gear extend normally"."""
    asked = [c for c in alone.conditions if c.is_result]
    places = {k for c in asked for k in c.where}
    rest = [m for m in alone.reading.mentions if not (m.weak or m.passing or places.intersection(m.taken))]
    if len(asked) != 1 or any(_ASKING_SO.isdisjoint(m.concepts) for m in rest):
        return None
    return asked[0].input.split(".", 1)[0], asked[0].output


def output_asked(alone: Question, given: tuple[Condition, ...], knowledge: Knowledge) -> tuple[str, str] | None:
    """Return the table and the result that a turn asks for best, where each of its words is explained by that."""
    said = [m for m in alone.reading.mentions if not (m.weak or m.passing)]
    for match in output_matches(alone, knowledge, (), given):
        if match.covered >= _WHOLE and match.score >= _FITS and all(_explained(m, match) for m in said):
            return match.record, match.output
    return None


def _explained(mention: Mention, match: Match) -> bool:
    """Return whether a mention names the result that is asked for, or only says that it works or is lost."""
    if not match.concepts.isdisjoint(mention.concepts | mention.implied):
        return True
    return all(c.startswith(STATE) or c in _ASKING_SO for c in mention.concepts) or not mention.concepts


def _asks_manner(alone: Question, first: Scored) -> bool:
    """Return whether a turn asks how something goes or what it is, which the documents may tell by themselves."""
    words = alone.reading.words
    if "how" in words[:3] and "about" not in words[:4] and _LOOKING.isdisjoint(words):
        return True
    means = any(words[k : k + len(way)] == way for way in _MEANING for k in range(3))
    return means and isinstance(first.result, FactResult) and first.score >= GOOD


def _is_usual(result: TableResult, output: str, knowledge: Knowledge) -> bool:
    """Return whether a result is the one with everything normal."""
    return is_normal(result.table, output, dict(result.rows[0].outputs)[output], knowledge)


def all_normal_again(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what was told last with all that had failed normal again: "everything is working now"."""
    given, whole = states_given(context), well_again(alone.reading.words)
    if not given or not says_all_normal(alone.reading) or alone.reading.amounts:
        return None
    if not whole and (alone.conditions or not _nothing_besides(alone)):
        return None
    one = whole and points_at_one(alone.reading.words)
    mended = [c.input for c in given if not is_well(c, knowledge)][-1:] if one else [c.input for c in given]
    normal = tuple(
        Condition(c.input, state_tables.normal(knowledge.base.inputs[c.input]) if c.input in mended else c.value)
        for c in given
    )
    question = carried(alone._replace(conditions=()), context, normal, knowledge)._replace(conditions=normal)
    told = last_told(context, knowledge)
    result = row_told(told.table, normal, told.asked, knowledge) if told else changed_to(normal, context, knowledge)
    return (question, result) if result else None


def _nothing_besides(alone: Question) -> bool:
    """Return whether a turn says no more than that all is well."""
    said = (m for m in alone.reading.mentions if not (m.weak or m.passing))
    return all(ALL_WELL in m.concepts or _BESIDE.issuperset(m.text.split()) for m in said)
