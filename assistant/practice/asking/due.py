"""One call each for the commands that ask: what today asks of a learner, and an answer or a class question to keep.

pool = drillable(base, today, set_aside)
for choice in due(record, learner, pool, now, chance): ask about choice.record, mark, then
    record.note_answer(learner, pool.type_id, note_on(choice.standing.item, question, answer, mark, share))
"""

from __future__ import annotations

from datetime import date, datetime
from random import Random
from typing import Any

from assistant.practice.asking.choosing import Choice, plan
from assistant.practice.asking.pool import Item, Pool
from assistant.practice.asking.standing import standings
from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import Asking, Learner, Note


def due(
    record: Record, learner: Learner, pool: Pool, now: datetime, chance: Random, ready_by: date | None = None
) -> tuple[Choice, ...]:
    """Return all that today asks of a learner, in order: changed, fading, new. now: aware, of the learner's clock."""
    return plan(standings(record, learner, pool), now, chance, ready_by=ready_by or learner.ready_by)


def note_on(item: Item, question: str, answer: str, mark: str, share: float, **more: Any) -> Note:
    """Return an answer to be kept, with the revisions and the content of the record today. more: as in Note."""
    note = Note(item.record, question, answer, mark, share, revisions=item.revisions, content=item.content)
    return note._replace(**more)


def asking_on(item: Item, question: str, expected: str, sources: tuple[str, ...] = (), form: str = "") -> Asking:
    """Return a question to put to a class, with the revisions and the content of the record today."""
    return Asking(item.record, question, expected, sources, form, item.revisions, item.content)
