"""A class of twelve with a record of its own, led by lines as an instructor types them."""

from collections.abc import Callable, Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from random import Random

import pytest

from assistant.conversation.opening import Knowledge, open_knowledge
from assistant.practice.asking.due import asking_on
from assistant.practice.asking.pool import Pool, drillable
from assistant.practice.keeping.record import Record, open_record
from assistant.practice.keeping.rows import Asking, Seated
from assistant.practice.leading import case
from assistant.practice.leading.holding import Holder
from assistant.practice.leading.lead import said
from assistant.practice.leading.plan import Aims, aims_values
from assistant.practice.leading.standing import Standing
from assistant.practice.leading.steps import Desk, Step
from assistant.practice.making import make_questions
from assistant.practice.making.question import Question
from assistant.practice.marking.mark import Marker
from assistant.practice.sitting_marks import Taken, take

NAMES = ("Ana", "Ben", "Cleo", "Dan", "Eva", "Finn", "Gita", "Hugo", "Ida", "Jon", "Kim", "Leo")


class Class:
    """A class that is led: type lines, look where it stands."""

    def __init__(self, record: Record, desk: Desk, sitting: int) -> None:
        self.record, self.desk = record, desk
        self.seconds = 0.0
        self.holder = Holder(record.sittings, sitting, lambda: self.seconds)
        self.mode = ""
        self.steps: list[Step] = []

    def type(self, *lines: str) -> Standing:
        """Type lines one after the other; return where the class then stands."""
        for line in lines:
            step = said(self.holder.look(), self.mode, line, self.desk)
            self.holder.do(step.acts)
            self.mode = step.mode
            self.steps.append(step)
        return self.holder.standing

    @property
    def told(self) -> str:
        """What the last line was answered with."""
        return "\n".join(line.text for line in self.steps[-1].lines)

    @property
    def standing(self) -> Standing:
        return self.holder.standing


Begin = Callable[..., Class]


@pytest.fixture(scope="session")
def know() -> Knowledge:
    opened, problems = open_knowledge(None, None)
    assert opened is not None, problems
    return opened


@pytest.fixture(scope="session")
def pool(know: Knowledge) -> Pool:
    return drillable(know.base, datetime(2026, 11, 25, tzinfo=UTC).date())


@pytest.fixture(scope="session")
def speeds(know: Knowledge) -> tuple[Question, ...]:
    """The maximum speed for extending the gear, asked as a figure."""
    found = make_questions(know, "1", entries=("vlo-extension",), forms=("figure",))
    return found[:1]


@pytest.fixture
def record(tmp_path: Path) -> Iterator[Record]:
    moments = (datetime(2026, 11, 25, 9, tzinfo=UTC) + timedelta(seconds=each) for each in range(10**6))
    with open_record(str(tmp_path / "home"), lambda: next(moments)) as opened:
        yield opened


@pytest.fixture
def begin(record: Record, know: Knowledge, pool: Pool) -> Begin:
    def beginner(
        questions: tuple[Question, ...], names: tuple[str, ...] = NAMES, minutes: float = 0, seed: int = 1,
        teams: tuple[str, ...] = ("",), key_elsewhere: bool = False,
    ) -> Class:  # fmt: skip
        marker, chance = Marker(know), Random(seed)

        def marked(question: Question, text: str) -> Taken:
            return take(question, text, marker, know)

        def asking(question: Question, shown: str) -> Asking:
            item = pool.get(question.entry)
            return asking_on(item, shown, question.key.says) if item else Asking("own", shown, question.key.says)

        desk = Desk(
            chance, marked, asking,
            lambda question: case.gone_on(question, know, "1"),
            lambda question: case.why(question, know), lambda asked: case.debrief(asked, know),
            key_elsewhere=lambda: key_elsewhere, names_failure=lambda question: bool(case.told_in(question, know)),
        )  # fmt: skip
        roster = [Seated(name, teams[place % len(teams)]) for place, name in enumerate(names)]
        options = aims_values(Aims(questions, "1", minutes), "aldermere_120")
        sitting = record.sittings.begin("aldermere_120", roster, "Speeds", None, options)
        return Class(record, desk, sitting.id)

    return beginner
