"""A turn that is put up for confirmation: until it is affirmed, nothing may be answered with what is in doubt."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.control_words.controls import control as turn_control
from assistant.conversation.turn import question_of
from assistant.frozen import NamedTuple
from assistant.resolving.knowing import Knowledge
from assistant.voice import hands_free_said as said
from assistant.voice.hearing.ear import Heard

_FEW_WORDS = 5
"""Words of a turn that only says a number again."""
_FIRST = ("first", "the first", "first one", "the first one")
_SECOND = ("second", "the second", "second one", "the second one")
_OF_THE_ANSWER = frozenset({"why", "source", "again"})


class Pending(NamedTuple):
    """A turn that is to be affirmed: its text, the contexts before it and after it, and what else it may have been.

    number: whether it is its number that is in doubt. then: what was asked meanwhile, to be answered after it.
    repeated: whether the number was said again, and heard as unsurely. either: whether the number of what else it may
    have been was put up with its own.
    """

    text: str
    before: Context
    after: Context
    rival: str = ""
    number: bool = False
    then: str = ""
    repeated: bool = False
    either: bool = False

    @property
    def picks(self) -> tuple[str, ...]:
        """What may be said to pick one of two numbers that were put up."""
        return (*_FIRST, *_SECOND) if self.either else ()

    def picked(self, phrase: str) -> str:
        """Return the turn that a phrase picks, or ""."""
        plain = phrase.lower().strip(".! ")
        return "" if plain not in self.picks else self.text if plain in _FIRST else self.rival

    def told_in(self, heard: Heard, knowledge: Knowledge) -> str:
        """Return the turn whose doubtful number was said figure by figure, its own or the other, or ""."""
        if not self.number:
            return ""
        mine, its = (_figures(each, knowledge, self.before.variant) for each in (self.text, self.rival))
        own = mine - its if its else mine if len(mine) == 1 else set()
        turns = dict.fromkeys(its - mine, self.rival) | dict.fromkeys(own, self.text)
        return next((turns[told] for told in heard.figures if told in turns), "")

    @property
    def how_to_affirm(self) -> str:
        """What to say for it, as it is told to somebody who says anything else."""
        return said.HOW_TO_CHOOSE if self.either else said.HOW_TO_AFFIRM

    def is_said_again_in(self, heard: Heard, knowledge: Knowledge) -> bool:
        """Return whether a turn gives but the numbers that are in doubt, as somebody does who affirms them."""
        return self._has_numbers_of(self.text, heard, knowledge)

    def is_other_in(self, heard: Heard, knowledge: Knowledge) -> bool:
        """Return whether a turn gives but the numbers of what else it may have been: the other of two put up."""
        return bool(self.rival) and self._has_numbers_of(self.rival, heard, knowledge)

    def _has_numbers_of(self, text: str, heard: Heard, knowledge: Knowledge) -> bool:
        if not self.number or len(heard.text.split()) > _FEW_WORDS:
            return False
        mine, again = (_numbers(each, knowledge, self.before.variant) for each in (text, heard.text))
        return bool(mine) and mine == again

    def is_doubted_in(self, heard: Heard) -> bool:
        """Return whether a turn after it asks about its answer, or takes over the number that is in doubt."""
        mine, asked = self.after.asked, heard.after.asked
        if asks_of_the_answer(heard.text):
            return True
        if not self.number or mine is None or asked is None or not (asked is mine or asked.context):
            return False
        return {a.value for a in mine.reading.amounts} <= {a.value for a in asked.reading.amounts}


def _numbers(text: str, knowledge: Knowledge, variant: str) -> set[float]:
    return {amount.value for amount in question_of(text, knowledge, variant).reading.amounts}


def _figures(text: str, knowledge: Knowledge, variant: str) -> set[str]:
    """Return the numbers of a turn as their figures are said one by one, without a point."""
    return {f"{value:g}".replace(".", "") for value in _numbers(text, knowledge, variant)} if text else set()


def asks_of_the_answer(text: str) -> bool:
    """Return whether a turn asks about the answer before it, which has to be told with it."""
    return turn_control(text) in _OF_THE_ANSWER
