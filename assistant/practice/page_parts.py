"""What the pages have in common: the frame of a page that needs nothing else, and of a drawing as inline SVG.

A page runs no script and fetches nothing. A drawing has patterns beside its colours, a title and words for the ear.
"""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

WIDE = 640
"""Width of a drawing, in its own units."""
_PATTERNS = """<svg width="0" height="0" aria-hidden="true" focusable="false" class="patterns"><defs>
<pattern id="stripes" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
<rect width="6" height="6" class="ground"/><rect width="3" height="6" class="stripe"/></pattern>
<pattern id="dots" width="7" height="7" patternUnits="userSpaceOnUse">
<rect width="7" height="7" class="ground"/><circle cx="3.5" cy="3.5" r="1.1" class="dot"/></pattern>
</defs></svg>"""
"""The patterns that all drawings of a page share."""


def whole_page(title: str, mark: str, style: str, content: str) -> str:
    """Return a page. mark: by which it is known again; content: HTML, its texts escaped."""
    policy = "default-src 'none'; style-src 'unsafe-inline'"
    return (
        f'<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n{mark}\n'
        f'<meta http-equiv="Content-Security-Policy" content="{policy}">\n'
        f'<meta name="viewport" content="width=device-width, initial-scale=1">\n<title>{escape(title)}</title>\n'
        f"<style>{style}</style>\n</head>\n<body>\n"
        f'<a class="skip" href="#main">To the content</a>\n{_PATTERNS}\n<main id="main">\n{content}\n</main>\n'
        "</body>\n</html>\n"
    )


def drawing(title: str, told: str, content: str, height: float, number: int) -> str:
    """Return a drawing, the number of its page, with its title and what it tells in words."""
    return (
        f'<svg viewBox="0 0 {WIDE} {height:.0f}" role="img" aria-labelledby="t{number} d{number}" class="chart">'
        f'<title id="t{number}">{escape(title)}</title><desc id="d{number}">{escape(told)}</desc>{content}</svg>'
    )


def legend(names: Sequence[tuple[str, str]]) -> str:
    """Return what the fillings mean. names: (full, striped, dotted or open, its meaning)."""
    signs = "".join(
        f'<li><svg width="22" height="14" aria-hidden="true" focusable="false">{rectangle(1, 1, 20, 12, kind)}</svg> '
        f"{escape(name)}</li>"
        for kind, name in names
    )
    return f'<ul class="legend">{signs}</ul>'


def shortened(text: str, most: int) -> str:
    """Return a label of at most so many letters: what is left out is in its middle, since the end tells two apart."""
    if len(text) <= most:
        return text
    end = (most - 1) // 2
    return f"{text[: most - 1 - end].rstrip()}…{text[-end:].lstrip()}"


def rectangle(left: float, top: float, width: float, height: float, kind: str) -> str:
    """Return a rectangle with a filling."""
    return f'<rect x="{left:.1f}" y="{top:.1f}" width="{width:.1f}" height="{height:.1f}" class="{kind}"/>'
