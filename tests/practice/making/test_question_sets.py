"""A set of questions kept in a file comes back as it was, and says what is answered otherwise since."""

from __future__ import annotations

import json

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.making import Question, make_questions
from assistant.practice.papers.sets import NoSet, changed, read_set, set_of, written


@pytest.fixture(scope="module")
def questions(knowledge: Knowledge) -> tuple[Question, ...]:
    return make_questions(knowledge, "class", 15)


def test_a_set_comes_back_as_it_was(knowledge: Knowledge, questions: tuple[Question, ...]) -> None:
    kept = set_of(questions, "class", knowledge)
    assert read_set(written(kept)) == kept
    assert dict(kept.documents)["AOM"] == "7"
    assert changed(kept, knowledge) == ()


def test_every_form_comes_back(knowledge: Knowledge, everything: list[Question]) -> None:
    kept = set_of(tuple(everything), "all", knowledge)
    assert read_set(written(kept)).questions == tuple(everything)
    assert changed(kept._replace(questions=kept.questions[::25]), knowledge) == ()


def test_what_is_answered_otherwise_is_named(knowledge: Knowledge, questions: tuple[Question, ...]) -> None:
    place = next(i for i, q in enumerate(questions) if q.key.values and not q.key.verdict)
    value = questions[place].key.values[0]
    old = questions[place].key._replace(
        says="as it was", values=(value._replace(value=value.value + 1, tolerance=0.0),)
    )
    stale = (*questions[:place], questions[place]._replace(key=old), *questions[place + 1 :])
    found = changed(set_of(stale, "class", knowledge), knowledge)
    assert found == (f"question {place + 1} is answered otherwise now: {questions[place].text}",)


def test_a_set_on_another_type_is_refused(knowledge: Knowledge, questions: tuple[Question, ...]) -> None:
    other = set_of(questions, "class", knowledge)._replace(type_id="other")
    assert changed(other, knowledge) == ("the set is about another type, other",)


@pytest.mark.parametrize(
    "text",
    [
        "", "{", "[]", "[" * 100_000, '{"file": "something else"}', '{"file": "downlock questions", "version": 99}',
        '{"file": "downlock questions", "version": 1}',
        '{"file": "downlock questions", "version": 1, "type": "t", "seed": "1", "documents": {}, "questions": [{}]}',
        '{"file": "downlock questions", "version": 1, "type": 5, "seed": "1", "documents": {}, "questions": []}',
    ],
)  # fmt: skip
def test_what_is_no_set_is_refused(text: str) -> None:
    with pytest.raises(NoSet):
        read_set(text)


def test_a_set_with_a_part_missing_is_refused(knowledge: Knowledge, questions: tuple[Question, ...]) -> None:
    whole = json.loads(written(set_of(questions, "class", knowledge)))
    for name in whole["questions"][0]:
        part = json.loads(json.dumps(whole))
        del part["questions"][0][name]
        with pytest.raises(NoSet):
            read_set(json.dumps(part))
