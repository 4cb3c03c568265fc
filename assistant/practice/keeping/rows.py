"""What is kept, as frozen records: learners and their answers, class sittings with their seats and turns.

Times are aware and in UTC. Names of documents and records are those of the knowledge; every text is as it was then.
"""

from __future__ import annotations

from datetime import date, datetime
from typing import Any

from assistant.frozen import NamedTuple

TYPED, HEARD, ORAL, CLASS = "typed", "heard", "oral", "class"
WAYS = (TYPED, HEARD, ORAL, CLASS)
OPEN, PAUSED, ENDED = "open", "paused", "ended"
ASKED, NAMED, REVEALED, MARKED = "asked", "named", "revealed", "marked"

Revisions = tuple[tuple[str, str], ...]
"""(document, revision) of each document that a record cites."""


class Learner(NamedTuple):
    """A person: the name as first written, since when, and the day to be ready by, if one was set."""

    id: int
    name: str
    since: datetime
    ready_by: date | None = None


class Note(NamedTuple):
    """An answer to be kept.

    mark: right, partly, wrong or missed, as it stands; marked: what it was before it was overruled, else the same.
    share: of the points required, 0 to 1. expected: the full answer as it was told. confused_with: the record
    whose answer was given instead. hesitation: seconds before typing; kept only if how is TYPED.
    revisions, content: of the record then (`Item` of the pool has both).
    """

    record: str
    question: str
    answer: str
    mark: str
    share: float
    expected: str = ""
    form: str = ""
    how: str = TYPED
    hinted: bool = False
    overruled: bool = False
    marked: str = ""
    confused_with: str = ""
    hesitation: float | None = None
    revisions: Revisions = ()
    content: str = ""


class Answered(NamedTuple):
    """A kept answer. uid is the same wherever the record is copied to."""

    id: int
    uid: str
    learner: int
    type_id: str
    at: datetime
    note: Note


class Latest(NamedTuple):
    """How a learner was asked one record: the last answer, when the first was given, whether any was not missed."""

    answered: Answered
    first: datetime
    ever: bool


class Seated(NamedTuple):
    """A person on the roster of a class, before it begins."""

    name: str
    team: str = ""


class Seat(NamedTuple):
    """A person in a class sitting, with the turns that were given to them so far."""

    id: int
    place: int
    name: str
    team: str
    learner: int
    turns: int


class Asking(NamedTuple):
    """A question put to a class, before it is known who answers.

    sources: of the key, as shown on reveal. revisions, content: of the record, as in Note.
    """

    record: str
    question: str
    expected: str
    sources: tuple[str, ...] = ()
    form: str = ""
    revisions: Revisions = ()
    content: str = ""


class Turn(NamedTuple):
    """A question in a class sitting and how far it has come: ASKED, NAMED, REVEALED or MARKED.

    seat: id of the seat that has it, if one was named. passed: seats that passed it on. mark, marked and
    overruled are as in Note. at: when it was put, or marked.
    """

    id: int
    sitting: int
    number: int
    asking: Asking
    phase: str
    seat: int | None
    passed: tuple[int, ...]
    hinted: bool
    mark: str
    marked: str
    share: float
    answer: str
    overruled: bool
    confused_with: str
    at: datetime


class Sitting(NamedTuple):
    """A class sitting. plan, options: whatever JSON its command keeps there, to go on from where it stood."""

    id: int
    uid: str
    type_id: str
    title: str
    state: str
    began: datetime
    ended: datetime | None
    plan: Any
    options: Any
