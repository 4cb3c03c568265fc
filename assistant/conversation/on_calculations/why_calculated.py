"""Why a calculation comes out as it does: the reason that it states, not some other one that shares a word with it.

"Why does the one take away from the other?", after a sum of two orders, names nothing that it is about.
"""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.knowledge.records import Fact
from assistant.resolving.choosing import Scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Declined, FactResult, ModelResult, Result

_CLEAR = 0.8
_LEAD = frozenset({"and", "so", "but", "ok", "okay", "then", "well", "hm"})
_WHY = "why"


def why_calculated(
    alone: Question, first: Scored, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the reason of the calculation told last, for a why that is not clearly of something else."""
    told = context.result
    words = [w for w in alone.reading.words if w not in _LEAD]
    if not isinstance(told, ModelResult) or words[:1] != [_WHY] or alone.reading.amounts or first.score >= _CLEAR:
        return None
    reason = knowledge.base.records.get(told.model.why)
    if isinstance(reason, Fact):
        return alone, FactResult(reason)
    other = knowledge.base.records.get(first.record) if first.record else None
    if other is None or (getattr(other, "topic", "") == told.model.topic and _shares(first.record, told, knowledge)):
        return None
    return alone, Declined(())


def _shares(record: str, told: ModelResult, knowledge: Knowledge) -> bool:
    """Return whether what a turn would be told speaks of what was calculated."""
    said = knowledge.matcher.vocabulary(record)
    return bool(said & knowledge.phrase(told.model.of).concepts)
