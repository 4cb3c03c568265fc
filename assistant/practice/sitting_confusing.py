"""What was taken for what: the record whose figure an answer gave in place of the one asked for."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from assistant.frozen import NamedTuple
from assistant.knowledge.records import Limit, Value
from assistant.practice.making.question import MEMORY, STEPS, Question
from assistant.quantities.amounts import Amount, amounts_in
from assistant.resolving.knowing import Knowledge

_SAME = 1e-6
_SECTION = 0.5
"""What it counts for that two records are of one section, beside the share of words that what they are of shares."""
_LEAST = 0.25


class Taken(NamedTuple):
    """A record that was taken for another: its id, what it is of, its first paragraph, and the figure given."""

    record: str
    of: str
    paragraph: str
    figure: Value


def taken_for(question: Question, answer: str, know: Knowledge) -> Taken | None:
    """Return the record whose figure stands in an answer that is not its own, the nearest in what it is of, if any.

    None for a drill: a figure of one of its steps stands for no other record.
    """
    own = know.base.records.get(question.entry)
    told = amounts_in(f"{question.text} {question.key.says}", know.units)
    named = {word for m in know.phrase(answer).mentions if m.end - m.start > 1 for word in m.text.split()}
    amounts = [
        a for a in amounts_in(answer, know.units)
        if not _is_told(a, told, know) and (a.unit or a.raw not in named)  # the 2 of "System 2" counts nothing
    ]
    if own is None or not amounts or question.key.verdict or question.form in (STEPS, MEMORY):
        return None
    found = [
        (_nearness(own, record, know), record, figure)
        for record in _limits(question, know)
        for figure in _figures(record)
        if any(_same(amount, figure, know) for amount in amounts)
    ]
    near, record, figure = max(found, key=lambda each: each[0], default=(0.0, None, None))
    if record is None or figure is None or near < _LEAST:
        return None
    source = record.sources[0]
    return Taken(record.id, record.of, f"{source.document} {source.paragraph}", figure)


def _limits(question: Question, know: Knowledge) -> Iterator[Limit]:
    for name in know.base.order:
        if name != question.entry and know.base.kind(name) == "limits":
            yield know.record(name, question.variant or know.variants[0])


def _figures(record: Limit) -> list[Value]:
    return [each for each in (record.value, record.minimum, record.maximum, record.second) if each]


def _is_told(amount: Amount, told: Iterable[Amount], know: Knowledge) -> bool:
    """Whether an amount stands in the question or in its full answer."""
    return any(_same(amount, Value(each.value, each.unit or amount.unit or ""), know) for each in told)


def _same(amount: Amount, figure: Value, know: Knowledge) -> bool:
    """Whether an amount is a figure, in whatever unit it was given; one without a unit is in the figure's own."""
    value = amount.value
    if amount.unit and figure.unit and amount.unit != figure.unit:
        if know.units.get(amount.unit).dimension != know.units.get(figure.unit).dimension:
            return False
        value = know.units.convert(value, amount.unit, figure.unit)
    return abs(value - figure.value) <= _SAME * max(1.0, abs(figure.value))


def _nearness(own: Any, other: Limit, know: Knowledge) -> float:
    """How near two records are: by the concepts of what they are of, and by their section."""
    mine, theirs = _concepts(own, know), _concepts(other, know)
    shared = len(mine & theirs) / len(mine | theirs) if mine | theirs else 0.0
    return shared + (_SECTION * shared if getattr(own, "topic", "") == other.topic else 0.0)


def _concepts(record: Any, know: Knowledge) -> frozenset[str]:
    reading = know.phrase(getattr(record, "of", "") or getattr(record, "title", "") or getattr(record, "says", ""))
    return frozenset(concept for mention in reading.mentions for concept in mention.concepts)
