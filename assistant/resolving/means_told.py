"""By what means something is done while a result of a state table holds: how to steer where the wheels castor."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.knowledge.records import Fact, StateTable
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import LossResult, Result, TableResult


def with_means(question: Question, result: Result, know: Knowledge) -> Result:
    """Return a result of states with the statements of the means that go with it, where the question asks for them."""
    if isinstance(result, LossResult):
        now = {(table.id, output): value for table, output, value in result.lost}
        tables = {table.id: table for table, _, _ in result.lost}
        told = [f for t in tables.values() for f in _means(t, now, question, know) if f not in result.facts]
        sources = tuple(dict.fromkeys((*result.sources, *(s for f in told for s in f.sources))))
        return result._replace(facts=(*result.facts, *told), sources=sources) if told else result
    if not isinstance(result, TableResult) or len(result.rows) != 1 or not result.table.means:
        return result
    now = {(result.table.id, output): value for output, value in result.rows[0].outputs}
    told = [fact for fact in _means(result.table, now, question, know) if fact not in result.labels]
    return result._replace(labels=(*result.labels, *told)) if told else result


def _means(
    table: StateTable, now: dict[tuple[str, str], str], question: Question, know: Knowledge
) -> Iterator[Fact]:
    """Yield the means that go with what holds now, by table and output."""
    for each in table.means:
        fact = know.base.records.get(each.tell)
        if now.get((table.id, each.of)) == each.value and question.reading.has(each.asked) and isinstance(fact, Fact):
            yield fact
