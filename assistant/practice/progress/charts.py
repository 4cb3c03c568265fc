"""Drawings of progress as inline SVG: no script, patterns beside colours, a title and a description for the ear.

Every drawing is of numbers that stand in a table beside it, so that nothing is lost on who cannot see it.
"""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from assistant.practice.page_parts import WIDE, drawing, rectangle, shortened
from assistant.practice.progress.overview import Day, Section
from assistant.practice.progress.sayings import percent

_NAMES, _ROW, _BAR = 224, 30, 18
"""Room for names, height of a row and of its bar, in the units of the drawing."""


def levels_chart(sections: Sequence[Section], number: int) -> str:
    """Return bars of known, shaky and unknown records by section."""
    rows = []
    for place, each in enumerate(sections):
        top = 10 + place * _ROW
        counts = ((each.known, "full"), (each.shaky, "striped"), (each.unknown, "dotted"))
        rows.append(_label(each.full_name, top) + _stack(counts, each.records, top) + _end(str(each.records), top))
    said = "; ".join(
        f"{each.full_name}: {each.known} known, {each.shaky} shaky, {each.unknown} unknown" for each in sections
    )
    return drawing("Records by section", said, "".join(rows), 16 + len(sections) * _ROW, number)


def recall_chart(sections: Sequence[Section], ready: str, number: int) -> str:
    """Return the expected recall by section: today, and on the day to be ready by if there is one."""
    rows = []
    for place, each in enumerate(sections):
        top = 10 + place * _ROW
        thin = _BAR / 2 if ready else _BAR
        rows.append(_label(each.full_name, top) + _share(each.today, top, thin, "full"))
        if ready and each.ready is not None:
            rows.append(_share(each.ready, top + thin, thin, "striped"))
        shown = percent(each.today) + (f" → {percent(each.ready)}" if ready and each.ready is not None else "")
        rows.append(_end(shown, top))
    said = "; ".join(
        f"{each.full_name}: {percent(each.today)} today"
        + (f", {percent(each.ready)} on {ready}" if ready and each.ready is not None else "")
        for each in sections
    )
    height = 10 + len(sections) * _ROW
    return drawing("Expected recall by section", said, "".join(rows) + _scale(height), height + 22, number)


def days_chart(days: Sequence[Day], number: int) -> str:
    """Return columns of the answers of each day: recalled, prompted, missed."""
    tall, base, step = 120, 140, (WIDE - 40) / max(len(days), 1)
    most = max((sum(each[1:]) for each in days), default=0) or 1
    parts = []
    for place, each in enumerate(days):
        left, top = 30 + place * step, float(base)
        for count, kind in ((each.recalled, "full"), (each.prompted, "striped"), (each.missed, "dotted")):
            size = tall * count / most
            top -= size
            if count:
                parts.append(rectangle(left, top, step * 0.7, size, kind))
        total = sum(each[1:])
        middle = left + step * 0.35
        if total:
            parts.append(f'<text x="{middle:.1f}" y="{top - 3:.1f}" text-anchor="middle">{total}</text>')
        parts.append(f'<text x="{middle:.1f}" y="{base + 15}" text-anchor="middle">{each.day:%d}</text>')
    parts.append(f'<path class="axis" d="M26 {base} H{WIDE - 6}"/>')
    said = "; ".join(
        f"{each.day:%d %B}: {each.recalled} recalled, {each.prompted} prompted, {each.missed} missed"
        for each in days
        if sum(each[1:])
    )
    return drawing("Answers by day", said or "No answers in these days", "".join(parts), base + 24, number)


def _label(name: str, top: float) -> str:
    return f'<text x="{_NAMES - 8}" y="{top + 13:.1f}" text-anchor="end">{escape(shortened(name, 30))}</text>'


def _end(text: str, top: float) -> str:
    return f'<text x="{WIDE - 4}" y="{top + 13:.1f}" text-anchor="end">{escape(text)}</text>'


def _stack(counts: Sequence[tuple[int, str]], total: int, top: float) -> str:
    left, parts = float(_NAMES), []
    for count, kind in counts:
        size = _room() * count / total if total else 0
        if count:
            parts.append(rectangle(left, top, size, _BAR, kind))
        left += size
    return "".join(parts)


def _share(share: float, top: float, height: float, kind: str) -> str:
    return rectangle(_NAMES, top, _room() * share, height, kind) if share > 0 else ""


def _scale(height: float) -> str:
    marks = []
    for share in (0, 0.25, 0.5, 0.75, 1):
        left = _NAMES + _room() * share
        marks.append(f'<path class="grid" d="M{left:.1f} 4 V{height:.0f}"/>')
        marks.append(f'<text x="{left:.1f}" y="{height + 14:.0f}" text-anchor="middle">{share * 100:.0f}%</text>')
    return "".join(marks)


def _room() -> float:
    return WIDE - _NAMES - 100
