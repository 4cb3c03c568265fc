"""Understand a turn: by itself, merged with the question before, under its conditions, or as a choice made."""

from __future__ import annotations

from typing import NamedTuple

from assistant.conversation.context import Context
from assistant.conversation.controls import asks_about, corrected, follows
from assistant.conversation.inheriting import with_amounts
from assistant.conversation.picking import picked
from assistant.conversation.readings import carried, is_quantity, merged
from assistant.conversation.readings import question_of as question_of
from assistant.conversation.scenario import added
from assistant.conversation.steps import step_asked, step_by_place
from assistant.resolving import tables as state_tables
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of
from assistant.resolving.choosing import Scored, candidates, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import (
    Choices,
    Declined,
    FactResult,
    LimitResult,
    ModelResult,
    Needed,
    Result,
    TableResult,
)  # fmt: skip
from assistant.understanding.matching import strange
from assistant.understanding.states import Condition

_GOOD = 0.8
_CLEAR, _FULL = 0.9, 0.97
"""From this score on, a few words are a question of their own."""
_LEANING = 0.66
_CLEARLY = 0.08
_FAR_BETTER = 0.12
_FEW = 4
_CONSIDERED = 6
_LONG = 12
_OPEN = (Choices, Declined, Needed)
_ASKING = frozenset({"what", "who", "where", "why", "when", "which", "does", "do", "is", "are", "can", "may"})
_PRONOUNS = frozenset({"it", "that", "one", "they", "them", "same"})


class _Turn(NamedTuple):
    """A turn as a question of its own, with what that gives; corrects: it opens as a correction."""

    text: str
    alone: Question
    first: Scored
    corrects: bool


def understood(text: str, context: Context, knowledge: Knowledge) -> tuple[Question, Result]:
    """Return the question that a turn asks, completed from the one before where it needs it, with its result."""
    found = picked(text, context, knowledge)
    if found:
        return found
    # A turn is completed from the last; what it names itself always counts.
    rest = corrected(text) if context.asked else None
    bare = text if rest is None else rest
    alone = question_of(bare, knowledge, context.variant)
    placed = step_by_place(alone, context)
    if placed:
        return placed
    turn = _Turn(bare, alone, resolve_scored(alone, knowledge), rest is not None)
    lost = alone.reading.too_long or strange(alone.reading, knowledge.matcher)
    found = None if context.asked is None or lost else _completed(turn, context, knowledge)
    return found or (alone, turn.first.result)


def _completed(turn: _Turn, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the question that the one before makes of a turn, or None where it stands by itself."""
    alone, first = turn.alone, turn.first
    found = None if turn.corrects else added(alone, context, knowledge)
    if found:
        return found
    asks_itself = not turn.corrects and not follows(turn.text) and not _incomplete(alone, first, knowledge)
    well = _in_scenario(alone, first, context, knowledge) if alone.conditions and not turn.corrects else None
    if well:
        return well
    if _whole(alone, first, knowledge) and not turn.corrects:
        return _clearly_carried(alone, first, context, knowledge)
    if asks_itself and len(alone.reading.words) > _FEW:
        return _clearly_carried(alone, first, context, knowledge)
    found = _other_calculation(alone, first, context, knowledge)
    if found:
        return found
    whole, replaces = merged(alone, context, knowledge, turn.corrects)
    second = _told_anew(whole, alone, context, knowledge)
    fills = _supplies(context.result, second.result, alone)
    replaces = replaces or _only_states(alone, context, knowledge)
    if fills or (replaces and not isinstance(second.result, _OPEN)):
        return whole, second.result
    found = (
        _in_scenario(alone, first, context, knowledge)
        or step_asked(alone, context, knowledge)
        or _with_its_amounts(alone, first, context, knowledge)
    )
    if found or asks_itself:
        return found
    leans = _leans(turn.text, alone, first, knowledge)
    found = _carried_on(turn, whole, second, leans, context, knowledge)
    if found is None and _prefers_merged(alone, first, second, turn.corrects or leans, replaces, knowledge):
        return whole, second.result
    return found


def _whole(alone: Question, first: Scored, knowledge: Knowledge) -> bool:
    """Return whether a turn is a long question that answers fully by itself, though it opens as a continuation."""
    full = first.score >= _FULL and not isinstance(first.result, _OPEN)
    return full and len(alone.reading.words) > 2 * _FEW and not alone.reading.amounts and _names_thing(alone, knowledge)


def _only_states(alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn only gives states to the calculation before: "what if the fans are off?"."""
    if not isinstance(context.result, ModelResult) or not alone.conditions or alone.reading.amounts:
        return False
    return not _names_thing(alone, knowledge) and not alone.reading.asked & QUANTITIES


def _clearly_carried(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return a question that answers by itself, and far better on the subject and under the states given before."""
    if context.asked is None or len(alone.reading.words) > _LONG:
        return None
    question = carried(alone, context, context.asked.conditions or context.scenario, knowledge)
    third = resolve_scored(question, knowledge)
    ahead = 0.0 if _speaks_of_states(third, context.asked.conditions, knowledge) else _FAR_BETTER
    better = third.score >= first.score + ahead and not isinstance(third.result, _OPEN)
    return (question, third.result) if better else None


def _speaks_of_states(scored: Scored, given: tuple[Condition, ...], knowledge: Knowledge) -> bool:
    """Return whether a record speaks of a thing whose state was given before."""
    said = knowledge.matcher.vocabulary(scored.record) if scored.record else frozenset()
    return any(knowledge.base.inputs[c.input].term in said for c in given if "." not in c.input and not c.implied)


def _in_scenario(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return a short question on a result of the states that a scenario has given."""
    if context.asked is None or not context.scenario:
        return None
    if len(alone.reading.words) > (_LONG if alone.conditions else 2 * _FEW):
        return None
    if alone.conditions and not _all_well(alone, context, knowledge):
        return None
    if alone.reading.has("who", "where", "why"):
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
    changed = plain and third.score >= _GOOD and _changes(third.result, question.conditions, knowledge)
    return (question, third.result) if changed else None


def _all_well(alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn says only of other things than those of the scenario that they are well."""
    inputs = knowledge.base.inputs
    told = {c.input for c in context.scenario}
    states = [c for c in alone.conditions if "." not in c.input]
    return all(c.input not in told and c.value == state_tables.normal(inputs[c.input]) for c in states)


def _changes(result: TableResult, given: tuple[Condition, ...], knowledge: Knowledge) -> bool:
    """Return whether a table's results are others under the states given than with all normal."""
    states = {c.input: c.value for c in given if "." not in c.input}
    now, normal = (state_tables.outputs(result.table, state, knowledge.base) for state in (states, {}))
    return now != normal


def _with_its_amounts(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return a turn that lacks an amount with what the question before gave, where that serves it."""
    if not isinstance(first.result, Needed):
        return None
    question = with_amounts(alone, first.result, context, knowledge)
    given = resolve_scored(question, knowledge) if question else None
    if question is None or given is None or _record(given.result) != first.result.record.id:
        return None
    fewer = not isinstance(given.result, Needed) or set(given.result.names) < set(first.result.names)
    return (question, given.result) if fewer else None


def _other_calculation(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return another calculation than the last, which a turn asks for and the question before completes."""
    wanted = [first]
    if isinstance(context.result, ModelResult) and not _names_thing(alone, knowledge):
        wanted += [Scored(c.result, c.score) for c in candidates(alone, knowledge)[:_CONSIDERED]]
    for scored in wanted:
        if isinstance(scored.result, Needed) and scored.result.record.id != _record(context.result):
            found = _with_its_amounts(alone, scored, context, knowledge)
            if found and not isinstance(found[1], Needed):
                return found
    return None


def _record(result: Result | None) -> str:
    """Return the id of the calculation or the schedule that a result is of, or that lacks something."""
    for name in ("model", "schedule", "record"):
        found = getattr(result, name, None)
        if found is not None:
            return str(found.id)
    return ""


def _carried_on(
    turn: _Turn, whole: Question, second: Scored, leans: bool, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return a turn under the states and on the subject of the question before, where that answers better."""
    own = _names_thing(turn.alone, knowledge) and not leans
    if context.asked is None or (turn.corrects and not own):
        return None
    given = context.asked.conditions or (context.scenario if turn.alone.conditions else ())
    question = carried(turn.alone, context, given, knowledge)
    third = resolve_scored(question, knowledge)
    if not _prefers_carried(turn.alone, turn.first, second, third, bool(given) or own, knowledge):
        return None
    # What answers the merged question as well is remembered by it: what follows goes on from the whole.
    return (whole if second.record and second.record == third.record else question), third.result


def _supplies(asked: Result | None, given: Result, alone: Question) -> bool:
    """Return whether a short turn gives what was asked back for: the calculation runs, or lacks less."""
    if not isinstance(asked, Needed) or len(alone.reading.words) > 2 * _FEW:
        return False
    if isinstance(given, Needed):
        return bool(given.record == asked.record and set(given.names) < set(asked.names))
    record = getattr(given, "model", None) or getattr(given, "schedule", None)
    return bool(record and record.id == asked.record.id)


def _told_anew(merged: Question, alone: Question, context: Context, knowledge: Knowledge) -> Scored:
    """Return what the merged question gives; a statement just told is not meant again by a turn that names more."""
    found = resolve_scored(merged, knowledge)
    again = found.result == context.result and isinstance(found.result, (FactResult, LimitResult))
    if again and found.record and (_names_thing(alone, knowledge) or _asks_anew(alone, context, knowledge)):
        other = resolve_scored(merged, knowledge, avoid=found.record)
        return other if not isinstance(other.result, (Declined, Choices)) else found
    return found


def _asks_anew(alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn asks something else of what was spoken of: why, where, who, and was not asked so before."""
    asked = {c for m in alone.reading.mentions for c in m.concepts if knowledge.lexicon.kinds.get(c) == "ask!"}
    return bool(asked) and context.asked is not None and asked.isdisjoint(context.asked.reading.concepts)


def _prefers_carried(
    alone: Question, first: Scored, second: Scored, third: Scored, usual: bool, knowledge: Knowledge
) -> bool:
    """Return whether the conditions and the subject alone are kept: that gives the quantity asked for, or answers
    as well. usual: the turn is a question of its own, or states were given; else only a clear win counts.
    """
    if not usual:
        asks = alone.reading.asked & QUANTITIES or _asks(alone) or _names_thing(alone, knowledge)
        sure = _CLEARLY if alone.reading.asked & QUANTITIES or _asks(alone) else _FAR_BETTER
        answers = not isinstance(third.result, _OPEN) and asks
        return bool(answers) and third.score >= max(second.score, first.score) + sure
    asked = alone.reading.asked & QUANTITIES
    gives = quantity_of(third.result, knowledge) in asked and quantity_of(second.result, knowledge) not in asked
    if gives and third.score >= _LEANING:
        return True
    same = bool(third.record) and third.record == first.record
    if same and len(alone.reading.words) > _LONG // 2 and quantity_of(third.result, knowledge) in asked:
        return not isinstance(third.result, _OPEN)  # a long turn with its own subject asks for itself
    if same and isinstance(second.result, _OPEN):
        return not isinstance(third.result, _OPEN)  # it answers the same, and the conditions stay in mind
    margin = -0.03 if _names_thing(alone, knowledge) else 0.03
    return bool(alone.reading.mentions) and third.score >= max(second.score, first.score) + margin


def _asks(alone: Question) -> bool:
    return bool(_ASKING.intersection(alone.reading.words[:3]))


def _prefers_merged(
    alone: Question, first: Scored, second: Scored, continues: bool, whole: bool, knowledge: Knowledge
) -> bool:
    """Return whether the question before with the turn in it is meant, rather than the turn alone."""
    if isinstance(second.result, Declined):
        return False
    if isinstance(first.result, Declined):
        return True
    if isinstance(second.result, (Choices, Needed)) and not isinstance(first.result, (Choices, Needed)):
        return False
    if isinstance(first.result, (Choices, Needed)) or whole:
        return whole or isinstance(first.result, Choices) or not _leaves_out(alone, second, knowledge)
    if not _names_thing(alone, knowledge):
        return second.score >= min(_LEANING, first.score)
    if first.score >= _CLEAR and _leaves_out(alone, second, knowledge):
        return False
    return second.score >= (_LEANING if continues else first.score + 0.02)


def _leaves_out(alone: Question, second: Scored, knowledge: Knowledge) -> bool:
    """Return whether a record says nothing of a thing that the turn itself names."""
    if not second.record:
        return False
    said = knowledge.matcher.vocabulary(second.record)
    things = [m for m in alone.reading.mentions if not knowledge.matcher.is_soft(m)]
    return any(said.isdisjoint(m.concepts) for m in things)


def _incomplete(question: Question, scored: Scored, knowledge: Knowledge) -> bool:
    """Return whether a turn may lean on the one before: it names no thing, or does not answer by itself."""
    if isinstance(scored.result, (Declined, Choices, Needed)):
        return True
    if len(question.reading.words) <= 10 and _PRONOUNS.intersection(question.reading.words):
        return True
    few = len(question.reading.words) <= 4 and scored.score < _CLEAR
    return few or scored.score < _GOOD or not _names_thing(question, knowledge)


def _names_thing(question: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn names a thing other than those whose state it gives."""
    said = frozenset(k for c in question.conditions for k in c.where)
    return any(
        not knowledge.matcher.is_soft(m) and not is_quantity(m.concepts, knowledge) and m.start not in said
        for m in question.reading.mentions
    )


def _leans(text: str, question: Question, first: Scored, knowledge: Knowledge) -> bool:
    """Return whether a turn is plainly a fragment of the question before: "and with fans", "the retraction one"."""
    words = question.reading.words
    if len(words) > 8:
        return False
    asks = any(w in _ASKING for w in words[1:]) and not asks_about(text)
    if (follows(text) and not asks) or _PRONOUNS.intersection(words):
        return True
    return len(words) <= 4 and (first.score < _CLEAR or not _names_thing(question, knowledge))
