"""A state that tells all that a question of several parts asks, where a reading in it was judged instead.

"The accumulator reads 1,600 psi. Does the parking brake hold, may it be relied on, what do you use?" is no one yes or
no: the row of the state, with what is remarked on that reading, answers every part.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.practice.marking.of_results.remarks import remarked
from assistant.practice.marking.questions.asked import Asked, ask
from assistant.practice.marking.questions.parts import POLAR, head_of
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge

_TWO = 2


def by_its_state(whole: Asked | None, parts: Sequence[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the row of a state table that the first part asks for, where its remarks answer the other parts."""
    if whole is None or not isinstance(whole.result, (r.BandResult, r.CheckResult)) or len(parts) < _TWO:
        return ()
    if not all(POLAR.match(part) for part in parts[:1]):
        return ()
    found = ask(f"{head_of(text, parts)}. {parts[0]}", know)
    if found is None or not isinstance(found[1].result, r.TableResult) or len(found[1].result.rows) != 1:
        return ()
    told = remarked(found[1].result.table, found[1].result.rows[0], text, know)
    return (found[1],) if len(told) >= len(parts) - 1 else ()
