"""A turn that names a thing of its own, which what was told last knows nothing of, and is answered in full by itself.

It is taken as a first question: nothing of what was told before has anything to give it, and completing it from there
would put another thing in the place of the one that it names.
"""

from __future__ import annotations

from assistant.answering.answer import Answer
from assistant.conversation.context import Context
from assistant.conversation.controls import follows
from assistant.conversation.names_its_own import things_of_its_own
from assistant.conversation.readings import merged
from assistant.conversation.traits import FULL, OPEN, points
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BandResult, CheckResult, LimitResult, Needed, ProcedureResult, Result

_VERDICTS = (BandResult, CheckResult, LimitResult, ProcedureResult)


def by_itself(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return a turn with the verdict, figure or procedure that it asks for by itself, whatever was told before."""
    if context.asked is None or context.answer is None or isinstance(context.result, Needed):
        return None
    if context.scenario or context.asked.conditions or not _begins_anew(alone, context):
        return None
    things = things_of_its_own(alone, knowledge)
    first = resolve_scored(alone, knowledge) if things else None
    if first is None or first.score < FULL or not isinstance(first.result, _VERDICTS):
        return None
    another = first.record != context.answer.entry and first.result != context.result
    another = another and not _takes_a_place(alone, context, knowledge)
    known = _spoken_of(context.asked, context.answer, knowledge) if another else frozenset()
    return (alone, first.result) if another and any(known.isdisjoint(m.concepts) for m in things) else None


def _takes_a_place(alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn names another in the place of its like, and the question before is answered of that."""
    whole, replaces = merged(alone, context, knowledge, False)
    return replaces and not isinstance(resolve_scored(whole, knowledge).result, OPEN)


def _spoken_of(asked: Question, answer: Answer, knowledge: Knowledge) -> frozenset[str]:
    """Return what the last question and its answer name."""
    return asked.reading.concepts | asked.background | knowledge.phrase(answer.text).concepts


def _begins_anew(alone: Question, context: Context) -> bool:
    """Return whether a turn neither goes on from another nor points at anything, and is of the same variant."""
    reading = alone.reading
    asks = bool(reading.amounts) or reading.has("can", "steps")  # a figure may be meant of what was spoken of
    same = context.asked is not None and alone.variant == context.asked.variant
    return asks and same and not follows(reading.text) and not points(alone)
