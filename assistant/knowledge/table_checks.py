"""What must hold of state tables: all combinations are tried, so that no situation lacks an answer."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import product
from math import prod
from typing import Any

from assistant.knowledge import records as kinds
from assistant.knowledge.base import Base
from assistant.knowledge.named import Named, of_kind
from assistant.knowledge.problems import Problem

MOST_COMBINATIONS = 100_000
"""Combinations of inputs that a state table may have: each is tried."""


def word_groups_exist(base: Base) -> Iterator[Problem]:
    """Every @group that stands for words is listed."""
    for named in (*of_kind(base, "inputs"), *of_kind(base, "tables")):
        for group in sorted(set(_groups(named.record))):
            if base.lacks(group, base.lists):
                yield named.unknown("word group", group, base.lists, "list it under 'words:'")


def conditions_exist(base: Base) -> Iterator[Problem]:
    """Conditions of facts and limits name an input, or an output as table.output, and one of its values."""
    for named in (*of_kind(base, "facts"), *of_kind(base, "limits")):
        yield from input_conditions(named, named.record.when, base)


def inputs_are_sound(base: Base) -> Iterator[Problem]:
    """An input has at least two values, and its readings lead to them."""
    for named in of_kind(base, "inputs"):
        values = [value for value, _, _ in named.record.values]
        if len(values) < 2:
            yield named.problem("has fewer than two values", "give the normal one first, then the others")
        for _, _, _, value, _ in named.record.number:
            if value not in values:
                yield named.unknown("value", value, values, f"its values are {', '.join(values)}")
        yield from last_is_otherwise(named, [test for test, *_ in named.record.number])


def tables_use_what_exists(base: Base) -> Iterator[Problem]:
    """Rules of a state table name its inputs, outputs and their values; each rule gives every output."""
    for named in of_kind(base, "tables"):
        for name in named.record.inputs:
            if base.lacks(name, base.inputs):
                yield named.unknown("input", name, base.inputs, "add it under 'inputs:'")
        for number, rule in enumerate(named.record.rules, 1):
            at = _rule(named, number, base)
            for alternative in rule.when:
                yield from _rule_conditions(at, alternative, named.record, base)
            yield from _rule_outputs(at, rule, named.record)
        for name, value, _ in named.record.remarks:
            yield from _rule_conditions(named, ((name, value),), named.record, base)
        yield from _reasons(named, base)
        yield from _means(named, base)


def _reasons(named: Named, base: Base) -> Iterator[Problem]:
    """Problems of reasons that no statement gives, or of outputs that the table lacks."""
    outputs = [output.id for output in named.record.outputs]
    for reason in named.record.reasons:
        yield from _rule_conditions(named, reason.when, named.record, base)
        if base.lacks(reason.why, base.records):
            yield named.unknown("record", reason.why, base.records, "name the statement that says why")
        for name in reason.of:
            if name not in outputs:
                yield named.unknown("output", name, outputs, f"the outputs are {', '.join(outputs)}")


def _means(named: Named, base: Base) -> Iterator[Problem]:
    """Problems of means that no statement tells, or of results that the table lacks."""
    values = {output.id: [v for v, _, _ in output.values] for output in named.record.outputs}
    for each in named.record.means:
        if base.lacks(each.tell, base.records):
            yield named.unknown("record", each.tell, base.records, "name the statement that tells the means")
        if base.lacks(each.asked, base.terms):
            yield named.unknown("term", each.asked, base.terms, "name the concept that asks for the means")
        if each.value not in values.get(each.of, ()):
            known = [f"{name}.{value}" for name, found in values.items() for value in found]
            yield named.unknown("result", f"{each.of}.{each.value}", known, f"the results are {', '.join(known)}")


def tables_are_complete(base: Base) -> Iterator[Problem]:
    """Every combination of inputs has a rule, and every rule decides at least one."""
    for named in of_kind(base, "tables"):
        table = named.record
        if all(name in base.inputs for name in table.inputs):
            yield from _enumerate(
                named, base, [[v for v, _, _ in base.inputs[i].values] for i in table.inputs]
            )


def input_conditions(named: Named, conditions: Iterable[tuple[str, str]], base: Base) -> Iterator[Problem]:
    """Problems of (input, value) or (table.output, value) pairs that do not exist."""
    for name, value in conditions:
        values = _values(name, base)
        if values is None and base.may_stand_unread(name.partition(".")[0]):
            continue
        if values is None:
            known = [*base.inputs, *_outputs(base)]
            yield named.unknown("input", name, known, "name an input, or table.output")
        elif value not in values:
            yield _unknown_value(named, name, value, values)


def last_is_otherwise(named: Named, tests: Sequence[str]) -> Iterator[Problem]:
    """A problem when a test stands after 'otherwise', where it can never be reached."""
    if "otherwise" in tests[:-1]:
        yield named.problem("has tests after 'otherwise'", "put 'otherwise' last")


def _outputs(base: Base) -> dict[str, kinds.TableOutput]:
    tables = map(base.records.__getitem__, base.ids("tables"))
    return {f"{table.id}.{output.id}": output for table in tables for output in table.outputs}


def _values(name: str, base: Base) -> list[str] | None:
    """The values of an input, or of an output written table.output; None when there is none such."""
    found: Any = base.inputs[name] if name in base.inputs else _outputs(base).get(name)
    return None if found is None else [value for value, *_ in found.values]


def _unknown_value(named: Named, name: str, value: str, values: Sequence[str]) -> Problem:
    return named.unknown("value", f"{name}: {value}", (), f"its values are {', '.join(values)}")


def _rule_conditions(
    named: Named, conditions: Iterable[tuple[str, str]], table: kinds.StateTable, base: Base
) -> Iterator[Problem]:
    for name, value in conditions:
        if name not in table.inputs:
            yield named.unknown("input", name, table.inputs, f"the inputs are {', '.join(table.inputs)}")
        elif name in base.inputs:
            yield from input_conditions(named, [(name, value)], base)


def _rule_outputs(named: Named, rule: kinds.TableRule, table: kinds.StateTable) -> Iterator[Problem]:
    outputs = {output.id: [value for value, *_ in output.values] for output in table.outputs}
    given = dict(rule.then)
    for name, value in rule.then:
        if name not in outputs:
            yield named.unknown("output", name, outputs, f"the outputs are {', '.join(outputs)}")
        elif value not in outputs[name]:
            yield _unknown_value(named, name, value, outputs[name])
    for name in outputs:
        if name not in given:
            yield named.problem(f"does not give '{name}'", "let each rule give every output")


def _rule(named: Named, number: int, base: Base) -> Named:
    """A rule of a table, counted from 1, at its own line."""
    lines = base.compiled["rule_lines"].get(named.record.id, [])
    line = lines[number - 1] if number <= len(lines) else named.line
    return named._replace(label=f"rule {number} of {named.label}", line=line)


def _enumerate(named: Named, base: Base, values: list[list[str]]) -> Iterator[Problem]:
    table = named.record
    combinations = prod(map(len, values))
    if combinations > MOST_COMBINATIONS:
        yield named.problem(f"has {combinations:,} combinations of inputs", "divide it into smaller tables")
        return
    used: set[int] = set()
    missing: list[dict[str, str]] = []
    for combination in product(*values):
        state = dict(zip(table.inputs, combination, strict=True))
        first = first_match(table.rules, state)
        if first is None:
            missing.append(state)
        else:
            used.add(first)
    if missing:
        example = ", ".join(f"{name} {value}" for name, value in missing[0].items())
        message = f"has no rule for {len(missing)} of {combinations} combinations, such as {example}"
        yield named.problem(message, "add a last rule with 'when: {}'")
    for number in range(len(table.rules)):
        if number not in used:
            yield _rule(named, number + 1, base).problem("can never match", "move it up or remove it")


def first_match(rules: Sequence[kinds.TableRule], state: dict[str, str]) -> int | None:
    """Index of the first rule one of whose alternatives holds in a state."""
    for index, rule in enumerate(rules):
        for alternative in rule.when:
            if all(state.get(name) == value for name, value in alternative):
                return index
    return None


def _groups(record: Any) -> Iterator[str]:
    """Names of the word groups used by an input or the outputs of a table."""
    for holder in (record, *getattr(record, "outputs", ())):
        for _, _, words in getattr(holder, "values", ()):
            yield from (
                word[1:] for word in words.replace(";", " ").replace(",", " ").split() if word[:1] == "@"
            )
