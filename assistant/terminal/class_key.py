"""`class --key-here`: the key of the question that stands, once revealed, in a terminal that the class does not see.

It reads the record that the class is led in and follows it; nothing is typed here but the q that ends it.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable

from assistant.practice.keeping.record import Record
from assistant.practice.leading.holding import standing_of
from assistant.practice.leading.keying import key_lines
from assistant.practice.leading.plan import Aims
from assistant.practice.leading.standing import OVER, Standing
from assistant.practice.papers.sets import NoSet
from assistant.practice.sitting_marks import NOTE, Line
from assistant.terminal.key_sign import KeySign
from assistant.terminal.keys import until_key
from assistant.terminal.records import tell_news
from assistant.terminal.screen import Screen, is_dumb, is_terminal
from assistant.terminal.sitting_screen import show

_LOOK_S = 0.4
"""Seconds between two looks into the record."""
_CLEAR = "\x1b[H\x1b[2J\x1b[3J"
WAITING = "No class is going on. This view waits for one; q ends it."
FOLLOWS = "The key, for the instructor alone: keep this screen off the projector. q ends it."


class KeyView:
    """Follows the class that is going on, and shows its key anew whenever anything has changed."""

    def __init__(self, record: Record, type_id: str, screen: Screen, plain: bool) -> None:
        self._record = record
        self._type = type_id
        self._screen = screen
        self._clears = is_terminal(screen.out) and not is_dumb() and not plain
        self._shown: object = None
        self._aims: dict[int, Aims] = {}
        self._sitting = 0
        self._sign = KeySign()

    def follow(self, ended: Callable[[float], bool] | None = None) -> None:
        """Follow until q is pressed, not a key that the hand finds by habit, or `ended`, called with the seconds of a
        pause, says so."""
        show([Line(FOLLOWS, NOTE)], self._screen)
        try:
            done = self._pause if ended is None else lambda seconds: self._pause(seconds) or ended(seconds)
            until_key(done, "q")
        finally:
            self._sign.take_down()

    def _pause(self, _: float) -> bool:
        """Look, and wait a moment; whether there is nothing more to follow."""
        over = self.look()
        self._sign.renew()
        time.sleep(_LOOK_S)
        return over and not is_terminal(sys.stdin)

    def look(self) -> bool:
        """Show what has changed; return whether the class that was followed has ended."""
        standing = self._standing()
        width = self._screen.width
        seen = (standing._replace(aims=Aims((), "")) if standing else None, width)
        if seen == self._shown:
            return standing is None or standing.phase == OVER
        self._shown = seen
        if self._clears:
            self._screen.out.write(_CLEAR)
        lines = key_lines(standing) if standing is not None else (Line(WAITING, NOTE),)
        show([Line(FOLLOWS, NOTE), *lines] if standing is not None and self._clears else lines, self._screen)
        tell_news(self._record, self._screen.asked_width)
        return standing is None or standing.phase == OVER

    def _standing(self) -> Standing | None:
        """Return where the class stands: the one followed so far, or the latest that is open."""
        sittings = self._record.sittings
        going_on = sittings.all(self._type, open_only=True)
        if going_on:
            self._sitting = going_on[0].id
        if not self._sitting:
            return None
        try:
            standing = standing_of(sittings, self._sitting, self._aims.get(self._sitting))
        except (LookupError, NoSet):
            return None
        self._aims[self._sitting] = standing.aims
        return standing
