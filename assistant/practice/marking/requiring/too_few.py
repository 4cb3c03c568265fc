"""A question that asks more than what was found for it tells: a part of it is answered by nothing, whatever is said."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from assistant.practice.marking.of_statements.compound import WHY
from assistant.practice.marking.points import Point
from assistant.practice.marking.questions.asked import Asked
from assistant.practice.marking.questions.parts import parts_of
from assistant.resolving import results as r

_SINGLE = (r.FactResult, r.LimitResult, r.ScheduleResult, r.BandResult, r.TableResult)
_HEAVY = 0.55
_OF_TWO = re.compile(
    r"\b(?:what|which) (?:speeds|pressures|temperatures|angles|times|colours|heights|masses)\b.*\b\w+ and \w+",
    re.IGNORECASE,
)
"""A part that asks for two figures itself: "at what speeds do you lower and raise the gear"."""
_SHORT = 2


def too_few(points: Iterable[Point], found: Iterable[Asked], text: str) -> bool:
    """Return whether fewer points are to be said than a question has parts, and no sequence or calculation answers."""
    each = tuple(found)
    if not all(isinstance(one.result, _SINGLE) or _is_of_part(one, each, text) for one in each):
        return False
    parts = [part for part in parts_of(text) if len(part.split()) > _SHORT and not _is_title(part, text)]
    parts = [part for part in parts if not TELLS_WHEN.match(part)]
    bare = not any(part.lower().startswith(("why", "and why")) for part in parts)
    why = bare and WHY.search(text.strip()) is not None
    twice = sum(_OF_TWO.search(part) is not None for part in parts)
    return 1 < len(parts) + why + twice > sum(_told(point) for point in points if not point.optional)


TELLS_WHEN = re.compile(
    r"(?:and )?(?:when|where) (?!(?:is|are|was|were|does|do|did|has|have|may|can|must|will|should|and|to)\b)",
    re.IGNORECASE,
)
"""A clause that tells when, and does not ask it: "when a fuse plug melts"."""


def _is_of_part(one: Asked, found: Sequence[Asked], text: str) -> bool:
    """Return whether a procedure is asked for one of its steps, or by one part of several alone."""
    if not isinstance(one.result, r.ProcedureResult):
        return False
    return one.result.step is not None or (len(found) > 1 and one.answer.question in parts_of(text))


def _is_title(part: str, text: str) -> bool:
    """Return whether a part only names what is read: "How far a tyre is below its pressure: 10%."."""
    return text[text.find(part) + len(part) :].lstrip().startswith(":")


def _told(point: Point) -> int:
    """Return how many things a point tells: its figures, or those that "and" joins in it."""
    groups = {e.group for e in point.elements if not e.given and e.weight >= _HEAVY}
    return max(1, len(point.figures), len(groups))
