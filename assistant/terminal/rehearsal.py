"""One rehearsal as it is held: the next question from the record, the line typed to it, the answer kept at once."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, timedelta
from random import Random

from assistant.practice.asking.choosing import Choice, choose_next, pace, plan
from assistant.practice.asking.day_share import Today, share_left, today_of
from assistant.practice.asking.standing import Standing, standings
from assistant.practice.keeping.rows import HEARD, TYPED
from assistant.practice.recall import MARKS
from assistant.practice.sitting import missed_once, prompt, put, said
from assistant.practice.sitting_marked import answers_next
from assistant.practice.sitting_marks import NOTE, Line
from assistant.practice.sitting_questions import VERDICTS, Questioner
from assistant.practice.sitting_state import KEEP, OVER, REMARK, WAITING, After, Put, State
from assistant.practice.sitting_summary import Ahead, ready_line, summary_lines, today_line
from assistant.terminal.records import clock
from assistant.terminal.sitting_pool import left_out_line
from assistant.terminal.sitting_room import Room
from assistant.terminal.sitting_screen import show

_LAST_FEW = 20
"""Records never asked, of which it is looked up whether they can be: it takes a moment each."""
_PLENTY = 100_000
"""More questions than any number of minutes takes."""


class Rehearsal:
    """A sitting of one learner, at one prompt."""

    def __init__(self, room: Room) -> None:
        self._room = room
        self._pool = room.pool
        self._screen = room.screen
        self._wanted = room.wanted
        self._ready_by = room.ready_by
        self._chance = Random(room.wanted.seed)
        self._questioner = Questioner(room.session.knowledge, room.wanted.seed, room.session.variant, room.by_ear)
        self._began = clock()
        self._share = None if self._wanted.number or self._wanted.minutes else self._share_of_today()
        self._state = State()

    def hold(self) -> None:
        """Ask until the sitting is over, and sum it up however it ends."""
        self._leave_out_what_has_no_question()
        self._tell(self._first_lines())
        try:
            while self._state.phase != OVER and self._put_next():
                while self._state.phase not in (WAITING, OVER):
                    self._ask_once()
        except (EOFError, KeyboardInterrupt):
            self._screen.say("")
        self._screen.say("")
        self._tell(self._summary())

    # --- what is asked

    def _leave_out_what_has_no_question(self) -> None:
        """Drop the last few records never asked if they cannot be, so that they are not told as new for ever."""
        unseen = [each.item.record for each in self._standings() if each.card is None]
        if len(unseen) <= _LAST_FEW:
            for record in unseen:
                if not self._questioner.has_question(record):
                    self._without(record)

    def _first_lines(self) -> list[Line]:
        stands, now = self._standings(), clock()
        today = self._today(stands, now)
        lines = [Line(today_line(today.chosen, today.waiting, today.is_done))]
        if self._ready_by:
            reach, done = pace(stands, now, self._ready_by), today.is_done
            lines.append(Line(ready_line(self._ready_by, reach, self._wanted.number, self._wanted.minutes, done)))
        if left_out := left_out_line(self._pool):
            lines.append(Line(left_out))
        if self._room.by_ear:
            return lines
        return [*lines, Line("Answer in your own words; “help” tells what else can be typed.", NOTE)]

    def _put_next(self) -> bool:
        """Put the next question; whether there is one."""
        found = self._next()
        if found is None:
            return False
        asked, far, share = found
        self._take(put(self._state, asked, far, share))
        return True

    def _next(self) -> tuple[Put, str, float] | None:
        if self._is_over():
            return None
        every, now = self._standings(), clock()
        stands = every
        while choice := self._choice(stands, now):
            asked = self._question(choice)
            if asked is not None:
                return asked, *self._how_far(every, now)
            if choice.record not in self._questioner.told:
                every = self._without(choice.record)
            stands = tuple(each for each in stands if each.item.record != choice.record)
        return self._next() if self._questioner.ask_told() else self._once_more(every)

    def _choice(self, stands: Sequence[Standing], now: datetime) -> Choice | None:
        return choose_next(
            stands, now, self._chance, self._ready_by, self._asked_records(), self._count, self._share is None
        )

    def _planned(self, stands: Sequence[Standing], now: datetime) -> tuple[Choice, ...]:
        """Return what is still to be asked in this sitting; where minutes are named, of what today asks for."""
        count = None if self._wanted.minutes else self._count
        return plan(stands, now, Random(0), count, self._ready_by, self._asked_records(), self._share is None)

    @property
    def _count(self) -> int | None:
        """How many questions there are at most: those asked for, or what is left of the share of a day."""
        if self._wanted.minutes:
            return _PLENTY
        return self._wanted.number or self._share

    def _share_of_today(self) -> int | None:
        answers = self._room.record.history(self._room.learner, self._pool.type_id)
        return share_left(answers, self._began, self._ready_by or self._room.learner.ready_by)

    def _today(self, stands: Sequence[Standing], now: datetime) -> Today:
        """Return what today still asks, whatever of it was asked in this sitting."""
        left = None if self._share is None else max(self._share - len(self._state.given), 0)
        return today_of(stands, now, left, self._ready_by)

    def _question(self, choice: Choice) -> Put | None:
        standing = choice.standing
        before = self._room.record.history(self._room.learner, self._pool.type_id, choice.record)
        forms = {before[-1].note.form} if before else set[str]()
        if standing.was:  # what has changed is to be said anew: a verdict may be the same under both values
            before, forms = (), {*VERDICTS}
        question = self._questioner.question_on(choice.record, len(before), forms)
        again = choice.record in self._asked_records()
        return Put(question, standing.item, choice.why, standing.was, again) if question else None

    def _once_more(self, stands: Sequence[Standing]) -> tuple[Put, str, float] | None:
        """Return what was missed and not asked again since, at the end of a day's work."""
        if self._wanted.number or self._wanted.minutes:
            return None
        waiting = missed_once(self._state)
        for standing in stands:
            if waiting and standing.item.record == waiting[0]:
                question = self._questioner.question_on(waiting[0], 1)
                done = len(self._state.given)
                total = done + len(waiting)
                if question:
                    return Put(question, standing.item, again=True), f"{done + 1}/{total}", done / total
        return None

    def _how_far(self, stands: Sequence[Standing], now: datetime) -> tuple[str, float]:
        done = len(self._state.given)
        if self._wanted.minutes:
            passed = (now - self._began) / timedelta(minutes=1)
            left = max(round(self._wanted.minutes - passed), 1)
            return f"{done + 1}, {left} min left", passed / self._wanted.minutes
        left = len(self._planned(stands, now))
        total = max(done + left, done + 1)
        return f"{done + 1}/{total}", done / total

    def _is_over(self) -> bool:
        minutes = self._wanted.minutes
        return minutes is not None and clock() - self._began >= timedelta(minutes=minutes)

    def _is_last(self) -> bool:
        return self._is_over() or (self._wanted.number is not None and len(self._state.given) >= self._wanted.number)

    def _asked_records(self) -> list[str]:
        return [each.put.item.record for each in self._state.given]

    def _standings(self) -> tuple[Standing, ...]:
        return standings(self._room.record, self._room.learner, self._pool)

    def _without(self, record: str) -> tuple[Standing, ...]:
        """Leave a record out of this sitting, on which there is no question that is like none before."""
        self._pool = self._pool.only(records={item.record for item in self._pool.items} - {record})
        return self._standings()

    # --- what is answered

    def _ask_once(self) -> None:
        text, seconds = self._room.asking.ask(prompt(self._state, self._is_last()))
        if self._room.voice is not None:
            self._room.voice.stop()
        if self._room.piped and answers_next(self._state, text):
            self._take(said(self._state, "", None, self._room.desk))
            if not self._put_next():
                return
        self._take(said(self._state, text, seconds, self._room.desk))

    def _take(self, after: After) -> None:
        """Keep what is to be kept before anything of it is shown."""
        self._state = after.state
        if after.act == KEEP:
            self._room.keeping.keep(self._state.given[-1], HEARD if self._room.by_ear else TYPED)
        elif after.act == REMARK:
            self._room.keeping.remark(-1, self._state.given[-1].taken)
        self._tell(after.lines)
        self._room.keeping.tell()

    def _tell(self, lines: Sequence[Line]) -> None:
        """Show lines, and say them where there is a voice."""
        show(lines, self._screen)
        if self._room.voice is not None:
            self._room.voice.say(lines, self._state)

    # --- how it ends

    def _summary(self) -> list[Line]:
        given = [each for each in self._state.given if each.taken.mark in MARKS]
        return summary_lines(given, self._ahead(), self._room.learner.name, self._room.keeping.saved)

    def _ahead(self) -> Ahead:
        stands, now = self._standings(), clock()
        today = self._today(stands, now)
        tomorrow = sum(1 for each in stands if each.was or each.fades(now + timedelta(days=1)))
        return Ahead(len(today.chosen), tomorrow, pace(stands, now, self._ready_by), self._ready_by,
                     self._wanted.number, self._wanted.minutes, today.waiting, today.is_done)  # fmt: skip
