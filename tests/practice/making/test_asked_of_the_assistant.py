"""Every question made is put to the assistant, and its answer is held against the key, which is worked out here anew.

Nothing of the makers' own proving is used: verdicts are arithmetic, tables are read from their first rule down, ways
to a result are found by trying every state, schedules are read by numpy.
"""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest

from assistant.answering.answer import ANSWER, Answer
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn
from assistant.practice.making import Question
from assistant.practice.making.make import alone
from assistant.practice.making.question import CAUSE, CHANGE, CHECK, INVERSE, LOSS, MEMORY, READING, STATE, STEPS

Pairs = list[tuple[Question, Answer]]


@pytest.fixture(scope="session")
def answered(knowledge: Knowledge, everything: list[Question], sittings: list[tuple[Question, ...]]) -> Pairs:
    asked = [*everything, *(question for sitting in sittings for question in sitting)]
    return [(q, answer_turn(q.text, Context(variant=q.variant), knowledge)[0]) for q in asked]


def _of(answered: Pairs, *forms: str) -> Pairs:
    found = [pair for pair in answered if pair[0].form in forms]
    assert found
    return found


def test_every_question_is_answered_by_its_own_record(answered: Pairs, knowledge: Knowledge) -> None:
    def own(question: Question, answer: Answer) -> bool:
        if question.form == CHANGE:
            return knowledge.base.changes[answer.entry].record == question.entry
        if question.form == LOSS:
            return answer.entry in knowledge.base.inputs
        return answer.entry == question.entry

    wrong = [f"{q.text} -> {a.outcome} {a.entry}" for q, a in answered if a.outcome != ANSWER or not own(q, a)]
    assert wrong == []
    assert len(answered) > 1500


def test_numbers_are_those_of_the_key(answered: Pairs) -> None:
    def right(question: Question, answer: Answer) -> bool:
        first = question.key.values[0]
        found = answer.values if question.key.verdict else answer.values[:1]
        units = {first.unit, "count"} if first.unit == "factor" else {first.unit}
        return any(
            n.unit in units and abs(n.value - first.value) <= first.tolerance * abs(first.value) + 1e-9 for n in found
        )

    assert [f"{q.text} -> {a.text}" for q, a in answered if q.key.values and not right(q, a)] == []


def test_verdicts_are_arithmetic(answered: Pairs, knowledge: Knowledge) -> None:
    sides = set()
    for question, answer in _of(answered, CHECK):
        limit = knowledge.record(question.entry, question.variant)
        given = question.key.values[1].value
        within = not (limit.maximum and given > limit.maximum.value) and not (
            limit.minimum and given < limit.minimum.value
        )
        assert question.key.verdict == ("within" if within else "outside"), question.text
        assert answer.text.startswith("Within " if within else "Outside "), question.text
        bound = (limit.maximum or limit.minimum).value
        sides.add((given > bound) - (given < bound))
    assert sides == {-1, 0, 1}


def _decided(table: object, state: dict[str, str], knowledge: Knowledge) -> dict[str, str]:
    full = {name: state.get(name, knowledge.base.inputs[name].values[0][0]) for name in table.inputs}  # type: ignore[attr-defined]
    for rule in table.rules:  # type: ignore[attr-defined]
        if not rule.when or any(all(full[name] == value for name, value in branch) for branch in rule.when):
            return dict(rule.then)
    raise AssertionError("no rule")


def test_states_are_those_of_the_first_rule_that_matches(answered: Pairs, knowledge: Knowledge) -> None:
    for question, answer in _of(answered, STATE, LOSS):
        state = {c["input"]: c["value"] for c in answer.understood["conditions"] if "." not in c["input"]}
        for name, value in question.key.states:
            table, output = name.split(".")
            record = knowledge.base.records[table]
            assert _decided(record, state, knowledge)[output] == value, question.text
            said = next(says for o in record.outputs if o.id == output for v, says, _ in o.values if v == value)
            assert said in answer.text, question.text


def test_ways_to_a_result_are_all_the_smallest_ones(answered: Pairs, knowledge: Knowledge) -> None:
    for question, answer in _of(answered, CAUSE):
        table = knowledge.base.records[question.entry]
        normal = {name: knowledge.base.inputs[name].values[0][0] for name in table.inputs}
        outcome = {tuple(_decided(table, dict(way), knowledge).items()) for way in question.key.sets}
        shared = set.intersection(*(set(result) for result in outcome)) - set(_decided(table, {}, knowledge).items())
        found = []
        for output, value in shared:
            states = product(*([v for v, _, _ in knowledge.base.inputs[name].values] for name in table.inputs))
            leading = [
                frozenset(pair for pair in zip(table.inputs, values, strict=True) if normal[pair[0]] != pair[1])
                for values in states
                if _decided(table, dict(zip(table.inputs, values, strict=True)), knowledge)[output] == value
            ]
            found.append({way for way in leading if not any(other < way for other in leading)})
        assert {frozenset(way) for way in question.key.sets} in found, question.text
        assert answer.values[0].value == len(question.key.sets), question.text


def test_schedules_are_straight_between_their_points(answered: Pairs, knowledge: Knowledge) -> None:
    for question, _ in _of(answered, READING):
        xs, ys = zip(*knowledge.record(question.entry, question.variant).points, strict=True)
        expected, given = question.key.values
        assert expected.value == pytest.approx(np.interp(given.value, xs, ys), abs=1e-9)
    for question, _ in _of(answered, INVERSE):
        xs, ys = zip(*knowledge.record(question.entry, question.variant).points, strict=True)
        expected, given = question.key.values
        assert given.value == pytest.approx(np.interp(expected.value, xs, ys), abs=1e-9)


def test_steps_come_in_their_order(answered: Pairs, knowledge: Knowledge) -> None:
    for question, answer in _of(answered, STEPS, MEMORY):
        steps = [s.do for s in knowledge.base.records[question.entry].steps if question.form == STEPS or s.memory]
        assert list(question.key.points) == steps
        places = [answer.text.lower().find(step.lower().rstrip(".")) for step in steps]
        assert places == sorted(places) and places[0] >= 0


def test_the_key_reads_out_what_the_assistant_says(answered: Pairs) -> None:
    """All of it, but for another statement that it tells beside the one asked for."""
    assert [q.text for q, a in answered if not alone(a.text).startswith(q.key.says) or not q.sources] == []
    assert [q.text for q, a in answered if not set(q.sources) <= set(a.sources)] == []
    assert sum(q.key.says != alone(a.text) for q, a in answered) <= 0.02 * len(answered)
