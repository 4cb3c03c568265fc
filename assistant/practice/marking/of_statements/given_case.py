"""Points without the case that the question itself gives: its number, its condition."""

from __future__ import annotations

import re

from assistant.practice.marking.points import Figure, Point
from assistant.practice.marking.reading.said import plain
from assistant.understanding.mentions import Reading

_OWN = 0.7
"""Weight from which a word of a point tells enough without a figure that the question gives."""


def without_its_case(point: Point, points: list[Point], reading: Reading) -> Point:
    """Return a point without the figure of the one case that a question gives: "and if it was deeper than 13 mm?"."""
    if point.figures_suffice or len(point.figures) != 1 or not any(e.weight > _OWN for e in point.elements):
        return point
    case = point.figures[0]
    given = _gives(case, reading)
    others = any(f.unit == case.unit for p in points if p is not point for f in p.figures)
    return point if others or not given or not case.sense else point._replace(figures=(), case=case)


def without_its_condition(point: Point, reading: Reading) -> Point:
    """Return a point without the figure of the condition that the question gives: "if it is shorter than 45 min"."""
    clause = _CONDITION.search(point.text)
    if clause is None or len(point.figures) != 1 or point.figures_suffice:
        return point
    case = point.figures[0]
    given = _gives(case, reading)
    led = frozenset(plain(w) for w in re.findall(r"[a-z]+", clause.group().lower()))
    within = re.search(rf"{case.value:g}", clause.group().replace(",", "")) is not None
    if not given or not within or all(led.issuperset(e.words) for e in point.elements):
        return point
    told = tuple(e._replace(given=e.given or led.issuperset(e.words)) for e in point.elements)
    return point._replace(figures=(), elements=told, case=case)


def _gives(case: Figure, reading: Reading) -> bool:
    """Return whether a question gives a figure itself."""
    return any((a.value, a.unit or "") == (case.value, case.unit) for a in reading.amounts)


_CONDITION = re.compile(r"(?<=\w )(?:if|when|where|once|unless) .*$")
