"""State tables: the first rule that matches, what differs from normal, and what leads to a result.

Hit policy First of OMG DMN: rules are tried in order and the first that matches decides. Inputs that a question
does not name are normal, and the answer says so.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import combinations, product

from assistant.knowledge.base import Base
from assistant.knowledge.records import StateTable, TableInput, TableRule
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import CauseResult, Row
from assistant.understanding.states import Condition

State = Mapping[str, str]
_MOST_TOGETHER = 6
"""Things that may have failed together: more than any table needs, and few enough to try all sets."""
_MOST_KEPT = 200
"""Searches for the sets that lead to results of a table, of which what was found is kept."""


def decide(table: StateTable, state: State, base: Base) -> TableRule:
    """Return the first rule that matches; inputs absent from the state are normal.

    Raises LookupError when no rule matches, which the knowledge check rules out. What was decided is kept: sets of
    failures are found by trying them all.
    """
    kept = base.decided.setdefault(id(table), (table, {}))[1]
    key = tuple(map(state.get, table.inputs))
    found = kept.get(key)
    if found is None:
        found = kept[key] = _first_match(table, state, base)
    return found


def _first_match(table: StateTable, state: State, base: Base) -> TableRule:
    full = {name: state.get(name, normal(base.inputs[name])) for name in table.inputs}
    for rule in table.rules:
        if not rule.when or any(all(full.get(k) == v for k, v in branch) for branch in rule.when):
            return rule
    raise LookupError(f"table {table.id} has no rule for {dict(full)}")


def normal(item: TableInput) -> str:
    """Return the normal value of an input: its first."""
    return item.values[0][0]


def outputs(table: StateTable, state: State, base: Base) -> dict[str, str]:
    """Return every output of a table in a state."""
    return dict(decide(table, state, base).then)


def row(table: StateTable, conditions: Iterable[Condition], base: Base) -> Row:
    """Return the row that fits some conditions, with the paragraphs that it rests on."""
    relevant = tuple(c for c in conditions if c.input in table.inputs)
    rule = decide(table, {c.input: c.value for c in relevant}, base)
    sources = [*table.sources, *rule.sources]
    for condition in relevant:
        sources.extend(base.inputs[condition.input].sources)
    return Row(relevant, tuple(rule.then), tuple(dict.fromkeys(sources)))


def tables(base: Base) -> Sequence[StateTable]:
    """Return every state table."""
    return base.tables


def values_of(base: Base, table: StateTable) -> list[list[str]]:
    """Return the values of each input, in the table's order."""
    return [[v for v, _, _ in base.inputs[name].values] for name in table.inputs]


def states_with(
    table: StateTable, output: str, value: str, base: Base, given: State | None = None
) -> list[dict[str, str]]:
    """Return every state of the inputs in which an output has a value, by exhaustive enumeration."""
    found = []
    fixed = given or {}
    for combination in product(*values_of(base, table)):
        state = dict(zip(table.inputs, combination, strict=True))
        if any(state.get(k) != v for k, v in fixed.items() if k in state):
            continue
        if outputs(table, state, base)[output] == value:
            found.append(state)
    return found


def minimal_sets(
    table: StateTable, output: str, value: str, base: Base, given: State | None = None
) -> list[tuple[tuple[str, str], ...]]:
    """Return the smallest sets of inputs that are not normal and lead to a result.

    A set is minimal when none of its subsets leads there. Inputs of `given` hold throughout and are not listed.
    """
    return joint_sets(((table, output, value),), base, given)


def joint_sets(
    wanted: Sequence[tuple[StateTable, str, str]], base: Base, given: State | None = None
) -> list[tuple[tuple[str, str], ...]]:
    """Return the smallest sets of inputs that lead to several results (table, output, value) at once. What was found
    is kept: a question looks for the same sets more than once, and many ask what leads to one result.
    """
    kept = base.leading.setdefault(id(wanted[0][0]), (wanted[0][0], {}))[1] if wanted else {}
    key = tuple((table.id, *result) for table, *result in wanted), tuple(sorted((given or {}).items()))
    if key not in kept:
        if len(kept) >= _MOST_KEPT:
            kept.clear()
        kept[key] = _smallest_sets(wanted, base, dict(given or {}))
    return list(kept[key])


def _smallest_sets(
    wanted: Sequence[tuple[StateTable, str, str]], base: Base, fixed: State
) -> list[tuple[tuple[str, str], ...]]:
    names = [name for name in dict.fromkeys(n for t, _, _ in wanted for n in t.inputs) if name not in fixed]
    abnormal = [(name, v) for name in names for v, _, _ in base.inputs[name].values[1:]]
    found: list[tuple[tuple[str, str], ...]] = []
    known: list[frozenset[tuple[str, str]]] = []
    for size in range(min(len(names), _MOST_TOGETHER) + 1):
        for chosen in combinations(abnormal, size):
            state = dict(chosen)
            if len(state) < size or (known and any(map(frozenset(chosen).issuperset, known))):
                continue
            state.update(fixed)
            if all(_is(outputs(table, state, base)[output], value) for table, output, value in wanted):
                found.append(chosen)
                known.append(frozenset(chosen))
    return found


def _is(result: str, value: str) -> bool:
    """Return whether a result is the one looked for; "!normal" stands for any other than normal."""
    return result != value[1:] if value.startswith("!") else result == value


def causes(
    table: StateTable, output: str, value: str, know: Knowledge, single: bool, given: tuple[Condition, ...]
) -> CauseResult:
    """Return what leads to a result of a table."""
    fixed = {c.input: c.value for c in given if c.input in table.inputs}
    sets = minimal_sets(table, output, value, know.base, fixed)
    return CauseResult(table, output, value, tuple(sets), single, given)


def results_with(table: StateTable, inputs: State, results: State, output: str, base: Base) -> set[str]:
    """Return the values that an output takes wherever some inputs and some other results hold."""
    found: set[str] = set()
    for combination in product(*values_of(base, table)):
        state = dict(zip(table.inputs, combination, strict=True))
        if any(state.get(k) != v for k, v in inputs.items()):
            continue
        now = outputs(table, state, base)
        if all(now.get(k) == v for k, v in results.items()):
            found.add(now[output])
    return found
