"""A turn on what was told before the last: with or without it, what was asked of it, what is said of it besides."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import carried, merged, things_named
from assistant.conversation.reading_turns.traits import OPEN
from assistant.conversation.reading_turns.turned_round import only_with
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import FactResult, LimitResult, Result

_SURE, _AHEAD = 0.85, 0.1
_AS = ("as", "in")
_CLEAR, _BETTER = 0.95, 0.05
_POINTING = frozenset({"it", "they", "them"})
_WHETHER = frozenset({"can", "will", "does", "do", "is", "are", "could", "may", "would", "should"})
_MOST_WORDS, _BRIEF = 12, 5


def with_or_without(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the question before with "without" in the place of "with", or the other way about: "and without it?"."""
    if context.asked is None or not only_with(alone.reading):
        return None
    question, whole = merged(alone, context, knowledge, False)
    result = resolve_scored(question, knowledge).result
    return (question, result) if whole and not isinstance(result, OPEN) and result != context.result else None


def before_refined(
    alone: Question, second: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return a turn merged with the question before the last, which the last only made more exact, where that answers
    clearly better: "and for getting it out?", after a speed and the same "as a Mach number".

    second: what the turn gives with the last question.
    """
    past = context.earlier[0] if context.earlier else None
    if past is None or context.asked is None or not context.asked.context or len(alone.reading.words) > _MOST_WORDS:
        return None
    if not isinstance(past.result, (FactResult, LimitResult)) or second.score >= _SURE:
        return None
    last = context.asked.reading
    if len(last.words) > _BRIEF or "its" in last.words or _names_thing(context.asked, knowledge):
        return None
    before = context._replace(asked=past.asked, result=past.result, answer=past.answer)
    question, whole = merged(alone, before, knowledge, False)
    found = resolve_scored(question, knowledge)
    told = found.result in context.told_lately or isinstance(found.result, OPEN)
    better = found.score >= max(_SURE, second.score + _AHEAD)
    return (question, found.result) if whole and better and not told else None


def on_what_was_told(
    alone: Question, second: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return a statement on what was spoken of which a turn asks for that points at it, before the question with the
    turn's name in the place of its like: "can I put it back up?", after a free-fall extension.
    """
    if context.asked is None or _POINTING.isdisjoint(alone.reading.words) or alone.reading.amounts:
        return None
    if not _WHETHER.intersection(alone.reading.words[:2]) or len(alone.reading.words) > _MOST_WORDS:
        return None
    question = carried(alone, context, context.asked.conditions, knowledge)
    third = resolve_scored(question, knowledge)
    told = third.result in context.told_lately or not isinstance(third.result, FactResult)
    return (question, third.result) if not told and third.score >= max(_CLEAR, second.score + _BETTER) else None


def _names_thing(question: Question, knowledge: Knowledge) -> bool:
    """Return whether a question names a thing, and not only how its answer is wanted."""
    if question.reading.words[0] in _AS:
        return False  # "as a Mach number"
    return bool(things_named(question.reading, knowledge))
