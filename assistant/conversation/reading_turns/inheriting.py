"""Give a calculation that lacks something what the question before gave: each amount in its own part.

"How hot after five minutes?", asked after a cooling time, starts from the start of that one and not from what it
cooled to; "how long with 15 outside?", asked after a verdict on a temperature, starts from that temperature.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.like_amounts import unit_word
from assistant.conversation.reading_turns.readings import question_of
from assistant.knowledge.records import Model, ModelInput
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_choices import said
from assistant.resolving.model_inputs import bind
from assistant.resolving.results import CheckResult, LimitResult, Needed


def with_amounts(alone: Question, needed: Needed, context: Context, knowledge: Knowledge) -> Question | None:
    """Return a turn with what the question before gave of the calculation that it lacks something for."""
    before = context.asked
    if before is None:
        return None
    parts: list[str] = []
    if isinstance(needed.record, Model):
        parts = _parts(needed.record, alone, context, knowledge)
        parts = parts or _beside(before, alone, context, _of_other_kinds(needed.record, context, knowledge))
    else:
        parts = _beside(before, alone, context, frozenset())
    if isinstance(needed.record, Model) and parts:
        parts += _settings(needed.record, alone, context, knowledge)
    if not parts:
        return None
    own = " ".join(alone.reading.words).rstrip("?.! ")
    question = question_of(" , ".join((own, *parts)), knowledge, before.variant)
    variant = alone.variant if alone.named_variant else before.variant
    return question.with_text(alone.reading.text)._replace(variant=variant, context=True)


def _parts(model: Model, alone: Question, context: Context, knowledge: Knowledge) -> list[str]:
    """Return the amounts of the calculation before, for the parts that this one lacks and shares with it."""
    last = getattr(context.result, "model", None) or getattr(context.result, "record", None)
    before = context.asked
    if not isinstance(last, Model) or before is None:
        return []
    places = bind(last, before, knowledge).places
    amounts = {a.start: a for a in before.reading.amounts}
    found = []
    own = bind(model, alone, knowledge)
    left_out = (i for i in model.inputs if i.default and i.cues and i.id not in own.places)
    for item in (*own.missing, *left_out):  # what was taken as usual no longer is, once it was given
        amount = amounts.get(places.get(item.id, -1))
        if amount is not None:
            words = before.reading.words[amount.start : amount.end]
            unit = () if amount.unit else (unit_word(item.unit),)
            cues = item.cues.split()
            counts = item.unit == "count"
            found.append(" ".join((*words, *cues[:2]) if counts else (*cues[:1], *words, *unit)))
    return found


def _of_other_kinds(model: Model, context: Context, knowledge: Knowledge) -> frozenset[int]:
    """Return the places of the amounts that the last calculation took for a quantity which this one takes none of: the
    400 that a brake cools from is no speed.
    """
    last = getattr(context.result, "model", None) or getattr(context.result, "record", None)
    if not isinstance(last, Model) or context.asked is None:
        return frozenset()
    taken = {item.quantity for item in model.inputs}
    kinds = {item.id: item.quantity for item in last.inputs}
    places = bind(last, context.asked, knowledge).places
    return frozenset(start for name, start in places.items() if kinds.get(name) not in taken)


def _beside(before: Question, alone: Question, context: Context, besides: frozenset[int]) -> list[str]:
    """Return the amounts of a question that was no calculation, each with the word before it; but not those besides."""
    if alone.reading.amounts and not isinstance(context.result, CheckResult):
        return []
    words = before.reading.words
    amounts = (a for a in before.reading.amounts if a.start not in besides)
    return [" ".join(words[max(0, a.start - 1) : a.end]) for a in amounts]


def _settings(model: Model, alone: Question, context: Context, knowledge: Knowledge) -> list[str]:
    """Return what the question before chose, or was held against, that is a choice of this calculation too."""
    limits = _limits(context)
    found: list[str] = []
    for item in model.inputs:
        if phrase_chosen(item, alone, knowledge):
            continue
        before = phrase_chosen(item, context.asked, knowledge)
        held = [words.split(";")[0].strip() for words, value, _ in item.choices if value in limits]
        found += [before] if before else held
    return found


def phrase_chosen(item: ModelInput, question: Question | None, knowledge: Knowledge) -> str:
    """Return the phrase by which a question makes a choice of an input, or ""."""
    phrases = (phrase.strip() for words, _, _ in item.choices for phrase in words.split(";"))
    return next((phrase for phrase in phrases if question is not None and said(phrase, question, knowledge)), "")


def _limits(context: Context) -> set[str]:
    if isinstance(context.result, CheckResult):
        return {check.limit.id for check in context.result.checks}
    return {limit.id for limit in context.result.limits} if isinstance(context.result, LimitResult) else set()
