"""Ordered rules decide as OMG DMN says of decision tables with hit policy First: the first that matches.

Later rules that match as well count for nothing, and the order of the rules is part of their meaning.
"""

from __future__ import annotations

from itertools import permutations
from types import SimpleNamespace
from typing import cast

import pytest

from assistant.knowledge.base import Base
from assistant.knowledge.records import Source, StateTable, TableInput, TableOutput, TableRule
from assistant.resolving.tables import decide, minimal_sets, outputs, row, states_with
from assistant.understanding.states import Condition


def two_valued(name: str, normal: str = "no", other: str = "yes") -> TableInput:
    return TableInput(name, name, ((normal, "", ""), (other, "", "")), (Source("D", name),))


BASE = cast(Base, SimpleNamespace(decided={}, leading={}, inputs={name: two_valued(name) for name in ("a", "b")}))


def rule(result: str, *when: dict[str, str]) -> TableRule:
    return TableRule(tuple(tuple(each.items()) for each in when), (("result", result),), (Source("D", result),))


def table(*rules: TableRule) -> StateTable:
    results = tuple((each.then[0][1], "", "") for each in rules)
    return StateTable("t", "t", ("a", "b"), (TableOutput("result", (), results),), rules, (Source("D", "t"),))


A = rule("A", {"a": "yes"})
B = rule("B", {"b": "yes"})
OTHERWISE = rule("otherwise", {})


def result(of: StateTable, **state: str) -> str:
    return outputs(of, state, BASE)["result"]


def test_the_first_of_two_that_match_decides() -> None:
    assert result(table(A, B, OTHERWISE), a="yes", b="yes") == "A"
    assert result(table(B, A, OTHERWISE), a="yes", b="yes") == "B"


def test_order_decides_only_where_rules_overlap() -> None:
    for first, second in permutations((A, B)):
        ordered = table(first, second, OTHERWISE)

        assert result(ordered, a="yes") == "A"
        assert result(ordered, b="yes") == "B"
        assert result(ordered) == "otherwise"


def test_a_rule_without_conditions_matches_everything_and_hides_what_follows() -> None:
    for state in ({}, {"a": "yes"}, {"b": "yes"}, {"a": "yes", "b": "yes"}):
        assert decide(table(OTHERWISE, A, B), state, BASE) is OTHERWISE
        assert decide(table(TableRule((), (("result", "x"),)), A), state, BASE).then == (("result", "x"),)


def test_conditions_of_one_branch_must_all_hold() -> None:
    both = table(rule("both", {"a": "yes", "b": "yes"}), OTHERWISE)

    assert result(both, a="yes", b="yes") == "both"
    assert result(both, a="yes") == result(both, b="yes") == "otherwise"


def test_any_branch_of_a_rule_will_do() -> None:
    either = table(rule("either", {"a": "yes"}, {"b": "yes"}), OTHERWISE)

    assert result(either, a="yes") == result(either, b="yes") == "either"
    assert result(either) == "otherwise"


def test_absent_inputs_are_normal_and_foreign_ones_count_for_nothing() -> None:
    normal = table(rule("normal", {"a": "no"}), OTHERWISE)

    assert result(normal) == "normal"
    assert result(normal, c="yes") == "normal"


def test_a_state_without_a_rule_is_an_error() -> None:
    with pytest.raises(LookupError, match="table t has no rule"):
        decide(table(A, B), {}, BASE)


def test_a_row_rests_on_the_table_the_rule_and_what_was_said() -> None:
    found = row(table(A, OTHERWISE), [Condition("a", "yes"), Condition("elsewhere", "yes")], BASE)

    assert found.conditions == (Condition("a", "yes"),)
    assert found.outputs == (("result", "A"),)
    assert found.sources == (Source("D", "t"), Source("D", "A"), Source("D", "a"))


def test_a_hidden_rule_has_no_states_and_no_sets() -> None:
    hidden = table(A, rule("never", {"a": "yes", "b": "yes"}), OTHERWISE)

    assert states_with(hidden, "result", "never", BASE) == []
    assert minimal_sets(hidden, "result", "never", BASE) == []


def test_minimal_sets_leave_out_what_a_smaller_set_already_does() -> None:
    either = table(rule("bad", {"a": "yes"}, {"b": "yes"}), OTHERWISE)
    both = table(rule("bad", {"a": "yes", "b": "yes"}), OTHERWISE)

    assert minimal_sets(either, "result", "bad", BASE) == [(("a", "yes"),), (("b", "yes"),)]
    assert minimal_sets(both, "result", "bad", BASE) == [(("a", "yes"), ("b", "yes"))]
    assert minimal_sets(both, "result", "otherwise", BASE) == [()]


def test_one_input_is_never_in_two_states() -> None:
    three = TableInput("a", "a", (("no", "", ""), ("some", "", ""), ("all", "", "")))
    base = cast(Base, SimpleNamespace(decided={}, leading={}, inputs={"a": three, "b": two_valued("b")}))
    bad = table(rule("bad", {"a": "some"}, {"a": "all"}), OTHERWISE)

    assert minimal_sets(bad, "result", "bad", base) == [(("a", "some"),), (("a", "all"),)]
