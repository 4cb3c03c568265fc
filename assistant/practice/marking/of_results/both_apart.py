"""A result of two things that have one name together: each of them is said by itself too."""

from __future__ import annotations

from assistant.practice.marking.finding.elements import named_elements
from assistant.practice.marking.points import Point
from assistant.resolving.knowing import Knowledge


def both_apart(made: Point, know: Knowledge) -> Point:
    """Return a result of two things that have one name together with each of them by itself."""
    halves = made.text.split(" and ")
    if len(made.elements) != 1 or len(halves) != 2 or made.figures:
        return made
    (whole,) = made.elements
    leads = [next(iter(named_elements(half, know)), None) for half in halves]
    if not all(leads):
        return made
    return made._replace(
        elements=tuple(
            e._replace(concepts=e.concepts | whole.concepts, weight=max(e.weight, _HALF_OF_TWO), group=n)
            for n, e in enumerate(leads) if e
        )
    )  # fmt: skip


_HALF_OF_TWO = 1.5
