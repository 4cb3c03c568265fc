"""A short turn that names nothing is of what was just told: "how long do I wait?", of brakes, is of no lever.

What would answer it knows nothing of that subject, and stands elsewhere: what does know of it is asked or asked back
for, and else nothing is told.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.inside_told import on_the_subject, subject_told
from assistant.conversation.readings import things_named
from assistant.knowledge.records import Fact, Limit, Procedure
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of
from assistant.resolving.choosing import candidates
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import (
    BandResult,
    CheckResult,
    Declined,
    FactResult,
    LimitResult,
    ProcedureResult,
    Result,
)  # fmt: skip
from assistant.understanding.mentions import PLAIN

_LONG, _LEAST = 7, 0.45
_TOLD = (BandResult, CheckResult, FactResult, LimitResult)


def stays_with_it(
    alone: Question, result: Result, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return what knows of the subject of the figure or verdict told last, where a turn asks a quantity of it alone and
    would be answered of another subject; result: that answer.
    """
    if context.asked is None or not isinstance(context.result, _TOLD):
        return None
    if _names_nothing_there(alone, result, context, knowledge):
        return alone, Declined(())
    if not isinstance(result, (FactResult, LimitResult)):
        return None
    reading = alone.reading
    asked = reading.asked & QUANTITIES
    if not asked or reading.amounts or alone.conditions or len(reading.words) > _LONG or alone.named_variant:
        return None
    if any(not c.startswith(PLAIN) for m in things_named(reading, knowledge) for c in m.concepts):
        return None
    record = result.fact if isinstance(result, FactResult) else result.limits[0]
    subject = _spoken_of(context, knowledge)
    if not subject or not knowledge.matcher.vocabulary(record.id).isdisjoint(subject):
        return None
    question = on_the_subject(alone, context, knowledge)
    for candidate in candidates(question, knowledge):
        match = candidate.match
        if match is None or candidate.score < _LEAST or match.record == record.id:
            continue
        of_it = not knowledge.matcher.vocabulary(match.record).isdisjoint(subject)
        if of_it and quantity_of(candidate.result, knowledge) in asked:
            return question, candidate.result
    return question, Declined(())


def _names_nothing_there(alone: Question, result: Result, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a short turn without a thing of its own ("who does that?", "and if not?") would be answered with
    what stands elsewhere and knows nothing of what was spoken of.
    """
    reading = alone.reading
    if result == context.result or reading.amounts or alone.conditions or alone.named_variant:
        return False
    if len(reading.words) > _LONG or things_named(reading, knowledge):
        return False
    record = _record_of(result)
    told = knowledge.base.records.get(context.answer.entry) if context.answer else None
    if record is None or told is None or _sections(record) & _sections(told):
        return False
    subject = _spoken_of(context, knowledge)
    return bool(subject) and knowledge.matcher.vocabulary(record.id).isdisjoint(subject)


def _record_of(result: Result) -> Fact | Limit | Procedure | None:
    if isinstance(result, FactResult):
        return result.fact
    if isinstance(result, LimitResult):
        return result.limits[0]
    return result.procedure if isinstance(result, ProcedureResult) else None


def _sections(record: object) -> set[tuple[str, str]]:
    return {(source.document, source.paragraph) for source in getattr(record, "sources", ())}


def _spoken_of(context: Context, knowledge: Knowledge) -> frozenset[str]:
    """Return the things that the question before and the title of what it was answered with name."""
    assert context.asked is not None
    named = (m for m in things_named(context.asked.reading, knowledge) if not m.weak)
    own = frozenset(c for m in named for c in m.concepts if c[0].isalpha())
    return own | subject_told(context, knowledge)
