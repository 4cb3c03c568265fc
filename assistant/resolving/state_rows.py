"""Which row of a state table fits a question, under the states that it gives or with a result that it tells of."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from itertools import pairwise

from assistant.knowledge.records import StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Needed, Row, TableResult
from assistant.resolving.state_asked import (
    ASKED,
    UNEXPLAINED,
    WHICH,
    Scored,
    barring,
    content_of,
    fails_unknown,
    is_normal,
    is_well,
    left_open,
    told_differs,
    turns_off_unknown,
    unused_amounts,
)
from assistant.understanding.clauses import asks_whether
from assistant.understanding.matching import Match
from assistant.understanding.mentions import STATE, Mention
from assistant.understanding.states import Condition

_ASKING_BACK = 1.04
_UNTOUCHED = 0.72
_ALL_WELL = 0.75
_NOT_UNDERSTOOD = 0.5
_OF_ANOTHER = 0.9
_CAN = frozenset(("can", "could", "may", "might"))
_SET_OUT = 1.1
"""What it speaks for a row that all else is told to be normal: the state is set out whole."""


def row_candidates(
    table: StateTable, inputs: tuple[Condition, ...], matches: list[Match], question: Question, know: Knowledge,
    excused: Collection[int],
) -> Iterator[Scored]:  # fmt: skip
    """Yield the row that fits the states given, or the question back for one that is not understood."""
    relevant = tuple(c for c in inputs if c.input in table.inputs)
    asked = [m for m in matches if m.whole]
    named = question.results_named.get(table.id, [])
    normal = _all_normal(question) and bool(asked)
    unsaid = _unsaid(table, relevant, question, know) if asked or named else ()
    if not (normal or unsaid) and (not inputs or not (asked or named or relevant)):
        return
    content = content_of(question, know, excused)
    vocabulary = know.matcher.vocabulary(table.id)
    barred = [m for m in content if vocabulary.isdisjoint(m.concepts) and not _only_well(m)]
    leading = tuple(dict.fromkeys([*(m.output for m in asked), *(o for o, _ in named)]))
    explained = [m for m in content if not vocabulary.isdisjoint(m.concepts)]
    weight = sum(know.matcher.mention_weight(m) for m in explained) + len(relevant)
    bare = relevant == inputs and not content
    score = _fit(relevant, bool(asked), bool(named), bare, question, know)
    if relevant and not (asked or named):
        score -= 0.1 if content and not explained else 0.0
    elif not relevant and not unsaid:
        doubted = any(c.asked and c.is_result for c in question.conditions) and bool(named)
        outright = bool(asked) and not barred and _asks_whether_possible(question)
        score = 0.93 if normal or outright else _UNTOUCHED if asked or doubted else 0.4
    if not (asked or named) and any(_of_another(m, table, inputs, know) for m in barred):
        score *= UNEXPLAINED
    if not (asked or named) and any(_titles_another(m, table, know) for m in explained):
        score *= _OF_ANOTHER
    score *= barring(barred, know) * unused_amounts(question) * (_SET_OUT if normal and relevant else 1.0)
    score *= _told_otherwise(table, relevant, inputs, bool(asked), named, bool(barred), question, know)
    if asked and not named and _meant_elsewhere(table, relevant, explained, inputs, know):
        score *= UNEXPLAINED
    if unsaid:
        score = max(score, _ASKING_BACK if asked and not barred else 0.0)
        yield score, weight, _state_needed(table, unsaid, know)
        return
    found = _table_result(table, inputs, leading, question, know)
    outcomes = [{(table.id, name): value for name, value in r.outputs} for r in found.rows if not _from_result(r)]
    yield score * (UNEXPLAINED if told_differs(outcomes, question, know) else 1.0), weight, found


def _titles_another(mention: Mention, table: StateTable, know: Knowledge) -> bool:
    """Return whether a thing is what another table is of, and this one is not: the gear, of the brakes."""
    if not mention.concepts.isdisjoint(know.tables_are_of[table.id]):
        return False
    return any(not mention.concepts.isdisjoint(concepts) for concepts in know.tables_are_of.values())


def _asks_whether_possible(question: Question) -> bool:
    """Return whether it is asked if something can be done, of which "still so" is an answer; not how it can be."""
    words, how = question.reading.words, "how" in question.reading.words
    in_what_way = how and any(one == "how" and can in _CAN for one, can in pairwise(words))
    return question.reading.has("can") and not question.reading.amounts and not in_what_way


def _from_result(row: Row) -> bool:
    """Return whether a row rests on a result that is told, besides a failure."""
    return any(c.is_result for c in row.conditions)


def _only_well(mention: Mention) -> bool:
    """Return whether a word only says that something works, which is so of all that is not named."""
    return "@working" in mention.concepts and all(c.startswith(STATE) for c in mention.concepts)


def _told_otherwise(
    table: StateTable, relevant: tuple[Condition, ...], inputs: tuple[Condition, ...], asked: bool,
    named: list[tuple[str, str]], barred: bool, question: Question, know: Knowledge,
) -> float:  # fmt: skip
    """Return how far it speaks against a row that something else than what follows from the states is asked."""
    reading, share = question.reading, 1.0
    if reading.says("steps") and all(c.implied for c in inputs):
        share *= UNEXPLAINED  # a label is named with what is to be done about it
    if turns_off_unknown(question):
        share *= _NOT_UNDERSTOOD
    if not all(is_well(c, know) for c in relevant):
        return share * (UNEXPLAINED if _asks_which_failure(question, named) else 1.0)
    if fails_unknown(question):
        share *= _NOT_UNDERSTOOD
    beside = "when" in reading.words or reading.has("cause", "maximum", "minimum")
    if named and beside and not _results_in(table, relevant, named, know):
        share *= UNEXPLAINED  # when that comes about is asked, or how much in it, and these states do not bring it
    elif not named and reading.says("cause") and not asks_whether(reading.words):
        share *= UNEXPLAINED  # what has gone wrong is asked, and nothing has
    if relevant and barred and not (asked or named):
        share *= _ALL_WELL  # that a thing is well is no reason to tell what rests on it
    return share


def _asks_which_failure(question: Question, named: list[tuple[str, str]]) -> bool:
    """Return whether a failure is asked for that takes what is not understood: "which single failure … then"."""
    return not named and question.reading.says("single") and not WHICH.isdisjoint(question.reading.words)


def _meant_elsewhere(
    table: StateTable, relevant: tuple[Condition, ...], explained: list[Mention], inputs: tuple[Condition, ...],
    know: Knowledge,
) -> bool:  # fmt: skip
    """Return whether what is asked may be another table's as well, and that one has more failures to go by."""
    mine = sum(not is_well(c, know) for c in relevant)
    return bool(explained) and any(
        other.id != table.id
        and sum(c.input in other.inputs and not is_well(c, know) for c in inputs) > mine
        and all(know.matcher.vocabulary(other.id) & m.concepts for m in explained)
        for other in state_tables.tables(know.base)
    )


def _results_in(
    table: StateTable, given: tuple[Condition, ...], named: list[tuple[str, str]], know: Knowledge
) -> bool:
    """Return whether the states given lead to a result that is named."""
    now = state_tables.outputs(table, {c.input: c.value for c in given}, know.base)
    return any(now.get(output) == value for output, value in named)


def _fit(
    relevant: tuple[Condition, ...], asked: bool, named: bool, bare: bool, question: Question, know: Knowledge
) -> float:
    """Return how well a table fits a question that gives states: best where one of its results is asked for."""
    if asked and (question.context or _decides_sense(relevant, question)):
        return 1.03  # within a scenario, its states are meant
    doubted = named and any(c.asked and c.is_result for c in question.conditions)
    if doubted and not all(c.implied for c in relevant) and not question.reading.says("single", "cause"):
        return 1.02  # "System 2 gone: would the bars be amber?"
    if asked or named:
        return ASKED
    gives_result = any(c.is_result for c in question.conditions)
    if len(relevant) > 1 and bare and not _asks_what_follows(question) and not gives_result:
        return 1.02  # states alone were given: what they lead to is meant
    return 0.62 if all(_by_the_way(c, question, know) for c in relevant) else 0.8


def _of_another(mention: Mention, table: StateTable, inputs: tuple[Condition, ...], know: Knowledge) -> bool:
    """Return whether a mention is of what another table tells, which depends on a state given as well."""
    return any(
        other.id != table.id
        and any(c.input in other.inputs for c in inputs)
        and not know.matcher.vocabulary(other.id).isdisjoint(mention.concepts)
        for other in state_tables.tables(know.base)
    )


def _by_the_way(condition: Condition, question: Question, know: Knowledge) -> bool:
    """Return whether a state is only brought along ("airborne"), and no name says it ("no hydraulics")."""
    names = (m for m in question.reading.mentions if set(m.taken) & set(condition.where))
    return condition.implied and not any(c in know.states.sets for m in names for c in m.concepts)


def _decides_sense(relevant: tuple[Condition, ...], question: Question) -> bool:
    """Return whether a thing that stands for several is in this table one: "controller failed, which mode"."""
    return any(
        {c.where for c in question.conditions if c.input != one.input and c.where} >= {one.where}
        and sum(1 for c in relevant if c.where == one.where) == 1
        and any(one.where[0] in m.taken and len(m.concepts) > 1 for m in question.reading.mentions)
        for one in relevant
        if one.where
    )


def _all_normal(question: Question) -> bool:
    return question.reading.has("all_normal") and not question.reading.has("cause", "why")


def _unsaid(
    table: StateTable, relevant: tuple[Condition, ...], question: Question, know: Knowledge
) -> tuple[str, ...]:
    """Return the inputs of a table that a question tells of without a state that is understood, and that matter."""
    given = {c.input for c in question.conditions}
    names = (name for name in question.unsaid if name in table.inputs and name not in given)
    return tuple(name for name in names if _matters(table, name, relevant, know))


def _matters(table: StateTable, name: str, relevant: tuple[Condition, ...], know: Knowledge) -> bool:
    """Return whether a thing makes a difference in the states given: with the nose leg in the air no pin does."""
    if not relevant:
        return True
    state = {c.input: c.value for c in relevant}
    values = (value for value, *_ in know.base.inputs[name].values)
    ways = [state_tables.outputs(table, {**state, name: value}, know.base) for value in values]
    return any(way != ways[0] for way in ways)


def _state_needed(table: StateTable, names: tuple[str, ...], know: Knowledge) -> Needed:
    """Return the question back for the state of things: a guess would be a confident wrong answer."""
    shown = (know.base.terms[know.base.inputs[name].term].names[0] for name in names)
    return Needed(table, tuple(f"the state of {name}" for name in shown), names)


def _table_result(
    table: StateTable, inputs: tuple[Condition, ...], leading: tuple[str, ...], question: Question, know: Knowledge
) -> TableResult:
    unaffected = tuple(c for c in inputs if c.input not in table.inputs)
    cases = alternatives(inputs, question, know)
    rows = tuple(
        state_tables.row(table, case, know.base)._replace(conditions=case)
        if len(cases) > 1
        else state_tables.row(table, case, know.base)
        for case in cases
    )
    rows = _from_results(table, rows, question, know) or rows
    return TableResult(table, rows, leading, unaffected)


def _asks_what_follows(question: Question) -> bool:
    return question.reading.asks_loss or question.reading.has("lose", "happens", "steps", "cause")


def _from_results(table: StateTable, rows: tuple[Row, ...], question: Question, know: Knowledge) -> tuple[Row, ...]:
    """Return the rows when a question gives a result and one failure more: "on ALTERNATE, and System 1 quits".

    The result given held before the failure: each smallest way to it is taken, and the failure added.
    """
    given = [c for c in question.conditions if c.input.startswith(table.id + ".") and not c.asked]
    given = [c for c in given if not is_normal(table, c.output, c.value, know)]
    told = {c.output: c.value for c in given}
    if len(rows) != 1 or not told or told.items() <= dict(rows[0].outputs).items():
        return ()
    output, value = next(iter(told.items()))
    named = {c.input for c in rows[0].conditions}
    ways = [
        way
        for way in state_tables.minimal_sets(table, output, value, know.base)
        if not named.intersection(name for name, _ in way)
        and told.items() <= state_tables.outputs(table, dict(way), know.base).items()
    ]
    found: dict[tuple[tuple[str, str], ...], Row] = {}
    for way in ways:
        if len(way) == min(map(len, ways)):
            conditions = (*(Condition(name, value) for name, value in way), *rows[0].conditions)
            row = state_tables.row(table, conditions, know.base)
            several = row.outputs in found  # what was told stands for any of the ways to it
            found[row.outputs] = row._replace(conditions=(*given, *rows[0].conditions)) if several else row
    return tuple(found.values())


def alternatives(conditions: tuple[Condition, ...], question: Question, know: Knowledge) -> list[tuple[Condition, ...]]:
    """Return the cases that a question leaves open: "one system lost" is either of them."""
    places = left_open(question, know)
    if not places:
        return [conditions]
    open_ones = sorted((c for c in conditions if places.intersection(c.where)), key=lambda c: c.input)
    fixed = tuple(c for c in conditions if c not in open_ones)
    return [(*fixed, c) for c in open_ones] or [conditions]
