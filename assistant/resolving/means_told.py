"""By what means something is done while a result of a state table holds: how to steer where the wheels castor."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.knowledge.records import Fact
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Result, TableResult


def with_means(question: Question, result: Result, know: Knowledge) -> Result:
    """Return a result of states with the statements of the means that go with it, where the question asks for them."""
    if not isinstance(result, TableResult) or len(result.rows) != 1 or not result.table.means:
        return result
    told = tuple(fact for fact in _means(question, result, know) if fact not in result.labels)
    return result._replace(labels=(*result.labels, *told)) if told else result


def _means(question: Question, result: TableResult, know: Knowledge) -> Iterator[Fact]:
    outputs = dict(result.rows[0].outputs)
    for each in result.table.means:
        fact = know.base.records.get(each.tell)
        if outputs.get(each.of) == each.value and question.reading.has(each.asked) and isinstance(fact, Fact):
            yield fact
