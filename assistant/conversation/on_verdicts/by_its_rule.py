"""An amount given after a rule was told, judged by the bands of that rule: "levers back at 90 knots?", after when RTO
brakes.

By itself such a turn names a common thing and a speed, which many limits are of; the paragraph just told says which.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.given_inputs import choices_of
from assistant.conversation.reading_turns.like_amounts import unit_word
from assistant.conversation.reading_turns.readings import OPEN_WORDS, question_of, things_named
from assistant.conversation.reading_turns.traits import CLEAR, OPEN
from assistant.knowledge.records import Bands, Limit
from assistant.resolving import limits as limit_rules
from assistant.resolving.amounts_for import fits
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CheckResult, FactResult, LimitResult, ModelResult, Result

_MOST_WORDS = 9
_LEAVE = frozenset({"ok", "okay", "may", "can", "could", "allowed", "legal", "good"})
_ASKING_OPENLY = frozenset({"what", "how", "when", "if", "until", "till", "why", "from"})


def by_its_rule(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the verdict of the one rule in the paragraph told last on a turn's one amount, else None."""
    amounts, words = alone.reading.amounts, alone.reading.words
    if context.asked is None or not isinstance(context.result, (FactResult, LimitResult)):
        return None
    if len(amounts) != 1 or amounts[0].unit is None or len(words) > _MOST_WORDS or alone.conditions:
        return None
    own = first.score >= CLEAR and not isinstance(first.result, (*OPEN, CheckResult))
    if own or not OPEN_WORDS.isdisjoint(words[:1]):
        return None
    found = [bands for bands in _rules_told(context, knowledge) if _is_of(alone, bands, knowledge)]
    judged = limit_rules.judge(found[0], alone, knowledge, amounts) if len(found) == 1 else None
    return (alone, judged) if judged else None


def _rules_told(context: Context, knowledge: Knowledge) -> list[Bands]:
    """Return the bands that stand in the paragraph of the record told last."""
    record = knowledge.base.records.get(context.answer.entry) if context.answer else None
    told = {(s.document, s.paragraph) for s in getattr(record, "sources", ())[:1]}
    bands = (knowledge.base.records[name] for name in knowledge.base.ids("bands"))
    return [b for b in bands if isinstance(b, Bands) and told & {(s.document, s.paragraph) for s in b.sources[:1]}]


def _is_of(alone: Question, bands: Bands, knowledge: Knowledge) -> bool:
    """Return whether a turn's amount is one of the rule's, and all that the turn names is known to it."""
    if fits(alone.reading.amounts[0], bands.unit, knowledge.units) is None:
        return False
    known = knowledge.matcher.vocabulary(bands.id)
    named = things_named(alone.reading, knowledge)
    return bool(named) and all(known & (m.concepts | m.implied) for m in named)


def leave_by_its_limit(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the verdict on a turn's one amount by the limit that the calculation told last may come down to, where the
    turn asks leave for what that limit is for: "is 240 ok to go?", after a cooling time.
    """
    told, amounts = context.result, alone.reading.amounts
    if not isinstance(told, ModelResult) or len(amounts) != 1 or len(alone.reading.words) > _MOST_WORDS + 1:
        return None
    if _LEAVE.isdisjoint(alone.reading.words) or not _ASKING_OPENLY.isdisjoint(alone.reading.words):
        return None
    chosen = choices_of(told.model, alone, knowledge)
    for item in told.model.inputs:
        for phrases, value, _ in item.choices if item.id in chosen else ():
            limit = knowledge.base.records.get(value)
            if isinstance(limit, Limit) and limit.maximum and chosen[item.id] in map(str.strip, phrases.split(";")):
                return _checked(limit, alone, context, knowledge)
    return None


def _checked(limit: Limit, alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    variant = alone.variant if alone.named_variant or context.asked is None else context.asked.variant
    own = knowledge.record(limit.id, variant)
    amount = alone.reading.amounts[0]
    if not isinstance(own, Limit) or own.maximum is None or fits(amount, own.maximum.unit, knowledge.units) is None:
        return None
    value = fits(amount, own.maximum.unit, knowledge.units)
    measured = amount._replace(value=amount.value if value is None else value, unit=own.maximum.unit)
    found = limit_rules.check(own, measured, alone._replace(variant=variant), knowledge)
    # What follows goes on from the whole: "on the other variant?".
    whole = question_of(f"{measured.value:.10g} {unit_word(own.maximum.unit)} , {own.of}", knowledge, variant)
    question = whole.with_text(alone.reading.text)._replace(variant=variant, context=True)
    return (question, CheckResult((found,))) if found else None
