"""What holds "at any height" is said with a height all the same: "or with landing flap below 700 ft"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.practice.marking.finding.found import Held, element_said
from assistant.practice.marking.points import Need, Point
from assistant.practice.marking.reading.said import Said
from assistant.quantities.amounts import Amount
from assistant.resolving.knowing import Knowledge

_ANY = re.compile(r" at any (height|speed|temperature)\b")
_DIMENSIONS = {"height": "length", "speed": "speed", "temperature": "temperature"}
_CUTS = frozenset(("or", ",", ";", ".", ":"))
_HEAVY = 2.0


def bounded_any(held: Sequence[Held], need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the numbers with which an answer bounds what holds at any: nothing where the full answer has none such."""
    found = []
    for any_of in _ANY.finditer(need.expected):
        dimension = _DIMENSIONS[any_of.group(1)]
        before = need.expected[: any_of.start()]
        for h in (h for h in held if h.share and before.endswith(h.point.text.removeprefix("or "))):
            piece = _alone(h.point, [o.point for o in held if o is not h], said)
            found += [
                c.amount.raw for c in said.claims
                if c.amount.start in piece and _measures(c.amount, dimension, know)
            ]  # fmt: skip
    return found


def _measures(amount: Amount, dimension: str, know: Knowledge) -> bool:
    """Return whether an amount may be of a dimension; a bare one is, if it is no count."""
    return know.units.get(amount.unit).dimension == dimension if amount.unit else amount.value >= _LARGE


_LARGE = 100


def _alone(point: Point, others: Sequence[Point], said: Said) -> set[int]:
    """Return the stretches between stops that speak of a point, and of no other that has a figure."""
    places = {i for e in point.elements if e.weight >= _HEAVY for i in element_said(e, said)[1]}
    foreign = {
        i for p in others if p.figures for e in p.elements if e.weight >= _HEAVY for i in element_said(e, said)[1]
    }
    found: set[int] = set()
    led = False
    for piece in said.pieces(_CUTS):
        goes_on = led and places.isdisjoint(piece) and _goes_on(piece, said)
        led = foreign.isdisjoint(piece) and (goes_on or not places.isdisjoint(piece))
        found.update(piece if led else ())
    return found


def _goes_on(piece: Sequence[int], said: Said) -> bool:
    """Return whether a stretch says something more of what the one before it names: "again only under 700 ft"."""
    words = [said.reading.words[i] for i in piece if said.reading.words[i] not in _OPENERS]
    return bool(words) and words[0] in _CARRIERS


_OPENERS = frozenset(("and", "but", "that", "this", "it", "is", "s"))
_CARRIERS = frozenset(
    ("again", "also", "only", "just", "still", "likewise", "same", "once", "provided", "too", "though")
)
"""Words with which a stretch goes on from the one before."""
