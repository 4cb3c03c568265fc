"""The judge of the questions: one case for each of its rules."""

from __future__ import annotations

from typing import Any

import pytest

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer, Number
from tests.questions.judging import RIGHT, UNHELPFUL, WRONG, Judged, judge, one_line, shares, table

GOOD = Answer("q", ANSWER, "68° either way.", values=(Number("angle", 68.0, "deg"),), working="full tiller")
ASKED = Answer("q", CLARIFY, "Give the ground speed.")
DECLINED = Answer("q", DECLINE, "I don't have that.")


@pytest.mark.parametrize(
    ("key", "answer", "verdict"),
    [
        ({"outcome": "answer"}, GOOD, RIGHT),
        ({"outcome": "answer", "all": ["EITHER way"]}, GOOD, RIGHT),
        ({"outcome": "answer", "all": ["full tiller"]}, GOOD, RIGHT),
        ({"outcome": "answer", "all": ["either way", "72"]}, GOOD, WRONG),
        ({"outcome": "answer", "none": ["68"]}, GOOD, WRONG),
        ({"outcome": "answer", "none": ["tiller"]}, GOOD, RIGHT),
        ({"outcome": "answer", "value": 68}, GOOD, RIGHT),
        ({"outcome": "answer", "value": -68}, GOOD, RIGHT),
        ({"outcome": "answer", "value": [1, 68]}, GOOD, RIGHT),
        ({"outcome": "answer", "value": 68.2, "tol": 0.2}, GOOD, RIGHT),
        ({"outcome": "answer", "value": 68.2, "tol": 0.1}, GOOD, WRONG),
        ({"outcome": "answer", "value": 68, "all": ["72"]}, GOOD, WRONG),
        ({"outcome": "answer"}, ASKED, UNHELPFUL),
        ({"outcome": "answer"}, DECLINED, UNHELPFUL),
        ({"outcome": "decline"}, DECLINED, RIGHT),
        ({"outcome": "decline"}, ASKED, UNHELPFUL),
        ({"outcome": "decline"}, GOOD, WRONG),
        ({"outcome": "decline", "or_answer": ["either way"]}, GOOD, RIGHT),
        ({"outcome": "decline", "or_answer": ["neither way"]}, GOOD, WRONG),
        ({"outcome": "clarify"}, ASKED, RIGHT),
        ({"outcome": "clarify", "all": ["ground speed"]}, ASKED, RIGHT),
        ({"outcome": "clarify", "all": ["mass"]}, ASKED, UNHELPFUL),
        ({"outcome": "clarify"}, GOOD, WRONG),
        ({"outcome": "decline", "none": ["have that"]}, DECLINED, WRONG),
    ],
)
def test_a_verdict(key: dict[str, Any], answer: Answer, verdict: str) -> None:
    assert judge(key, answer) == verdict


def test_a_question_is_asked_on_one_line() -> None:
    assert one_line("what\nis\0 vle") == "what is vle"
    assert one_line("") == " "


def test_shares_and_table() -> None:
    found = [Judged("1", "limit", "terse", RIGHT), Judged("2", "limit", "typo", WRONG)]

    assert shares(found) == (50, 50)
    assert shares([]) == (0, 0)
    assert table(found).splitlines()[-1].split() == ["all", "2", "1", "1", "0"]
