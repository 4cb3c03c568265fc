"""Drawings for the report of a class as inline SVG: no script, patterns beside shades, a title and words for the ear.

Every drawing is of numbers that stand in a table below it.
"""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from assistant.practice.leading.report import Confusion, Section
from assistant.practice.leading.shown import percent
from assistant.practice.leading.summary import marks_words
from assistant.practice.page_parts import WIDE, drawing, rectangle

_NAMES, _ROW, _BAR = 232, 30, 18
KINDS = (("full", "right"), ("striped", "partly"), ("dotted", "wrong"), ("open", "missed"))
"""The filling of each mark."""


def sections_bars(sections: Sequence[Section], number: int) -> str:
    """Return the turns of each section by mark, in bars as long as there were turns."""
    most = max((each.asked for each in sections), default=1)
    rows = []
    for place, each in enumerate(sections):
        top, left = 8 + place * _ROW, float(_NAMES)
        rows.append(_text(_NAMES - 8, top + 13, _name(each), "end"))
        for (kind, _), count in zip(KINDS, each[2:6], strict=True):
            size = (WIDE - _NAMES - 60) * count / most
            if count:
                rows.append(rectangle(left, top, size, _BAR, kind))
            left += size
        rows.append(_text(left + 6, top + 13, percent(each.share), "start"))
    told = "; ".join(f"{_name(each)}: {marks_words(each)}, {percent(each.share)} of the points" for each in sections)
    return drawing("Turns by section and mark", told, "".join(rows), 12 + len(sections) * _ROW, number)


def confusion_bars(confusions: Sequence[Confusion], number: int) -> str:
    """Return how many took each thing for another, of how many: a bar within a frame under the two names."""
    rows = []
    for place, each in enumerate(confusions):
        top, wide = 6 + place * 66, WIDE - 90
        rows.append(_text(8, top + 13, f"Asked for the {_cut(each.asked)}", "start"))
        rows.append(_text(8, top + 31, f"told the {_cut(each.taken)}", "start"))
        share = wide * each.times / each.among
        rows.append(rectangle(8, top + 38, wide, _BAR, "open") + rectangle(8, top + 38, share, _BAR, "dotted"))
        rows.append(_text(wide + 16, top + 51, f"{each.times} of {each.among}", "start"))
    told = " ".join(each.line for each in confusions)
    return drawing("What was taken for what", told, "".join(rows), 8 + len(confusions) * 66, number)


def _cut(text: str, most: int = 70) -> str:
    return text if len(text) <= most else text[: most - 1] + "…"


def _name(section: Section) -> str:
    return _cut(section.full_name, 32)


def _text(x: float, y: float, text: str, anchor: str) -> str:
    return f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}">{escape(text)}</text>'
