"""What a turn is like beside a question of its own: a fragment, a whole question, states alone."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.control_words.controls import asks_about, follows
from assistant.conversation.reading_turns.readings import things_named
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import (
    BandResult,
    BothResult,
    CheckResult,
    Choices,
    Declined,
    FactResult,
    LimitResult,
    ModelResult,
    Needed,
    ProcedureResult,
)

GOOD = 0.8
CLEAR, FULL = 0.9, 0.97
"""From these scores on a few words, or a long turn, are a question of their own."""
FEW, LONG = 4, 12
FAR_BETTER = 0.12
"""How far ahead of a reading that answers by itself another must be."""
OPEN = (Choices, Declined, Needed)
STATED = (BandResult, BothResult, CheckResult, FactResult, LimitResult, ProcedureResult)
"""Results that tell what stands somewhere, worked out from no states and no sum."""
ASKING = frozenset({"what", "who", "where", "why", "when", "which", "does", "do", "is", "are", "can", "may"})
_PRONOUNS = frozenset({"it", "that", "one", "they", "them", "same"})


def stands_alone(alone: Question, first: Scored, knowledge: Knowledge) -> bool:
    """Return whether a turn is a long question that answers fully by itself, though it opens as a continuation; or
    one that asks outright, of a thing and a state of it: "and when is a hydraulic system lost".
    """
    full = first.score >= FULL and not isinstance(first.result, OPEN)
    if full and begins_asking(alone) and not alone.reading.amounts and alone.conditions:
        return len(alone.reading.words) > FEW and isinstance(first.result, (FactResult, BothResult))
    return full and len(alone.reading.words) > 2 * FEW and not alone.reading.amounts and names_thing(alone, knowledge)


def incomplete(question: Question, scored: Scored, knowledge: Knowledge) -> bool:
    """Return whether a turn may lean on the one before: it names no thing, or does not answer by itself."""
    if isinstance(scored.result, OPEN):
        return True
    if len(question.reading.words) <= 10 and _PRONOUNS.intersection(question.reading.words):
        return True
    few = len(question.reading.words) <= FEW and scored.score < CLEAR
    return few or scored.score < GOOD or not names_thing(question, knowledge)


def points(alone: Question) -> bool:
    """Return whether a turn points at what was spoken of: "is that one over?"."""
    return not _PRONOUNS.isdisjoint(alone.reading.words)


def names_thing(question: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn names a thing other than those whose state it gives."""
    said = frozenset(k for c in question.conditions for k in c.where)
    return any(m.start not in said for m in things_named(question.reading, knowledge))


def is_fragment(text: str, question: Question, first: Scored, knowledge: Knowledge) -> bool:
    """Return whether a turn is plainly a fragment of the question before: "and with fans", "the retraction one"."""
    words = question.reading.words
    if len(words) > 8:
        return False
    asks = any(w in ASKING for w in words[1:]) and not asks_about(text)
    if (follows(text) and not asks) or _PRONOUNS.intersection(words):
        return True
    return len(words) <= FEW and (first.score < CLEAR or not names_thing(question, knowledge))


def begins_asking(alone: Question) -> bool:
    """Return whether a turn begins with a word that asks."""
    return bool(ASKING.intersection(alone.reading.words[:3]))


def leaves_out(alone: Question, second: Scored, knowledge: Knowledge) -> bool:
    """Return whether a record says nothing of a thing that the turn itself names."""
    if not second.record:
        return False
    said = knowledge.matcher.vocabulary(second.record)
    things = knowledge.matcher.telling(alone.reading)
    return any(said.isdisjoint(m.concepts) for m in things)


def names_unknown(record: str, question: Question, knowledge: Knowledge) -> bool:
    """Return whether a record says nothing of something that a question names, or of what that brings along."""
    said = knowledge.matcher.vocabulary(record)
    return any(said.isdisjoint(m.concepts | m.implied) for m in knowledge.matcher.telling(question.reading))


def asks_anew(alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn asks something else of what was spoken of: why, where, who, and was not asked so before."""
    asked = {c for m in alone.reading.mentions for c in m.concepts if knowledge.lexicon.kinds.get(c) == "ask!"}
    return bool(asked) and context.asked is not None and asked.isdisjoint(context.asked.reading.concepts)


def only_states(alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn only gives states to the calculation before: "what if the fans are off?"."""
    if not isinstance(context.result, ModelResult) or not alone.conditions or alone.reading.amounts:
        return False
    return not names_thing(alone, knowledge) and not alone.reading.asked & QUANTITIES
