"""A class sitting goes on from where it stood, whatever ended the program."""

import pytest

from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import (
    ASKED,
    CLASS,
    ENDED,
    MARKED,
    NAMED,
    OPEN,
    PAUSED,
    REVEALED,
    Asking,
    Seated,
    Sitting,
)
from tests.practice.keeping.conftest import TYPE, Opener

ROSTER = [Seated("Ana", "Red"), Seated("Ben", "Blue"), Seated("  ana "), Seated("Cleo")]
QUESTION = Asking(
    "vle", "What is VLE?", "255 kt or Mach 0.60", ("LIM 3.1, revision 7",), "figure", (("LIM", "7"),), "c"
)


@pytest.fixture
def sitting(record: Record) -> Sitting:
    return record.sittings.begin(TYPE, ROSTER, "Speeds", plan=["vle", "wheelbase"], options={"minutes": 20})


def test_everybody_sits_once_in_the_order_of_the_roster(record: Record, sitting: Sitting) -> None:
    seats = record.sittings.seats(sitting.id)

    assert [(each.place, each.name, each.team, each.turns) for each in seats] == [
        (1, "Ana", "Red", 0), (2, "Ben", "Blue", 0), (3, "Cleo", "", 0),
    ]  # fmt: skip
    assert [each.name for each in record.sittings.join(sitting.id, Seated("Dan"))][-1] == "Dan"
    assert len(record.sittings.join(sitting.id, Seated("BEN"))) == 4


def test_a_turn_from_question_to_mark_counts_for_whoever_has_it(record: Record, sitting: Sitting) -> None:
    ana, ben, _ = record.sittings.seats(sitting.id)
    sittings = record.sittings

    turn = sittings.ask(sitting.id, QUESTION, plan=["wheelbase"])
    assert (turn.phase, turn.seat, turn.number, turn.asking) == (ASKED, None, 1, QUESTION)
    assert sittings.name(turn.id, ana.id).phase == NAMED
    passed = sittings.name(turn.id, ben.id)
    assert (passed.seat, passed.passed) == (ben.id, (ana.id,))
    assert sittings.hint(turn.id).hinted
    assert sittings.reveal(turn.id).phase == REVEALED
    marked = sittings.mark(turn.id, "partly", 0.5, "two five five", marked="wrong", confused_with="vlo-extension")

    assert (marked.phase, marked.mark, marked.marked, marked.overruled) == (MARKED, "partly", "wrong", True)
    learner = record.find("Ben")
    assert learner is not None
    (answer,) = record.history(learner, TYPE)
    assert answer.note[:8] == (
        "vle", "What is VLE?", "two five five", "partly", 0.5, "255 kt or Mach 0.60", "figure", CLASS,
    )  # fmt: skip
    assert (answer.note.hinted, answer.note.overruled, answer.note.confused_with) == (True, True, "vlo-extension")
    assert (answer.note.revisions, answer.note.content) == ((("LIM", "7"),), "c")
    assert [each.turns for each in sittings.seats(sitting.id)] == [0, 1, 0]


def test_a_crash_resumes_where_it_stood(record: Record, sitting: Sitting, opener: Opener) -> None:
    ana = record.sittings.seats(sitting.id)[0]
    first = record.sittings.ask(sitting.id, QUESTION, plan=["wheelbase"])
    record.sittings.name(first.id, ana.id)
    record.sittings.mark(first.id, "right")
    second = record.sittings.ask(sitting.id, QUESTION._replace(record="wheelbase"), plan=[])
    record.sittings.name(second.id, ana.id)
    # the program ends here without closing anything

    after = opener().sittings

    (found,) = after.all(TYPE, open_only=True)
    assert (found.id, found.title, found.state, found.plan, found.options) == (
        sitting.id, "Speeds", OPEN, [], {"minutes": 20},
    )  # fmt: skip
    stands = after.current(found.id)
    assert stands is not None
    assert (stands.id, stands.phase, stands.seat) == (second.id, NAMED, ana.id)
    assert [each.mark for each in after.turns(found.id)] == ["right", ""]


def test_undo_takes_the_last_mark_back_wholly(record: Record, sitting: Sitting) -> None:
    ana = record.sittings.seats(sitting.id)[0]
    turns = [record.sittings.ask(sitting.id, QUESTION) for _ in range(2)]
    for turn in turns:
        record.sittings.name(turn.id, ana.id)
        record.sittings.mark(turn.id, "right")
    learner = record.find("Ana")
    assert learner is not None

    undone = record.sittings.undo(sitting.id)

    assert undone is not None
    assert (undone.id, undone.phase, undone.mark, undone.seat) == (turns[1].id, NAMED, "", ana.id)
    assert len(record.history(learner, TYPE)) == 1
    assert record.sittings.undo(sitting.id) is not None
    assert record.sittings.undo(sitting.id) is None
    assert record.history(learner, TYPE) == ()
    assert record.cards(learner, TYPE) == {}


def test_marking_anew_replaces_the_mark(record: Record, sitting: Sitting) -> None:
    turn = record.sittings.ask(sitting.id, QUESTION)
    record.sittings.name(turn.id, record.sittings.seats(sitting.id)[0].id)
    record.sittings.mark(turn.id, "wrong")
    record.sittings.mark(turn.id, "right")
    learner = record.find("Ana")

    assert learner is not None
    assert [each.note.mark for each in record.history(learner, TYPE)] == ["right"]


def test_a_turn_that_nobody_has_is_the_class_s_alone(record: Record, sitting: Sitting) -> None:
    turn = record.sittings.ask(sitting.id, QUESTION)

    assert record.sittings.mark(turn.id, "missed").mark == "missed"
    assert all(record.history(learner, TYPE) == () for learner in record.learners())
    undone = record.sittings.undo(sitting.id)
    assert undone is not None
    assert undone.phase == ASKED


def test_pause_end_and_a_question_withdrawn(record: Record, sitting: Sitting) -> None:
    turn = record.sittings.ask(sitting.id, QUESTION)
    record.sittings.drop(turn.id)
    assert record.sittings.turns(sitting.id) == ()
    record.sittings.ask(sitting.id, QUESTION)

    assert record.sittings.pause(sitting.id).state == PAUSED
    assert record.sittings.resume(sitting.id).state == OPEN
    ended = record.sittings.end(sitting.id)

    assert (ended.state, ended.ended is not None) == (ENDED, True)
    assert record.sittings.turns(sitting.id) == ()
    assert record.sittings.all(TYPE, open_only=True) == ()


def test_another_terminal_reads_the_key_of_the_question_that_stands(
    record: Record, sitting: Sitting, opener: Opener
) -> None:
    second_view = opener().sittings

    record.sittings.ask(sitting.id, QUESTION)

    stands = second_view.current(sitting.id)
    assert stands is not None
    assert (stands.asking.expected, stands.asking.sources) == (QUESTION.expected, QUESTION.sources)


def test_a_sitting_that_is_not_there(record: Record) -> None:
    with pytest.raises(LookupError, match="no sitting 7"):
        record.sittings.get(7)
