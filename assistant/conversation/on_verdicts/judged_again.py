"""A reading judged for something else: "and for flying with it down?", after a verdict on 210 kt for raising the gear.

The turn gives no figure of its own: the one that was judged is held against the limit of what the turn names.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.conversation.context import Context
from assistant.conversation.control_words.controls import follows
from assistant.conversation.reading_turns.like_amounts import unit_word
from assistant.conversation.reading_turns.readings import question_of, things_named
from assistant.conversation.reading_turns.traits import FEW
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import bound_value, check
from assistant.resolving.results import BothResult, Check, CheckResult, LimitResult, Result

_MOST_WORDS = 9
_SURE = 0.8
_LEAD = frozenset({"and", "so", "then", "now", "ok", "or", "but", "about", "if", "that", "say"})
_ASKING = frozenset({"what", "which", "how", "why", "where", "when", "who", "whose"})
_POINTING = frozenset({"it", "that", "this", "them"})
_BOUNDS = frozenset({"maximum", "minimum"})
_THINGS = 3
_POSITION = "position"


def judged_again(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the verdict on the figure spoken of for what a turn names, where it asks for no figure itself."""
    figure = _figure(context)
    if not figure or context.asked is None or not _only_names(alone, context, knowledge):
        return None
    told = {each.limit.id for each in _checks(context.result)}
    variant = alone.variant if alone.named_variant else context.asked.variant
    for rest in _readings(alone, context, knowledge):
        for text in (f"{figure} {rest}", f"{rest} at {figure.removeprefix('is ').removesuffix(' ok')} ok"):
            question = question_of(text, knowledge, variant)
            found = resolve_scored(question, knowledge)
            checks = _checks(found.result)
            if checks and found.score >= _SURE and told.isdisjoint(each.limit.id for each in checks):
                return question.with_text(alone.reading.text)._replace(context=True), found.result
    return None


def _figure(context: Context) -> str:
    """Return whether the figure that was judged is well, in words."""
    for last in _checks(context.result)[:1]:
        return f"is {last.given:.10g} {unit_word(last.unit)} ok"
    return ""


def as_a_verdict(
    alone: Question, question: Question, result: Result, context: Context, knowledge: Knowledge
) -> tuple[Question, Result]:
    """Return a limit that a turn names as the verdict on the reading judged last, where it is of its kind: "and for
    take-off?", after a brake temperature judged for the parking brake; any other result as it is.
    """
    checks = _checks(context.result)
    if not checks or not isinstance(result, LimitResult) or len(result.limits) != 1:
        return question, result
    limit, last = result.limits[0], checks[0]
    figure = bound_value(limit) if limit.maximum or limit.minimum else None
    known = limit.id in {each.limit.id for each in checks}
    if figure is None or figure.unit != last.unit or known or not _only_names(alone, context, knowledge):
        return question, result
    found = check(limit, Amount(0, 0, last.given, last.unit, "", False, False), alone, knowledge)
    if found is None:
        return question, result
    words = " ".join((*question.reading.words, ",", f"{last.given:.10g}", unit_word(last.unit)))
    whole = question_of(words, knowledge, question.variant).with_text(alone.reading.text)
    return whole._replace(context=True, background=question.background), CheckResult((found,))


def _only_names(alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a short turn goes on from the last and asks for no figure, nor anything else of its own."""
    words = _without_lead(alone)
    if not words or len(words) > _MOST_WORDS or not _ASKING.isdisjoint(words):
        return False
    units = {each.unit for each in _checks(context.result)}
    for amount in alone.reading.amounts:
        if amount.unit is None or any(fits(amount, unit, knowledge.units) is not None for unit in units):
            return False
    kinds = (knowledge.lexicon.families_of(m.concepts) for m in alone.reading.mentions)
    if any(_POSITION in families for families in kinds):
        return False  # a reading is none of another wheel or leg
    goes_on = follows(alone.reading.text) or len(words) <= FEW
    return goes_on and not alone.reading.asked & QUANTITIES and not alone.reading.has(*_BOUNDS, "steps", "source_of")


def _without_lead(alone: Question) -> list[str]:
    """Return the words of a turn without those that lead on: "and what about"."""
    words = list(alone.reading.words)
    while words and (words[0] in _LEAD or (words[0] in _ASKING and words[1:2] in (["about"], ["if"]))):
        words.pop(0)
    return words


def _readings(alone: Question, context: Context, knowledge: Knowledge) -> Iterator[str]:
    """Yield what a turn names, as it is said and with the things spoken of in the place of "it"."""
    words = _without_lead(alone)
    text = " ".join(words).rstrip("?. ")
    yield text
    if context.asked is not None and not _POINTING.isdisjoint(words):
        for mention in things_named(context.asked.reading, knowledge)[:_THINGS]:
            yield " ".join(f"the {mention.text}" if word in _POINTING else word for word in words)


def _checks(result: Result | None) -> tuple[Check, ...]:
    if isinstance(result, BothResult):
        return (*_checks(result.first), *_checks(result.second))
    return result.checks if isinstance(result, CheckResult) else ()
