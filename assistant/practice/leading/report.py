"""What a class knew and what it confused, counted from its turns: one record that text, page and CSV are made from.

Persons stand in it apart from everything else, so that what is handed round can leave them out.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from datetime import datetime

from assistant.frozen import NamedTuple
from assistant.practice.asking.pool import GENERAL, OWN_SECTION, Pool, section_name
from assistant.practice.keeping.rows import MARKED, Seat, Turn
from assistant.practice.leading.passes import PASSED, with_passes
from assistant.practice.leading.shown import count, counted, percent, without_names
from assistant.practice.leading.standing import Standing
from assistant.practice.leading.telling import Apart, Pair
from assistant.practice.making.question import MEMORY, OWN, STEPS, Question
from assistant.practice.recall import HALF, MISSED, PARTLY, RIGHT, WRONG
from assistant.practice.sections import titled

FORMATIVE = "Formative, not a record of qualification."
_TEACH_BELOW = 0.7
"""Share of the points below which a section is to be taught again."""
_MOST = 8


class Section(NamedTuple):
    """A section, or all of them: turns by mark, and the share of the points that was said, 0 to 1."""

    section: str
    name: str
    right: int
    partly: int
    wrong: int
    missed: int
    hinted: int
    share: float

    @property
    def full_name(self) -> str:
        """Its number, where it has one, and its name."""
        return titled(self.section, self.name)

    @property
    def asked(self) -> int:
        """How many turns there were."""
        return self.right + self.partly + self.wrong + self.missed


class Confusion(NamedTuple):
    """What was taken for what, by how many of how many, and what tells the two apart."""

    line: str
    asked: str
    taken: str
    times: int
    among: int
    paragraphs: tuple[str, str]
    question: str
    key: str


class Missed(NamedTuple):
    """A question that was not answered rightly: of how many turns, its paragraphs, what was said instead.

    hands: where more of the class thought the same as showed, asked and failed count people and not turns.
    """

    question: str
    paragraphs: str
    expected: str
    asked: int
    failed: int
    answers: tuple[str, ...]
    hands: bool = False

    @property
    def of(self) -> str:
        """How many of how many."""
        return f"{self.failed} of {self.asked}{', by a show of hands' if self.hands else ''}"


class Person(NamedTuple):
    """How one person did: for the instructor's own copy alone. passed: how many of those missed were passed on."""

    name: str
    team: str
    right: int
    partly: int
    wrong: int
    missed: int
    passed: int
    hinted: int
    share: float
    to_learn: tuple[str, ...]

    @property
    def turns(self) -> int:
        """How many turns the person answered."""
        return self.right + self.partly + self.wrong + self.missed


class Team(NamedTuple):
    """How a team did: its turns, and the share of the points."""

    name: str
    turns: int
    share: float


class Asked(NamedTuple):
    """One turn as it goes into a table: without a person but for `name`, which only the own copy shows."""

    number: int
    section: str
    record: str
    question: str
    paragraphs: str
    mark: str
    share: float
    hinted: bool
    passed: int
    hands: int
    overruled: bool
    answer: str
    confused_with: str
    name: str
    team: str


class ClassReport(NamedTuple):
    """A class looked back on. persons and the names in `asked` are for the instructor's own copy alone."""

    title: str
    began: datetime
    ended: datetime | None
    seats: int
    sections: tuple[Section, ...]
    total: Section
    confusions: tuple[Confusion, ...]
    missed: tuple[Missed, ...]
    remedial: tuple[str, ...]
    teams: tuple[Team, ...]
    persons: tuple[Person, ...]
    asked: tuple[Asked, ...]

    @property
    def size(self) -> str:
        """How many questions there were, and turns where some went to several people."""
        questions, turns = len({each.number for each in self.asked}), len(self.asked)
        told = count(questions, "question")
        return told if turns == questions else f"{told}, {count(turns, 'turn')}"


def report_of(standing: Standing, pool: Pool, tell_apart: Apart) -> ClassReport:
    """Return the report of a class, as far as it has come."""
    marked = [turn for turn in standing.turns if turn.phase == MARKED]
    turns = list(with_passes(marked, standing.seats, standing.plan.unhinted))
    names = tuple(seat.name for seat in standing.seats)
    asked = tuple(_asked(turn, standing, pool, names) for turn in turns)
    named = sorted({each.section for each in asked}, key=lambda name: (name == GENERAL, name))
    sections = tuple(_section(name, [each for each in asked if each.section == name]) for name in named)
    confusions = tuple(_confusions(asked, len(standing.seats), pool, tell_apart))
    missed = tuple(_missed(asked, standing, turns))
    return ClassReport(
        standing.sitting.title, standing.sitting.began, standing.sitting.ended, len(standing.seats), sections,
        _section("", asked), confusions, missed,
        tuple(dict.fromkeys(_remedial(sections, asked, confusions, standing, turns))),
        tuple(_teams(standing.seats, turns)), tuple(_person(seat, standing, turns, pool) for seat in standing.seats),
        asked,
    )  # fmt: skip


def failed(turn: Turn | Asked) -> bool:
    """Whether a turn shows that something is not known: wrong, missed, or less than half of the points."""
    return turn.mark in (WRONG, MISSED) or (turn.mark == PARTLY and turn.share < HALF)


def _asked(turn: Turn, standing: Standing, pool: Pool, names: Sequence[str]) -> Asked:
    question = standing.question(turn)
    item = pool.get(turn.asking.record)
    otherwise = OWN_SECTION if question is not None and question.form == OWN else GENERAL
    section = (question.section if question else "") or (item.section if item else "") or otherwise
    seat = next((each for each in standing.seats if each.id == turn.seat), None)
    return Asked(
        turn.number, section, turn.asking.record, _whole(turn, question), _paragraphs(turn, question), turn.mark,
        turn.share, turn.hinted, len(turn.passed), standing.plan.hands.get(turn.number, 0), turn.overruled,
        without_names(turn.answer, names), turn.confused_with, seat.name if seat else "", seat.team if seat else "",
    )  # fmt: skip


def _whole(turn: Turn, question: Question | None) -> str:
    return question.text if question is not None else turn.asking.question


def _paragraphs(turn: Turn, question: Question | None) -> str:
    if question is None:
        return ", ".join(source.split(",")[0] for source in turn.asking.sources)
    return ", ".join(dict.fromkeys(f"{each.document} {each.paragraph}" for each in question.sources))


def _section(name: str, asked: Sequence[Asked]) -> Section:
    marks = Counter(each.mark for each in asked)
    share = sum(each.share for each in asked) / len(asked) if asked else 0.0
    return Section(
        name, section_name(name) if name else "All", marks[RIGHT], marks[PARTLY], marks[WRONG], marks[MISSED],
        sum(each.hinted for each in asked), share,
    )  # fmt: skip


def _confusions(asked: Sequence[Asked], seats: int, pool: Pool, tell_apart: Apart) -> Iterable[Confusion]:
    found = Counter((each.record, each.confused_with) for each in asked if each.confused_with and each.mark != RIGHT)
    counts = {}
    for (record, other), times in found.items():
        own = [each for each in asked if each.record == record]
        hands = max((each.hands for each in own if each.confused_with == other), default=0)
        counts[record, other] = (hands, seats) if hands > times else (times, len(own))
    for (record, other), (times, among) in sorted(counts.items(), key=lambda pair: -pair[1][0]):
        told = tell_apart(record, other)
        if told is not None:
            yield Confusion(
                _took(times, among, among != seats, told), told.one, told.other, times, among, told.paragraphs,
                told.question, told.key,
            )  # fmt: skip


def _took(times: int, among: int, asked: bool, told: Pair) -> str:
    """Return who took what for what; what a single answer shows is told as no more than that."""
    if times == 1:
        return f"One answer alone: the {told.other} was told for the {told.one}."
    of = f"{counted(times).capitalize()} of {counted(among)}"
    return f"{of} {'asked ' if asked else ''}took the {told.other} for the {told.one}."


def _missed(asked: Sequence[Asked], standing: Standing, turns: Sequence[Turn]) -> Iterable[Missed]:
    expected = {_whole(turn, standing.question(turn)): turn.asking.expected for turn in turns}
    groups: dict[str, list[Asked]] = {}
    for each in asked:
        groups.setdefault(each.question, []).append(each)
    found = [(question, group, [each for each in group if failed(each)]) for question, group in groups.items()]
    counts = {question: _not_known(group, wrong, len(standing.seats)) for question, group, wrong in found if wrong}
    found = [each for each in found if each[0] in counts]
    found.sort(key=lambda each: (-counts[each[0]][0], -counts[each[0]][0] / counts[each[0]][1]))
    for question, group, wrong in found[:_MOST]:
        answers = Counter(each.answer for each in wrong if each.answer not in ("", PASSED))
        told = tuple(f"{answer} ({times} times)" if times > 1 else answer for answer, times in answers.most_common(4))
        failing, among = counts[question]
        by_hand = failing > len(wrong)
        yield Missed(question, group[0].paragraphs, expected[question], among, failing, told, by_hand)


def _not_known(group: Sequence[Asked], wrong: Sequence[Asked], seats: int) -> tuple[int, int]:
    """Return how many did not know of how many: of the class where more hands showed than were asked."""
    hands = max((each.hands for each in wrong), default=0)
    return (hands, seats) if hands > len(wrong) else (len(wrong), len(group))


def _remedial(
    sections: Sequence[Section], asked: Sequence[Asked], confusions: Sequence[Confusion], standing: Standing,
    turns: Sequence[Turn],
) -> Iterable[str]:  # fmt: skip
    for section in sorted(sections, key=lambda each: each.share):
        weak = [each for each in asked if each.section == section.section and each.share < 1]
        if section.share < _TEACH_BELOW and weak:
            read = ", ".join(dict.fromkeys(part for each in weak for part in each.paragraphs.split(", ")[:2]))
            name = section.full_name
            yield f"Teach again {name}, {percent(section.share)} of the points: {read}."
    for confusion in (each for each in confusions if each.times > 1):
        one, other = confusion.paragraphs
        both = f"{one} and {other}" if one != other else f"the two in {one}"
        yield f"Put side by side {both}, then ask: {confusion.question}"
    for turn in turns:
        question, suggested = standing.question(turn), standing.suggested(turn)
        if question is None or turn.mark == RIGHT:
            continue
        if question.form in (STEPS, MEMORY):
            yield f"Drill in order, aloud: {question.text} ({_paragraphs(turn, question).split(', ')[0]})"
        elif turn.mark == PARTLY and suggested and suggested.missing:
            missing = "; ".join(suggested.missing[:3])
            yield f"Complete what was half known ({_paragraphs(turn, question).split(', ')[0]}): {missing}."


def _teams(seats: Sequence[Seat], turns: Sequence[Turn]) -> Iterable[Team]:
    team = {seat.id: seat.team for seat in seats}
    for name in sorted({each for each in team.values() if each}):
        own = [turn for turn in turns if turn.seat is not None and team.get(turn.seat) == name]
        shown = without_names(name, (seat.name for seat in seats))
        yield Team(shown, len(own), sum(turn.share for turn in own) / len(own) if own else 0.0)


def _person(seat: Seat, standing: Standing, turns: Sequence[Turn], pool: Pool) -> Person:
    own = [turn for turn in turns if turn.seat == seat.id]
    marks = Counter(turn.mark for turn in own)
    passed = [turn for turn in own if turn.mark == MISSED and turn.answer == PASSED]
    learn = dict.fromkeys(
        f"{_whole(turn, standing.question(turn))} ({_paragraphs(turn, standing.question(turn)).split(', ')[0]})"
        for turn in own if turn.share < 1
    )
    return Person(
        seat.name, seat.team, marks[RIGHT], marks[PARTLY], marks[WRONG], marks[MISSED], len(passed),
        sum(turn.hinted for turn in own), sum(turn.share for turn in own) / len(own) if own else 0.0, tuple(learn),
    )  # fmt: skip
