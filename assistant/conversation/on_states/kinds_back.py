"""Things that have failed, called by their kind, which work again: "hydraulics are fine again", after both systems."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_states.in_scenario import states_given
from assistant.conversation.reading_turns.traits import ASKING
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.states import Condition

_BRIEF = 8
_AGAIN = frozenset({"again", "back", "restored", "recovered", "returned", "fixed", "repaired"})
_DENYING = frozenset({"not", "no", "never", "neither", "nor", "t", "if", "still", "without", "?"})
_WORKING = "@working"


def working_again(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Condition, ...]:
    """Return the states given with those things normal that a turn says are working again, none where it says no such
    thing of a kind that they all are of.
    """
    words = alone.reading.words
    if alone.conditions or alone.reading.amounts or not 1 < len(words) <= _BRIEF or words[0] in ASKING:
        return ()
    if _AGAIN.isdisjoint(words) or not _DENYING.isdisjoint(words):
        return ()
    named = [m for m in knowledge.matcher.telling(alone.reading) if _WORKING not in m.concepts]
    if len(named) != 1 or not named[0].text.endswith("s"):
        return ()
    failed = {c.input for c in states_given(context) if _has_failed(c, knowledge)}
    kind = {name for name in failed if set(named[0].text.split()) <= _words_of(name, knowledge)}
    if not kind:
        return ()
    kept = tuple(c._replace(where=()) for c in states_given(context) if c.input not in kind and not c.is_result)
    return (*kept, *(Condition(name, knowledge.states.normal(name)) for name in sorted(kind)))


def _has_failed(condition: Condition, knowledge: Knowledge) -> bool:
    states = knowledge.states
    return condition.input in states.failures and condition.value == states.failed(condition.input)


def _words_of(name: str, knowledge: Knowledge) -> set[str]:
    """Return the words of the names of a thing: "system 1 | hydraulics |"."""
    term = knowledge.base.terms[knowledge.base.inputs[name].term]
    return {word for each in term.names for word in each.lower().split()} | {"the"}
