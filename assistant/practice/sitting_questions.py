"""The question to put on a record: another form and fresh numbers each time, and none like one of this sitting."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from random import Random

from assistant.knowledge.records import StateTable
from assistant.practice.making import Question, make_questions
from assistant.practice.making.question import BAND, CHECK, FIGURE, LONG_SUMS, MEMORY, STEPS
from assistant.practice.making.selecting import Sitting
from assistant.practice.making.telling import tells
from assistant.practice.making.wording import Wording
from assistant.resolving.knowing import Knowledge

_SCENARIOS = 4
"""How many scenarios of a state table are made to choose from: all of them would take a second."""
_RECENT = 6
"""Answers that are still in the learner's mind: some minutes of them."""
_WHOLE = (FIGURE, MEMORY, STEPS)
VERDICTS = frozenset({CHECK, BAND})
"""Forms that are answered within or outside, whatever the figure is exactly."""
_HEADINGS = (": what do you know of it?", ": what does the book say?", ". What does the book say?")


class Questioner:
    """Makes the questions of one sitting, record by record, as they are wanted.

    by_ear: leave out what takes pencil and paper.
    """

    def __init__(self, knowledge: Knowledge, seed: str, variant: str = "", by_ear: bool = False) -> None:
        self._know = knowledge
        self._seed = seed
        self._variant = variant
        self._by_ear = by_ear
        self._wording = Wording(knowledge.base)
        self._asked = Sitting(each_entry_once=False)
        self._put: dict[str, list[Question]] = {}
        self._last: list[Question] = []
        self.told: set[str] = set()
        """Records that were passed over for now, since an answer given a moment ago holds theirs."""

    def question_on(self, record: str, times: int = 0, avoid: Collection[str] = ()) -> Question | None:
        """Return a question on a record that is like none put before, or None where there is none.

        times: how often it was asked of this learner before: the first time it is asked to be recalled, not applied.
        avoid: forms to pass over where there is another, as that of the last time. One asked in this sitting already
        is put again, in other words if there are any.
        """
        chance = Random(f"{self._seed} {record} {times} {len(self._put.get(record, ()))}")
        made = _in_order(self._made(record, chance), times, avoid, chance)
        before = self._put.setdefault(record, [])
        if made and not before:
            untold = [each for each in made if not any(tells(last, each) for last in self._last[-_RECENT:])]
            self.told = self.told - {record} if untold else self.told | {record}
            made = untold
        fresh = next((each for each in made if self._is_new(each, before)), None)
        question = fresh or (before[-1] if before else None)
        if question is not None:
            before.append(question)
            self._last.append(question)
        return question

    def has_question(self, record: str) -> bool:
        """Whether there is any question on a record, whatever was put before."""
        return bool(self._made(record, Random(f"{self._seed} {record}")))

    def ask_told(self) -> bool:
        """Pass nothing over any more that was told a moment ago, as when nothing else is left; whether anything was."""
        waiting = bool(self.told)
        self._last.clear()
        self.told = set()
        return waiting

    def _is_new(self, question: Question, before: Sequence[Question]) -> bool:
        """Whether a question is like none of another record, and not word for word one of its own."""
        return question not in before and (self._asked.takes(question) or bool(before))

    def _made(self, record: str, chance: Random) -> list[Question]:
        """Return what can be asked on a record now."""
        number = _SCENARIOS if isinstance(self._know.base.records.get(record), StateTable) else None
        made = make_questions(
            self._know, f"{self._seed} {chance.random()}", number, entries=(record,), variant=self._variant,
            wording=self._wording,
        )  # fmt: skip
        return [each for each in made if not (self._by_ear and each.form in LONG_SUMS)]


def _in_order(made: list[Question], times: int, avoid: Collection[str], chance: Random) -> list[Question]:
    """Return questions with the best one first: to recall it whole the first time, then any but a form just asked.

    What stands as a bare heading is passed over while there is a sentence.
    """
    mixed = chance.sample(made, len(made))
    if not times:
        return sorted(mixed, key=lambda each: (each.form in avoid, _is_heading(each), each.difficulty,
                                               each.form not in _WHOLE))  # fmt: skip
    return sorted(mixed, key=lambda each: (each.form in avoid, _is_heading(each)))


def _is_heading(question: Question) -> bool:
    return question.text.endswith(_HEADINGS)
