"""Why a step of a procedure is done, as far as it explains itself: "…, which takes it away and brings in the next"."""

from __future__ import annotations

import re

from assistant.practice.marking.finding.elements import concepts_in, point
from assistant.practice.marking.points import Point, State
from assistant.resolving.knowing import Knowledge

_ASKS_WHY = re.compile(r"(?:.*[.,:;] )?(?:and )?why\b", re.IGNORECASE | re.DOTALL)
_REASON = re.compile(r", (?:which|so that|because) ([^(.;]*)")


def reasons_of(step: str, asking: str, know: Knowledge) -> list[Point]:
    """Return the first thing that a step explains itself by, and what comes of it, which need not be said too."""
    found = _REASON.search(step) if _ASKS_WHY.match(asking) else None
    if found is None:
        return []
    first, *rest = re.split(r",? and ", found[1].strip())
    return [_gone(first, know), *(point(p, know)._replace(optional=True) for p in rest)]


def _gone(says: str, know: Knowledge) -> Point:
    """Return a reason as a point; a thing that is taken away as one that is no longer there."""
    taken = _AWAY.match(says)
    named = concepts_in(taken[1], know) if taken else frozenset()
    made = point(says, know)._replace(kept=True)
    if taken is None or not named:
        return made
    own = tuple(e for e in made.elements if e.concepts & named)
    return made._replace(text=f"no {taken[1]}", elements=own, state=State(named, False))


_AWAY = re.compile(r"takes (.+) away$")
