"""Order within what is said of steps: which stretch says which step, things and actions exchanged, ON before OFF.

A stretch is what stands between two stops. "Uplocks release" among steps of which one unlocks the downlocks and another
engages the uplocks says neither of them: it has the thing of one and the action of the other.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import combinations, pairwise

from assistant.practice.marking.finding.found import Held, element_said, words_said
from assistant.practice.marking.finding.misplaced import expects
from assistant.practice.marking.points import Element, Need, Point
from assistant.practice.marking.reading.contraries import OTHER
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import word_set

_CUTS = frozenset((",", ";", ".", "then", "and", "so", "before", "after"))
_TURNED = frozenset(("after", "before", "until", "when", "once"))
"""Words that may tell steps in another order than they are done."""
_HEAVY = 1.0
_SHORT = 4
"""Words of a piece that says one step; more run several together, as in speech without stops."""


def mixed_up(held: Sequence[Held], need: Need, said: Said) -> list[str]:
    """Return the steps of which an answer gives the thing with another one's action, or in another order."""
    if not need.ordered:
        return []
    pieces = said.pieces(_CUTS)
    points = [h.point for h in held if not h.point.figures and len(_telling(h.point)) > 1]
    found = [text for piece in pieces if (text := _exchanged(piece, points, said))]
    if not found and _TURNED.isdisjoint(said.reading.words):
        found = _turned(points, pieces, said)
    return found


def _exchanged(piece: range, points: Sequence[Point], said: Said) -> str:
    """Return the point whose thing a piece names with what only another point does with its own thing."""
    if len(piece) > _SHORT or any(words_said(p, said, piece)[0] >= 0.99 for p in points):
        return ""
    for one, other in combinations(points, 2):
        mine, theirs = _own(one, points, piece, said), _own(other, points, piece, said)
        if mine and theirs and not set(mine) & set(theirs):
            return f"mixed up: {one.text}, {other.text}"
    return ""


def _own(point: Point, points: Sequence[Point], piece: range, said: Said) -> list[int]:
    """Return where a piece says telling words of a point that no other point holds."""
    shared = {w for p in points if p is not point for e in p.elements for w in e.words}
    own = [e for e in _telling(point) if shared.isdisjoint(e.words)]
    weak = {i for m in said.reading.mentions if m.weak for i in m.taken}
    return [i for e in own for i in element_said(e, said, piece)[1] if i not in weak or said.words[i] in e.words]


def _telling(point: Point) -> list[Element]:
    return [e for e in point.elements if not e.given and e.weight >= _HEAVY]


def _turned(points: Sequence[Point], pieces: Sequence[range], said: Said) -> list[str]:
    """Return a step that is said, whole and once, before one that it follows."""
    placed = []
    for point in (p for p in points if not expects(p)):
        at = [k for k, piece in enumerate(pieces) if words_said(point, said, piece)[0] >= 0.99]
        if len(at) == 1:
            placed.append((at[0], point))
    return [f"out of order: {b.text}" for (m, _), (n, b) in combinations(placed, 2) if n < m][:1]


def both_for_either(held: Sequence[Held], said: Said) -> list[str]:
    """Return that two things of which either is enough are said to be needed together: "45 kt and 4 s"."""
    words = said.reading.words
    choices = [h for h in held if h.point.text.startswith("or ") and h.share and h.places]
    if not choices or "or" in words or "either" in words:
        return []
    if not _CASES.intersection(words):
        told = any(h.share and h.point.figures for h in held)
        for h in (each for each in choices if told and not each.point.figures):
            joined = words[max(0, min(h.places) - 3) : min(h.places)]
            if "and" in joined and not {",", ";", "."}.intersection(joined):
                return [f"and: {h.point.text}"]
    for h in (each for each in choices if each.point.figures):
        others = [max(o.places) for o in held if o is not h and o.point.figures and o.places]
        before = [place for place in others if place < min(h.places)]
        if before and "and" in words[max(before) : min(h.places)]:
            return [f"and: {h.point.text}"]
    return []


_CASES = word_set("any whatever whichever case cases also second other another too alternatively one two 1 2 first")
"""Words by which what is joined by "and" is told one by one."""


def either_for_both(held: Sequence[Held], need: Need, said: Said) -> list[str]:
    """Return a case whose figure and thing are said to be enough each: "below 700 ft or with both levers near idle"."""
    words = said.reading.words
    found = []
    for h in (o for o in held if o.share and o.point.figures and o.places):
        if need.ordered or h.point.either or " or " in h.point.text:
            continue
        heavy = [e for e in h.point.elements if e.weight > _HEAVIER and not e.given]
        spots = [i for e in heavy for i in element_said(e, said)[1]]
        others = {i for o in held if o is not h for e in o.point.elements for i in element_said(e, said)[1]}
        for at in h.places[:1] if spots else ():
            near = min(spots, key=lambda i: abs(i - at))
            between = range(min(at, near) + 1, max(at, near))
            ors = [i for i in between if words[i] == "or" and words[i + 1] not in _BOUNDING]
            if ors and others.isdisjoint(between):
                found.append(f"or: {h.point.text}")
    return found


_HEAVIER = 2.0
_BOUNDING = frozenset(("above", "below", "fewer", "higher", "less", "lower", "more", "over", "slower", "under"))


def apart(held: Sequence[Held], need: Need, said: Said) -> list[str]:
    """Return that two conditions which hold only together are said to do so each: "the lever set or the thrust up"."""
    if "together" not in need.question.words or "or" not in said.reading.words:
        return []
    spots = [h.places for h in held if h.share and h.places and not h.point.text.startswith("or ")]
    for one, other in pairwise(spots):
        between = said.reading.words[max(one) + 1 : min(other)]
        if "or" in between:
            return ["or"]
    return []


def inner_order(held: Sequence[Held], said: Said) -> list[str]:
    """Return the points whose two contraries are said the other way round: "ON, then OFF"."""
    found = []
    for point in (h.point for h in held if h.share):
        own = [plain(w) for w in re.findall(r"[\w-]+", point.text.lower())]
        for first, second in ((a, b) for a, b in combinations(dict.fromkeys(own), 2) if b in OTHER.get(a, ())):
            if own.index(second) - own.index(first) > 4 or own.count(first) + own.count(second) != 2:
                continue
            if _then(second, first, said) and not _then(first, second, said):
                found.append(f"{second} before {first}: {point.text}")
    return found


def _then(one: str, other: str, said: Said) -> bool:
    """Return whether a word is followed closely by another with a "then", "and" or comma."""
    words = said.words
    for i in (k for k, word in enumerate(words) if word == one):
        near = said.reading.words[i + 1 : i + 4]
        if other in words[i + 1 : i + 4] and not _THEN.isdisjoint(near):
            return True
    return False


_THEN = frozenset(("then", "and", ",", "back"))


def shared_with(held: Sequence[Held], need: Need, said: Said, put_off: frozenset[int]) -> list[str]:
    """Return what is said beside that of which a point says "only": "on the ground and in flight"."""
    found = []
    for point in (h.point for h in held):
        if not re.search(r"\bonly\b", point.text) or need.ordered:
            continue
        own = {w for e in point.elements for w in e.words}
        for other in {o for w in own for o in OTHER.get(w, ())} - own:
            spots = [i for i, w in enumerate(said.words) if w == other and i not in put_off]
            if spots and other not in need.asked:
                found.append(f"{said.reading.words[spots[0]]}: {point.text}")
    return found
