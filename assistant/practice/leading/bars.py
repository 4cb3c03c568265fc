"""Drawings for the report of a class as inline SVG: no script, patterns beside shades, a title and words for the ear.

Every drawing is of numbers that stand in a table below it.
"""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from assistant.practice.leading.report import Confusion, Section
from assistant.practice.leading.shown import percent
from assistant.practice.leading.summary import marks_words
from assistant.practice.page_parts import WIDE, drawing, rectangle, shortened
from assistant.rendering.text import wrap

_NAMES, _ROW, _BAR = 232, 30, 18
_LINE, _LETTERS = 18, 80
"""The height of a line of names, and the letters that it holds."""
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
    """Return how many took each thing for another, of how many: a bar within a frame under the two names.

    The names stand there whole, on as many lines as they take: two that are taken for each other often differ at
    their ends alone. What one answer shows is no share of a class, and is not drawn.
    """
    rows, top, wide = [], 6.0, WIDE - 90
    drawn = [each for each in confusions if each.times > 1]
    for each in drawn:
        for name in (f"Asked for the {each.asked}", f"told the {each.taken}"):
            for further, line in enumerate(wrap(name, _LETTERS)):
                rows.append(_text(24 if further else 8, top + 13, line, "start"))
                top += _LINE
        share = wide * each.times / each.among
        rows.append(rectangle(8, top + 2, wide, _BAR, "open") + rectangle(8, top + 2, share, _BAR, "dotted"))
        rows.append(_text(wide + 16, top + 15, f"{each.times} of {each.among}", "start"))
        top += _ROW
    told = " ".join(each.line for each in drawn)
    return drawing("What was taken for what", told, "".join(rows), top + 2, number) if drawn else ""


def _name(section: Section) -> str:
    return shortened(section.full_name, 32)


def _text(x: float, y: float, text: str, anchor: str) -> str:
    return f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}">{escape(text)}</text>'
