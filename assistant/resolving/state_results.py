"""What always goes with a result of a state table that is told of: "RESERVE BRAKE shows; does anti-skid work?"."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from itertools import product

from assistant.knowledge.records import StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Row, TableResult
from assistant.resolving.state_asked import ASKED, Scored, barring, content_of, is_normal, unused_amounts
from assistant.understanding.matching import Match
from assistant.understanding.states import Condition

_MOST_INPUTS = 11
_AFFECTING = frozenset({
    "affected", "affect", "affects", "touch", "touches", "touched", "effect", "bother", "bothers", "suffer", "suffers",
    "harm", "hurt", "influence", "impact", "matter",
})  # fmt: skip


def result_candidates(
    table: StateTable, matches: list[Match], question: Question, know: Knowledge, excused: Collection[int]
) -> Iterator[Scored]:
    """Yield what always goes with a result that is told of: "RESERVE BRAKE shows; does anti-skid work?"."""
    results = tuple(c for c in question.conditions if c.is_result and not c.asked)
    if not results:
        return
    untouched = _untouched(table, matches, results, question, know)
    if untouched:
        yield ASKED, 4.0, untouched
        return
    told = tuple(c for c in results if c.table == table.id)
    given = {c.output: c.value for c in told}
    asked = tuple(o for m in matches if m.whole and (o := m.output) not in given)
    if asked and not told:
        told = () if "how" in question.reading.words else results
    elif not asked or all(is_normal(table, o, v, know) for o, v in given.items()):
        return
    inputs = {c.input: c.value for c in question.conditions if c.input in table.inputs}
    if not told or (inputs and (not (given and asked) or _gone_besides(question))):
        return
    if question.reading.says("cause", "single", "why", "when"):
        return
    if given:
        outputs = [(o.id, state_tables.results_with(table, inputs, given, o.id, know.base)) for o in table.outputs]
    else:
        outputs = _by_other_results(table, told, know)
    sure = tuple((name, values.pop()) for name, values in outputs if len(values) == 1)
    if not set(asked) <= {name for name, _ in sure}:
        return
    vocabulary = know.matcher.vocabulary(table.id)
    barred = [m for m in content_of(question, know, excused) if vocabulary.isdisjoint(m.concepts)]
    row = Row(told, tuple(pair for pair in sure if pair[0] not in given), table.sources)
    score = ASKED * barring(barred, know) * unused_amounts(question)
    yield score, 4.0, TableResult(table, (row,), asked)


def _gone_besides(question: Question) -> bool:
    """Return whether something is told to be gone of which no state is given: "reverse is | out |"."""
    taken = {k for c in question.conditions for k in c.where}
    return any("@lost" in m.concepts and taken.isdisjoint(m.taken) for m in question.reading.mentions)


def _untouched(
    table: StateTable, matches: list[Match], results: tuple[Condition, ...], question: Question, know: Knowledge
) -> TableResult | None:
    """Return the results of a table that stay as they are with a result of another one that is told, where just that is
    asked: "the autobrake has gone, is the steering affected". Whatever leads there alone must leave them so.
    """
    of_others = all(c.table != table.id for c in results) and len(results) == len(question.conditions)
    asked = tuple(dict.fromkeys(m.output for m in matches if m.whole))
    if not of_others or not asked or _AFFECTING.isdisjoint(question.reading.words):
        return None
    base = know.base
    wanted = [(base.records[c.table], c.output, c.value) for c in results]
    sets = state_tables.joint_sets(wanted, base)
    normal = state_tables.outputs(table, {}, base)
    if not sets or () in sets or any(state_tables.outputs(table, dict(each), base) != normal for each in sets):
        return None
    row = Row((), tuple((output, normal[output]) for output in asked), table.sources)
    return TableResult(table, (row,), asked, results)


def _by_other_results(
    table: StateTable, told: tuple[Condition, ...], know: Knowledge
) -> list[tuple[str, set[str]]]:
    """Return each output's values in whatever state leads to results of other tables: none if all is well with these.

    "RESERVE BRAKE shows, does the parking brake hold?": what it rests on is in both tables.
    """
    base = know.base
    tables = {c.table: base.records[c.table] for c in told}
    wanted = [(c.table, c.output, c.value) for c in told]
    names = sorted({name for each in (table, *tables.values()) for name in each.inputs})
    if all(is_normal(tables[t], output, value, know) for t, output, value in wanted) or len(names) > _MOST_INPUTS:
        return []
    found: dict[str, set[str]] = {}
    for combination in product(*([v for v, _, _ in base.inputs[name].values] for name in names)):
        state = dict(zip(names, combination, strict=True))
        if all(state_tables.outputs(tables[t], state, base).get(output) == value for t, output, value in wanted):
            for output, value in state_tables.outputs(table, state, base).items():
                found.setdefault(output, set()).add(value)
    return list(found.items())
