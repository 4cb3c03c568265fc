"""A turn that gives what was asked back for: what it gives is held to the calculation or the schedule that lacks it.

"They are at 30 kt", after the ground speed was asked for, would as well be held against a figure of that kind, and the
question before with it in its words may fit another record better: that record was not asked about.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.on_calculations.calculations import record_of
from assistant.conversation.on_figures.on_the_schedule import at_amount
from assistant.conversation.reading_turns.given_inputs import choices_of
from assistant.conversation.reading_turns.like_amounts import unit_word
from assistant.conversation.reading_turns.readings import merged, question_of
from assistant.conversation.reading_turns.traits import ASKING, CLEAR, LONG, OPEN, names_unknown
from assistant.knowledge.records import Model, Schedule
from assistant.resolving.amounts_for import fits
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.ranking import candidates
from assistant.resolving.results import ModelResult, Needed, Result, ScheduleResult

_OWN = frozenset({"kg", "count", "factor", "percent"})
"""Units that a bare number seldom is in, or that it is without saying."""


def supplied(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return what was asked back for with what a turn gives of it, where the turn says and asks nothing else."""
    asked = context.result
    if not isinstance(asked, Needed) or not alone.reading.amounts or not _only_gives(alone, asked, knowledge):
        return None
    if first.score >= CLEAR and not isinstance(first.result, OPEN) and record_of(first.result) != asked.record.id:
        return None
    amount = alone.reading.amounts[0]
    if isinstance(asked.record, Schedule):
        fitting = fits(amount, asked.record.input_unit, knowledge.units) is not None
        variant = alone.variant if alone.named_variant else context.asked.variant if context.asked else ""
        return at_amount(asked.record, amount, alone.reading.text, variant, knowledge) if fitting else None
    question = _in_its_unit(alone, asked, context, knowledge) or merged(alone, context, knowledge, False)[0]
    for candidate in candidates(question, knowledge):
        if record_of(candidate.result) == asked.record.id and _lacks_less(candidate.result, asked):
            return question, candidate.result
    return None


def _in_its_unit(alone: Question, asked: Needed, context: Context, knowledge: Knowledge) -> Question | None:
    """Return the question before with a turn's one bare number in the unit of the one thing that is lacking."""
    missing = [i for i in getattr(asked.record, "inputs", ()) if not isinstance(i, str) and i.id in asked.names]
    amounts = alone.reading.amounts
    if context.asked is None or len(missing) != 1 or len(amounts) != 1 or amounts[0].unit is not None:
        return None
    chooses = isinstance(asked.record, Model) and choices_of(asked.record, alone, knowledge)
    if missing[0].unit in _OWN or chooses:
        return None
    words = " ".join(context.asked.reading.words).rstrip("?. ")
    text = f"{words} , {amounts[0].value:.10g} {unit_word(missing[0].unit)}"
    variant = alone.variant if alone.named_variant else context.asked.variant
    return question_of(text, knowledge, variant).with_text(alone.reading.text)._replace(context=True)


def _only_gives(alone: Question, asked: Needed, knowledge: Knowledge) -> bool:
    stated = getattr(asked.record, "inputs", ())
    inputs = {getattr(i, "quantity", i) for i in stated} | {getattr(asked.record, "input", "")}
    asks = alone.reading.words[0] in ASKING or not (alone.reading.asked & QUANTITIES) <= inputs
    return not asks and len(alone.reading.words) <= LONG and not names_unknown(asked.record.id, alone, knowledge)


def _lacks_less(result: Result, asked: Needed) -> bool:
    if isinstance(result, Needed):
        return set(result.names) < set(asked.names)
    return isinstance(result, (ModelResult, ScheduleResult))
