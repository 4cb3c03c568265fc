"""Why a step of a procedure is done, as far as it explains itself: "…, which takes it away and brings in the next"."""

from __future__ import annotations

import re

from assistant.practice.marking.elements import point
from assistant.practice.marking.points import Point
from assistant.resolving.knowing import Knowledge

_ASKS_WHY = re.compile(r"(?:.*[.,:;] )?(?:and )?why\b", re.IGNORECASE | re.DOTALL)
_REASON = re.compile(r", (?:which|so that|because) ([^(.;]*)")


def reasons_of(step: str, asking: str, know: Knowledge) -> list[Point]:
    """Return the first thing that a step explains itself by, and what comes of it, which need not be said too."""
    found = _REASON.search(step) if _ASKS_WHY.match(asking) else None
    if found is None:
        return []
    first, *rest = re.split(r",? and ", found[1].strip())
    return [point(first, know)._replace(kept=True), *(point(p, know)._replace(optional=True) for p in rest)]
