"""How a learner stands is counted and expected as the answers have it."""

from datetime import date, timedelta

import pytest

from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import Learner
from assistant.practice.progress.overview import Overview, overview
from assistant.practice.progress.plain import overview_values
from assistant.practice.recall import expected_recall
from tests.practice.progress.conftest import DEFERENCE, NAME, NOW, POOL, READY_BY


def test_every_record_is_counted_once_in_its_section(seen: Overview) -> None:
    assert [(each.section, each.records) for each in seen.sections] == [("32-30", 5), ("32-40", 10), ("general", 5)]
    assert (seen.total.known, seen.total.shaky, seen.total.unknown) == (3, 3, 14)
    assert sum(each.known for each in seen.sections) == seen.total.known


def test_what_is_expected_is_the_mean_over_all_records(record: Record, learner: Learner, seen: Overview) -> None:
    cards = record.cards(learner, "sample")
    expected = sum(expected_recall(card, NOW) for name, card in cards.items() if name != "r2") / 20

    assert seen.total.today == pytest.approx(expected)
    assert seen.total.ready is not None
    assert 0 < seen.total.ready < seen.total.today


def test_what_was_taken_for_what(seen: Overview) -> None:
    (confusion,) = seen.confusions

    assert (confusion.record, confusion.other, confusion.times) == ("r1", "r0", 3)
    assert confusion.other_title == "Title of <0>"
    assert confusion.last == NOW - timedelta(days=1, hours=1)


def test_what_is_missed_again_and_again(seen: Overview) -> None:
    assert [(each.record, each.paragraph, each.missed, each.asked) for each in seen.missed] == [("r1", "AOM 1.1", 3, 3)]


def test_what_a_revision_changed_and_what_today_asks(seen: Overview) -> None:
    assert [(each.record, each.line) for each in seen.changed] == [
        ("r2", "Changed since you were last asked (AOM 8): now 205 kt, formerly 200 kt.")
    ]
    assert (seen.pace.days, seen.pace.unseen, seen.pace.begun) == (16, 12, 2)
    assert seen.pace.due == 5


def test_days_without_an_answer_are_there_too(seen: Overview) -> None:
    assert len(seen.days) == 14
    assert (seen.days[0].day, seen.days[-1].day) == (date(2026, 11, 12), date(2026, 11, 25))
    assert seen.days[-1][1:] == (2, 0, 0)
    assert sum(sum(day[1:]) for day in seen.days) == seen.answers == 10
    assert seen.overruled == 1


def test_nobody_asked_yet_is_unknown_throughout(nothing_seen: Overview) -> None:
    assert (nothing_seen.total.known, nothing_seen.total.shaky, nothing_seen.total.unknown) == (0, 0, 20)
    assert (nothing_seen.total.today, nothing_seen.total.ready) == (0.0, None)


def test_an_empty_pool_is_no_fault(record: Record, learner: Learner) -> None:
    empty = overview(record, learner, POOL._replace(items=()), NOW, READY_BY)

    assert (empty.sections, empty.total.today, empty.pace.new) == ((), 0.0, 0)


def test_the_plain_values(seen: Overview) -> None:
    values = overview_values(seen, DEFERENCE)

    assert values["learner"] == NAME
    assert values["ready_by"] == "2026-12-10"
    assert values["total"]["records"] == 20
    left = {"again": 5, "new": seen.pace.new, "waiting": 0}
    assert values["today"] == {**left, "begun": 2, "unseen": 12, "days_left": 16}
    assert values["not_asked"][0] == {"record": "x1", "why": "out of force", "line": "OLD 1 is historic"}
    assert values["cautions"] == ["Formative: not a record of qualification.", DEFERENCE]
