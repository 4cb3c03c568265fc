"""Two weeks of a learner at the prompt, a day at a time by DOWNLOCK_TODAY: what is asked, kept and known at the end.

The learner forgets as people do, answers in the words of the book when remembering, and is marked by the program.
"""

import io
import re
from collections import Counter
from datetime import date, datetime, timedelta
from pathlib import Path
from random import Random
from typing import NamedTuple

import pytest

from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn
from assistant.practice.keeping.record import open_record
from assistant.practice.keeping.rows import Answered
from assistant.terminal.arguments import parse
from assistant.terminal.rehearsing import sit
from assistant.terminal.screen import Screen
from assistant.terminal.session import open_session
from assistant.terminal.simulated import clock
from assistant.terminal.sitting_room import Wanted

FIRST = date(2026, 11, 25)
READY_BY = date(2026, 12, 8)
MISSED_DAYS = (5, 9)
SECTION = "32-60"


class Learner:
    """Sits at the prompt, reads the question that was shown last, and answers from a memory that fades."""

    def __init__(self, know: Knowledge, chance: Random) -> None:
        self._know = know
        self._chance = chance
        self._lasts: dict[str, float] = {}
        self._day: dict[str, int] = {}
        self.today = 0
        self.screen = io.StringIO()

    def ask(self, prompt: str) -> tuple[str, float | None]:
        if not prompt.startswith("Answer"):
            return "", None
        question = self._question()
        right = answer_turn(question, Context(), self._know)[0]
        known = self._remembers(right.entry or question)
        self._lasts[right.entry or question] = self._lasts.get(right.entry or question, 2.0) * (2.4 if known else 1.0)
        self._day[right.entry or question] = self.today
        return (right.text, 2.0) if known else (self._chance.choice(["don't know", "UNABLE", "pass"]), 2.0)

    def _question(self) -> str:
        """The text under the last heading, which may take several lines."""
        under = re.split(r"^\d+/\d+ \[[#.]*\] .*\n", self.screen.getvalue(), flags=re.MULTILINE)[-1]
        told = [line for line in under.splitlines() if not line.startswith(("Once more", "A revision"))]
        return " ".join(told)

    def _remembers(self, what: str) -> bool:
        if what not in self._lasts:
            return self._chance.random() < 0.3
        days = self.today - self._day[what]
        return self._chance.random() < 0.5 ** (days / self._lasts[what]) or days == 0


class Weeks(NamedTuple):
    shown: list[str]
    kept: tuple[Answered, ...]


@pytest.fixture(scope="module")
def weeks(tmp_path_factory: pytest.TempPathFactory) -> Weeks:
    home = tmp_path_factory.mktemp("weeks")
    shown = []
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("DOWNLOCK_HOME", str(home))
        patch.setenv("DOWNLOCK_CACHE", str(tmp_path_factory.mktemp("cache")))
        parsed = parse(["rehearse", "--learner", "Ana", "--ready-by", f"{READY_BY}", "--topic", SECTION])
        session = open_session(parsed)
        learner = Learner(session.knowledge, Random(4))
        for day in range(14):
            if day in MISSED_DAYS:
                continue
            patch.setenv("DOWNLOCK_TODAY", f"{FIRST + timedelta(days=day)}")
            learner.today, learner.screen = day, io.StringIO()
            wanted = Wanted(None, None, (SECTION,), f"{day}")
            assert sit(parsed, session, wanted, learner, Screen(learner.screen, 80), True, clock()) == 0
            shown.append(learner.screen.getvalue())
        kept = _kept(home)
    return Weeks(shown, kept)


def _kept(home: Path) -> tuple[Answered, ...]:
    with open_record(str(home), clock) as record:
        ana = record.find("Ana")
        assert ana is not None and ana.ready_by == READY_BY
        return record.history(ana, "aldermere_120")


def _day(each: Answered) -> int:
    return (datetime.astimezone(each.at).date() - FIRST).days


def test_every_day_is_kept_and_none_but_those_that_were_sat(weeks: Weeks) -> None:
    assert {_day(each) for each in weeks.kept} == set(range(14)) - set(MISSED_DAYS)
    assert all(out.rstrip().endswith("Kept in the record of Ana.") for out in weeks.shown)


def test_new_records_are_spread_and_end_before_the_last_day(weeks: Weeks) -> None:
    first: dict[str, int] = {}
    for each in weeks.kept:
        first.setdefault(each.note.record, _day(each))
    begun = Counter(first.values())

    assert max(begun.values()) <= 3 * len(first) / 14 + 1
    assert len(begun) >= 7
    assert 13 not in begun
    assert "everything was asked at least once" in weeks.shown[-1]


def test_what_is_remembered_is_marked_right_and_what_is_not_is_missed(weeks: Weeks) -> None:
    """Answers in the book's own words: hardly any is not taken as right, and no refusal is."""
    refused = [each for each in weeks.kept if each.note.answer in ("don't know", "UNABLE", "pass")]
    answered = [each for each in weeks.kept if each not in refused]

    assert {each.note.mark for each in refused} == {"missed"}
    marks = Counter(each.note.mark for each in answered)
    assert marks["right"] >= 0.9 * len(answered), [each.note for each in answered if each.note.mark != "right"]


def test_what_was_missed_comes_again_sooner_than_what_was_known(weeks: Weeks) -> None:
    gaps: dict[bool, list[int]] = {True: [], False: []}
    last: dict[str, Answered] = {}
    for each in weeks.kept:
        if before := last.get(each.note.record):
            gaps[before.note.mark == "right"].append(_day(each) - _day(before))
        last[each.note.record] = each

    assert gaps[True] and gaps[False]
    assert sum(gaps[False]) / len(gaps[False]) < sum(gaps[True]) / len(gaps[True])


def test_nothing_is_asked_twice_in_the_same_words_on_a_day_unless_it_was_not_known(weeks: Weeks) -> None:
    seen: dict[tuple[int, str], str] = {}
    for each in weeks.kept:
        where = _day(each), each.note.question
        assert seen.get(where) in (None, "missed", "wrong")
        seen[where] = each.note.mark


def test_other_questions_are_put_on_a_record_as_it_comes_again(weeks: Weeks) -> None:
    asked: dict[str, list[str]] = {}
    for each in weeks.kept:
        asked.setdefault(each.note.record, []).append(each.note.question)
    several = [questions for questions in asked.values() if len(questions) > 2]

    assert several
    assert sum(len(set(questions)) > 1 for questions in several) > len(several) / 3


def test_the_learner_is_ready(weeks: Weeks) -> None:
    last = {each.note.record: each.note.mark for each in weeks.kept}

    assert sum(mark == "right" for mark in last.values()) > 0.85 * len(last)
    assert re.search(r"Ready by 2026-12-08: 1 day with today", weeks.shown[-1])
