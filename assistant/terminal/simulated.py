"""Which time it is: this machine's, or another day's where DOWNLOCK_TODAY names one, as for trying out weeks ahead."""

from __future__ import annotations

import os
from datetime import date, datetime

from assistant.rendering.text import clean
from assistant.terminal.options import UsageProblem

TODAY_VARIABLE = "DOWNLOCK_TODAY"
_BEGAN = datetime.now().astimezone()
"""When the program began: a time that is named goes on from there."""


def clock() -> datetime:
    """Return the time where this machine is, aware. Raises UsageProblem for a day that cannot be read."""
    now = datetime.now().astimezone()
    named = os.environ.get(TODAY_VARIABLE, "").strip()
    if not named:
        return now
    return _on(named, now)


def _on(named: str, now: datetime) -> datetime:
    """Return the time on a day ("2026-12-01"), at this time of day; or on from a moment ("2026-12-01T18:30")."""
    try:
        if len(named) == len("2026-12-01"):
            return datetime.combine(date.fromisoformat(named), now.time()).astimezone()
        return datetime.fromisoformat(named).astimezone() + (now - _BEGAN)
    except (ValueError, OverflowError, OSError):
        raise UsageProblem(f"{TODAY_VARIABLE} takes a day such as 2026-12-01, not {clean(named)}") from None
