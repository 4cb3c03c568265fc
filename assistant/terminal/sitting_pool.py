"""What a sitting may ask about: of the topics named, or of all that is the type's own."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from assistant.practice.asking.pool import Pool, drillable
from assistant.practice.making.selecting import entries_on, own_records
from assistant.practice.making.wording import Wording
from assistant.terminal.disputes import kept_disputes
from assistant.terminal.session import Session


def pool_of(session: Session, topics: Iterable[str], today: date) -> Pool:
    """Return the records that may be asked today. Raises UnknownTopic."""
    know = session.knowledge
    pool = drillable(know.base, today, kept_disputes(know.base.type_info.id), variant=session.variant)
    among = entries_on(topics, know, Wording(know.base))
    if among is None:
        among = own_records(know)
    return pool.only(records=among)._replace(left_out=tuple(each for each in pool.left_out if each.record in among))


def left_out_line(pool: Pool) -> str:
    """Return what is not asked and why, or nothing."""
    if not pool.left_out:
        return ""
    count, first = len(pool.left_out), pool.left_out[0].line
    many = f"{count} records; the first: " if count > 1 else ""
    return f"Not asked: {many}{first} (“downlock progress” tells all)."
