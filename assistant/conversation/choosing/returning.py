"""A topic that was left and is come back to: "back to the brakes, no fans"."""

from __future__ import annotations

import re

from assistant.conversation.context import Context, Earlier
from assistant.conversation.control_words.all_well import plain_words, well_again
from assistant.conversation.reading_turns.readings import question_of
from assistant.conversation.reading_turns.traits import names_unknown
from assistant.frozen import NamedTuple
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import ModelResult

_BACK = (
    r"^\W*(?:(?:ok|okay|right|so|now|well|and|but)\W+)*(?:(?:let'?s|let us|can we|i want to|i'd like to|we) )?"
    r"(?:(?:go|going|get|getting|come|coming|turn) )?(?:back|return|returning) to (.+)$"
)
_AGAIN = (
    r"^\W*(?:(?:ok|okay|right|so|now|well|and|but|sorry)\W+)*"
    r"(?:(?:what (?:was|were|is)|remind me (?:of|about)|give me|tell me|say|back to|repeat) )?(?:the |that )?"
    r"(\S+(?: \S+){0,3}?) (?:one|question|answer|figure|topic)(?: again| once more)\W*$"
)
"""What was told of a topic is asked for once more: "the gear one again"."""
_CASE = frozenset({
    "that", "this", "our", "my", "the", "same", "first", "failure", "case", "scenario", "situation", "problem", "fault",
    "failures", "business", "emergency", "setup", "picture", "story", "one",
})  # fmt: skip
"""Words that come back to the states given: "back to that failure, …"."""
_KEPT = 6


class Return(NamedTuple):
    """The conversation as it stood on a topic, and what is said on it now, "" for nothing more."""

    context: Context
    text: str


def returned(text: str, context: Context, knowledge: Knowledge) -> Return | None:
    """Return the topic that a turn comes back to, among those of the conversation, with the rest of the turn.

    One that was not spoken of yet begins anew.
    """
    said = text[:200].lower()
    goes = "back to" in said or "return" in said
    found = re.match(_BACK, text[:200], re.IGNORECASE | re.DOTALL) if goes else None
    if not found:
        return _told_again(text, context, knowledge)
    if well_again(plain_words(text)):
        return None
    case, told = (*re.split(r"[,:;]|\. ", found.group(1), maxsplit=1), "")[:2]
    if told.strip() and context.scenario and _CASE.issuperset(case.lower().split()):
        return Return(_on_scenario(context), told.strip())
    head, _, rest = found.group(1).partition(",")
    named = question_of(head, knowledge, context.variant)
    things = [m.concepts | m.implied for m in knowledge.matcher.telling(named.reading)]
    if named.named_variant:
        return None  # another variant is come back to, and the topic stays
    if _is_part(named, context, knowledge):
        return Return(context, found.group(1))  # "back to full", after a stop with another setting
    if not things and rest.strip() and not (named.reading.amounts or named.conditions):
        return Return(context, rest.strip())  # "back to it, autobrake?": what was spoken of is come back to
    left = context._replace(offered=(), earlier=with_topic(context))
    for past in context.earlier if things else ():
        known = past.asked.reading.concepts
        if all(not thing.isdisjoint(known) for thing in things):
            more = rest.strip() or (head if named.reading.amounts or named.conditions else "")
            return Return(left._replace(asked=past.asked, result=past.result, answer=past.answer), more)
    return Return(left._replace(asked=None, result=None, answer=None), found.group(1))


def _on_scenario(context: Context) -> Context:
    """Return the conversation as it stood on the states given last, where other things were asked since."""
    for past in with_topic(context):
        if any(not c.is_result for c in past.asked.conditions):
            left = context._replace(offered=(), earlier=with_topic(context))
            return left._replace(asked=past.asked, result=past.result, answer=past.answer)
    return context


def _is_part(named: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether what is come back to is no topic, but a setting or an amount of the calculation told last."""
    told = context.result
    if not isinstance(told, ModelResult) or names_unknown(told.model.id, named, knowledge):
        return False
    from assistant.conversation.reading_turns.given_inputs import choices_of  # few turns need it

    return bool(named.reading.amounts or choices_of(told.model, named, knowledge))


def _told_again(text: str, context: Context, knowledge: Knowledge) -> Return | None:
    """Return the last topic that a turn names to hear its answer once more."""
    lower = text[:100].lower()
    found = re.match(_AGAIN, lower) if "again" in lower or "once more" in lower else None
    if not found:
        return None
    named = question_of(found.group(1), knowledge, context.variant)
    things = [m.concepts | m.implied for m in knowledge.matcher.telling(named.reading)]
    if not things or named.named_variant or named.reading.amounts:
        return None
    for past in with_topic(context):
        known = past.asked.reading.concepts
        if all(not thing.isdisjoint(known) for thing in things):
            left = context._replace(offered=(), earlier=with_topic(context))
            return Return(left._replace(asked=past.asked, result=past.result, answer=past.answer), "")
    return None


def with_topic(context: Context) -> tuple[Earlier, ...]:
    """Return the topics of a conversation, the last first, with the one that is left now."""
    return (*_last(context), *context.earlier)[:_KEPT]


def _last(context: Context) -> tuple[Earlier, ...]:
    if context.asked is None or context.answer is None:
        return ()
    return (Earlier(context.asked, context.result, context.answer),)
