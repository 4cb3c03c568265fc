"""Answers as rows, and the cards that follow from them: a card is written with the answer that changes it.

The answers are what is true; a card can always be made again from them, as it is after a mark is overruled or undone.
"""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterable, Iterator
from datetime import datetime
from typing import Any

from assistant.practice.keeping.learners import NoSuchLearner
from assistant.practice.keeping.rows import TYPED, Answered, Latest, Note, Revisions
from assistant.practice.recall import HALF, Card, Review, card_after, word_for

_NOTE = (
    "record, question, answer, mark, share, expected, form, how, hinted, overruled, marked, confused_with, "
    "hesitation, revisions, content"
)
_ALL = f"id, uid, learner, type, at, {_NOTE}"
LONGEST_TEXT = 20_000
"""Characters of an answer that are kept; nobody says more."""
_CARD = "stability, difficulty, state, step, due, last"


def insert(connection: sqlite3.Connection, uid: str, learner: int, type_id: str, at: datetime, note: Note) -> Answered:
    """Keep an answer and the card that follows. Raises NoSuchLearner when the person was removed meanwhile."""
    if not connection.execute("SELECT 1 FROM learner WHERE id = ?", (learner,)).fetchone():
        raise NoSuchLearner("this learner is no longer in the record")
    note = note._replace(
        question=storable(note.question),
        answer=storable(note.answer),
        expected=storable(note.expected),
        marked=note.marked or note.mark,
        hesitation=note.hesitation if note.how == TYPED else None,
    )
    values = (uid, learner, type_id, at.isoformat(), *_plain(note))
    marks = ", ".join("?" * len(values))
    cursor = connection.execute(f"INSERT INTO answer (uid, learner, type, at, {_NOTE}) VALUES ({marks})", values)
    settle_card(connection, learner, type_id, note.record)
    return Answered(cursor.lastrowid or 0, uid, learner, type_id, at, note)


def overrule(connection: sqlite3.Connection, answer: int, mark: str, share: float) -> Answered:
    """Put another mark in the place of an answer's, which is recorded as overruled."""
    connection.execute("UPDATE answer SET mark = ?, share = ?, overruled = 1 WHERE id = ?", (mark, share, answer))
    found = one(connection, answer)
    settle_card(connection, found.learner, found.type_id, found.note.record)
    return found


def remove(connection: sqlite3.Connection, answer: int) -> None:
    """Take an answer back, as if it had never been given."""
    found = one(connection, answer)
    connection.execute("DELETE FROM answer WHERE id = ?", (answer,))
    settle_card(connection, found.learner, found.type_id, found.note.record)


def one(connection: sqlite3.Connection, answer: int) -> Answered:
    """Return a kept answer. Raises LookupError."""
    row = connection.execute(f"SELECT {_ALL} FROM answer WHERE id = ?", (answer,)).fetchone()
    if row is None:
        raise LookupError(f"there is no answer {answer} in the record")
    return _answered(row)


def history(
    connection: sqlite3.Connection, learner: int, type_id: str, record: str | None = None
) -> tuple[Answered, ...]:
    """Return a learner's answers on a type, or on one record of it, the earliest first."""
    among = "" if record is None else "AND record = ?"
    query = f"SELECT {_ALL} FROM answer WHERE learner = ? AND type = ? {among} ORDER BY at, id"
    values = (learner, type_id) if record is None else (learner, type_id, record)
    return tuple(map(_answered, connection.execute(query, values)))


def latest(connection: sqlite3.Connection, learner: int, type_id: str) -> dict[str, Latest]:
    """Return for each record that a learner was asked when that began, how it went since, and the last answer."""
    rows = connection.execute(
        f"SELECT {_ALL}, first, ever FROM (SELECT *, min(at) OVER same AS first, "
        "max(mark = 'right' OR (mark = 'partly' AND share >= ?)) OVER same AS ever, "
        "row_number() OVER (PARTITION BY record ORDER BY at DESC, id DESC) AS place "
        "FROM answer WHERE learner = ? AND type = ? WINDOW same AS (PARTITION BY record)) WHERE place = 1",
        (HALF, learner, type_id),
    )
    found = ((_answered(row[:-2]), row[-2], row[-1]) for row in rows)
    return {each.note.record: Latest(each, datetime.fromisoformat(first), bool(ever)) for each, first, ever in found}


def cards(connection: sqlite3.Connection, learner: int, type_id: str) -> dict[str, Card]:
    """Return a learner's card of each record that was ever asked."""
    rows = connection.execute(f"SELECT record, {_CARD} FROM card WHERE learner = ? AND type = ?", (learner, type_id))
    return {record: _card(row) for record, *row in rows}


def settle_card(connection: sqlite3.Connection, learner: int, type_id: str, record: str) -> None:
    """Write the card of one record anew from all answers on it."""
    card = card_after(reviews(history(connection, learner, type_id, record)))
    if card is None:
        query = "DELETE FROM card WHERE learner = ? AND type = ? AND record = ?"
        connection.execute(query, (learner, type_id, record))
        return
    connection.execute(
        f"INSERT OR REPLACE INTO card (learner, type, record, {_CARD}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        (learner, type_id, record, *card[:4], card.due.isoformat(), card.last.isoformat()),
    )


def reviews(answers: Iterable[Answered]) -> Iterator[Review]:
    """Yield what each answer says of the learner's memory."""
    for each in answers:
        yield Review(each.at, word_of(each.note))


def word_of(note: Note) -> str:
    """Return missed, prompted or recalled."""
    return word_for(note.mark, note.share, note.hinted, note.hesitation, note.question)


def revisions_text(revisions: Revisions) -> str:
    """Return revisions as they are kept."""
    return json.dumps([list(pair) for pair in revisions], ensure_ascii=False)


def revisions_of(text: str) -> Revisions:
    """Return revisions from what is kept."""
    return tuple((str(document), str(revision)) for document, revision in json.loads(text))


def storable(text: str) -> str:
    """Return a text as it can be kept: halves of signs, which broken input brings, replaced, and none without end."""
    return text[:LONGEST_TEXT].encode("utf-8", "replace").decode()


def _plain(note: Note) -> tuple[Any, ...]:
    return (
        *note[:8], int(note.hinted), int(note.overruled), note.marked, note.confused_with, note.hesitation,
        revisions_text(note.revisions), note.content,
    )  # fmt: skip


def _answered(row: tuple[Any, ...]) -> Answered:
    number, uid, learner, type_id, at, *rest = row
    texts, (hinted, overruled, marked, confused, hesitation, revisions, content) = rest[:8], rest[8:]
    note = Note._make(
        (*texts, bool(hinted), bool(overruled), marked, confused, hesitation, revisions_of(revisions), content)
    )
    return Answered(number, uid, learner, type_id, datetime.fromisoformat(at), note)


def _card(row: list[Any]) -> Card:
    stability, difficulty, state, step, due, last = row
    return Card(stability, difficulty, state, step, datetime.fromisoformat(due), datetime.fromisoformat(last))
