"""What a revision changed since a learner was asked is due at once, and says what it was."""

from datetime import date, timedelta
from pathlib import Path
from random import Random

import pytest

from assistant.conversation.opening import open_knowledge
from assistant.knowledge.base import Base
from assistant.practice.asking.choosing import CHANGED, plan
from assistant.practice.asking.due import asking_on, due, note_on
from assistant.practice.asking.pool import drillable
from assistant.practice.asking.standing import KNOWN, SHAKY, UNKNOWN, Standing, Was, standings
from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import Learner
from tests.practice.asking.conftest import START, Clock, Library

TODAY = date(2026, 11, 25)
NEXT_REVISION = ('revision: "3"', 'revision: "4"')
NEW_VALUE = ("maximum: 165 kt", "maximum: 170 kt")
FOLLOWED = ('asks: ["deceleration full pedals"]', 'asks: ["deceleration full pedals"]\n    then: ["how hard"]')
NEW_CHANGE = ("formerly: 150 kt, now: 165 kt, since: HB 3", "formerly: 165 kt, now: 170 kt, since: HB 4")


def answer(record: Record, learner: Learner, base: Base, name: str, mark: str = "right") -> None:
    item = drillable(base, TODAY).get(name)
    assert item is not None
    record.note_answer(
        learner, "second", note_on(item, "Q?", "A", mark, float(mark == "right"), expected=item.statement)
    )


def standing(record: Record, learner: Learner, base: Base, name: str) -> Standing:
    return next(each for each in standings(record, learner, drillable(base, TODAY)) if each.item.record == name)


def test_a_change_of_the_new_revision_is_due_at_once(
    record: Record, ana: Learner, library: Library, clock: Clock
) -> None:
    answer(record, ana, library(), "gear-down-speed")
    revised = library(NEXT_REVISION, NEW_VALUE, NEW_CHANGE)

    found = standing(record, ana, revised, "gear-down-speed")

    assert found.was == Was("165 kt", "170 kt", "HB 4")
    assert found.was.line == "Changed since you were last asked (HB 4): now 170 kt, formerly 165 kt."
    assert found.level(clock.now) == SHAKY
    assert found.recall(clock.now) == 0.0
    first = due(record, ana, drillable(revised, TODAY), clock.now, Random(1))[0]
    assert (first.record, first.why) == ("gear-down-speed", CHANGED)


def test_a_record_that_reads_otherwise_in_the_new_revision_says_what_it_was(
    record: Record, ana: Learner, library: Library
) -> None:
    for name in ("brake-start", "slowing"):
        answer(record, ana, library(), name)
    revised = library(NEXT_REVISION, ("maximum: 210 degC", "maximum: 190 degC"))

    was = standing(record, ana, revised, "brake-start").was

    assert was is not None
    assert was.news == "New since you were last asked (HB 4): was at most 210 °C, now at most 190 °C."
    assert standing(record, ana, revised, "slowing").was is None


def test_only_what_a_revision_changed_is_changed_however_the_knowledge_was_opened(
    record: Record, ana: Learner, library: Library, tmp_path: Path
) -> None:
    """What is compiled holds more ways of asking than what is read again from the cache."""
    opened = [open_knowledge(library(FOLLOWED).root, "second", cache_dir=str(tmp_path / "cache"))[0] for _ in (1, 2)]
    assert opened[0] is not None and opened[1] is not None
    compiled, again = (drillable(each.base, TODAY) for each in opened if each is not None)
    assert [each.content for each in compiled.items] == [each.content for each in again.items]
    for name in opened[1].base.order:
        answer(record, ana, opened[1].base, name)
    revised = library(NEXT_REVISION, ("maximum: 210 degC", "maximum: 190 degC"))

    found = [each.item.record for each in standings(record, ana, drillable(revised, TODAY)) if each.was]

    assert found == ["brake-start"]


def test_an_answer_kept_without_what_the_record_said_is_no_sign_of_a_change(
    record: Record, ana: Learner, library: Library
) -> None:
    item = drillable(library(), TODAY).get("brake-start")
    assert item is not None
    record.note_answer(ana, "second", note_on(item._replace(content="0123456789abcdef"), "Q?", "A", "right", 1.0))

    assert standing(record, ana, library(NEXT_REVISION), "brake-start").was is None


def test_what_the_document_lists_as_changed_is_asked_before_what_only_reads_otherwise(
    record: Record, ana: Learner, library: Library, clock: Clock
) -> None:
    for name in ("brake-start", "gear-down-speed"):
        answer(record, ana, library(), name)
    revised = library(NEXT_REVISION, NEW_VALUE, NEW_CHANGE, ("maximum: 210 degC", "maximum: 190 degC"))

    chosen = due(record, ana, drillable(revised, TODAY), clock.now, Random(3))[:2]

    assert [(each.record, each.why) for each in chosen] == [("gear-down-speed", CHANGED), ("brake-start", CHANGED)]


def test_once_asked_under_the_new_revision_it_is_no_longer_changed(
    record: Record, ana: Learner, library: Library, clock: Clock
) -> None:
    answer(record, ana, library(), "gear-down-speed")
    revised = library(NEXT_REVISION, NEW_VALUE, NEW_CHANGE)
    clock.now += timedelta(days=1)

    answer(record, ana, revised, "gear-down-speed")

    assert standing(record, ana, revised, "gear-down-speed").was is None


def test_a_change_learned_with_its_own_revision_is_none(record: Record, ana: Learner, library: Library) -> None:
    answer(record, ana, library(), "gear-down-speed")

    assert standing(record, ana, library(), "gear-down-speed").was is None
    assert standing(record, ana, library(NEXT_REVISION), "gear-down-speed").was is None


def test_a_temporary_revision_counts(record: Record, ana: Learner, library: Library) -> None:
    answer(record, ana, library(), "slowing")
    revised = library(('revision: "3"', 'revision: "3"\n    temporary_revisions: [3-1]'), ("2.5 m/s2", "2.4 m/s2"))

    was = standing(record, ana, revised, "slowing").was

    assert was is not None
    assert was.since == "HB 3 + 3-1"


@pytest.mark.parametrize(
    ("marks", "days", "level"),
    [
        ([], 0, UNKNOWN),
        (["wrong"], 0, UNKNOWN),
        (["right"], 1, KNOWN),
        (["right"], 3, SHAKY),
        (["right", "missed"], 0, SHAKY),
        (["missed", "right"], 0, KNOWN),
        (["missed", "missed"], 0, UNKNOWN),
    ],
)
def test_known_shaky_and_unknown(
    record: Record, ana: Learner, library: Library, clock: Clock, marks: list[str], days: int, level: str
) -> None:
    base = library()
    for mark in marks:
        answer(record, ana, base, "slowing", mark)
        clock.now += timedelta(minutes=1)

    assert standing(record, ana, base, "slowing").level(clock.now + timedelta(days=days)) == level


def test_another_learner_and_another_type_know_nothing_of_it(record: Record, ana: Learner, library: Library) -> None:
    base = library()
    answer(record, ana, base, "slowing")
    pool = drillable(base, TODAY)

    assert all(each.card is None for each in standings(record, record.enrol("Ben"), pool))
    assert all(each.card is None for each in standings(record, ana, pool._replace(type_id="third")))


def test_nobody_is_asked_what_is_out_of_force(record: Record, ana: Learner, library: Library, clock: Clock) -> None:
    answer(record, ana, library(), "pump-failure", "wrong")
    withdrawn = library(("Tarrowby 40 Quick List", "Tarrowby 40 Quick List (withdrawn)"))
    clock.now = START + timedelta(days=9)

    asked = plan(standings(record, ana, drillable(withdrawn, TODAY)), clock.now, Random(1), count=50)

    assert len(asked) == len(withdrawn.order) - 1
    assert "pump-failure" not in [each.record for each in asked]


def test_a_class_question_carries_the_revisions_of_its_record(library: Library) -> None:
    item = drillable(library(), TODAY).get("slowing")
    assert item is not None

    asking = asking_on(item, "How much?", "2.5 m/s²", ("HB 5.1, revision 3",))

    assert (asking.record, asking.revisions, asking.content) == ("slowing", (("HB", "3"),), item.content)
