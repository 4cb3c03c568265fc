"""xAPI statements, held against the rules of IEEE 9274.1.1 as `xapi_rules` writes them down."""

import json
import uuid

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.leading.statements import statements
from assistant.practice.making import make_questions
from tests.practice.leading.conftest import NAMES, Begin, Class
from tests.practice.leading.xapi_rules import breaches


@pytest.fixture
def room(begin: Begin, know: Knowledge) -> Class:
    led = begin(make_questions(know, "9", 14))
    led.type(*["", "", "r"] * 4, "", "", "Ana says 205 kt", "w", "", "h", "", "p", "", "", "m")
    return led


def test_every_marked_turn_is_a_statement_that_keeps_the_rules(room: Class) -> None:
    made = json.loads(json.dumps(statements(room.standing)))

    assert len(made) == 7
    assert [line for each in made for line in breaches(each)] == []
    assert len({each["id"] for each in made}) == 7
    assert len({each["context"]["registration"] for each in made}) == 1
    assert [each["result"]["success"] for each in made] == [True] * 4 + [False] * 3
    assert made == json.loads(json.dumps(statements(room.standing)))


def test_persons_are_pseudonyms_unless_names_are_asked_for(room: Class) -> None:
    text = json.dumps(statements(room.standing))
    assert not [name for name in NAMES if name in text]

    named = statements(room.standing, named=True)
    assert {each["actor"]["name"] for each in named} <= set(NAMES)
    assert [line for each in named for line in breaches(each)] == []


def test_pseudonyms_do_not_lead_from_class_to_class(begin: Begin, know: Knowledge) -> None:
    questions = make_questions(know, "9", 2)
    names = []
    for _ in range(2):
        led = begin(questions, names=("Ana",))
        led.type("", "", "r", "", "", "r")
        names.append({each["actor"]["account"]["name"] for each in statements(led.standing)})

    assert [len(each) for each in names] == [1, 1]
    assert names[0] != names[1]


def test_the_secret_of_the_pseudonyms_is_in_no_statement(room: Class) -> None:
    assert room.standing.sitting.uid not in json.dumps(statements(room.standing, named=True))


def test_the_rules_see_what_breaks_them(room: Class) -> None:
    good = json.loads(json.dumps(statements(room.standing)))[0]
    broken = [
        {**good, "id": "7"}, {**good, "extra": 1}, {**good, "verb": {"id": "answered"}},
        {**good, "actor": {"account": {"name": "x"}}}, {**good, "actor": {**good["actor"], "mbox": "mailto:a@b.c"}},
        {**good, "timestamp": "yesterday"}, {**good, "result": {"score": {"scaled": 1.5}}},
        {**good, "result": None}, {**good, "object": {"id": "no iri", "objectType": "Activity"}},
        {**good, "context": {"registration": str(uuid.uuid4()), "language": "no such language"}},
    ]  # fmt: skip

    assert [bool(breaches(each)) for each in broken] == [True] * len(broken)
