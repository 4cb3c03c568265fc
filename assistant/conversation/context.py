"""What a conversation remembers between turns: the question answered last, what was offered, what is disputed."""

from __future__ import annotations

from assistant.answering.answer import Answer
from assistant.frozen import NamedTuple
from assistant.resolving.knowing import Question
from assistant.resolving.results import Result
from assistant.understanding.states import Condition

LATELY = 2
"""How many turns back what was told is still the subject."""


class Earlier(NamedTuple):
    """A turn that was answered, or that asked back, before the last: its topic may be come back to."""

    asked: Question
    result: Result | None
    answer: Answer


class Context(NamedTuple):
    """The state of a conversation; a fresh one knows nothing.

    variant: the variant in use, or "" for the base type. asked, result, answer: the last turn that was
    answered or that asked back. scenario: the states given last, which a further failure adds to.
    offered: record ids that may be chosen. disputed: (record, note) set aside. earlier: the turns before, the
    latest first.
    """

    variant: str = ""
    asked: Question | None = None
    result: Result | None = None
    answer: Answer | None = None
    offered: tuple[str, ...] = ()
    disputed: tuple[tuple[str, str], ...] = ()
    forgets: bool = False
    """Whether what is set aside ends with the conversation, and no curator will see it."""
    kept: tuple[tuple[str, str], ...] = ()
    """Of what is disputed, that which earlier conversations left for the curator."""
    scenario: tuple[Condition, ...] = ()
    supposed: bool = False
    """Whether the states of the scenario were only asked about or supposed, and told as a fact by no turn."""
    earlier: tuple[Earlier, ...] = ()
    said: Answer | None = None
    """What was replied since to a turn on a change or a belief, which asked no question: it may be asked for again."""

    @property
    def told_lately(self) -> tuple[Result | None, ...]:
        """The results of the last turns, of which something may still be asked, the latest first."""
        return (self.result, *(turn.result for turn in self.earlier[:LATELY]))
