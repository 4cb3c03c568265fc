"""One call for the commands that ask: how a learner stands with a pool, and what to ask of it today."""

from __future__ import annotations

from datetime import date, datetime
from random import Random

from assistant.practice.asking.choosing import Choice, plan
from assistant.practice.asking.pool import Pool
from assistant.practice.asking.standing import standings
from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import Learner


def due(
    record: Record, learner: Learner, pool: Pool, now: datetime, chance: Random, ready_by: date | None = None
) -> tuple[Choice, ...]:
    """Return all that today asks of a learner, in order: changed, fading, new. now: aware, of the learner's clock."""
    return plan(standings(record, learner, pool), now, chance, ready_by=ready_by or learner.ready_by)
