"""Parts of a question that are each surely answered by a record of their own, where a figure was left out."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.conversation.several.in_clauses import each_clause
from assistant.conversation.several.surely import Sure
from assistant.practice.marking.questions.asked import Asked, as_asked, record_of
from assistant.resolving import results as r
from assistant.resolving.asked_quantity import quantity_of
from assistant.resolving.knowing import Knowledge

_STATED = (r.FactResult, r.LimitResult, r.ScheduleResult, r.BothResult, r.BandResult)


def of_each_part(found: tuple[Asked, ...], parts: Sequence[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what surely answers each part of a question, where what was found leaves out a figure of one."""
    if len(parts) < _TWO or not all(isinstance(one.result, _STATED) for one in found):
        return ()
    made = each_clause(text, know)
    told = {id(record_of(one.result)) for one in found}
    left_out = [one for one in made if id(record_of(one.result)) not in told]
    if len(made) != len(parts) or not left_out or any(isinstance(one.result, r.FactResult) for one in left_out):
        return ()
    if len(told) >= len(parts) and not _of_another_kind(found, made, know):
        return ()
    return tuple(as_asked(part, one.question, one.result, know) for part, one in zip(parts, made, strict=True))


def _of_another_kind(found: Sequence[Asked], made: Sequence[Sure], know: Knowledge) -> bool:
    """Return whether what was found for a part is a figure of another quantity than what surely answers it."""
    both = zip(found, made, strict=True) if len(found) == len(made) else ()
    pairs = ((one, sure) for one, sure in both if isinstance(one.result, r.LimitResult))
    kinds = [(quantity_of(one.result, know), quantity_of(sure.result, know)) for one, sure in pairs]
    return any(mine and theirs and mine != theirs for mine, theirs in kinds)


_TWO = 2
