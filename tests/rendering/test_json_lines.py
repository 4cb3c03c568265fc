"""An answer as JSON: every key in its order, and nothing that a reader or a terminal could trip over."""

import json
from math import inf, nan

from assistant.answering.answer import Answer, Number
from assistant.rendering.json_lines import answer_json

KEYS = [
    "question", "outcome", "text", "spoken", "values", "working", "sources", "cautions", "entry", "needs",
    "choices", "variant", "understood",
]  # fmt: skip


def test_keys_stand_in_their_order(answered: Answer) -> None:
    assert list(json.loads(answer_json(answered))) == KEYS


def test_an_empty_answer_has_every_key_too() -> None:
    assert list(json.loads(answer_json(Answer("", "decline", "")))) == KEYS


def test_values_and_sources_are_objects(answered: Answer) -> None:
    found = json.loads(answer_json(answered))

    assert found["values"] == [{"quantity": "angle", "value": 2.0, "unit": "deg"}]
    assert found["sources"] == [
        {"document": "AOM", "paragraph": "32.50.3", "revision": "7", "effective": "2026-08-01"}
    ]


def test_letters_stay_as_they_are_and_values_keep_their_precision(answered: Answer) -> None:
    line = answer_json(answered._replace(values=(Number("speed", 113.99999999999999, "kt"),)))

    assert "2.0° either way" in line
    assert "113.99999999999999" in line


def test_what_is_no_number_is_null(answered: Answer) -> None:
    found = json.loads(answer_json(answered._replace(understood={"a": nan, "b": [inf]})))

    assert found["understood"] == {"a": None, "b": [None]}


def test_a_line_is_one_line_that_can_be_printed(answered: Answer) -> None:
    hostile = "a\x1b[31m\x9b31m\u202eb\u2028c\nd\x00\x7f\ud800"

    line = answer_json(answered._replace(question=hostile, understood={hostile: {"x", "y"}}))

    assert line.isprintable()
    assert line.encode("utf-8")
    assert json.loads(line)["question"] == hostile.replace("\ud800", "\ufffd")
