"""Progress as plain JSON values.

{"learner", "type", "at", "ready_by", "sections": [{"section", "name", "records", "known", "shaky", "unknown",
 "recall_today", "recall_ready_by"}], "total": {...}, "today": {"again", "new", "waiting", "begun", "unseen",
 "days_left"}, "answers", "overruled", "confusions": [{"record", "title", "with", "with_title", "times", "last"}],
 "missed": [...], "changed": [...], "days": [...], "not_asked": [{"record", "why", "line"}], "cautions": []}
"""

from __future__ import annotations

from typing import Any

from assistant.practice.progress.overview import Overview, Section
from assistant.practice.progress.sayings import FORMATIVE


def overview_values(overview: Overview, deference: str) -> dict[str, Any]:
    """Return an overview as JSON; recall is a share from 0 to 1, null where no day is set."""
    pace = overview.pace
    return {
        "learner": overview.learner,
        "type": overview.type_id,
        "at": overview.now.isoformat(timespec="seconds"),
        "ready_by": overview.ready_by.isoformat() if overview.ready_by else None,
        "sections": [_section(each) for each in overview.sections],
        "total": _section(overview.total),
        "today": {
            "again": overview.today.again, "new": overview.today.new, "waiting": overview.today.waiting,
            "begun": pace.begun, "unseen": pace.unseen, "days_left": pace.days,
        },
        "answers": overview.answers,
        "overruled": overview.overruled,
        "confusions": [
            {
                "record": each.record, "title": each.title, "with": each.other, "with_title": each.other_title,
                "times": each.times, "last": each.last.isoformat(timespec="seconds"),
            }
            for each in overview.confusions
        ],
        "missed": [each._asdict() for each in overview.missed],
        "changed": [each._asdict() for each in overview.changed],
        "days": [{**each._asdict(), "day": each.day.isoformat()} for each in overview.days],
        "not_asked": [each._asdict() for each in overview.left_out],
        "cautions": [FORMATIVE, deference],
    }  # fmt: skip


def _section(section: Section) -> dict[str, Any]:
    return {
        "section": section.section, "name": section.name, "records": section.records, "known": section.known,
        "shaky": section.shaky, "unknown": section.unknown, "recall_today": round(section.today, 4),
        "recall_ready_by": None if section.ready is None else round(section.ready, 4),
    }  # fmt: skip
