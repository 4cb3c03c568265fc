"""One figure asked for in two cases that a question joins: "taxi speed straight and in turns", "fans on / off".

The question is asked of each case by itself. Both figures are told where each has a record of its own that measures
the same, and one of them is what answers the whole.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache, partial

from assistant.conversation.reading_turns.readings import question_of
from assistant.conversation.several.two_things import Half
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.leaning import ANSWERING
from assistant.resolving.limits import bound_value
from assistant.resolving.results import Choices, Declined, LimitResult, Result

_JOINS = frozenset(("and", "&", "/", "or"))
_MOST_WORDS = 14
_LAST_WITHOUT = frozenset(("without",))
_SIZES = ((1, 1), (1, 2), (2, 2), (1, 3), (2, 1), (2, 3), (3, 3))
"""Words of the one case and of the other, as they are tried."""


def two_cases(question: Question, result: Result, record: str, knowledge: Knowledge) -> tuple[Half, Half] | None:
    """Return a question asked of each of the two cases that it joins, where the whole tells one of them alone.

    record: the one that answers the whole.
    """
    words = question.reading.words
    none = isinstance(result, (Choices, Declined))
    one = isinstance(result, LimitResult) and len(result.limits) == 1
    if not (one or none) or len(words) > _MOST_WORDS or question.reading.amounts or _JOINS.isdisjoint(words):
        return None
    whole = Half(question, result), record
    asked = cache(partial(_asked, whole=whole, one=one, knowledge=knowledge))  # many cuts leave the same words
    for first, second in _each_alone(words):
        one_case = asked(first)
        other_case = asked(second) if one_case else None
        if one_case and other_case and _are_two(one_case, other_case, "" if none else record):
            return one_case[0], other_case[0]
    return None


def _each_alone(words: Sequence[str]) -> Iterator[tuple[str, str]]:
    """Yield a question without the second case, and without the first, by how many words each may be; "and without"
    turns round what stands before it.
    """
    if "with" in words and _LAST_WITHOUT.issuperset(words[-1:]) and words[-2] in _JOINS:
        whole = " ".join(words[:-2])
        yield whole, whole.replace("with ", "without ", 1)
    for at in (k for k, word in enumerate(words) if word in _JOINS and 0 < k < len(words) - 1):
        for one, other in _SIZES:
            if one <= at and at + other < len(words):
                yield (
                    " ".join((*words[:at], *words[at + 1 + other :])),
                    " ".join((*words[: at - one], *words[at + 1 :])),
                )


def _asked(text: str, whole: tuple[Half, str], one: bool, knowledge: Knowledge) -> tuple[Half, str] | None:
    """Return the figure that a part of a question asks for, which is that of the whole where it says as much."""
    question = whole[0].question
    half = question_of(text, knowledge, question.variant)
    if one and half.states == question.states and _named(half, knowledge) == _named(question, knowledge):
        return whole
    found = resolve_scored(half, knowledge)
    told = isinstance(found.result, LimitResult) and len(found.result.limits) == 1
    return (Half(half, found.result), found.record) if told and found.score >= ANSWERING else None


def _named(question: Question, knowledge: Knowledge) -> set[frozenset[str]]:
    """Return the senses of each thing that a question names, but for what only colours it."""
    return {m.concepts for m in knowledge.matcher.telling(question.reading)}


def _are_two(one: tuple[Half, str], other: tuple[Half, str], record: str) -> bool:
    """Return whether two cases have figures of their own that measure the same, one of them the one told already, if
    any is.
    """
    if one[1] == other[1] or (record and record not in (one[1], other[1])):
        return False
    figures = [bound_value(h.result.limits[0]) for h, _ in (one, other) if isinstance(h.result, LimitResult)]
    return len({figure.unit for figure in figures if figure}) == 1
