"""A turn that goes on from what was told to a calculation of which that is a part.

"They were at 90 beforehand, where do they end up?", after a rise, gives the one thing that a calculation on all the
same takes besides; "how long to get down to that?", after a verdict on a reading, goes from the reading to the limit.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.given_inputs import Given, given_before, in_words, worked_out
from assistant.conversation.reading_turns.like_amounts import unit_word
from assistant.conversation.reading_turns.traits import CLEAR, LONG, OPEN
from assistant.knowledge.records import Model, ModelInput
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Check, CheckResult, ModelResult, Needed, Result
from assistant.understanding.words import stem

_COMMON = frozenset({"at", "from", "to", "now"})
"""Cues that stand beside amounts of any kind."""
_UNTIL = frozenset({"till", "until", "wait", "before"})


def larger_calculation(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the calculation that a turn goes on to from what was told, with all that is known for it."""
    if context.asked is None or len(alone.reading.words) > LONG + 4:
        return None
    if isinstance(context.result, ModelResult):
        if isinstance(first.result, CheckResult) and first.score >= CLEAR and alone.reading.has("can"):
            return None  # what may be done at an amount is held against its limit
        return _with_one_more(alone, context.result, context.asked, knowledge)
    # A bare figure that is judged by itself ("15 out") may be an outside temperature here.
    clear = first.score >= CLEAR and not isinstance(first.result, (*OPEN, CheckResult))
    if not isinstance(context.result, CheckResult) or clear:
        return None
    beyond = [check for check in context.result.checks if not check.within]
    found = (_to_the_limit(alone, check, context.asked, knowledge) for check in beyond or context.result.checks)
    return next((each for each in found if each), None)


def _with_one_more(
    alone: Question, told: ModelResult, before: Question, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the calculation that takes all that the last one took, and a turn's one amount besides."""
    if len(alone.reading.amounts) != 1 or told.solved:
        return None
    amount = alone.reading.amounts[0]
    own = {item.id for item in told.model.inputs}
    for model in _models(knowledge):
        extra = [item for item in model.inputs if item.id not in own and not item.default]
        if len(extra) != 1 or not own < {item.id for item in model.inputs}:
            continue
        if _is_the_one(amount, extra[0], told.model, alone, knowledge) and _is_about(alone, model, knowledge):
            unit = amount.unit if amount.unit not in (None, "deg") else extra[0].unit
            given = Given({extra[0].id: amount._replace(unit=unit)}, {})
            text = " , ".join((model.of, *in_words(model, given, given_before(told.model, before, knowledge))))
            return _calculated(text, model, alone, before, knowledge)
    return None


def _is_the_one(amount: Amount, extra: ModelInput, last: Model, alone: Question, knowledge: Knowledge) -> bool:
    """Return whether an amount is the one that the last calculation did not take, by its unit or a word beside it."""
    units = knowledge.units
    if fits(amount, extra.unit, units) is None:
        return False
    stems = {stem(cue) for cue in extra.cues.split() if cue not in _COMMON}
    said = any(stem(word) in stems for word in alone.reading.words)
    apart = all(fits(amount, item.unit, units) is None for item in last.inputs)
    return said or (apart and amount.unit is not None)


def _to_the_limit(
    alone: Question, judged: Check, before: Question, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return how a reading that was judged comes to its limit, where a turn asks what such a calculation gives."""
    asked = alone.reading.asked & QUANTITIES
    for model in _models(knowledge) if asked else ():
        chosen = [says for i in model.inputs for _, value, says in i.choices if value == judged.limit.id]
        start = next((i for i in model.inputs if i.id in model.descending), None)
        if not chosen or start is None or asked != {model.output} or not _is_about(alone, model, knowledge):
            continue
        if not _speaks_of(alone, model, knowledge):
            continue
        reading = f"{start.cues.split()[0]} {judged.given:.10g} {unit_word(judged.unit)}"
        text = " , ".join((model.of, reading, chosen[0], " ".join(alone.reading.words).rstrip("?. ")))
        return _calculated(text, model, alone, before, knowledge)
    return None


def _speaks_of(alone: Question, model: Model, knowledge: Knowledge) -> bool:
    """Return whether a turn names what a calculation is about, or waits for something."""
    known = knowledge.matcher.vocabulary(model.id) - QUANTITIES
    named = any(known & m.concepts for m in knowledge.matcher.telling(alone.reading))
    return named or not _UNTIL.isdisjoint(alone.reading.words)


def _calculated(
    text: str, model: Model, alone: Question, before: Question, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    variant = alone.variant if alone.named_variant else before.variant
    question, result = worked_out(text, model, variant, knowledge)
    if isinstance(result, ModelResult) and result.values:
        return question.with_text(alone.reading.text), result
    found = resolve_scored(question, knowledge).result
    lacks = isinstance(found, Needed) and found.record.id == model.id
    return (question.with_text(alone.reading.text), found) if lacks else None


def _is_about(alone: Question, model: Model, knowledge: Knowledge) -> bool:
    """Return whether a turn names no thing that a calculation does not speak of."""
    known = knowledge.matcher.vocabulary(model.id)
    things = (m for m in knowledge.matcher.telling(alone.reading) if m.known and m.concepts != {"where"})
    return all(known & (m.concepts | m.implied) for m in things)


def _models(knowledge: Knowledge) -> Iterator[Model]:
    for name in knowledge.base.ids("models"):
        record = knowledge.base.records[name]
        if isinstance(record, Model):
            yield record
