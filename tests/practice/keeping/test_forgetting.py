"""A person who is forgotten is nowhere in the data folder any more, and everybody else still is."""

from pathlib import Path

import pytest

from assistant.practice.keeping import connecting
from assistant.practice.keeping.backups import FOLDER
from assistant.practice.keeping.opening import FILE
from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import Asking, Seated
from tests.practice.keeping.conftest import TYPE, Opener, note

NAME = "Wilhelmina Özgür"
SAID = "something that only she would say"


def _practised(record: Record) -> None:
    for name in (NAME, "Ben"):
        learner = record.enrol(name)
        for number in range(30):
            answer = SAID if name == NAME else "what Ben says"
            record.note_answer(learner, TYPE, note(f"record-{number}")._replace(answer=answer))
    sitting = record.sittings.begin(TYPE, [Seated(NAME), Seated("Ben")])
    for seat in record.sittings.seats(sitting.id):
        turn = record.sittings.ask(sitting.id, Asking("vle", "VLE?", "255 kt"))
        record.sittings.name(turn.id, seat.id)
        record.sittings.mark(turn.id, "wrong", answer=SAID if seat.name == NAME else "")


def _holding(home: Path, text: str) -> list[str]:
    return [path.name for path in home.rglob("*") if path.is_file() and text.encode() in path.read_bytes()]


def test_nothing_of_a_forgotten_person_is_left_in_any_file(opener: Opener, home: Path) -> None:
    with opener() as record:
        _practised(record)
    record = opener()
    (home / "practice-damaged-20261124T000000Z.db").write_bytes(b"\x00" * 99 + NAME.encode() + b"\x00" * 99)
    (home / "practice-damaged-20261123T000000Z.db").write_bytes(b"of somebody else")
    assert len(_holding(home, NAME)) >= 3
    learner = record.find(NAME)
    assert learner is not None

    forgotten = record.forget(learner)
    record.close()

    assert (forgotten.answers, forgotten.turns, forgotten.left) == (31, 1, ())
    assert [Path(path).name for path in forgotten.files] == ["practice-damaged-20261124T000000Z.db"]
    assert _holding(home, NAME) == _holding(home, SAID) == _holding(home, NAME.casefold()) == []
    assert (home / "practice-damaged-20261123T000000Z.db").exists()


def test_everybody_else_stays_in_the_record_and_in_a_fresh_backup(opener: Opener, home: Path) -> None:
    with opener() as record:
        _practised(record)
        learner = record.find(NAME)
        assert learner is not None
        record.forget(learner)
    (home / FILE).write_bytes(b"damaged")

    after = opener()

    ben = after.find("Ben")
    assert ben is not None
    assert len(after.history(ben, TYPE)) == 31
    (sitting,) = after.sittings.all(TYPE)
    assert [turn.seat for turn in after.sittings.turns(sitting.id)] == [after.sittings.seats(sitting.id)[0].id]
    assert [each.name for each in after.learners()] == ["Ben"]
    assert list((home / FOLDER).iterdir())


def test_what_another_program_still_holds_is_said(
    record: Record, opener: Opener, monkeypatch: pytest.MonkeyPatch
) -> None:
    _practised(record)
    other = opener()
    reading = other._keeper.connection.execute("SELECT uid FROM answer")
    reading.fetchone()
    learner = record.find(NAME)
    assert learner is not None
    monkeypatch.setattr(connecting, "PATIENCE", 0.05)

    forgotten = record.forget(learner)

    assert any("nother program" in line for line in forgotten.left)
    reading.close()
    assert record.find(NAME) is None
