"""What is noted is there again, as it was, and only as it was."""

from datetime import UTC, date, datetime

import pytest

from assistant.practice.keeping.learners import NameProblem, NoSuchLearner
from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import HEARD, TYPED, Learner, Note
from tests.practice.keeping.conftest import TYPE, Clock, Opener, note


def test_an_answer_is_kept_with_all_that_belongs_to_it(record: Record, ana: Learner, opener: Opener) -> None:
    given = Note(
        "vle", "What is VLE?", "two five five", "partly", 0.5, "255 kt or Mach 0.60", "figure", TYPED, True, False, "",
        "vlo-extension", 3.5, (("LIM", "7"), ("AOM", "7 + 7-1")), "a1b2",
    )  # fmt: skip

    kept = record.note_answer(ana, TYPE, given)
    record.close()

    assert opener().history(ana, TYPE) == (kept,)
    assert kept.note == given._replace(marked="partly")
    assert kept.at == datetime(2026, 11, 25, 7, 0, 3, tzinfo=UTC)


def test_hesitation_counts_only_when_typed(record: Record, ana: Learner) -> None:
    heard = record.note_answer(ana, TYPE, note(how=HEARD, hesitation=40.0))

    assert heard.note.hesitation is None
    assert record.note_answer(ana, TYPE, note(hesitation=40.0)).note.hesitation == 40.0


def test_answers_on_one_record_alone(record: Record, ana: Learner) -> None:
    for name in ("vle", "wheelbase", "vle"):
        record.note_answer(ana, TYPE, note(name))
    record.note_answer(ana, "another", note("vle"))

    assert [each.note.record for each in record.history(ana, TYPE)] == ["vle", "wheelbase", "vle"]
    assert len(record.history(ana, TYPE, "vle")) == 2


def test_the_card_follows_from_the_answers(record: Record, ana: Learner, clock: Clock) -> None:
    record.note_answer(ana, TYPE, note())

    card = record.cards(ana, TYPE)["vle"]

    assert card.last == clock.now
    assert (card.due - card.last).days == 2
    assert record.cards(ana, "another") == {}


def test_a_mark_overruled_is_recorded_as_such_and_moves_the_card(record: Record, ana: Learner) -> None:
    wrong = record.note_answer(ana, TYPE, note(mark="wrong"))
    before = record.cards(ana, TYPE)["vle"]

    after = record.overrule(wrong, "right")

    assert (after.note.mark, after.note.marked, after.note.share, after.note.overruled) == ("right", "wrong", 1.0, True)
    assert record.cards(ana, TYPE)["vle"].due > before.due
    assert record.history(ana, TYPE) == (after,)


@pytest.mark.parametrize(("mark", "share"), [("good", 1.0), ("right", 1.5), ("partly", -0.1), ("", 0.0)])
def test_an_unknown_mark_is_refused(record: Record, ana: Learner, mark: str, share: float) -> None:
    with pytest.raises(ValueError, match="no such mark"):
        record.note_answer(ana, TYPE, note(mark=mark, share=share))

    assert record.history(ana, TYPE) == ()


@pytest.mark.parametrize("typed", ["ana", " ANA ", "Ana", "\uff21\uff4e\uff41"])
def test_a_learner_is_found_however_the_name_is_typed(record: Record, ana: Learner, typed: str) -> None:
    assert record.find(typed) == ana
    assert record.enrol(typed) == ana
    assert record.learners() == (ana,)


@pytest.mark.parametrize("name", ["", "  ", "x" * 81, "a\x1b[31m", "forget", "Export"])
def test_a_name_that_cannot_be_kept_is_refused(record: Record, name: str) -> None:
    with pytest.raises(NameProblem):
        record.enrol(name)


def test_the_day_to_be_ready_by_is_remembered(record: Record, ana: Learner) -> None:
    assert record.set_ready_by(ana, date(2026, 12, 10)) == record.find("ana")

    record.set_ready_by(ana, None)

    assert record.find("ana") == ana


def test_the_latest_of_each_record(record: Record, ana: Learner) -> None:
    first = record.note_answer(ana, TYPE, note(mark="partly", share=0.5))
    last = record.note_answer(ana, TYPE, note(mark="wrong"))
    missed = record.note_answer(ana, TYPE, note("wheelbase", "partly", 0.4))

    latest = record.latest(ana, TYPE)

    assert latest["vle"] == (last, first.at, True)
    assert latest["wheelbase"] == (missed, missed.at, False)


def test_a_learner_removed_by_another_program_is_said_to_be(record: Record, ana: Learner, opener: Opener) -> None:
    other = opener()
    other.forget(ana)

    with pytest.raises(NoSuchLearner):
        record.note_answer(ana, TYPE, note())

    assert record.enrol("Ben").id != ana.id
    assert record.saved


def test_nothing_is_told_of_a_record_in_order(record: Record, opener: Opener, ana: Learner) -> None:
    record.note_answer(ana, TYPE, note())
    record.close()

    assert record.news() == ()
    assert opener().news() == ()


def test_whatever_was_typed_is_kept_as_far_as_it_can_be(record: Record, ana: Learner, opener: Opener) -> None:
    typed = "half \ud83d a sign, \x00 nothing, \x1b[31m and \u202e on " + "x" * 30_000

    record.note_answer(ana, TYPE, note()._replace(answer=typed, question=typed))

    (kept,) = opener().history(ana, TYPE)
    assert kept.note.answer.startswith("half ? a sign, \x00 nothing, \x1b[31m and \u202e on xxx")
    assert len(kept.note.answer) == 20_000
