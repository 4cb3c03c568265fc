"""Questions about states: which row fits, what is lost, and what leads to a result."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from assistant.knowledge.records import Fact, Source, StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CauseResult, LossResult, Needed, Result, Row, TableResult
from assistant.understanding.matching import Match
from assistant.understanding.reading import Mention
from assistant.understanding.states import Condition

Scored = tuple[float, float, Result]
_OTHER_TABLE = 0.75
_ASKED = 0.97
_ASKING_BACK = 1.04
_UNTOUCHED = 0.72
_UNEXPLAINED = 0.7
_DOING = (("i",), ("we",), ("you",), ("one",), ("a",))
"""After "how can": what somebody does is asked for, and not what leads to a state."""
_SIDES = frozenset(("left", "right"))


def state_candidates(question: Question, know: Knowledge, excused: Collection[int]) -> Iterator[Scored]:
    """Yield what the state tables answer to a question."""
    inputs = tuple(c for c in question.conditions if not c.is_result)
    matches = _output_matches(question, know, excused)
    undecided = left_open(question, know)
    settled = tuple(c for c in inputs if not undecided.intersection(c.where))
    meant = {m.record for m in matches if m.covered > 0.99}
    meant |= {table.id for table in state_tables.tables(know.base) if _outputs_named(table, question)}
    for table in state_tables.tables(know.base):
        own = [m for m in matches if m.record == table.id]
        for score, weight, result in _row(table, inputs, own, question, know, excused):
            # Where a result of one table is asked for, the others have nothing to say.
            yield score * (1.0 if not meant or table.id in meant else _OTHER_TABLE), weight, result
        yield from _by_result(table, own, question, know, excused)
        yield from _causes(table, settled, own, question, know, excused)
    yield from _loss(inputs, matches, question, know, excused)


def _output_matches(question: Question, know: Knowledge, excused: Collection[int]) -> list[Match]:
    ids = frozenset(know.base.ids("tables"))
    return [m for m in know.matcher.rank(question.reading, (), excused, ids) if m.score > 0.2]


def _content(question: Question, know: Knowledge, excused: Collection[int]) -> list[Mention]:
    return [
        m for m in question.reading.mentions if not m.weak and m.start not in excused and not know.matcher.is_soft(m)
    ]


def _unused_amounts(question: Question) -> float:
    """Amounts that are no reading of an input speak against an answer by states alone."""
    used = {k for c in question.conditions for k in c.where}
    words = question.reading.words
    left = [a for a in question.reading.amounts if a.start not in used]
    orders = sum(1 for a in left if _SIDES.intersection(words[a.end : a.end + 2]))  # "tiller 30 left"
    return 0.7 ** (len(left) - orders) * 0.9**orders


def _barring(barred: list[Mention], know: Knowledge) -> float:
    """Return how far unexplained mentions speak against an answer: words no term names most of all."""
    share = 1.0
    for mention in barred:
        share *= 0.45 if know.matcher.is_strict(mention) else 0.88
    return share


def _outputs_named(table: StateTable, question: Question) -> list[tuple[str, str]]:
    """Return (output, value) of a table's results that the question names."""
    prefix = f"={table.id}."
    found = []
    for concept in question.reading.concepts:
        if concept.startswith(prefix):
            output, value = concept[len(prefix) :].split(".", 1)
            found.append((output, value))
    given = [c for c in question.conditions if c.input.startswith(table.id + ".")]
    found.extend((c.input.split(".", 1)[1], c.value) for c in given)
    return sorted(set(found))


def _row(
    table: StateTable, inputs: tuple[Condition, ...], matches: list[Match], question: Question, know: Knowledge,
    excused: Collection[int],
) -> Iterator[Scored]:  # fmt: skip
    relevant = tuple(c for c in inputs if c.input in table.inputs)
    asked = [m for m in matches if m.covered > 0.99]
    named = _outputs_named(table, question)
    normal = _all_normal(question) and bool(asked)
    unsaid = _unsaid(table, question) if asked or named else ()
    if not (normal or unsaid) and (not inputs or not (asked or named or relevant)):
        return
    content = _content(question, know, excused)
    vocabulary = know.matcher.vocabulary(table.id)
    barred = [m for m in content if vocabulary.isdisjoint(m.concepts)]
    leading = tuple(dict.fromkeys([*(m.tag.split(".", 1)[1] for m in asked), *(o for o, _ in named)]))
    explained = [m for m in content if not vocabulary.isdisjoint(m.concepts)]
    weight = sum(know.matcher.mention_weight(m) for m in explained) + len(relevant)
    bare = relevant == inputs and not content
    score = _fit(relevant, bool(asked), bool(named), bare, question, know)
    if relevant and not (asked or named):
        score -= 0.1 if content and not explained else 0.0
    elif not relevant and not unsaid:
        score = 0.93 if normal else _UNTOUCHED if asked else 0.4
    if not (asked or named) and any(_of_another(m, table, inputs, know) for m in barred):
        score *= _UNEXPLAINED
    score *= _barring(barred, know) * _unused_amounts(question)
    if question.reading.says("steps") and all(c.implied for c in inputs):
        score *= _UNEXPLAINED  # a label is named with what is to be done about it
    well = all(_is_well(c, know) for c in relevant)
    asks_when = "when" in question.reading.words or question.reading.has("cause")
    if named and well and asks_when and not _results_in(table, relevant, named, know):
        score *= _UNEXPLAINED  # when that comes about is asked, and these states do not bring it
    elif well and question.reading.says("cause") and not named:
        score *= _UNEXPLAINED  # what has gone wrong is asked, and nothing has
    if asked and not named and _meant_elsewhere(table, relevant, explained, inputs, know):
        score *= _UNEXPLAINED
    if unsaid:
        score = max(score, _ASKING_BACK if asked and not barred else 0.0)
        yield score, weight, _state_needed(table, unsaid, know)
        return
    yield score, weight, _table_result(table, inputs, leading, question, know)


def _meant_elsewhere(
    table: StateTable, relevant: tuple[Condition, ...], explained: list[Mention], inputs: tuple[Condition, ...],
    know: Knowledge,
) -> bool:  # fmt: skip
    """Return whether what is asked may be another table's as well, and only that one has a failure to go by."""
    if not explained or any(not _is_well(c, know) for c in relevant):
        return False
    return any(
        other.id != table.id
        and any(c.input in other.inputs and not _is_well(c, know) for c in inputs)
        and all(know.matcher.vocabulary(other.id) & m.concepts for m in explained)
        for other in state_tables.tables(know.base)
    )


def _is_well(condition: Condition, know: Knowledge) -> bool:
    return condition.value == state_tables.normal(know.base.inputs[condition.input])


def _by_result(
    table: StateTable, matches: list[Match], question: Question, know: Knowledge, excused: Collection[int]
) -> Iterator[Scored]:
    """Yield what always goes with a result that is told of: "RESERVE BRAKE shows; does anti-skid work?"."""
    prefix = table.id + "."
    told = tuple(c for c in question.conditions if c.input.startswith(prefix) and not c.asked)
    given = {c.input.removeprefix(prefix): c.value for c in told}
    asked = tuple(o for m in matches if m.covered > 0.99 and (o := m.tag.split(".", 1)[1]) not in given)
    if not asked or not told or any(c.input in table.inputs for c in question.conditions):
        return
    if question.reading.says("cause", "single", "why", "when"):
        return
    outputs = [(o.id, state_tables.results_with(table, {}, given, o.id, know.base)) for o in table.outputs]
    sure = tuple((name, values.pop()) for name, values in outputs if len(values) == 1)
    if not set(asked) <= {name for name, _ in sure}:
        return
    vocabulary = know.matcher.vocabulary(table.id)
    barred = [m for m in _content(question, know, excused) if vocabulary.isdisjoint(m.concepts)]
    row = Row(told, tuple(pair for pair in sure if pair[0] not in given), table.sources)
    score = _ASKED * _barring(barred, know) * _unused_amounts(question)
    yield score, 4.0, TableResult(table, (row,), asked)


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
        return _ASKED
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


def _unsaid(table: StateTable, question: Question) -> tuple[str, ...]:
    """Return the inputs of a table that a question tells of without a state that is understood."""
    given = {c.input for c in question.conditions}
    return tuple(name for name in question.unsaid if name in table.inputs and name not in given)


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
    given = [c for c in given if not _is_normal(table, c.input.split(".", 1)[1], c.value, know)]
    told = {c.input.split(".", 1)[1]: c.value for c in given}
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


def left_open(question: Question, know: Knowledge) -> set[int]:
    """Return where a question names one of several things without saying which: "one system"."""
    return {
        k
        for m in question.reading.mentions
        if any(know.lexicon.kinds.get(c) == "either" for c in m.concepts)
        for k in m.taken
    }


def alternatives(conditions: tuple[Condition, ...], question: Question, know: Knowledge) -> list[tuple[Condition, ...]]:
    """Return the cases that a question leaves open: "one system lost" is either of them."""
    places = left_open(question, know)
    if not places:
        return [conditions]
    open_ones = sorted((c for c in conditions if places.intersection(c.where)), key=lambda c: c.input)
    fixed = tuple(c for c in conditions if c not in open_ones)
    return [(*fixed, c) for c in open_ones] or [conditions]


def _causes(
    table: StateTable, inputs: tuple[Condition, ...], matches: list[Match], question: Question, know: Knowledge,
    excused: Collection[int],
) -> Iterator[Scored]:  # fmt: skip
    reading = question.reading
    if not reading.has("cause", "single", "when") and not _asks_when(question):
        return
    if not reading.has("single") and any(c.asked for c in question.conditions) and any(not c.implied for c in inputs):
        return  # "losing System 1 puts us in ALTERNATE, right?": what the states lead to is asked
    named = _outputs_named(table, question)
    everything = named
    named = [(o, v) for o, v in named if not _is_normal(table, o, v, know)]
    if not named and everything:
        # "What costs me NORMAL braking": the normal value is named as the one that goes.
        named = [(o, "!" + v) for o, v in everything]
    if not named and (reading.asks_loss or reading.has("cause", "single")):
        outputs = [o.id for o in table.outputs if reading.has(o.id)]
        named = [pair for output in outputs for pair in _lost_value(table, output, know)]
    if not named and matches and matches[0].covered > 0.99 and (reading.asks_loss or reading.has("cause")):
        named = _lost_value(table, matches[0].tag.split(".", 1)[1], know)
    if not named:
        return
    vocabulary = know.matcher.vocabulary(table.id)
    barred = [m for m in _content(question, know, excused) if vocabulary.isdisjoint(m.concepts)]
    output, value = _principal(table, named)
    clear = reading.has("cause", "single") or (_asks_when(question) and bool(everything))
    plain = any({"cause", "single"} <= m.concepts for m in reading.mentions)  # "single failures giving …"
    score = (1.04 if plain else 0.98 if clear else 0.9) * _unused_amounts(question) * _barring(barred, know)
    found = state_tables.causes(table, output, value, know, reading.has("single"), inputs)
    extra = tuple(Condition(f"{table.id}.{o}", v) for o, v in everything if o != output)
    yield score, 3.0, _narrowed(found, extra, know)


def _asks_when(question: Question) -> bool:
    words = question.reading.words
    return "when" in words[:3] or any(
        word == "how" and words[i + 1 : i + 2] in (("can",), ("could",)) and words[i + 2 : i + 3] not in _DOING
        for i, word in enumerate(words)
    )


def _is_normal(table: StateTable, output: str, value: str, know: Knowledge) -> bool:
    return state_tables.outputs(table, {}, know.base).get(output) == value


def _lost_value(table: StateTable, output: str, know: Knowledge) -> list[tuple[str, str]]:
    normal = state_tables.outputs(table, {}, know.base).get(output)
    found = next(o for o in table.outputs if o.id == output)
    others = [v for v, _, _ in found.values if v != normal]
    return [(output, others[0])] if len(others) == 1 else []


def _principal(table: StateTable, named: list[tuple[str, str]]) -> tuple[str, str]:
    order = [o.id for o in table.outputs]
    return min(named, key=lambda pair: order.index(pair[0]) if pair[0] in order else 99)


def _narrowed(found: CauseResult, extra: tuple[Condition, ...], know: Knowledge) -> CauseResult:
    """Keep the sets in which the other results that the question names hold as well."""
    kept = []
    given = {c.input: c.value for c in found.given}
    for chosen in found.sets:
        results = state_tables.outputs(found.table, {**given, **dict(chosen)}, know.base)
        if all(results.get(c.input.split(".", 1)[1]) == c.value for c in extra):
            kept.append(chosen)
    return found._replace(sets=tuple(kept)) if extra and kept else found


def _loss(
    inputs: tuple[Condition, ...], matches: list[Match], question: Question, know: Knowledge,
    excused: Collection[int],
) -> Iterator[Scored]:  # fmt: skip
    losing = _asks_what_goes(matches, question, know, excused)
    if not inputs or not (losing or question.reading.says("happens", "steps")):
        return
    if question.reading.has("cause", "single") and any("=" in c[0] for c in question.reading.concepts):
        return  # what leads to a result is asked, under the states given
    if left_open(question, know):
        return  # "a system": one of two, and not both of them
    if not losing and not question.reading.has("happens") and any(c.implied for c in inputs):
        return
    content = _content(question, know, excused)
    known = frozenset().union(*(know.matcher.vocabulary(t.id) for t in state_tables.tables(know.base)))
    barred = [m for m in content if known.isdisjoint(m.concepts)]
    score = 1.01 if losing else 0.84
    if any(m.covered > 0.99 and m.share > 0.5 for m in matches):
        score = 0.7
    if question.reading.has("cause"):
        score *= 0.9  # it asks what leads to the state that it names
    found = loss(inputs, know)
    if not found.lost and not found.facts:
        score *= 0.8  # nothing follows from it, so that something else is asked
    yield score * _barring(barred, know), 2.0, found


def _asks_what_goes(
    matches: list[Match], question: Question, know: Knowledge, excused: Collection[int]
) -> bool:
    """Return whether it is asked what is lost, and not only told that a thing is: "we lose System 1; which mode?"."""
    reading = question.reading
    losing = [m for m in reading.mentions if "lose" in m.concepts]
    if any(m.start not in excused for m in losing):
        return True
    if not losing or not reading.asks_loss:
        return reading.asks_loss
    content = _content(question, know, excused)
    whole = [m.record for m in matches if m.covered > 0.99]
    known = frozenset().union(*(know.matcher.vocabulary(t.id) for t in state_tables.tables(know.base)))
    told = [m for m in content if not known.isdisjoint(m.concepts)]
    if not told:
        return not content  # "I lose the controller: how do I keep straight": no table tells
    return not any(all(know.matcher.vocabulary(t) & m.concepts for m in told) for t in whole)


def loss(inputs: tuple[Condition, ...], know: Knowledge) -> LossResult:
    """Return everything that differs from normal under some conditions, across all tables."""
    lost: list[tuple[StateTable, str, str]] = []
    kept: list[tuple[StateTable, str, str]] = []
    state = {c.input: c.value for c in inputs}
    sources: list[Source] = []
    for table in state_tables.tables(know.base):
        if not any(c.input in table.inputs for c in inputs):
            continue
        normal = state_tables.outputs(table, {}, know.base)
        now = state_tables.outputs(table, state, know.base)
        sources.extend(state_tables.row(table, inputs, know.base).sources)
        for output in table.outputs:
            (lost if now[output.id] != normal[output.id] else kept).append((table, output.id, now[output.id]))
    facts = tuple(
        fact
        for name in know.base.ids("facts")
        if isinstance(fact := know.base.records[name], Fact)
        and fact.when
        and any(k in state for k, _ in fact.when)
        and all(state.get(k, know.states.normal(k)) == v for k, v in fact.when)
    )
    sources.extend(s for fact in facts for s in fact.sources)
    return LossResult(inputs, tuple(lost), tuple(kept), facts, tuple(dict.fromkeys(sources)))
