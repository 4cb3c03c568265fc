"""Progress for a terminal: short lines with small bars, readable at 40 columns, without colour, and aloud."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.practice.progress.overview import Overview, Section
from assistant.practice.progress.sayings import (
    FORMATIVE,
    confusion_line,
    due_line,
    left_out_lines,
    missed_line,
    percent,
    ready_heading,
    records_line,
)
from assistant.rendering.text import columns, wrap

_BAR, _NARROW_BAR = 18, 10
_ROOMY, _WIDEST = 72, 84
"""Columns from which on a section takes one line, and those that a table of them needs at most."""
_SIGNS = "#=."
"""Known, shaky, unknown: signs of every keyboard, so that any terminal and any printer shows them."""
KEY = f"{_SIGNS[0]} known  {_SIGNS[1]} shaky  {_SIGNS[2]} unknown"
_SHOWN = 5


def overview_lines(overview: Overview, type_name: str, deference: str, width: int) -> list[str]:
    """Return how a learner stands, in lines of at most `width` columns."""
    lines = wrap(f"{overview.learner}: {type_name}, {overview.now:%Y-%m-%d}", width)
    lines += ["", *_table(overview, width), "", *wrap(KEY, width)]
    lines += [line for each in _words(overview) for line in wrap(each, width, "  ")]
    lines += _listed("Confused:", map(confusion_line, overview.confusions), width)
    lines += _listed("Missed most:", map(missed_line, overview.missed), width)
    lines += _listed("Changed by a revision:", (f"{c.title}. {c.line}" for c in overview.changed), width)
    lines += _listed("Not asked:", left_out_lines(overview.left_out), width)
    return [*lines, "", *wrap(FORMATIVE, width), *wrap(deference, width)]


def bar(section: Section, size: int) -> str:
    """Return a bar of signs: known, shaky and unknown in proportion; whatever is there at all has a sign."""
    counts = (section.known, section.shaky, section.unknown)
    total = sum(counts)
    if not total:
        return " " * size
    sizes = [max(count * size // total, 1 if count else 0) for count in counts]
    while sum(sizes) != size:
        error = [sizes[i] - counts[i] * size / total for i in range(3)]
        if sum(sizes) < size:
            sizes[error.index(min(error))] += 1
        else:
            widest = max((i for i in range(3) if sizes[i] > 1), key=lambda i: error[i])
            sizes[widest] -= 1
    return "".join(sign * count for sign, count in zip(_SIGNS, sizes, strict=True))


def people_lines(overviews: Sequence[Overview], type_name: str, deference: str, width: int) -> list[str]:
    """Return everybody in the record, a line or two each."""
    lines = wrap(f"{len(overviews)} in the record: {type_name}", width)
    for each in overviews:
        lines += ["", *wrap(each.learner, width)]
        lines.append(f"  {bar(each.total, _NARROW_BAR)} {percent(each.total.today):>4}")
        lines += wrap(f"  {records_line(each.total)}", width, "  ")
    return [*lines, "", *wrap(KEY, width), *wrap(FORMATIVE, width), *wrap(deference, width)]


def _table(overview: Overview, width: int) -> list[str]:
    """A line a section where there is room, else two."""
    ready = overview.ready_by is not None
    heading = f"{'known':>5}{'shaky':>6}{'unknown':>8}{'now':>6}" + (f"{'then':>6}" if ready else "")
    total = [overview.total._replace(name="All")] if len(overview.sections) > 1 else []
    if width < _ROOMY:
        size = _NARROW_BAR - 2 * ready
        lines = [" " * (size + 1) + heading]
        for each in (*overview.sections, *total):
            lines += [*wrap(each.full_name, width), f" {bar(each, size)}{_figures(each, ready)}"]
        return lines
    room = min(width, _WIDEST) - _BAR - 1 - len(heading)
    return [
        " " * (room + _BAR + 1) + heading,
        *(
            f"{_fitted(each.full_name, room)}{bar(each, _BAR)} {_figures(each, ready)}"
            for each in (*overview.sections, *total)
        ),
    ]


def _figures(section: Section, ready: bool) -> str:
    figures = f"{section.known:>5}{section.shaky:>6}{section.unknown:>8}{percent(section.today):>6}"
    return figures + (f"{percent(section.ready or 0):>6}" if ready else "")


def _fitted(name: str, size: int) -> str:
    room = max(size - 1, 8)
    shown = name if columns(name) <= room else name[: room - 2] + ".."
    return shown + " " * (size - columns(shown))


def _words(overview: Overview) -> list[str]:
    said = [ready_heading(overview), due_line(overview)]
    if overview.overruled:
        said.append(f"Marks overruled: {overview.overruled} of {overview.answers} answers.")
    return [each for each in said if each]


def _listed(heading: str, lines: Iterable[str], width: int) -> list[str]:
    listed = list(lines)
    if not listed:
        return []
    shown = [line for each in listed[:_SHOWN] for line in wrap(f"- {each}", width, "  ")]
    more = len(listed) - _SHOWN
    return ["", heading, *shown, *([f"  and {more} more"] if more > 0 else [])]
