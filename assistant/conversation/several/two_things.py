"""Two things named together, of which no record tells both: "tiller and pedal limit at 60 kt".

The rest of the question is asked of each thing by itself. Both are told where each is answered by a record of its
own that the thing's name asks for; a record that tells both at once, or a state that joins them, is left alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from assistant.conversation.reading_turns.readings import question_of
from assistant.frozen import NamedTuple
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import (
    CheckResult,
    Choices,
    Declined,
    FactResult,
    LimitResult,
    Result,
    ScheduleResult,
    TableResult,
)  # fmt: skip
from assistant.understanding.mentions import Mention, Reading

_JOINS = frozenset(("and", "&", "/", "plus", "+"))
_ARTICLES = frozenset(("the", "a", "an", "my", "our", "its", "for", "on", "of", "also", "then"))
_TOLD = (FactResult, LimitResult, ScheduleResult)
_FURTHEST = 3


class Half(NamedTuple):
    """One of two things with the rest of the question, and what that gives."""

    question: Question
    result: Result


def two_things(
    question: Question, result: Result, record: str, knowledge: Knowledge
) -> tuple[Half, Half] | None:
    """Return what a question asks of two things that it names together, where no record tells both.

    record: the one that answers the whole.
    """
    if _JOINS.isdisjoint(question.reading.words):
        return None
    if question.stated:
        return _in_a_state(question, result, knowledge)
    if not isinstance(result, (*_TOLD, Choices, Declined)):
        return None
    for one, other in _pairs(question.reading, knowledge):
        if not _only_named(question, one, other) or _tells_both(record, question, one, other, knowledge):
            continue
        first = _half(question, other, one, knowledge)
        second = _half(question, one, other, knowledge) if first else None
        if first and second and first[1] != second[1]:
            return first[0], second[0]
    return None


def _in_a_state(question: Question, result: Result, knowledge: Knowledge) -> tuple[Half, Half] | None:
    """Return what two things do in the states that a question gives, where its answer tells of one of them alone:
    "System 1 lost, gear and steering?".
    """
    if not isinstance(result, (TableResult, *_TOLD)):
        return None
    given = {i for c in question.conditions if not c.is_result for i in c.where}
    for one, other in _pairs(question.reading, knowledge):
        if not given.isdisjoint((*one.taken, *other.taken)):
            continue
        first = _under_it(question, other, one, knowledge)
        second = _under_it(question, one, other, knowledge) if first else None
        if first and second and first.result != second.result and result in (first.result, second.result):
            return first, second
    return None


def _under_it(question: Question, left_out: Mention, kept: Mention, knowledge: Knowledge) -> Half | None:
    """Return what one of two things does in the states given, if that is known."""
    half = question_of(_without(question, left_out, kept), knowledge, question.variant)
    if [(c.input, c.value) for c in half.conditions] != [(c.input, c.value) for c in question.conditions]:
        return None
    found = resolve_scored(half, knowledge)
    return Half(half, found.result) if isinstance(found.result, (TableResult, *_TOLD)) else None


def _without(question: Question, left_out: Mention, kept: Mention) -> str:
    """Return the words of a question without one of two things, and what joins them."""
    words = question.reading.words
    start, end = _cut(left_out, kept)
    return " ".join((*words[:start], *words[end:]))


def _cut(left_out: Mention, kept: Mention) -> tuple[int, int]:
    """Return from where to where one of two things goes, with what joins them."""
    return min(left_out.start, kept.end), max(left_out.end, kept.start)


def _pairs(reading: Reading, knowledge: Knowledge) -> Iterator[tuple[Mention, Mention]]:
    """Yield the things that a question joins: one, "and", the other; a name of a result may join them already."""
    for mention in reading.mentions if reading.amounts else ():
        for at in range(mention.start + 1, mention.end - 1):
            if reading.words[at] in _JOINS:
                one = _part(mention, mention.start, at, reading, knowledge)
                yield one, _part(mention, at + 1, mention.end, reading, knowledge)
    things = [m for m in knowledge.matcher.telling(reading) if not m.is_plain]
    for one, other in pairwise(things):
        between = reading.words[one.end : other.start]
        follows = between[:1] and between[0] in _JOINS and len(between) <= _FURTHEST
        if follows and _ARTICLES.issuperset(between[1:]) and one.concepts.isdisjoint(other.concepts):
            yield one, other


def _only_named(question: Question, one: Mention, other: Mention) -> bool:
    """Return whether no state is given but one that a thing's bare name says: "speeds for free fall and retraction"."""
    return all(c.is_result or c.where in (one.taken, other.taken) for c in question.conditions)


def _half(question: Question, left_out: Mention, kept: Mention, knowledge: Knowledge) -> tuple[Half, str] | None:
    start, end = _cut(left_out, kept)
    half = question_of(_without(question, left_out, kept), knowledge, question.variant)
    found = resolve_scored(half, knowledge)
    if not isinstance(found.result, (*_TOLD, CheckResult)) or not found.record:
        return None
    match = knowledge.matcher.rank_among(frozenset((found.record,)), half.reading, half.background)
    place = kept.start if kept.start < start else kept.start - (end - start)
    named = (m.concepts | m.implied for m in half.reading.mentions if place in m.taken)
    asks_for_it = match and any(not match[0].concepts.isdisjoint(concepts) for concepts in named)
    return (Half(half, found.result), found.record) if asks_for_it else None


def _tells_both(record: str, question: Question, one: Mention, other: Mention, knowledge: Knowledge) -> bool:
    """Return whether the record that answers the whole is asked for by both names."""
    match = knowledge.matcher.rank_among(frozenset((record,)), question.reading, question.background)
    return bool(match) and all(not match[0].concepts.isdisjoint(thing.concepts) for thing in (one, other))


def _part(mention: Mention, start: int, end: int, reading: Reading, knowledge: Knowledge) -> Mention:
    """Return one of two things inside a name as it is read by itself."""
    concepts = knowledge.phrase(" ".join(reading.words[start:end])).concepts
    return mention._replace(start=start, end=end, concepts=concepts)
