"""What answers one part of a question, said of the thing that another part asks of: "a pulse for the nose wheels".

Each part names its own thing. A clause of an answer that names one of these alone, and holds only what is right of
another, gives to one what the other has.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.practice.marking.finding.elements import SIDES
from assistant.practice.marking.finding.found import Held, element_said
from assistant.practice.marking.finding.polarity import denied
from assistant.practice.marking.points import Element, Point
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import CONTRASTS, STOPS

_CUTS = STOPS | CONTRASTS | {"and", "then"}
_TELLING = 0.7
_SURE = 0.8
_NAMING = 1.3
_TWO = 2


def parts_crossed(held: Sequence[Held], said: Said) -> list[str]:
    """Return the points that are said, in a clause of their own, of the thing of another part."""
    told = [h.point for h in held if h.share and h.point.labels and not (h.point.figures or h.point.verdict)]
    told = [p for p in told if not p.state and not p.way]
    names = {p.labels: _own_words(p, [h.point for h in held]) for p in (h.point for h in held) if p.labels}
    if len(names) < _TWO or not told or not all(names.values()):
        return []
    found = []
    for clause in said.pieces(_CUTS):
        named = [labels for labels, words in names.items() if any(said.words[i] in words for i in clause)]
        here = [p for p in told if any(element_said(e, said, clause)[0] > _SURE for e in _telling(p))]
        if len(named) == 1 and here and all(p.labels != named[0] for p in here):
            found.append(f"another's: {here[0].text}")
    return found


def _telling(point: Point) -> Iterable[Element]:
    heaviest = max((e.weight for e in point.elements if not e.given), default=0.0)
    return (e for e in point.elements if not e.given and e.weight >= max(heaviest, _TELLING))


def _own_words(point: Point, points: Iterable[Point]) -> frozenset[str]:
    """Return the words by which the thing of a part differs from the like of another: "nose" of the nose wheels."""
    others = [p for p in points if p.labels and p.labels != point.labels]
    theirs = {w for p in others for e in (*p.labels, *p.elements) for w in e.words}
    mine = {w for e in point.elements for w in e.words}
    alike = [o.words for p in others for o in p.labels]
    return frozenset(w for e in point.labels for o in alike if _is_like(e.words, o) for w in e.words) - theirs - mine


def _is_like(one: tuple[str, ...], other: tuple[str, ...]) -> bool:
    """Return whether two names end alike, or are two sides of a number."""
    return (one[-1] == other[-1] and len(one) > 1 < len(other)) or (one in SIDES and other in SIDES)


def lost_by_name(point: Point, said: Said) -> tuple[int, ...]:
    """Return where the thing of a part is said not to be there, where all that is to be said is that it is lost."""
    if not point.labels or [e.words for e in point.elements if not e.given] != [_LOST]:
        return ()
    named = {i for e in point.labels if e.weight > _NAMING for i in element_said(e, said)[1]}
    gone = denied(said.reading.words, said.reading)
    return tuple(sorted(named & gone))


_LOST = (plain("lost"),)
