"""Which wheel or leg a reading was of, said after its verdict: "it's a nose one", after a tyre that shows 172 psi."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import merged
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BandResult, BothResult, CheckResult, Result

_LONG = 9
_POSITION = "position"
_JUDGED = (BandResult, BothResult, CheckResult)


def of_which_one(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the verdict on the reading judged last as of the wheel or leg that a turn names, where none was named."""
    before = context.asked
    if before is None or not isinstance(context.result, _JUDGED) or not before.reading.amounts:
        return None
    if alone.reading.amounts or alone.conditions or len(alone.reading.words) > _LONG:
        return None
    families = knowledge.lexicon.families_of
    named = alone.reading.variant_places
    told = knowledge.matcher.telling(alone.reading)
    things = [m for m in told if m.start not in named and not (m.weak or m.says_state)]
    placed = [m for m in things if _POSITION in families(m.concepts)]
    if not placed or any(m not in placed and m.concepts.isdisjoint(before.reading.concepts) for m in things):
        return None
    if any(_POSITION in families(m.concepts) for m in before.reading.mentions):
        return None
    whole, _ = merged(alone, context, knowledge, False)
    result = resolve_scored(whole, knowledge).result
    return (whole, result) if isinstance(result, _JUDGED) else None
