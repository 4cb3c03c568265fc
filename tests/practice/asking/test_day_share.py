"""What a day still asks, the same at the beginning of a sitting, at its end and in the progress."""

from datetime import date, timedelta

import pytest

from assistant.practice.asking.day_share import MOST_A_DAY, today_of
from tests.practice.asking.test_choosing import NOW, SECTIONS, asked, spread


def test_of_a_day_half_is_new_and_what_fades_beyond_waits() -> None:
    standings = [*spread(200), *(asked(300 + n, 20, section=SECTIONS[n % 4]) for n in range(80))]

    found = today_of(standings, NOW, MOST_A_DAY, NOW.date() + timedelta(days=5))

    assert (found.again, found.new, found.waiting, found.is_done) == (30, 30, 50, False)


def test_on_the_first_day_nothing_waits() -> None:
    found = today_of(spread(529), NOW, MOST_A_DAY, NOW.date() + timedelta(days=14))

    assert (found.again, found.new, found.waiting) == (0, MOST_A_DAY, 0)


@pytest.mark.parametrize("ready_by", [None, date(2026, 11, 26)])
def test_a_day_whose_share_is_done_asks_nothing_more(ready_by: date | None) -> None:
    standings = [asked(number, 20) for number in range(80)]

    found = today_of(standings, NOW, 0, ready_by)

    assert (found.chosen, found.waiting, found.is_done) == ((), 80, True)


def test_without_a_share_all_that_is_due_is_asked() -> None:
    assert len(today_of([asked(number, 20) for number in range(80)], NOW).chosen) == 80
