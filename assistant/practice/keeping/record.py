"""The record of learners: open it, note answers, look back. What the commands that practise work with.

    record = open_record(folder, clock)
    learner = record.enrol("Ana")
    record.note_answer(learner, type_id, Note("vle", "What is VLE?", "255", "right", 1.0))
    for line in record.news(): tell the user
    record.close()

No method fails because the disk does: then `saved` turns false, `news` says so in one line, and the sitting goes on.
A record is used from the thread that opened it.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime
from types import TracebackType
from typing import Any

from assistant.practice.keeping import answers, exchange, forgetting, learners
from assistant.practice.keeping.keeper import Keeper
from assistant.practice.keeping.opening import Clock
from assistant.practice.keeping.rows import Answered, Latest, Learner, Note
from assistant.practice.keeping.sittings import Sittings
from assistant.practice.recall import RIGHT, Card


def open_record(folder: str, clock: Clock, new_id: Callable[[], str] | None = None) -> Record:
    """Return the record of a data folder, which is made if need be; never raises for what it finds there.

    clock: the time, aware. new_id: a name never given before for each answer and sitting; by default 16 random digits.
    """
    return Record(Keeper(folder, clock), new_id or _random_id)


class Record:
    """The open record. Close it, or use it with `with`, so that it ends with a backup."""

    def __init__(self, keeper: Keeper, new_id: Callable[[], str]) -> None:
        self._keeper = keeper
        self._new_id = new_id
        self.sittings = Sittings(keeper, new_id)
        """The class sittings."""

    @property
    def saved(self) -> bool:
        """Whether what is noted stays after the program has ended."""
        return self._keeper.saved

    @property
    def was_read(self) -> bool:
        """Whether what the file holds is known: where it is not, nobody can be said not to be in it."""
        return self._keeper.was_read

    @property
    def path(self) -> str:
        """Where the record lies."""
        return self._keeper.path

    @property
    def now(self) -> datetime:
        """The time of the record's clock, in UTC."""
        return self._keeper.now

    def news(self) -> tuple[str, ...]:
        """Return lines that the user must be told and has not been told yet: damage mended, nothing saved."""
        return self._keeper.news()

    def learners(self) -> tuple[Learner, ...]:
        """Return everybody in the record, by name."""
        return self._keeper.read(learners.learners)

    def find(self, name: str) -> Learner | None:
        """Return who has a name, however it is typed, if anybody."""
        return self._keeper.read(lambda c: learners.find(c, name))

    def enrol(self, name: str) -> Learner:
        """Return who has a name, entered now if nobody had it. Raises NameProblem."""
        now = self.now
        return self.find(name) or self._keeper.write(lambda c: learners.enrol(c, name, now))

    def set_ready_by(self, learner: Learner, day: date | None) -> Learner:
        """Set or clear the day by which a learner means to be ready."""
        self._keeper.write(lambda c: learners.set_ready_by(c, learner.id, day))
        return learner._replace(ready_by=day)

    def note_answer(self, learner: Learner, type_id: str, note: Note) -> Answered:
        """Keep an answer, and the card that follows from it, before anything else happens.

        Raises NoSuchLearner when the learner was removed meanwhile, and ValueError for an unknown mark or share.
        """
        _check(note.mark, note.share)
        uid, now = self._new_id(), self.now
        return self._keeper.write(lambda c: answers.insert(c, uid, learner.id, type_id, now, note))

    def overrule(self, answer: Answered, mark: str, share: float | None = None) -> Answered:
        """Put the learner's own mark in the place of the program's; it is recorded as overruled."""
        points = share if share is not None else float(mark == RIGHT)
        _check(mark, points)
        return self._keeper.write(lambda c: answers.overrule(c, answer.id, mark, points))

    def history(self, learner: Learner, type_id: str, record: str | None = None) -> tuple[Answered, ...]:
        """Return a learner's answers, or those on one record, the earliest first."""
        return self._keeper.read(lambda c: answers.history(c, learner.id, type_id, record))

    def latest(self, learner: Learner, type_id: str) -> dict[str, Latest]:
        """Return of each record that a learner was asked the last answer, and when it was first asked."""
        return self._keeper.read(lambda c: answers.latest(c, learner.id, type_id))

    def cards(self, learner: Learner, type_id: str) -> dict[str, Card]:
        """Return the card of each record that a learner was asked."""
        return self._keeper.read(lambda c: answers.cards(c, learner.id, type_id))

    def export(self) -> dict[str, Any]:
        """Return everything as plain JSON values."""
        now = self.now
        return self._keeper.read(lambda c: exchange.export_all(c, now))

    def take_in(self, exported: Any) -> exchange.TakenIn:
        """Add what another record exported; what is here already is not added twice.

        Raises ExchangeProblem, with nothing added, when any of it is not as it should be.
        """
        parsed = exchange.parsed(exported)
        return self._keeper.write(lambda c: exchange.take_in(c, parsed))

    def set_aside_with(self, name: str) -> tuple[str, ...]:
        """Return the damaged files that were set aside and still hold a name."""
        try:
            return forgetting.holding(self._keeper.folder, name)
        except OSError:
            return ()

    def forget(self, learner: Learner) -> forgetting.Forgotten:
        """Remove a person wholly: answers, cards, seats and turns, and from every backup."""
        return forgetting.forget(self._keeper, learner)

    def close(self) -> None:
        """End with a backup of what was noted; `news` may then hold a last line."""
        self._keeper.close()

    def __enter__(self) -> Record:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()


def _check(mark: str, share: float) -> None:
    if mark not in ("right", "partly", "wrong", "missed") or not 0 <= share <= 1:
        raise ValueError(f"no such mark: {mark} with a share of {share}")


def _random_id() -> str:
    import secrets

    return secrets.token_hex(8)
