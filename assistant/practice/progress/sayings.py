"""The sentences of progress, the same wherever they are shown."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from assistant.practice.asking.day_share import MOST_A_DAY
from assistant.practice.asking.pool import LeftOut
from assistant.practice.progress.overview import Confusion, Missed, Overview, Section

FORMATIVE = "Formative: not a record of qualification."


def percent(share: float) -> str:
    """Return a share for display: "87%"; only what is whole is 100%, and only nothing is 0%."""
    shown = round(share * 100)
    if 0 < share < 1:
        shown = min(max(shown, 1), 99)
    return f"{shown}%"


def records_line(section: Section) -> str:
    """Return the counts of a section in words."""
    return f"{section.known} known, {section.shaky} shaky, {section.unknown} unknown"


def ready_heading(overview: Overview) -> str:
    """Return what is expected today and on the day to be ready by."""
    today = f"Expected recall: {percent(overview.total.today)} today"
    if overview.ready_by is None or overview.total.ready is None:
        return f"{today}."
    return f"{today}, {percent(overview.total.ready)} on {overview.ready_by} if nothing more is done."


def due_line(overview: Overview) -> str:
    """Return what today asks for, and how many days are left."""
    pace, left = overview.pace, overview.today
    if left.chosen:
        today = f"Today: {left.again} to ask again, {left.new} new"
    elif left.is_done:
        today = f"Today's {MOST_A_DAY} questions are answered"
    else:
        today = "Nothing is left to ask today"
    if left.waiting:
        more = "is" if left.waiting == 1 else "are"
        today += f"; {left.waiting} more {more} to be asked again, but a day asks {MOST_A_DAY} at most"
    if pace.days is None or overview.ready_by is None:
        return f"{today}."
    days = "1 day" if pace.days == 1 else f"{pace.days} days"
    return f"{today}; {days} until {overview.ready_by}, today counted."


def confusion_line(confusion: Confusion) -> str:
    """Return what was taken for what, and how often."""
    times = "once" if confusion.times == 1 else "twice" if confusion.times == 2 else f"{confusion.times} times"
    return f"{confusion.title}, answered with: {confusion.other_title} ({times}, last {confusion.last:%Y-%m-%d})"


def missed_line(missed: Missed) -> str:
    """Return how often a record was missed, with its paragraph."""
    return f"{missed.title} ({missed.paragraph}): missed {missed.missed} of {missed.asked} times"


def left_out_lines(left_out: Iterable[LeftOut]) -> list[str]:
    """Return why records are not asked, each reason once with the number of records."""
    listed = list(left_out)
    counts = Counter(each.line for each in listed)
    singles = {each.line for each in listed if each.why != "out of force"}
    return [
        line if line in singles else f"{count} {'record' if count == 1 else 'records'}: {line}"
        for line, count in counts.items()
    ]
