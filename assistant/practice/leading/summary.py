"""The report of a class as lines for a screen; no name of a person is in it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from assistant.practice.leading.report import FORMATIVE, ClassReport, Section
from assistant.practice.leading.shown import count, percent
from assistant.practice.sitting_marks import HEAD, NOTE, Line

_BAR = 10
_FEW = 5


def report_lines(report: ClassReport) -> tuple[Line, ...]:
    """Return what is shown at the end of a class."""
    if not report.asked:
        return (Line("No question was marked, so that there is nothing to report.", NOTE),)
    return tuple(_lines(report))


def marks_words(section: Section) -> str:
    """Return turns by mark in words."""
    named = ((section.right, "right"), (section.partly, "partly"), (section.wrong, "wrong"), (section.missed, "missed"))
    return ", ".join(f"{count} {word}" for count, word in named if count)


def _lines(report: ClassReport) -> Iterator[Line]:
    yield Line("The class, looked back on", HEAD)
    points = f"{percent(report.total.share)} of the points"
    yield Line(f"{report.size}: {marks_words(report.total)}; {points}.")
    for section in report.sections:
        filled = round(section.share * _BAR)
        yield Line(f"[{'#' * filled}{'.' * (_BAR - filled)}] {section.full_name}: {marks_words(section)}")
    yield from _group("Taken for each other", (each.line for each in report.confusions))
    yield from _group(
        "Missed most", (f"{each.question} {each.of} ({each.paragraphs})" for each in report.missed)
    )
    yield from _group("To teach again", report.remedial)
    yield from _group(
        "Teams",
        (f"{each.name}: {percent(each.share)} of the points in {count(each.turns, 'turn')}" for each in report.teams),
    )
    yield Line(FORMATIVE, NOTE)


def _group(title: str, lines: Iterable[str]) -> Iterator[Line]:
    listed = list(lines)
    if listed:
        yield Line(title, HEAD)
    yield from (Line(f"- {each}") for each in listed[:_FEW])
    if len(listed) > _FEW:
        yield Line(f"- and {len(listed) - _FEW} more, on the page", NOTE)
