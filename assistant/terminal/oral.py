"""`rehearse --oral`: an examination at the prompt, scene after scene, and the debrief however it ends."""

from __future__ import annotations

from datetime import timedelta

from assistant.practice.asking.pool import Item
from assistant.practice.keeping.rows import ORAL
from assistant.practice.sitting_marks import MARK, NOTE, Line
from assistant.practice.sitting_oral import DEBRIEFED, After, Oral, begin, debrief_lines, prompt, said
from assistant.practice.sitting_scenes import Examiner, Turn
from assistant.practice.sitting_state import KEEP, NEXT, OVER, REMARK
from assistant.practice.sitting_summary import SAVED, UNSAVED, counts_line
from assistant.terminal.records import clock
from assistant.terminal.sitting_room import Room
from assistant.terminal.sitting_screen import say, show

SCENES = 3
"""Scenes of an examination for which neither a number nor minutes were named."""


class Examination:
    """An oral examination of one learner, at one prompt."""

    def __init__(self, room: Room) -> None:
        self._room = room
        self._items = {item.record: item for item in room.pool.items}
        self._examiner = Examiner(room.session.knowledge, room.wanted.seed, self._items, room.session.variant)
        self._screen = room.screen
        self._began = clock()
        self._scenes = 0
        self._oral = Oral()

    def hold(self) -> None:
        """Examine until knowledge runs out, then debrief; however it ends."""
        say("A scenario goes on from answer to answer; what was missing is told at the end.", self._screen)
        left = False
        try:
            while self._oral.phase != OVER and self._begin_scene():
                self._go_through()
        except (EOFError, KeyboardInterrupt):
            left = True
            self._screen.say("")
        self._debrief(left)

    def _begin_scene(self) -> bool:
        turns = [] if self._is_over() else self._next_scene()
        if not turns:
            return False
        self._scenes += 1
        self._take(begin(self._oral, turns, self._scenes))
        return True

    def _next_scene(self) -> list[tuple[Turn, Item]]:
        while scene := self._examiner.scene():
            turns = [(turn, self._items[turn.question.entry]) for turn in scene if turn.question.entry in self._items]
            if turns:
                return turns
        return []

    def _go_through(self) -> None:
        act = ""
        while self._oral.phase != OVER and act != NEXT and not self._is_over():
            text, _ = self._room.asking.ask(prompt(self._oral))
            after = said(self._oral, text, self._room.desk)
            act = after.act
            self._take(after)

    def _is_over(self) -> bool:
        number, minutes = self._room.wanted.number, self._room.wanted.minutes
        if number is not None and len(self._oral.given) >= number:
            return True
        if minutes is not None:
            return clock() - self._began >= timedelta(minutes=minutes)
        return number is None and self._scenes >= SCENES and self._at_end()

    def _at_end(self) -> bool:
        """Whether the scene that stands is through, so that the next would be one too many."""
        return self._oral.at >= len(self._oral.turns)

    def _take(self, after: After) -> None:
        self._oral = after.oral
        if after.act in (KEEP, NEXT):
            self._room.keeping.keep(self._oral.given[-1], ORAL)
        elif after.act == REMARK and self._oral.remarked is not None:
            place = self._oral.remarked
            self._room.keeping.remark(place, self._oral.given[place].taken)
        lines = after.lines
        if after.act == REMARK:
            lines = (*lines, Line(counts_line(self._oral.given), MARK))
        if self._is_over() and after.act == KEEP:
            lines = (lines[0], Line("That is the end of the examination.", NOTE))
        show(lines, self._screen)
        self._room.keeping.tell()

    def _debrief(self, left: bool) -> None:
        """Tell what came of it, and take other marks, unless the learner has left the keyboard."""
        given = self._oral.given
        if given:
            show(debrief_lines(given), self._screen)
        self._screen.say("")
        say(counts_line(given), self._screen)
        self._oral = self._oral._replace(phase=OVER if left or not given else DEBRIEFED)
        try:
            while self._oral.phase != OVER:
                text, _ = self._room.asking.ask(prompt(self._oral))
                self._take(said(self._oral, text, self._room.desk))
        except (EOFError, KeyboardInterrupt):
            self._screen.say("")
        if given:
            say((SAVED if self._room.keeping.saved else UNSAVED).format(name=self._room.learner.name), self._screen)
