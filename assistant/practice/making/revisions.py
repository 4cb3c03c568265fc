"""Questions on what a revision changed, and on how a variant differs."""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.knowledge.library_records import Change, Override
from assistant.knowledge.records import Limit, Value
from assistant.practice.making.drafting import Desk, bare, expected
from assistant.practice.making.limits import smooth
from assistant.practice.making.question import CHANGE, VARIANT, Draft, Expected, Key


def change_drafts(desk: Desk) -> Iterator[Draft]:
    """Yield a draft for each value that the revision in force changed."""
    for change in desk.know.base.changes.values():
        record = desk.know.base.records[change.record]
        key = Key(values=_values(change, desk), points=(change.now,), formerly=change.formerly)
        shape = "change_at" if change.subject.endswith(" at") else "change"
        wordings = desk.wording.sentences(shape, subject=smooth(change.subject))
        hint = desk.hint(_hint_shape(change), change.sources, since=change.since)
        yield Draft(CHANGE, change.record, record.topic, key, (wordings,), hint, 2, change.id)


def _hint_shape(change: Change) -> str:
    """Return the hint that says which way a figure went, where both are numbers."""
    before, now = (re.match(r"[\d.]+", text.replace(",", "")) for text in (change.formerly, change.now))
    if not before or not now or float(before[0]) == float(now[0]):
        return "change"
    return "change_up" if float(now[0]) > float(before[0]) else "change_down"


def _values(change: Change, desk: Desk) -> tuple[Expected, ...]:
    record = desk.know.base.records[change.record]
    figure = (record.value or record.maximum or record.minimum) if isinstance(record, Limit) else None
    return (expected(figure, change.subject),) if figure else ()


def variant_drafts(desk: Desk) -> Iterator[Draft]:
    """Yield a draft for each figure in which a variant differs from the base type."""
    for override in desk.know.base.overrides:
        record = desk.know.base.record(override.record, override.variant)
        figure = _figure(record)
        if figure is not None:
            yield _difference(override, record, figure, desk)


def _figure(record: object) -> Value | None:
    return (record.value or record.maximum or record.minimum) if isinstance(record, Limit) else None


def _difference(override: Override, record: Limit, figure: Value, desk: Desk) -> Draft:
    show = desk.know.base.variants[override.variant].show
    wordings = desk.wording.sentences("variant", of=smooth(bare(record.of)).split(", ")[0], variant=show)
    key = Key(values=(expected(figure, record.of),), points=(f"{desk.figure(figure)} ({show})",))
    hint = desk.hint("unit", override.sources, unit=desk.unit_name(figure.unit))
    return Draft(VARIANT, record.id, record.topic, key, (wordings,), hint, 2)
