"""What is done on each side of one number, exchanged: "below 100 kt carry on, at 100 kt or more reject"."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.practice.marking.finding.equal import equals
from assistant.practice.marking.finding.found import element_said
from assistant.practice.marking.points import Figure, Need, Point
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import word_set
from assistant.resolving.knowing import Knowledge

_LOW, _HIGH = ("lower", "max"), ("higher", "min", "")
_TWO = 2


def sides_exchanged(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the points that are said on the other side of the number that parts them."""
    parted = [(p, figure) for p in need.points if (figure := _parting(p)) and _acts(p, need)]
    low = [(p, f) for p, f in parted if f.sense in _LOW]
    high = [(p, f) for p, f in parted if f.sense in _HIGH]
    pairs = [(a, b, Figure(*one[:2])) for a, one in low for b, other in high if one[:2] == other[:2]]
    return [text for below, above, number in pairs for text in _exchanged(below, above, number, need, said, know)]


def _parting(point: Point) -> Figure | None:
    """Return the one number of a point, or that of the question in whose case it holds."""
    return point.figures[0] if len(point.figures) == 1 else point.case


def _acts(point: Point, need: Need) -> list[int]:
    """Return which elements of a point no other point has, and the question does not give: what is done."""
    others = {e.words for p in need.points if p is not point for e in p.elements}
    return [n for n, e in enumerate(point.elements) if not e.given and e.words not in others and e.weight > _TELLING]


_TELLING = 0.3
_BEFORE = word_set("""
    a about above and at below beyond but exactly from if is just less more not of or over past than under up
""")
"""Words before a number that belong to it."""


def _exchanged(below: Point, above: Point, figure: Figure, need: Need, said: Said, know: Knowledge) -> list[str]:
    claims = [c for c in said.claims if equals(c.amount, figure, know.units)]
    if len(claims) != _TWO or (claims[0].sense in _LOW) is (claims[1].sense in _LOW):
        return []
    spots = [_places(p, need, said) for p in (below, above)]
    every = [i for each in spots for i in each]
    if not every:
        return []
    back = 0
    cut = claims[1].amount.start if claims[0].amount.start < min(every) else claims[0].amount.end
    while cut == claims[1].amount.start - back and said.reading.words[cut - 1] in _BEFORE:
        cut, back = cut - 1, back + 1
    first = below if claims[0].sense in _LOW else above
    found = []
    for point, own in zip((below, above), spots, strict=True):
        here = range(cut) if point is first else range(cut, len(said.words))
        if own and not any(i in here for i in own):
            found.append(f"on the other side: {point.text}")
        elif not own and any(i in here for i in spots[1 if point is below else 0]):
            found.append(f"another's: {point.text}")
    return found


def _places(point: Point, need: Need, said: Said) -> Sequence[int]:
    return [i for n in _acts(point, need) for i in element_said(point.elements[n], said)[1]]
