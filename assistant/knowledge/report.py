"""What a curator is told of a base: each problem with its line, what is loaded, and what to look at soon."""

from __future__ import annotations

import time
from collections.abc import Iterator, Sequence

from assistant.knowledge.base import RECORDS, Base
from assistant.knowledge.checks import is_date
from assistant.knowledge.named import of_kind
from assistant.knowledge.problems import Problem


def check_lines(base: Base | None, problems: Sequence[Problem], today: str = "") -> list[str]:
    """The lines that `check` prints: problems, then what is loaded. `today` is ISO, else the clock's."""
    lines = [str(problem) for problem in problems]
    if problems:
        lines.append(f"{_counted(len(problems), 'problem')} found")
    if base is not None:
        notes = [*date_notes(base, today or time.strftime("%Y-%m-%d")), *paragraph_notes(base)]
        lines += [f"note: {note}" for note in notes]
        lines += _documents(base)
        lines.append(f"{_counts(base)}; {'no problems' if not problems else 'not fit to answer'}")
    return lines


def date_notes(base: Base, today: str) -> list[Problem]:
    """Documents that take effect after a day, or were due for review before it: worth knowing, not wrong."""
    return list(_date_notes(base, today))


def paragraph_notes(base: Base) -> list[Problem]:
    """Documents of the type whose paragraphs are not listed, so that a wrong citation is not found."""
    advice = "list them under 'paragraphs:', and what is cited is compared"
    return [
        named.problem("does not list its paragraphs", advice)
        for named in of_kind(base, "documents")
        if not named.record.published and not named.record.paragraphs
    ]


def _date_notes(base: Base, today: str) -> Iterator[Problem]:
    for named in of_kind(base, "documents"):
        document = named.record
        if is_date(document.effective) and document.effective > today:
            yield named.problem(f"takes effect on {document.effective}", "until then it is ahead of its time")
        if document.review_by and document.review_by < today:
            message = f"was to be reviewed by {document.review_by}"
            yield named.problem(message, "compare it with the library and move the date")


def _documents(base: Base) -> list[str]:
    own = [document for document in base.documents.values() if not document.published]
    lines = []
    for document in own:
        validated = f", validated {document.validated}" if document.validated else ""
        temporary = ", ".join(document.temporary_revisions) or "none"
        lines.append(
            f"loaded: {document.id}, {document.title}, revision {document.revision}, effective "
            f"{document.effective}{validated}; temporary revisions: {temporary}"
        )
    public = len(base.documents) - len(own)
    return [*lines, f"loaded: {_counted(public, 'published source')}"] if public else lines


def _counts(base: Base) -> str:
    counts = {kind: len(base.ids(kind)) for kind in RECORDS}
    return ", ".join(f"{count} {kind}" for kind, count in counts.items() if count) or "nothing"


def _counted(count: int, what: str) -> str:
    return f"{count} {what}" if count == 1 else f"{count} {what}s"
