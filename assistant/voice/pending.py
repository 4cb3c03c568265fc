"""A turn that is put up for confirmation: until it is affirmed, nothing may be answered with what is in doubt."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.controls import control as turn_control
from assistant.frozen import NamedTuple
from assistant.voice.hearing.ear import Heard

_OF_THE_ANSWER = frozenset({"why", "source", "again"})


class Pending(NamedTuple):
    """A turn that is to be affirmed: its text, the contexts before it and after it, and what else it may have been.

    number: whether it is its number that is in doubt.
    """

    text: str
    before: Context
    after: Context
    rival: str = ""
    number: bool = False

    def is_doubted_in(self, heard: Heard) -> bool:
        """Return whether a turn after it asks about its answer, or takes over the number that is in doubt."""
        mine, asked = self.after.asked, heard.after.asked
        if turn_control(heard.text) in _OF_THE_ANSWER:
            return True
        if not self.number or mine is None or asked is None or not (asked is mine or asked.context):
            return False
        return {a.value for a in mine.reading.amounts} <= {a.value for a in asked.reading.amounts}
