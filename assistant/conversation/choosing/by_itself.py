"""A turn that names a thing of its own, which what was told last knows nothing of, and is answered in full by itself.

It is taken as a first question: nothing of what was told before has anything to give it, and completing it from there
would put another thing in the place of the one that it names.
"""

from __future__ import annotations

from assistant.answering.answer import Answer
from assistant.conversation.context import Context
from assistant.conversation.control_words.controls import follows
from assistant.conversation.reading_turns.names_its_own import things_of_its_own
from assistant.conversation.reading_turns.one_turn import Turn
from assistant.conversation.reading_turns.readings import merged
from assistant.conversation.reading_turns.traits import FULL, GOOD, OPEN, points
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BandResult, CheckResult, LimitResult, Needed, ProcedureResult, Result

_TAKEN_IN = frozenset({"ok", "okay", "fine", "right"})
"""Words that say no more than that the answer before was heard, where a turn begins with one."""
_NEAR = 3.0
"""How many times larger or smaller than the reading before another reading of the same may be."""
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


def of_another_size(alone: Question, result: Result, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn's bare number would be held against the limit judged by last, though it is nowhere near
    that and said of something else: "brakes 330", after the 1,800 psi of an accumulator.
    """
    told, amounts = context.result, alone.reading.amounts
    if not isinstance(result, CheckResult) or not isinstance(told, CheckResult) or context.asked is None:
        return False
    if len(amounts) != 1 or amounts[0].unit is not None or amounts[0].value <= 0:
        return False
    before = {check.limit.id: check.given for check in told.checks}
    past = [before[check.limit.id] for check in result.checks if check.limit.id in before]
    if not past or any(old / _NEAR <= amounts[0].value <= old * _NEAR for old in past):
        return False
    spoken = context.asked.reading.named
    return any(spoken.isdisjoint(m.concepts) for m in things_of_its_own(alone, knowledge))


def another_judged(turn: Turn, result: Result, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn's number would be judged by what judged the last one, which knows nothing of what the turn
    names, though it is answered by itself: "pedals at 30", after a tyre pressure.
    """
    entry = context.answer.entry if context.answer else ""
    if not entry or not isinstance(result, (BandResult, CheckResult)) or not isinstance(context.result, type(result)):
        return False
    own = {check.limit.id for check in result.checks} if isinstance(result, CheckResult) else {result.bands.id}
    if isinstance(turn.first.result, OPEN) or turn.first.record in own or not turn.alone.reading.amounts:
        return False
    if points(turn.alone) or "that" in turn.text.lower().split():
        return False
    if turn.first.score < (GOOD if entry in own else FULL):
        return False
    known = knowledge.matcher.vocabulary(entry)
    return any(known.isdisjoint(m.concepts) for m in things_of_its_own(turn.alone, knowledge))


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
    # A figure, or a bare reading, may be meant of what was spoken of.
    may = reading.has("can") and reading.words[0] not in _TAKEN_IN
    asks = reading.has("steps") or (bool(reading.amounts) and may)
    same = context.asked is not None and alone.variant == context.asked.variant
    return asks and same and not follows(reading.text) and not points(alone)
