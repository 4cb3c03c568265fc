"""The record as JSON, to take to another machine: everything out, and in again with nothing twice.

    {"record_of_practice": 1, "exported": time, "learners": [{"name", "since", "ready_by", "answers": [{...}]}],
     "sittings": [{"uid", "type", "title", "state", "began", "ended", "plan", "options", "seats": [{"name", "team"}],
                   "turns": [{...}]}]}

An answer holds the fields of `Note` with `uid`, `type` and `at`; a turn holds those of `Turn` and `Asking`, its seat
and those that passed it as names, and `kept`, the uid of the answer that it counts as. Cards follow from the answers.
"""

from __future__ import annotations

import json
import sqlite3
from datetime import UTC, date, datetime
from typing import Any

from assistant.frozen import NamedTuple
from assistant.practice.keeping import answers, learners
from assistant.practice.keeping.exchange_fields import (
    ANSWER,
    LEARNER,
    SEAT,
    SITTING,
    TURN,
    ExchangeProblem,
    checked,
    listed,
)

KEY, FORM = "record_of_practice", 1


class TakenIn(NamedTuple):
    """What an import added: people who were not here, answers, class sittings; and answers that were here."""

    learners: int
    answers: int
    sittings: int
    known: int


def export_all(connection: sqlite3.Connection, now: datetime) -> dict[str, Any]:
    """Return everything that the record holds."""
    return {
        KEY: FORM,
        "exported": now.isoformat(),
        "learners": [_learner(connection, each) for each in learners.learners(connection)],
        "sittings": [_sitting(connection, *row) for row in connection.execute(_SITTINGS).fetchall()],
    }


def parsed(exported: Any) -> dict[str, Any]:
    """Return what was exported, every field looked at. Raises ExchangeProblem, which names the first that is amiss."""
    if not isinstance(exported, dict) or exported.get(KEY) != FORM:
        raise ExchangeProblem(f'it is not an export of a record: "{KEY}": {FORM} is missing')
    people = listed(exported, "learners", LEARNER, "the export")
    for person in people:
        person["answers"] = listed(person, "answers", ANSWER, f'learner "{person["name"]}"')
    sittings = listed(exported, "sittings", SITTING, "the export")
    for sitting in sittings:
        where = f'sitting "{sitting["uid"]}"'
        sitting["seats"] = listed(sitting, "seats", SEAT, where)
        sitting["turns"] = listed(sitting, "turns", TURN, where)
        _check_seated(sitting, where)
    return {"learners": people, "sittings": sittings}


def take_in(connection: sqlite3.Connection, given: dict[str, Any]) -> TakenIn:
    """Add what is not here yet, and return how much that was."""
    before = len(learners.learners(connection))
    added = known = 0
    for person in given["learners"]:
        learner = _enter(connection, person)
        touched = set()
        for answer in person["answers"]:
            if _insert(connection, learner, answer):
                touched.add((answer["type"], answer["record"]))
                added += 1
            else:
                known += 1
        for type_id, record in sorted(touched):
            answers.settle_card(connection, learner, type_id, record)
    sittings = sum(_take_in_sitting(connection, sitting) for sitting in given["sittings"])
    return TakenIn(len(learners.learners(connection)) - before, added, sittings, known)


_SITTINGS = "SELECT id, uid, type, title, state, began, ended, plan, options FROM sitting ORDER BY id"
_ANSWER_COLUMNS = tuple(ANSWER)
_TURN_COLUMNS = tuple(name for name in TURN if name not in ("seat", "passed", "kept"))
_JSON_COLUMNS = ("revisions", "sources")


def _learner(connection: sqlite3.Connection, who: Any) -> dict[str, Any]:
    query = f"SELECT {', '.join(_ANSWER_COLUMNS)} FROM answer WHERE learner = ? ORDER BY at, id"
    rows = connection.execute(query, (who.id,)).fetchall()
    ready = who.ready_by.isoformat() if who.ready_by else None
    return {
        "name": who.name, "since": who.since.isoformat(), "ready_by": ready,
        "answers": [_opened(dict(zip(_ANSWER_COLUMNS, row, strict=True))) for row in rows],
    }  # fmt: skip


def _sitting(connection: sqlite3.Connection, number: int, *values: Any) -> dict[str, Any]:
    uid, type_id, title, state, began, ended, plan, options = values
    seats = connection.execute(
        "SELECT seat.id, name, team FROM seat JOIN learner ON learner.id = seat.learner "
        "WHERE sitting = ? ORDER BY place",
        (number,),
    ).fetchall()
    names = {seat: name for seat, name, _ in seats}
    query = (
        f"SELECT {', '.join(f'turn.{column}' for column in _TURN_COLUMNS)}, seat, passed, answer.uid "
        "FROM turn LEFT JOIN answer ON answer.id = turn.kept WHERE sitting = ? ORDER BY number"
    )
    turns = [_turn(row, names) for row in connection.execute(query, (number,))]
    return {
        "uid": uid, "type": type_id, "title": title, "state": state, "began": began, "ended": ended,
        "plan": json.loads(plan), "options": json.loads(options),
        "seats": [{"name": name, "team": team} for _, name, team in seats], "turns": turns,
    }  # fmt: skip


def _turn(row: tuple[Any, ...], names: dict[int, str]) -> dict[str, Any]:
    *plain, seat, passed, kept = row
    turn = _opened(dict(zip(_TURN_COLUMNS, plain, strict=True)))
    who = [names[each] for each in json.loads(passed) if each in names]
    return {**turn, "seat": names.get(seat), "passed": who, "kept": kept}


def _opened(row: dict[str, Any]) -> dict[str, Any]:
    """A row with what is kept as JSON opened, and yes and no as such."""
    for name in _JSON_COLUMNS:
        if name in row:
            row[name] = json.loads(row[name])
    for name in ("hinted", "overruled"):
        row[name] = bool(row[name])
    return row


def _closed(row: dict[str, Any], columns: tuple[str, ...]) -> list[Any]:
    return [json.dumps(row[name], ensure_ascii=False) if name in _JSON_COLUMNS else row[name] for name in columns]


def _enter(connection: sqlite3.Connection, person: dict[str, Any]) -> int:
    since = datetime.fromisoformat(person["since"]).astimezone(UTC)
    learner = learners.enrol(connection, person["name"], since)
    connection.execute("UPDATE learner SET since = min(since, ?) WHERE id = ?", (since.isoformat(), learner.id))
    if learner.ready_by is None and person["ready_by"]:
        learners.set_ready_by(connection, learner.id, date.fromisoformat(person["ready_by"]))
    return learner.id


def _insert(connection: sqlite3.Connection, learner: int, answer: dict[str, Any]) -> bool:
    answer = {**answer, "at": datetime.fromisoformat(answer["at"]).astimezone(UTC).isoformat()}
    marks = ", ".join("?" * (len(_ANSWER_COLUMNS) + 1))
    cursor = connection.execute(
        f"INSERT INTO answer (learner, {', '.join(_ANSWER_COLUMNS)}) VALUES ({marks}) ON CONFLICT (uid) DO NOTHING",
        (learner, *_closed(answer, _ANSWER_COLUMNS)),
    )
    return cursor.rowcount > 0


def _take_in_sitting(connection: sqlite3.Connection, sitting: dict[str, Any]) -> bool:
    plan, options = json.dumps(sitting["plan"]), json.dumps(sitting["options"])
    cursor = connection.execute(
        "INSERT INTO sitting (uid, type, title, state, began, ended, plan, options) VALUES (?, ?, ?, ?, ?, ?, ?, ?) "
        "ON CONFLICT (uid) DO NOTHING",
        (*(sitting[name] for name in ("uid", "type", "title", "state", "began", "ended")), plan, options),
    )
    if cursor.rowcount <= 0:
        return False
    number = cursor.lastrowid or 0
    seats = _take_in_seats(connection, number, sitting)
    for turn in sitting["turns"]:
        _take_in_turn(connection, number, turn, seats)
    return True


def _take_in_seats(connection: sqlite3.Connection, number: int, sitting: dict[str, Any]) -> dict[str, int]:
    began = datetime.fromisoformat(sitting["began"]).astimezone(UTC)
    seats: dict[str, int] = {}
    for place, seat in enumerate(sitting["seats"], 1):
        learner = learners.enrol(connection, seat["name"], began)
        cursor = connection.execute(
            "INSERT INTO seat (sitting, learner, place, team) VALUES (?, ?, ?, ?)",
            (number, learner.id, place, seat["team"]),
        )
        seats[learners.name_key(seat["name"])] = cursor.lastrowid or 0
    return seats


def _take_in_turn(connection: sqlite3.Connection, number: int, turn: dict[str, Any], seats: dict[str, int]) -> None:
    seat = seats[learners.name_key(turn["seat"])] if turn["seat"] else None
    passed = json.dumps([seats[learners.name_key(name)] for name in turn["passed"]])
    kept = connection.execute("SELECT id FROM answer WHERE uid = ?", (turn["kept"],)).fetchone()
    marks = ", ".join("?" * (len(_TURN_COLUMNS) + 4))
    connection.execute(
        f"INSERT INTO turn (sitting, {', '.join(_TURN_COLUMNS)}, seat, passed, kept) VALUES ({marks})",
        (number, *_closed(turn, _TURN_COLUMNS), seat, passed, kept[0] if kept else None),
    )


def _check_seated(sitting: dict[str, Any], where: str) -> None:
    keys = [learners.name_key(seat["name"]) for seat in sitting["seats"]]
    if len(set(keys)) < len(keys):
        raise ExchangeProblem(f"{where}: a name sits there twice")
    numbers = [turn["number"] for turn in sitting["turns"]]
    if len(set(numbers)) < len(numbers):
        raise ExchangeProblem(f"{where}: a turn's number stands there twice")
    named = {name for turn in sitting["turns"] for name in (turn["seat"], *turn["passed"]) if name}
    for name in named:
        if learners.name_key(name) not in keys:
            raise ExchangeProblem(f'{where}: "{name}" has a turn but no seat')


__all__ = ["ExchangeProblem", "TakenIn", "checked", "export_all", "parsed", "take_in"]
