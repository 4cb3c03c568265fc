"""`rehearse --mark`: a line of JSON for a line, whatever the line holds."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from tests.terminal.conftest import Runner

QUESTION = "What is the maximum speed for a free-fall extension?"


def line(question: str, answer: str) -> bytes:
    return json.dumps({"question": question, "answer": answer}).encode() + b"\n"


def marks(out: str) -> list[dict[str, Any]]:
    return [json.loads(each) for each in out.splitlines()]


def test_every_answer_gets_its_mark_on_a_line(run: Runner) -> None:
    answers = ("190 kt", "200 kt", "pass")

    done = run("rehearse", "--mark", "-", typed=b"".join(line(QUESTION, answer) for answer in answers))

    found = marks(done.out)
    assert (done.code, done.err) == (0, "")
    assert [each["mark"] for each in found] == ["right", "wrong", "missed"]
    assert list(found[0]) == ["mark", "share", "missing", "wrong", "expected", "sources"]
    assert found[0]["share"] == 1.0
    assert found[1]["wrong"] == ["200 kt"]
    assert found[1]["missing"] == ["190 kt (maximum speed for free-fall extension)"]
    assert found[1]["expected"].startswith("190 kt IAS")
    assert [(each["document"], each["paragraph"]) for each in found[1]["sources"]] == [("LIM", "3.1")]


def test_a_file_is_marked_as_the_input_is(run: Runner, tmp_path: Path) -> None:
    file = tmp_path / "answers.jsonl"
    file.write_bytes(b"\xef\xbb\xbf" + line(QUESTION, "190 kt") + line(QUESTION, "190 knots").rstrip())

    done = run("rehearse", "--mark", str(file))

    assert [each["mark"] for each in marks(done.out)] == ["right", "right"]


def test_a_line_that_cannot_be_marked_says_why_and_costs_none_after_it(run: Runner) -> None:
    broken = [b"\n", b"190 kt\n", b'{"question": "?"}\n', b'{"question": 1, "answer": "2"}\n', b"[]\n", b"\xff\n"]
    strange = line("How many passengers may it carry?", "120")

    done = run("rehearse", "--mark", "-", typed=b"".join(broken) + strange + line(QUESTION, "190 kt"))

    found = marks(done.out)
    assert done.code == 0
    assert [each["mark"] for each in found] == ["unmarked"] * 7 + ["right"]
    assert all(each["problem"] for each in found[:7])
    assert found[6]["problem"] == "nothing loaded answers this question"


def test_signs_that_a_terminal_obeys_do_not_come_out_raw(run: Runner) -> None:
    done = run("rehearse", "--mark", "-", typed=line(QUESTION, "\x1b[31m200 kt\u202e"))

    assert marks(done.out)[0]["mark"] == "wrong"
    assert done.out.rstrip("\n").isprintable()


def test_what_is_wrongly_written_is_one_line(run: Runner) -> None:
    for arguments, told in (
        (["--mark", "nowhere.jsonl"], "cannot read nowhere.jsonl"),
        (["--mark", ""], "--mark takes a value"),
        (["--mark"], "--mark takes a value"),
    ):
        done = run("rehearse", *arguments)

        assert (done.code, done.out) == (2, "")
        assert told in done.err and done.err.count("\n") == 1


@pytest.mark.parametrize(
    ("typed", "problem"),
    [
        (line("  ", "190 kt"), "the question of this line is empty"),
        (line(QUESTION, "190 kt " * 20_000), "the answer of this line has more than 5,000 characters"),
        (line(QUESTION, "9" * (1 << 21)), "this line is longer than 1,048,576 bytes"),
        (b'{"question": "vle"}\n', 'this line is no JSON object with a "question" and an "answer", both text'),
    ],
    ids=["empty", "long", "longer", "half"],
)
def test_why_a_line_is_not_marked_is_true(run: Runner, typed: bytes, problem: str) -> None:
    done = run("rehearse", "--mark", "-", typed=typed + line(QUESTION, "190 kt"))

    assert [each.get("problem", "") for each in marks(done.out)] == [problem, ""]
