"""A turn on "it" or "they", read with the thing that the question before named in its place."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import question_of, things_named
from assistant.conversation.reading_turns.traits import OPEN
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CheckResult, LimitResult, Result

_PRONOUNS = frozenset({"it", "they", "them"})
_SURE, _CERTAIN, _AHEAD = 0.95, 1.05, 0.15
_MOST_WORDS, _MOST_THINGS = 10, 2


def in_place_of_it(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return what a turn asks of the thing that "it" stands for, where that answers clearly and nothing else does:
    "at 1,700 does it still brake?", after what an accumulator needs for a tow.
    """
    before, answer, words = context.asked, context.answer, list(alone.reading.words)
    at = next((k for k, word in enumerate(words) if word in _PRONOUNS), None)
    if before is None or at is None or len(words) > _MOST_WORDS or not alone.reading.amounts:
        return None
    known = knowledge.matcher.vocabulary(answer.entry) if answer else frozenset()
    own = knowledge.matcher.telling(alone.reading)
    if not own:
        return None
    apart = any(known.isdisjoint(m.concepts | m.implied) for m in own)  # else what was told may be meant again
    if not isinstance(first.result, OPEN) and (first.score >= _SURE or (answer and first.record == answer.entry)):
        return None
    for name in _names(context, before, knowledge):
        text = " ".join((*words[:at], "the", name, *words[at + 1 :]))
        question = question_of(text, knowledge, alone.variant if alone.named_variant else before.variant)
        found = resolve_scored(question, knowledge)
        clear = found.score >= max(_SURE if apart else _CERTAIN, first.score + _AHEAD)
        if clear and not isinstance(found.result, OPEN) and found.result != context.result:
            return question.with_text(alone.reading.text)._replace(context=True), found.result
    return None


def _names(context: Context, before: Question, knowledge: Knowledge) -> list[str]:
    """Return the things that a turn may speak of: what the last figure is of, then what the question before named."""
    named = [m.text for m in things_named(before.reading, knowledge)]
    told = context.result
    limits = told.limits if isinstance(told, LimitResult) else ()
    limits = tuple(check.limit for check in told.checks) if isinstance(told, CheckResult) else limits
    subject = [limit.of.partition(",")[0] for limit in limits[:1] if "," in limit.of]
    return list(dict.fromkeys((*subject, *named)))[:_MOST_THINGS]
