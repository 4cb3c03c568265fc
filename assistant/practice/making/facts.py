"""Questions on statements: where, why, what it means, when it shows, who, and what else the book says."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.knowledge.records import Fact
from assistant.practice.making.drafting import Desk, asked_wordings, expected
from assistant.practice.making.question import FACT, Draft, Key
from assistant.practice.making.wording import GOOD


def fact_drafts(name: str, desk: Desk) -> Iterator[Draft]:
    """Yield a draft for each form in which a statement may be asked for."""
    record: Fact = desk.record(name)
    asked = [found for ask in record.asks if (found := desk.wording.asked(ask))]
    best = min((each.rank for each in asked), default=GOOD)
    ordered = any(each.ordered for each in asked)
    spare = asked_wordings(record.asks, desk)
    for form in sorted({each.form for each in asked if each.rank == best}, key=lambda each: (each == FACT, each)):
        wordings = asked_wordings(record.asks, desk, (form,))
        yield Draft(form, name, record.topic, _key(record, ordered), (*wordings, *spare), _hint(record, desk), 1)


def _key(record: Fact, ordered: bool) -> Key:
    values = tuple(expected(value) for value in record.values)
    return Key(says=record.says, values=values, points=record.points, ordered=ordered and len(record.points) > 1)


def _hint(record: Fact, desk: Desk) -> str:
    if len(record.points) > 1:
        return desk.hint("points", record.sources, n=len(record.points))
    return desk.hint("paragraph", record.sources)
