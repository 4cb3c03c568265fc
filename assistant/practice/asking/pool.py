"""The records that may be drilled, and those that may not, with the reason.

A record is left out when a document that it rests on is out of force, when it was set aside as disputed, or when it
was marked as another type's. Documents are only known as loaded: what says that one is out of force is its effective
date, its review date, or its own title.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable
from datetime import date
from typing import Any

from assistant.frozen import NamedTuple
from assistant.knowledge.base import ANSWERING, Base
from assistant.knowledge.library_records import Change, Document, Override
from assistant.knowledge.records import NOT_ASKED, Limit, Procedure
from assistant.practice.asking.wording import content_of, statement, title
from assistant.practice.sections import is_section
from assistant.quantities.units import Units

GENERAL, OWN_SECTION = "general", "own"
"""The sections of what is true of all aeroplanes, with what has no ATA section, and of an instructor's own questions
of which no section is known."""
SECTION_NAMES = {
    "32-00": "General",
    "32-10": "Main gear and doors",
    "32-20": "Nose gear and doors",
    "32-30": "Extension and retraction",
    "32-40": "Wheels and brakes",
    "32-50": "Steering",
    "32-60": "Position and warning",
    "32-70": "Supplementary gear",
    GENERAL: "True of all aeroplanes",
    OWN_SECTION: "Of the instructor's own",
}
"""Sections of chapter 32 as ATA iSpec 2200 numbers them."""
DRILLED = tuple(kind for kind in ANSWERING if kind != "outlines")
_PARAGRAPH = re.compile(r"(\d\d)\.(\d)\d(?:\.|$)")
_OUT_OF_FORCE = re.compile(r"\((?:[^)]*\b)?(historic|withdrawn|superseded|cancelled|out of force)\b[^)]*\)", re.I)


class Item(NamedTuple):
    """A record as it may be drilled.

    statement: what it says, in a line. revisions: of its documents, as loaded. content: a mark that changes when
    what the record says does, with its statement. changes: what revisions changed in it.
    """

    record: str
    kind: str
    section: str
    title: str
    statement: str
    paragraph: str
    """The first that it cites: "LIM 3.1"."""
    revisions: tuple[tuple[str, str], ...]
    content: str
    changes: tuple[Change, ...]
    urgent: bool = False
    """Whether it is begun before all else: a limit, memory items, or what the revision in force changed."""


class LeftOut(NamedTuple):
    """A record that is not drilled, and why: "out of force", "disputed" or "another type's", and in a line."""

    record: str
    why: str
    line: str


class Pool(NamedTuple):
    """The records of a type as they may be drilled today, in the order of the knowledge."""

    type_id: str
    items: tuple[Item, ...]
    left_out: tuple[LeftOut, ...]

    def only(self, sections: Collection[str] | None = None, records: Collection[str] | None = None) -> Pool:
        """Return what of it belongs to some sections, and is among some records."""
        kept = (
            item
            for item in self.items
            if (sections is None or item.section in sections) and (records is None or item.record in records)
        )
        return self._replace(items=tuple(kept))

    def get(self, record: str) -> Item | None:
        """Return the item of a record, if it may be drilled."""
        return next((item for item in self.items if item.record == record), None)


def drillable(
    base: Base,
    today: date,
    set_aside: Iterable[tuple[str, str]] = (),
    others: Collection[str] = (),
    variant: str = "",
) -> Pool:
    """Return the pool of a type. set_aside: (record, note) of each that is disputed; others: marked another type's."""
    disputed = dict(set_aside)
    expired = {name: line for name in base.documents if (line := out_of_force(base.documents[name], today))}
    changes: dict[str, list[Change]] = {}
    for change in base.changes.values():
        changes.setdefault(change.record, []).append(change)
    overrides: dict[str, list[Override]] = {}
    for override in base.overrides:
        overrides.setdefault(override.record, []).append(override)
    units = Units({"units": base.units_data})
    items, left = [], []
    for name in base.order:
        if base.kind(name) not in DRILLED:
            continue
        record = base.record(name, variant or None)
        if _is_never_asked(record):
            continue  # who knows all that is asked knows all
        why = _left_out(record, disputed, others, expired)
        if why:
            left.append(why)
        else:
            items.append(_item(record, base, units, tuple(changes.get(name, ())), overrides.get(name, [])))
    return Pool(base.type_info.id, tuple(items), tuple(left))


def out_of_force(document: Document, today: date) -> str:
    """Return a line on why a document is not in force on a day, nothing when it may be."""
    shown = f"{document.id} {document.revision}"
    marked = _OUT_OF_FORCE.search(document.title)
    if marked:
        return f"{shown} is {marked[1].lower()}"
    if (begins := _day(document.effective)) and begins > today:
        return f"{shown} is not effective before {begins}"
    if (ends := _day(document.review_by)) and ends < today:
        return f"{shown} was to be reviewed by {ends}"
    return ""


def section_of(record: Any, base: Base) -> str:
    """Return the ATA section that a record belongs to: as it says, else that of its paragraph, else GENERAL."""
    if all(base.documents[s.document].published for s in record.sources if s.document in base.documents):
        return GENERAL
    topic = getattr(record, "topic", "")
    if is_section(topic):
        return str(topic)
    for source in record.sources:
        if found := _PARAGRAPH.match(source.paragraph):
            return f"{found[1]}-{found[2]}0"
    return GENERAL


def section_name(section: str) -> str:
    """Return what a section is called, nothing for one that is not known."""
    return SECTION_NAMES.get(section, "")


def _item(record: Any, base: Base, units: Units, changes: tuple[Change, ...], overrides: list[Override]) -> Item:
    names = dict.fromkeys(source.document for source in record.sources)
    revisions = tuple((name, _revision(base.documents[name])) for name in names if name in base.documents)
    said = statement(record, units)
    return Item(
        record.id, base.kind(record.id), section_of(record, base), title(record), said,
        f"{record.sources[0].document} {record.sources[0].paragraph}", revisions,
        content_of(base.records[record.id], overrides, said), changes, bool(changes) or _is_urgent(record),
    )  # fmt: skip


def _is_never_asked(record: Any) -> bool:
    """Whether a record is none to rehearse, so that it would be unknown for ever; of a limit more than itself is."""
    return getattr(record, "quiz", ()) == (NOT_ASKED,) and not isinstance(record, Limit)


def _is_urgent(record: Any) -> bool:
    """Whether a record bounds what may be done, or is done from memory."""
    if isinstance(record, Limit):
        return record.maximum is not None or record.minimum is not None
    return isinstance(record, Procedure) and any(step.memory for step in record.steps)


def _revision(document: Document) -> str:
    """A document's revision with the temporary ones that are entered, which change it as well."""
    return " + ".join((document.revision, *document.temporary_revisions))


def _left_out(
    record: Any, disputed: dict[str, str], others: Collection[str], expired: dict[str, str]
) -> LeftOut | None:
    if record.id in disputed:
        note = disputed[record.id]
        said = f": {note}" if note else ""
        return LeftOut(record.id, "disputed", f"{title(record).rstrip('.')} is set aside as disputed{said}")
    if record.id in others:
        return LeftOut(record.id, "another type's", f"{title(record).rstrip('.')} is marked as another type's")
    for source in record.sources:
        if source.document in expired:
            return LeftOut(record.id, "out of force", expired[source.document])
    return None


def _day(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None
