"""Questions on schedules: the value at a fresh input, and the input for a value."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from assistant.knowledge.records import Schedule
from assistant.physics.schedule import value_at
from assistant.practice.making.drafting import COMPUTED, Desk, bare
from assistant.practice.making.question import INVERSE, READING, Draft, Expected, Key

_FIGURES = 3
"""Figures in which an amount is drawn: nobody reads 81,152 lb."""
_BY = re.compile(r" by \w+$")


def schedule_drafts(name: str, desk: Desk) -> Iterator[Draft]:
    """Yield readings at breakpoints, between and beyond them, and an inverse one on each slope."""
    record: Schedule = desk.record(name)
    for x in _inputs(record, desk):
        yield _reading(record, x, desk)
    for (x0, y0), (x1, y1) in pairwise(record.points):
        if y0 != y1:
            yield _inverse(record, (x0, y0), (x1, y1), desk)


def _inputs(record: Schedule, desk: Desk) -> list[float]:
    points = [x for x, _ in record.points]
    found = [float(desk.chance.choice(points[1:]))]
    for low, high in pairwise(points):
        found.append(_round_number(desk.chance.uniform(low, high) or low))
    if record.above:  # where nothing is told of it, nobody is asked what holds beyond the last breakpoint
        found.append(_round_number(points[-1] * desk.chance.uniform(1.03, 1.15)))
    return list(dict.fromkeys(x for x in found if x > points[0]))


def _round_number(value: float) -> float:
    """Return a value as it would be read or said: whole, and of a large one three figures."""
    return float(round(value, min(0, _FIGURES - len(f"{abs(value):.0f}"))))


def _of(record: Schedule) -> str:
    """Return what a schedule is of, without by what it goes: the question gives that itself."""
    return _BY.sub("", bare(record.of))


def _reading(record: Schedule, x: float, desk: Desk) -> Draft:
    y = value_at(record.points, x)
    stated = any(x == known for known, _ in record.points)
    key = Key(
        values=(
            Expected(record.output, y, record.output_unit, 0.0 if stated else COMPUTED),
            Expected(record.input, x, record.input_unit),
        )
    )
    wordings = desk.wording.sentences("reading", of=_of(record), x=desk.shown(x, record.input_unit))
    hint = desk.hint("unit", record.sources, unit=desk.unit_name(record.output_unit))
    return Draft(READING, record.id, record.topic, key, (wordings,), hint, 2 + (not stated))


def _inverse(record: Schedule, low: tuple[float, float], high: tuple[float, float], desk: Desk) -> Draft:
    (x0, y0), (x1, y1) = low, high
    y = _round_number(desk.chance.uniform(y0, y1))
    if not min(y0, y1) < y < max(y0, y1):
        y = (y0 + y1) / 2
    x = x0 + (x1 - x0) * (y - y0) / (y1 - y0)
    key = Key(
        values=(
            Expected(record.input, x, record.input_unit, COMPUTED),
            Expected(record.output, y, record.output_unit),
        )
    )
    shown = desk.shown(y, record.output_unit)
    shape = "inverse_down" if y1 < y0 else "inverse"
    wordings = desk.wording.sentences(shape, of=_of(record), input=record.basis or record.input, y=shown)
    hint = desk.hint("unit", record.sources, unit=desk.unit_name(record.input_unit))
    return Draft(INVERSE, record.id, record.topic, key, (wordings,), hint, 3)
