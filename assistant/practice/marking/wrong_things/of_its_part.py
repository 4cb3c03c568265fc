"""The name that answers one part of a question, said of what another part asks for: "system two for the gear".

Where each part is answered by a name alone, a stretch that names one of them and has a word of one part alone must be
the right one for that part.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.practice.marking.finding.elements import DIRECTIONS
from assistant.practice.marking.finding.found import Held, element_said
from assistant.practice.marking.finding.rivals import families_of
from assistant.practice.marking.points import Point
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import CONTRASTS, STOPS
from assistant.resolving.knowing import Knowledge

_NAME = 2
_TELLING = 0.35
_FAMILIES = ("hydraulic-system", "braking-mode", "autobrake-setting")
_CUTS = STOPS | CONTRASTS | {"and"}


def of_another_part(held: Sequence[Held], said: Said, know: Knowledge) -> list[str]:
    """Return the names that are said of the wrong part of a question."""
    points = [h.point for h in held if h.point.labels and len(h.point.text.split()) <= _NAME and h.point.elements]
    if len({p.text for p in points}) < _NAME or len(points) < len(held):
        return []
    families = families_of(know)
    own = {p: frozenset(c for e in p.elements for c in e.concepts if families.get(c) in _FAMILIES) for p in points}
    members = frozenset(c for each in own.values() for c in each)
    found = []
    for piece in said.pieces(_CUTS) if all(own.values()) else ():
        named = frozenset(c for i in piece for c in said.concepts[i]) & members
        here = [p for p in points if named and _is_named(p, points, piece, said)]
        if not any(named & own[p] for p in here):
            found += [f"another's: {p.text}" for p in here]
    return found


def _is_named(point: Point, points: Sequence[Point], piece: Sequence[int], said: Said) -> bool:
    """Return whether a stretch has a word of the part of a question that no other part has."""
    others = {w for p in points if p is not point for e in p.labels for w in e.words}
    telling = [e for e in point.labels if e.weight > _TELLING and others.isdisjoint(e.words)]
    telling = [e for e in telling if not DIRECTIONS.issuperset(e.words)]
    return any(element_said(e, said, piece)[0] > 0 for e in telling)
