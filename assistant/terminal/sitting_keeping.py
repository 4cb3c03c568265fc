"""The answers of a sitting on their way into the record, each before anything else happens."""

from __future__ import annotations

from assistant.practice.asking.due import note_on
from assistant.practice.keeping.learners import NoSuchLearner
from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import Answered, Learner
from assistant.practice.sitting_marks import Taken
from assistant.practice.sitting_state import Given
from assistant.terminal.records import tell_news
from assistant.terminal.screen import Screen
from assistant.terminal.sitting_screen import say


class Keeping:
    """Keeps the answers of one learner; where that can be done no more, it says so once and the sitting goes on."""

    def __init__(self, record: Record, learner: Learner, type_id: str, screen: Screen) -> None:
        self._record = record
        self._learner = learner
        self._type_id = type_id
        self._screen = screen
        self._kept: list[Answered | None] = []
        self._removed = False

    @property
    def saved(self) -> bool:
        """Whether what was answered stays."""
        return self._record.saved and not self._removed

    def keep(self, given: Given, how: str) -> None:
        """Keep an answer, with the card that follows from it."""
        taken, question = given.taken, given.put.question
        note = note_on(
            given.put.item, question.text, taken.answer, taken.mark, taken.share, expected=taken.expected,
            form=question.form, how=how, hinted=given.hinted, marked=given.marked, hesitation=given.hesitation,
            confused_with=taken.confused.record if taken.confused else "",
        )  # fmt: skip
        kept = None
        try:
            kept = None if self._removed else self._record.note_answer(self._learner, self._type_id, note)
        except NoSuchLearner:
            self._removed = True
            say(f"{self._learner.name} was removed from the record meanwhile; nothing more is kept.", self._screen)
        self._kept.append(kept)

    def remark(self, place: int, taken: Taken) -> None:
        """Keep the mark that a learner put in the place of the program's, by the place of the answer."""
        before = self._kept[place]
        if before is None or self._removed:
            return
        try:
            self._kept[place] = self._record.overrule(before, taken.mark, taken.share)
        except LookupError:
            self._removed = True

    def tell(self) -> None:
        """Tell what there is to be told of the record."""
        tell_news(self._record, self._screen.asked_width)
