"""One question, a file of questions, and what each ends with."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.terminal.conftest import Runner

ROOT = Path(__file__).parents[2]
HOSTILE = "vle \x1b[31m\x1b]0;title\x07 \x9b2J \u202e crosswind frobnicate"


def lines(out: str) -> list[dict[str, object]]:
    return [json.loads(line) for line in out.splitlines()]


def test_a_question_is_answered_with_its_source_and_the_deference(run: Runner) -> None:
    done = run("ask", "pedal", "limit", "90kt")

    assert done.code == 0
    assert done.out.startswith("2.0°")
    assert "AOM 32.50.3, revision 7\n" in done.out
    assert done.out.splitlines()[-1].startswith("Training only.")
    assert done.err == ""


@pytest.mark.parametrize(
    ("question", "outcome", "code"),
    [
        ("pedal limit 90kt", "answer", 0),
        ("how long until the brake is cool enough for take-off", "clarify", 3),
        ("who won the football", "decline", 4),
    ],
)
def test_exit_codes_follow_the_outcome(run: Runner, question: str, outcome: str, code: int) -> None:
    done = run("ask", "--json", question)

    assert [line["outcome"] for line in lines(done.out)] == [outcome]
    assert done.code == code


def test_a_question_from_the_input(run: Runner) -> None:
    assert run("ask", "-", typed=b"pedal limit 90kt\n").out.startswith("2.0\u00b0")
    assert run("ask", "-", typed=b"\xff\xfe").code == 4
    assert run("ask", "-", typed=b" \n").code == 4


def test_every_line_of_a_batch_gets_a_line(run: Runner) -> None:
    typed = b"\xef\xbb\xbfpedal limit 90kt\n\n\xff\xfe\n   \r\nvle\r\n" + b"x" * 200_000 + b"\nvle"

    done = run("ask", "--json", "--batch", "-", typed=typed)

    outcomes = [line["outcome"] for line in lines(done.out)]
    assert outcomes == ["answer", "decline", "decline", "decline", "answer", "decline", "answer"]
    assert all(line["cautions"] for line in lines(done.out))
    assert done.code == 0


def test_a_question_that_is_cut_ends_in_a_mark(run: Runner) -> None:
    long, short = "vle " * 20_000, "vle"

    done = run("ask", "--json", "--batch", "-", typed=f"{long}\n{short}\n".encode())

    first, second = (json.loads(line)["question"] for line in done.out.splitlines())
    assert first.endswith("…")
    assert long.startswith(first[:-1])
    assert second == short


def test_lines_of_a_batch_do_not_follow_one_another(run: Runner) -> None:
    alone = run("ask", "--json", "--batch", "-", typed=b"and at 60 kt?\n")
    after = run("ask", "--json", "--batch", "-", typed=b"pedal limit 90kt\nand at 60 kt?\n")

    assert lines(after.out)[1] == lines(alone.out)[0]


def test_lines_of_a_conversation_do_until_a_blank_one(run: Runner) -> None:
    typed = b"pedal limit at 90 kt\nand at 30 kt?\n\nand at 30 kt?\n"

    done = run("ask", "--json", "--batch", "-", "--conversation", typed=typed)

    first, second, third = lines(done.out)
    assert first["entry"] == second["entry"] == "pedal-limit"
    assert third["entry"] != "pedal-limit"


def test_a_batch_of_texts_says_the_deference_once(run: Runner, tmp_path: Path) -> None:
    (tmp_path / "questions").write_bytes(b"pedal limit 90kt\ntiller limit 15 kt\n")

    done = run("ask", "--batch", str(tmp_path / "questions"))

    assert done.out.count("Training only.") == 1
    assert done.code == 0


def test_an_empty_batch_is_no_mistake(run: Runner) -> None:
    assert run("ask", "--json", "--batch", "-") == (0, "", "")


def test_the_variant_is_asked_about(run: Runner) -> None:
    assert lines(run("ask", "--json", "wheelbase", "--variant", "120l").out)[0]["variant"] == "120L"


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        (["--variant", "120X"], "there is no variant 120X; did you mean 120"),
        (["--type", "aldermere"], "there is no type aldermere; did you mean aldermere_120?"),
        (["--knowledge", "/nowhere"], "there is no folder /nowhere"),
        (["--batch", "/nowhere"], "cannot read /nowhere"),
    ],
)
def test_what_does_not_exist_is_wrong_usage(run: Runner, arguments: list[str], told: str) -> None:
    done = run("ask", *arguments, *([] if "--batch" in arguments else ["vle"]))

    assert done.code == 2
    assert done.err.startswith(f"downlock: {told}")
    assert done.err.count("\n") == 1


def test_broken_knowledge_is_named_by_file_and_line(run: Runner) -> None:
    done = run("ask", "vle", "--knowledge", str(ROOT / "tests" / "knowledge" / "broken" / "limits"))

    assert done.code == 1
    assert done.out == ""
    assert "nothing is answered from it" in done.err


def test_explaining_adds_how_the_question_was_read(run: Runner) -> None:
    assert "understood:" in run("ask", "--explain", "vle").out


@pytest.mark.parametrize("form", [[], ["--json"], ["--explain"], ["--plain"]])
def test_nothing_that_a_terminal_obeys_comes_out(run: Runner, form: list[str]) -> None:
    out = run("ask", HOSTILE, *form).out

    assert all(line.isprintable() for line in out.split("\n"))


def test_lines_fit_the_width_asked_for(run: Runner) -> None:
    out = run("ask", "system 1 lost, what do I lose?", "--width", "40").out

    assert max(map(len, out.splitlines())) <= 40


def test_a_reader_that_leaves_ends_it_quietly() -> None:
    begun = subprocess.Popen(
        [sys.executable, "-m", "assistant", "ask", "--json", "--batch", "-"],
        cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
    )  # fmt: skip
    assert begun.stdin and begun.stdout and begun.stderr
    begun.stdout.close()
    try:
        begun.stdin.write(b"vle\n" * 200)
        begun.stdin.close()
    except BrokenPipeError:
        pass
    told = begun.stderr.read()
    begun.stderr.close()

    assert (begun.wait(), told) == (0, b"")


def test_answers_come_line_by_line() -> None:
    begun = subprocess.Popen(
        [sys.executable, "-m", "assistant", "ask", "--json", "--batch", "-"],
        cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, env={**os.environ},
    )  # fmt: skip
    assert begun.stdin and begun.stdout
    begun.stdin.write(b"vle\n")
    begun.stdin.flush()
    first = begun.stdout.readline()  # would wait for ever if answers were kept back
    begun.communicate()

    assert json.loads(first)["outcome"] == "answer"


def test_an_argument_that_is_no_text_does_no_harm() -> None:
    done = subprocess.run(
        [sys.executable.encode(), b"-m", b"assistant", b"ask", b"--json", b"vle \xff"],
        cwd=ROOT, capture_output=True, check=False,
    )  # fmt: skip

    assert json.loads(done.stdout.decode("utf-8"))["question"] == "vle \ufffd"
    assert done.stderr == b""
