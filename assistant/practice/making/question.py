"""What a question made from the knowledge is: its wording, and what the right answer to it holds.

Plain values only, so that a set of questions is written to a file and read back as it was.
"""

from __future__ import annotations

from assistant.answering.answer import ANSWER, Citation
from assistant.frozen import NamedTuple

FIGURE, FACT, PLACE, REASON, MEANING, SHOWN, WHO = "figure", "fact", "place", "reason", "meaning", "shown", "who"
CHECK, BAND, READING, INVERSE, CALCULATION = "check", "band", "reading", "inverse", "calculation"
STATE, LOSS, CAUSE, STEPS, MEMORY, STEP = "state", "loss", "cause", "steps", "memory", "step"
CHANGE, VARIANT, OWN = "change", "variant", "own"
FORMS = (
    FIGURE, FACT, PLACE, REASON, MEANING, SHOWN, WHO, CHECK, BAND, READING, INVERSE, CALCULATION, STATE, LOSS, CAUSE,
    STEPS, MEMORY, STEP, CHANGE, VARIANT, OWN,
)  # fmt: skip
"""What may be asked of the knowledge; OWN is a question that an instructor wrote."""

WHY_OF = "Why? ("
"""How the text of a “why?” begins that was put after another question, which follows in brackets."""

LONG_SUMS = frozenset({CALCULATION, INVERSE})
"""Forms that take pencil and paper: not for the ear."""

WITHIN, OUTSIDE = "within", "outside"


class Expected(NamedTuple):
    """A number that the answer must hold: of what, how much, in which unit, and the share it may differ by."""

    quantity: str
    value: float
    unit: str
    tolerance: float = 0.0


class Key(NamedTuple):
    """What the right answer to a question holds.

    says: the full answer, to be read out. values: the number asked for first. points: what must be said; `ordered`
    where their order counts. verdict: WITHIN or OUTSIDE of a limit. states: ("table.output", value) that must be
    right. sets: each smallest set of (input, value) that leads to what was asked. formerly: the value before the
    revision in force, which must not be given as present.
    """

    outcome: str = ANSWER
    says: str = ""
    values: tuple[Expected, ...] = ()
    points: tuple[str, ...] = ()
    ordered: bool = False
    verdict: str = ""
    states: tuple[tuple[str, str], ...] = ()
    sets: tuple[tuple[tuple[str, str], ...], ...] = ()
    formerly: str = ""


class Question(NamedTuple):
    """One question: as it is written and said, what it is of, and the key to it.

    form: one of FORMS. entry: the record that answers. section: the ATA section, such as "32-40", or empty.
    hint: a first help that does not hold the answer. difficulty: 1 recall of one thing, 2 applied or a list, 3 several
    things at once.
    """

    text: str
    spoken: str
    form: str
    entry: str
    section: str
    variant: str
    key: Key
    sources: tuple[Citation, ...]
    hint: str
    difficulty: int


class Draft(NamedTuple):
    """A question before its wording is settled: ways of putting it, the best first, and what it must be answered.

    Wordings of one list are as good as each other; a later list is tried when none of the former is understood.
    """

    form: str
    entry: str
    section: str
    key: Key
    wordings: tuple[tuple[str, ...], ...]
    hint: str = ""
    difficulty: int = 1
    by: str = ""
    """The id that the answer names where it is not `entry`: a change, an input of a table."""
