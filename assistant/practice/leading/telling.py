"""A question that tells two things apart which a class took for each other, with its key and both paragraphs."""

from __future__ import annotations

from collections.abc import Callable

from assistant.answering.parts import inside
from assistant.frozen import NamedTuple
from assistant.practice.asking.wording import statement
from assistant.resolving.knowing import Knowledge


class Pair(NamedTuple):
    """Two records as they stand in a sentence, their first paragraphs, a question on both and its key."""

    one: str
    other: str
    paragraphs: tuple[str, str]
    question: str
    key: str


Apart = Callable[[str, str], Pair | None]
"""What two records are told apart by, given their ids; None where one of them is not known (any more)."""


def telling_apart(know: Knowledge) -> Apart:
    """Return what tells records of a knowledge apart."""

    def pair(record: str, other: str) -> Pair | None:
        return _pair(record, other, know)

    return pair


def _pair(record: str, other: str, know: Knowledge) -> Pair | None:
    known = know.base.records
    if record not in known or other not in known:
        return None
    one, two = known[record], known[other]
    names = tuple(inside(str(getattr(each, "of", "") or getattr(each, "title", ""))) for each in (one, two))
    if not all(names):
        return None
    cited = tuple(f"{each.sources[0].document} {each.sources[0].paragraph}" for each in (one, two))
    question = f"What is each: the {names[0]}, and the {names[1]}?"
    key = "; ".join(f"{statement(each, know.units)} ({place})" for each, place in zip((one, two), cited, strict=True))
    return Pair(names[0], names[1], (cited[0], cited[1]), question, key)
