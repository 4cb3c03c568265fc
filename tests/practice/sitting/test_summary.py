"""What a sitting came to, and what is to come, in a few lines."""

from datetime import date

import pytest

from assistant.practice.asking.choosing import CHANGED, FADING, NEW, Choice, Pace
from assistant.practice.asking.pool import Pool
from assistant.practice.asking.standing import Standing
from assistant.practice.recall import MISSED
from assistant.practice.sitting import put, said
from assistant.practice.sitting_state import Desk, Given, State
from assistant.practice.sitting_summary import Ahead, ready_line, summary_lines, today_line
from tests.practice.sitting.conftest import Putter


def given(asked: Putter, desk: Desk, *typed: tuple[str, str]) -> tuple[Given, ...]:
    state = State()
    for record, line in typed:
        state = put(state, asked(record, "figure"), "1/2", 0.0).state
        for each in line.split("|"):
            state = said(state, each, None, desk).state
        state = said(state, "", None, desk).state
    return state.given


def lines(answers: tuple[Given, ...], ahead: Ahead | None = None, saved: bool = True) -> list[str]:
    return [line.text for line in summary_lines(answers, ahead, "Ana", saved)]


def test_marks_are_counted_and_what_was_weak_is_named_with_its_paragraph(asked: Putter, desk: Desk) -> None:
    told = lines(given(asked, desk, ("vlo-extension", "230 kt"), ("vle", "hint|255 kt"), ("free-fall-speed", "pass")))

    assert told[0] == "3 answered, 1 with a hint: 1 right, 1 partly right, 1 missed."
    assert told[1] == "To read again:"
    assert told[2].startswith("- LIM 3.1: maximum speed with the gear down, VLE")
    assert told[2].endswith("(partly right)")
    assert told[-1] == "Kept in the record of Ana."


def test_what_was_known_at_last_is_not_to_be_read_again(asked: Putter, desk: Desk) -> None:
    told = lines(given(asked, desk, ("vlo-extension", "pass"), ("vlo-extension", "230 kt")))

    assert "To read again:" not in told


def test_overruled_marks_are_told(asked: Putter, desk: Desk) -> None:
    told = lines(given(asked, desk, ("vlo-extension", "205|overrule right")))

    assert told[:2] == ["1 answered: 1 right.", "1 mark overruled by you, and recorded so."]


def test_what_is_to_come_is_told(asked: Putter, desk: Desk) -> None:
    ahead = Ahead(4, 7, Pace(15, 120, 10, 2, 3), date(2026, 12, 10))
    told = lines(given(asked, desk, ("vlo-extension", "230 kt")), ahead, saved=False)

    assert "Left today: 4. Fading by tomorrow: 7." in told
    assert "Ready by 2026-12-10: 15 days with today, 120 not asked yet." in told
    assert told[-1] == "Not kept: the record of Ana cannot be written."


def test_what_all_of_it_takes_is_reckoned_on_the_first_day() -> None:
    told = ready_line(date(2026, 12, 10), Pace(16, 480, 50, 0, 0))

    assert "All of it, until it is known, would take about 60 min a day on average until then; 30 min, or 60" in told
    assert told.endswith("60 questions a day ask each at least once, limits and memory items first.")
    assert "a day" not in ready_line(date(2026, 12, 10), Pace(16, 48, 5, 0, 0))


@pytest.mark.parametrize(
    ("number", "told"),
    [
        (18, "about 140 questions a day on average until then; 18 questions a day reach about 126 of those not"),
        (100, "about 140 questions a day on average until then; 100 questions a day ask each at least once, li"),
        (140, ""),
        (500, ""),
    ],
)
def test_a_number_that_is_too_small_is_said_with_what_it_takes(number: int, told: str) -> None:
    line = ready_line(date(2026, 12, 8), Pace(14, 480, 50, 0, 25), number)

    assert told in line
    assert ("a day" in line) == bool(told)


@pytest.mark.parametrize(
    ("days", "done", "told"),
    [
        (3, False, "3 days with today, 80 not asked yet."),
        (3, True, "2 days after today, 80 not asked yet."),
        (1, False, "1 day with today, 80 not asked yet."),
        (1, True, "that is today, and its questions are answered; 80 not asked yet."),
    ],
)
def test_a_day_that_is_done_is_none_of_those_left(days: int, done: bool, told: str) -> None:
    assert told in ready_line(date(2026, 12, 8), Pace(days, 80, 50, 0, 25), done=done)
    assert done is False or days > 1 or "a day" not in ready_line(date(2026, 12, 8), Pace(1, 80, 50, 0, 25), done=True)


def test_what_was_missed_is_not_told_as_fading(pool: Pool) -> None:
    missed = Choice(Standing(pool.items[0], word=MISSED), FADING, 0.0)

    assert today_line([missed] * 4).startswith("Today: 4 to ask (4 missed), ")


def test_nothing_answered_is_said_and_no_more() -> None:
    assert lines(()) == ["Nothing was answered."]


def test_today_is_counted_by_why_with_the_time_it_takes(pool: Pool) -> None:
    choices = [Choice(Standing(item), why, 0.0) for item, why in
               zip(pool.items, [CHANGED, FADING, FADING, *[NEW] * 10], strict=False)]  # fmt: skip

    told = "Today: 13 to ask (1 changed, 2 fading, 10 new), about 10 min, and again what you miss."
    assert today_line(choices) == told
    assert today_line(()) == "Nothing is due today; --number 10 asks ahead of time."
    assert "about 100 min, and again what you miss; --minutes 30 takes the" in today_line(choices[-1:] * 200)


def test_what_is_due_beyond_a_days_share_is_said_with_how_to_have_more(pool: Pool) -> None:
    sixty = [Choice(Standing(pool.items[0]), FADING, 0.0)] * 60

    told = today_line(sixty, waiting=129)
    assert told.startswith("Today: 60 to ask (60 fading), about 30 min")
    assert told.endswith("129 more are to be asked again: a day asks 60 at most, unless you say --number or --minutes.")
    mixed = [*sixty[:30], *[Choice(Standing(pool.items[0]), NEW, 0.0)] * 30]
    assert "keeps places for what is new, so that all of it comes up, unless" in today_line(mixed, waiting=129)
    assert "more" not in today_line(sixty)
    assert today_line((), waiting=1).startswith("Today's 60 questions are answered; 1 more is to be asked again.")


def test_a_day_whose_share_is_done_says_what_waits(asked: Putter, desk: Desk) -> None:
    ahead = Ahead(3, 7, Pace(15, 120, 10, 2, 33), date(2026, 12, 10), waiting=41)
    told = lines(given(asked, desk, ("vlo-extension", "230 kt")), ahead)

    assert "Left of today's 60: 3; 41 more are to be asked again. Fading by tomorrow: 7." in told
    told = lines(given(asked, desk, ("vlo-extension", "230 kt")), ahead._replace(left=0, done=True))
    assert "Today's 60 questions are answered; 41 more are to be asked again. Fading by tomorrow: 7." in told


@pytest.mark.parametrize(
    ("minutes", "told"),
    [
        (10, "10 min, or 20 questions a day reach about 170 of those"),
        (45, "45 min, or 90 questions a day ask each"),
        (60, ""),
    ],
)
def test_minutes_that_were_named_are_those_that_are_spoken_of(minutes: float, told: str) -> None:
    line = ready_line(date(2026, 12, 10), Pace(16, 480, 50, 0, 0), minutes=minutes)

    assert told in line
    assert ("min a day" in line) == bool(told)
    assert "30 min" not in line
