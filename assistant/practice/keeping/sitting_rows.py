"""Seats, turns and sittings as rows: how each is read, set and taken back."""

from __future__ import annotations

import json
import sqlite3
from datetime import datetime
from typing import Any

from assistant.practice.keeping import answers, learners
from assistant.practice.keeping.rows import CLASS, Asking, Note, Seat, Seated, Sitting, Turn

SITTING = "id, uid, type, title, state, began, ended, plan, options"
TURN = (
    "id, sitting, number, record, question, expected, sources, form, revisions, content, phase, seat, passed, hinted, "
    "mark, marked, share, answer, overruled, confused_with, at"
)


def seat_person(connection: sqlite3.Connection, sitting: int, seated: Seated, now: datetime) -> None:
    """Seat a person who does not sit yet, and enter them if they are new. Raises NameProblem."""
    learner = learners.enrol(connection, seated.name, now)
    connection.execute(
        "INSERT INTO seat (sitting, learner, place, team) SELECT ?, ?, coalesce(max(place), 0) + 1, ? FROM seat "
        "WHERE sitting = ? ON CONFLICT (sitting, learner) DO NOTHING",
        (sitting, learner.id, answers.storable(seated.team), sitting),
    )


def seats_of(connection: sqlite3.Connection, sitting: int) -> tuple[Seat, ...]:
    """Return who sits, in roster order, with their turns."""
    rows = connection.execute(
        "SELECT seat.id, place, name, team, learner, (SELECT count(*) FROM turn WHERE turn.seat = seat.id) "
        "FROM seat JOIN learner ON learner.id = seat.learner WHERE sitting = ? ORDER BY place",
        (sitting,),
    )
    return tuple(Seat(*row) for row in rows)


def keep_answer(connection: sqlite3.Connection, turn: Turn, uid: str, now: datetime) -> Turn:
    """Keep a marked turn as an answer of whoever has it; a turn that nobody has is the class's alone."""
    if turn.seat is None:
        return turn
    query = "SELECT learner, type FROM seat JOIN sitting ON sitting.id = seat.sitting WHERE seat.id = ?"
    learner, type_id = connection.execute(query, (turn.seat,)).fetchone()
    asking = turn.asking
    note = Note(
        asking.record, asking.question, turn.answer, turn.mark, turn.share, asking.expected, asking.form, CLASS,
        turn.hinted, turn.overruled, turn.marked, turn.confused_with, None, asking.revisions, asking.content,
    )  # fmt: skip
    kept = answers.insert(connection, uid, learner, type_id, now, note)
    return set_turn(connection, turn.id, kept=kept.id)


def take_back(connection: sqlite3.Connection, turn: int) -> None:
    """Take back the answer that a turn was kept as, if any."""
    row = connection.execute("SELECT kept FROM turn WHERE id = ?", (turn,)).fetchone()
    if row and row[0] is not None:
        answers.remove(connection, row[0])


def set_turn(connection: sqlite3.Connection, turn: int, **values: Any) -> Turn:
    """Set columns of a turn, and return it. Raises LookupError."""
    named = ", ".join(f"{column} = ?" for column in values)
    connection.execute(f"UPDATE turn SET {named} WHERE id = ?", (*values.values(), turn))
    return turn_row(connection, turn)


def turn_row(connection: sqlite3.Connection, turn: int) -> Turn:
    """Return a turn by its id. Raises LookupError."""
    row = connection.execute(f"SELECT {TURN} FROM turn WHERE id = ?", (turn,)).fetchone()
    if row is None:
        raise LookupError(f"there is no turn {turn} in the record")
    return turn_of(row)


def turn_of(row: tuple[Any, ...]) -> Turn:
    """Return a turn from its row."""
    number, sitting, place, record, question, expected, sources, form, revisions, content, *rest = row
    phase, seat, passed, hinted, mark, marked, share, answer, overruled, confused, at = rest
    asking = Asking(
        record, question, expected, tuple(json.loads(sources)), form, answers.revisions_of(revisions), content
    )
    return Turn(
        number, sitting, place, asking, phase, seat, tuple(json.loads(passed)), bool(hinted), mark, marked, share,
        answer, bool(overruled), confused, datetime.fromisoformat(at),
    )  # fmt: skip


def sitting_row(connection: sqlite3.Connection, sitting: int) -> Sitting:
    """Return a sitting by its id. Raises LookupError."""
    row = connection.execute(f"SELECT {SITTING} FROM sitting WHERE id = ?", (sitting,)).fetchone()
    if row is None:
        raise LookupError(f"there is no sitting {sitting} in the record")
    return sitting_of(row)


def sitting_of(row: tuple[Any, ...]) -> Sitting:
    """Return a sitting from its row."""
    number, uid, type_id, title, state, began, ended, plan, options = row
    end = datetime.fromisoformat(ended) if ended else None
    return Sitting(
        number, uid, type_id, title, state, datetime.fromisoformat(began), end, json.loads(plan), json.loads(options)
    )
