"""Class sittings: who sits, which question stands, who has it, how it was marked; every step kept as it is taken.

A sitting goes on from exactly where it stood after a crash, and a second terminal reads the key of the question that
stands from the same record. A mark given in class also counts as an answer of the person it was given to.
"""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Callable, Iterable
from typing import Any

from assistant.practice.keeping import answers
from assistant.practice.keeping.keeper import Keeper
from assistant.practice.keeping.rows import (
    ASKED,
    ENDED,
    MARKED,
    NAMED,
    OPEN,
    PAUSED,
    REVEALED,
    Asking,
    Seat,
    Seated,
    Sitting,
    Turn,
)
from assistant.practice.keeping.sitting_rows import (
    SITTING,
    TURN,
    keep_answer,
    seat_person,
    seats_of,
    set_turn,
    sitting_of,
    sitting_row,
    take_back,
    turn_of,
    turn_row,
)
from assistant.practice.recall import RIGHT


class Sittings:
    """The class sittings of a record."""

    def __init__(self, keeper: Keeper, new_id: Callable[[], str]) -> None:
        self._keeper = keeper
        self._new_id = new_id

    def begin(
        self, type_id: str, roster: Iterable[Seated], title: str = "", plan: Any = None, options: Any = None
    ) -> Sitting:
        """Return a new sitting with its roster, in the order given, each name once. Raises NameProblem."""
        uid, now = self._new_id(), self._keeper.now

        def action(connection: sqlite3.Connection) -> Sitting:
            cursor = connection.execute(
                "INSERT INTO sitting (uid, type, title, state, began, plan, options) VALUES (?, ?, ?, ?, ?, ?, ?)",
                (uid, type_id, answers.storable(title), OPEN, now.isoformat(), json.dumps(plan), json.dumps(options)),
            )
            number = cursor.lastrowid or 0
            for seated in roster:
                seat_person(connection, number, seated, now)
            return sitting_row(connection, number)

        return self._keeper.write(action)

    def get(self, sitting: int) -> Sitting:
        """Return a sitting as it stands. Raises LookupError."""
        return self._keeper.read(lambda c: sitting_row(c, sitting))

    def all(self, type_id: str = "", open_only: bool = False) -> tuple[Sitting, ...]:
        """Return the sittings, the latest first; those that have not ended with open_only."""
        query = f"SELECT {SITTING} FROM sitting WHERE ? IN ('', type) AND (NOT ? OR state != ?) ORDER BY id DESC"
        rows = self._keeper.read(lambda c: c.execute(query, (type_id, open_only, ENDED)).fetchall())
        return tuple(map(sitting_of, rows))

    def seats(self, sitting: int) -> tuple[Seat, ...]:
        """Return who sits, in roster order, with the number of turns that each was given."""
        return self._keeper.read(lambda c: seats_of(c, sitting))

    def join(self, sitting: int, seated: Seated) -> tuple[Seat, ...]:
        """Seat one more person; return everybody. A name that sits already is not seated twice."""
        now = self._keeper.now

        def action(connection: sqlite3.Connection) -> tuple[Seat, ...]:
            seat_person(connection, sitting, seated, now)
            return seats_of(connection, sitting)

        return self._keeper.write(action)

    def turns(self, sitting: int) -> tuple[Turn, ...]:
        """Return the turns so far, in order."""
        query = f"SELECT {TURN} FROM turn WHERE sitting = ? ORDER BY number"
        return tuple(map(turn_of, self._keeper.read(lambda c: c.execute(query, (sitting,)).fetchall())))

    def current(self, sitting: int) -> Turn | None:
        """Return the question that stands: the first that is not marked, if any."""
        return next((turn for turn in self.turns(sitting) if turn.phase != MARKED), None)

    def ask(self, sitting: int, asking: Asking, plan: Any = ...) -> Turn:
        """Put a question, and with it, if given, what remains of the plan."""
        now = self._keeper.now.isoformat()

        def action(connection: sqlite3.Connection) -> Turn:
            if plan is not ...:
                connection.execute("UPDATE sitting SET plan = ? WHERE id = ?", (json.dumps(plan), sitting))
            query = "SELECT coalesce(max(number), 0) + 1 FROM turn WHERE sitting = ?"
            number = connection.execute(query, (sitting,)).fetchone()[0]
            values = (
                sitting, number, asking.record, answers.storable(asking.question),
                answers.storable(asking.expected), json.dumps(asking.sources),
                asking.form, answers.revisions_text(asking.revisions), asking.content, ASKED, None, "[]",
                0, "", "", 0.0, "", 0, "", now,
            )  # fmt: skip
            marks = ", ".join("?" * len(values))
            columns = TURN.removeprefix("id, ")
            cursor = connection.execute(f"INSERT INTO turn ({columns}) VALUES ({marks})", values)
            return turn_row(connection, cursor.lastrowid or 0)

        return self._keeper.write(action)

    def name(self, turn: int, seat: int) -> Turn:
        """Give the turn to somebody; one who had it before passes it on."""

        def action(connection: sqlite3.Connection) -> Turn:
            before = turn_row(connection, turn)
            passed = [*before.passed, before.seat] if before.seat not in (None, seat) else list(before.passed)
            phase = REVEALED if before.phase == REVEALED else NAMED  # what was revealed stays so
            return set_turn(connection, turn, seat=seat, passed=json.dumps(passed), phase=phase)

        return self._keeper.write(action)

    def unpass(self, turn: int) -> Turn:
        """Give the turn back to whoever passed it on last, as if it had stayed there."""

        def action(connection: sqlite3.Connection) -> Turn:
            *before, last = turn_row(connection, turn).passed
            return set_turn(connection, turn, seat=last, passed=json.dumps(before))

        return self._keeper.write(action)

    def hint(self, turn: int) -> Turn:
        """Note that a hint was given."""
        return self._keeper.write(lambda c: set_turn(c, turn, hinted=1))

    def reveal(self, turn: int) -> Turn:
        """Note that the key is shown."""
        return self._keeper.write(lambda c: set_turn(c, turn, phase=REVEALED))

    def mark(
        self,
        turn: int,
        mark: str,
        share: float | None = None,
        answer: str = "",
        marked: str = "",
        confused_with: str = "",
    ) -> Turn:
        """Mark the turn: as a turn of the class, and as an answer of whoever has it.

        marked: what the program made of the answer, if the instructor overrules that.
        """
        points = share if share is not None else float(mark == RIGHT)
        overruled = bool(marked) and marked != mark
        uid, now = self._new_id(), self._keeper.now

        def action(connection: sqlite3.Connection) -> Turn:
            take_back(connection, turn)
            after = set_turn(
                connection, turn, phase=MARKED, mark=mark, marked=marked or mark, share=points,
                answer=answers.storable(answer),
                overruled=int(overruled), confused_with=confused_with, at=now.isoformat(),
            )  # fmt: skip
            return keep_answer(connection, after, uid, now)

        return self._keeper.write(action)

    def undo(self, sitting: int) -> Turn | None:
        """Take the last mark back, so that its question stands again; return that turn, if there was a mark."""
        query = "SELECT id FROM turn WHERE sitting = ? AND phase = ? ORDER BY at DESC, number DESC LIMIT 1"

        def action(connection: sqlite3.Connection) -> Turn | None:
            row = connection.execute(query, (sitting, MARKED)).fetchone()
            if row is None:
                return None
            take_back(connection, row[0])
            phase = ASKED if turn_row(connection, row[0]).seat is None else NAMED
            return set_turn(
                connection, row[0], phase=phase, mark="", marked="", share=0.0, answer="", overruled=0, confused_with=""
            )

        return self._keeper.write(action)

    def drop(self, turn: int) -> None:
        """Withdraw a question, as if it had never been put."""

        def action(connection: sqlite3.Connection) -> None:
            take_back(connection, turn)
            connection.execute("DELETE FROM turn WHERE id = ?", (turn,))

        self._keeper.write(action)

    def keep_plan(self, sitting: int, plan: Any) -> None:
        """Put another plan in the place of what was kept."""
        text = json.dumps(plan)
        self._keeper.write(lambda c: c.execute("UPDATE sitting SET plan = ? WHERE id = ?", (text, sitting)))

    def pause(self, sitting: int) -> Sitting:
        """Note that the class pauses."""
        return self._state(sitting, PAUSED)

    def resume(self, sitting: int) -> Sitting:
        """Note that the class goes on."""
        return self._state(sitting, OPEN)

    def end(self, sitting: int) -> Sitting:
        """Note that the class has ended; a question that still stands is withdrawn."""
        return self._state(sitting, ENDED)

    def _state(self, sitting: int, state: str) -> Sitting:
        ended = self._keeper.now.isoformat() if state == ENDED else None

        def action(connection: sqlite3.Connection) -> Sitting:
            connection.execute(
                "UPDATE sitting SET state = ?, ended = coalesce(?, ended) WHERE id = ?", (state, ended, sitting)
            )
            if state == ENDED:
                connection.execute("DELETE FROM turn WHERE sitting = ? AND phase != ?", (sitting, MARKED))
            return sitting_row(connection, sitting)

        return self._keeper.write(action)
