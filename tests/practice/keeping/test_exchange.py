"""What is exported is taken in elsewhere, once; what is amiss is named, and nothing of it taken in."""

import json
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from assistant.practice.keeping.exchange import KEY
from assistant.practice.keeping.exchange_fields import ExchangeProblem
from assistant.practice.keeping.record import Record, open_record
from assistant.practice.keeping.rows import Asking, Learner, Seated
from tests.practice.keeping.conftest import TYPE, Clock, note


@pytest.fixture
def exported(record: Record, ana: Learner) -> Any:
    record.set_ready_by(ana, date(2026, 12, 10))
    for mark in ("wrong", "partly", "right"):
        record.note_answer(ana, TYPE, note(mark=mark, share=0.5, confused_with="vlo", revisions=(("LIM", "7"),)))
    sitting = record.sittings.begin(TYPE, [Seated("Ana", "Red"), Seated("Ben")], "Speeds", plan=[1], options=None)
    ana_seat, ben_seat = record.sittings.seats(sitting.id)
    turn = record.sittings.ask(sitting.id, Asking("vle", "VLE?", "255 kt", ("LIM 3.1",)))
    record.sittings.name(turn.id, ana_seat.id)
    record.sittings.name(turn.id, ben_seat.id)
    record.sittings.mark(turn.id, "right")
    record.sittings.ask(sitting.id, Asking("wheelbase", "Wheelbase?", "13.2 m"))
    return json.loads(json.dumps(record.export()))


@pytest.fixture
def other(tmp_path: Path, clock: Clock) -> Record:
    return open_record(str(tmp_path / "other"), clock)


def test_all_that_was_exported_is_there_after_the_import(exported: Any, other: Record) -> None:
    taken = other.take_in(exported)

    assert taken == (2, 4, 1, 0)
    again = other.export()
    assert {**again, "exported": ""} == {**exported, "exported": ""}
    other.close()


def test_cards_are_made_from_the_answers_taken_in(exported: Any, other: Record, record: Record, ana: Learner) -> None:
    other.take_in(exported)

    there = other.find("Ana")
    assert there is not None
    assert other.cards(there, TYPE) == record.cards(ana, TYPE)
    other.close()


def test_the_same_export_twice_adds_nothing(exported: Any, other: Record) -> None:
    other.take_in(exported)

    assert other.take_in(exported) == (0, 0, 0, 4)
    other.close()


def test_what_both_have_is_joined(exported: Any, other: Record) -> None:
    kept = other.note_answer(other.enrol("ANA"), TYPE, note("wheelbase"))

    assert other.take_in(exported).learners == 1
    ana = other.find("ana")
    assert ana is not None
    assert [each.note.record for each in other.history(ana, TYPE)].count("vle") == 3
    assert kept in other.history(ana, TYPE)
    other.close()


def test_a_turn_undone_after_an_import_takes_its_answer_back(exported: Any, other: Record) -> None:
    other.take_in(exported)
    (sitting,) = other.sittings.all(TYPE)

    other.sittings.undo(sitting.id)

    ben = other.find("Ben")
    assert ben is not None
    assert other.history(ben, TYPE) == ()
    other.close()


def _set(*path: Any, to: Any) -> Callable[[Any], None]:
    def change(exported: Any) -> None:
        for step in path[:-1]:
            exported = exported[step]
        exported[path[-1]] = to

    return change


ANSWER = ("learners", 0, "answers", 0)
TURN = ("sittings", 0, "turns", 0)


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (_set(KEY, to=2), "it is not an export of a record"),
        (_set("learners", to={}), 'the export: "learners" is not a list'),
        (_set("learners", 0, to=7), "the export, learners 1 is not an object"),
        (_set("learners", 0, "name", to=""), '"name" cannot be ""'),
        (_set("learners", 0, "name", to="forget"), '"name" cannot be "forget"'),
        (_set(*ANSWER, "mark", to="good"), 'learner "Ana", answers 1: "mark" cannot be "good"'),
        (_set(*ANSWER, "share", to=float("nan")), '"share" cannot be NaN'),
        (_set(*ANSWER, "at", to="yesterday"), '"at" cannot be "yesterday"'),
        (_set(*ANSWER, "at", to="2026-11-25T07:00:00"), '"at" cannot be'),
        (_set(*ANSWER, "question", to="\ud800"), '"question" cannot be'),
        (_set(*ANSWER, "revisions", to=[["LIM"]]), '"revisions" cannot be'),
        (_set(*ANSWER, to={"uid": "x"}), '"type" is missing'),
        (_set(*TURN, "seat", to="Zoe"), '"Zoe" has a turn but no seat'),
        (_set(*TURN, "phase", to="dreamt"), '"phase" cannot be "dreamt"'),
        (_set("sittings", 0, "turns", 1, "number", to=1), "a turn's number stands there twice"),
        (_set("sittings", 0, "seats", 1, "name", to="ANA"), "a name sits there twice"),
    ],
)
def test_what_is_amiss_is_named_and_nothing_taken_in(
    exported: Any, other: Record, change: Callable[[Any], None], said: str
) -> None:
    change(exported)

    with pytest.raises(ExchangeProblem) as problem:
        other.take_in(exported)

    assert said in str(problem.value)
    assert "\n" not in str(problem.value)
    assert other.learners() == ()
    other.close()


@pytest.mark.parametrize("exported", [None, [], 7, "text", {}, {KEY: True, "learners": []}])
def test_what_is_no_export_at_all(other: Record, exported: Any) -> None:
    if exported == {KEY: True, "learners": []}:  # true is one, as JSON's readers have it
        assert other.take_in(exported) == (0, 0, 0, 0)
    else:
        with pytest.raises(ExchangeProblem, match="not an export"):
            other.take_in(exported)
    other.close()
