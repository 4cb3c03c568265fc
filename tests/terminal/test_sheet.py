"""`sheet quiz`: a paper and its key on the screen, in files, kept and printed again."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Runner = Callable[..., Any]


def test_a_paper_is_printed_with_its_key_and_the_caution_once(run: Runner) -> None:
    done = run("sheet", "quiz", "--seed", "7", "--number", "5", "--width", "40")
    assert done.code == 0 and done.err == ""
    assert max(map(len, done.out.splitlines())) <= 40
    assert done.out.count("Training only") == 1
    assert " 5. " in done.out and "Key to: " in done.out and "Paper 7." in done.out


def test_the_same_seed_prints_the_same(run: Runner) -> None:
    first = run("sheet", "quiz", "--seed", "7", "--topic", "steering")
    assert run("sheet", "quiz", "--topic", "steering", "--seed", "7").out == first.out
    assert run("sheet", "quiz", "--seed", "8", "--topic", "steering").out != first.out


def test_another_process_prints_the_same() -> None:
    """The order in which a process happens to keep its sets must not choose the questions."""
    command = [sys.executable, "-m", "assistant", "sheet", "quiz", "--seed", "5", "--number", "40"]
    texts = {
        subprocess.run(command, env={**os.environ, "PYTHONHASHSEED": seed}, capture_output=True, check=True).stdout
        for seed in ("1", "2")
    }
    assert len(texts) == 1


@pytest.mark.parametrize("ending", ["txt", "html"])
def test_questions_and_key_are_two_files(run: Runner, tmp_path: Path, ending: str) -> None:
    for _ in range(2):  # a second time they are written over
        done = run("sheet", "quiz", "--seed", "7", "--number", "3", "-o", str(tmp_path / f"quiz.{ending}"))
        assert done.code == 0
        assert done.out.splitlines() == [
            f"written: {tmp_path / f'quiz.{ending}'} (the questions)",
            f"written: {tmp_path / f'quiz-key.{ending}'} (the key)",
        ]
    assert "Key to" not in (tmp_path / f"quiz.{ending}").read_text(encoding="utf-8")
    assert "Key to" in (tmp_path / f"quiz-key.{ending}").read_text(encoding="utf-8")
    assert sorted(path.name for path in tmp_path.iterdir() if path.is_file()) == [
        f"quiz-key.{ending}",
        f"quiz.{ending}",
    ]


def test_a_file_that_is_no_key_is_not_written_over(run: Runner, tmp_path: Path) -> None:
    (tmp_path / "quiz-key.txt").write_text("my own notes", encoding="utf-8")
    done = run("sheet", "quiz", "--number", "2", "-o", str(tmp_path / "quiz.txt"))
    assert done.code == 2 and "no key of a paper" in done.err
    assert (tmp_path / "quiz-key.txt").read_text(encoding="utf-8") == "my own notes"
    assert not (tmp_path / "quiz.txt").exists()


def test_a_package_is_written(run: Runner, tmp_path: Path) -> None:
    assert run("sheet", "quiz", "--number", "3", "-o", str(tmp_path / "quiz.zip")).code == 0
    with zipfile.ZipFile(tmp_path / "quiz.zip") as archive:
        assert archive.namelist()[:2] == ["imsmanifest.xml", "test.xml"] and len(archive.namelist()) == 5


def test_the_variant_is_named_on_the_paper(run: Runner) -> None:
    done = run("sheet", "quiz", "--seed", "7", "--number", "2", "--variant", "long body")
    assert done.code == 0 and done.out.startswith("Aldermere 120, 120L: 2 questions")


def test_a_set_is_kept_and_printed_again(run: Runner, tmp_path: Path) -> None:
    kept, first, again = (str(tmp_path / name) for name in ("set.json", "a.txt", "b.txt"))
    assert run("sheet", "quiz", "--seed", "9", "--number", "4", "--save", kept, "-o", first).code == 0
    done = run("sheet", "quiz", "--set", kept, "-o", again)
    assert done.code == 0, done.err
    assert Path(again).read_text(encoding="utf-8") == Path(first).read_text(encoding="utf-8")


def test_a_set_of_which_nothing_is_left_is_not_printed(run: Runner, tmp_path: Path) -> None:
    kept = tmp_path / "set.json"
    run("sheet", "quiz", "--seed", "8", "--number", "4", "--save", str(kept))
    text = kept.read_text(encoding="utf-8")
    kept.write_text(text.replace('"entry": "', '"entry": "former-'), encoding="utf-8")
    kept.write_text(kept.read_text(encoding="utf-8").replace('"says": "', '"says": "Formerly '), encoding="utf-8")
    done = run("sheet", "quiz", "--set", str(kept))
    assert done.code == 1 and done.out == "" and "answered otherwise now, and is left out" in done.err


def test_of_a_set_only_what_is_answered_otherwise_now_is_asked_anew(run: Runner, tmp_path: Path) -> None:
    own, kept = tmp_path / "own.yaml", tmp_path / "set.json"
    own.write_text("questions:\n  - {ask: Where is the torch?, points: [left], cites: AOM 32.05.4}\n", encoding="utf-8")
    run("sheet", "quiz", "--seed", "9", "--number", "5", "--own", str(own), "--save", str(kept))
    held = json.loads(kept.read_text(encoding="utf-8"))
    held["questions"][0]["key"] |= {"says": "As it was.", "points": ["as it was"], "values": [], "ordered": True}
    kept.write_text(json.dumps(held), encoding="utf-8")
    done = run("sheet", "quiz", "--set", str(kept), "--save", str(tmp_path / "new.json"))

    assert done.code == 0 and "question 1 is answered otherwise now, and" in done.err
    assert done.err.count("answered otherwise") == 1 and "Where is the torch?" in done.out
    assert "As it was." not in done.out
    assert run("sheet", "quiz", "--set", str(tmp_path / "new.json")).err == ""


@pytest.mark.parametrize(
    ("ask", "key", "told"),
    [
        ("What is VLE?", "value: 300 kt", "255 kt"),
        ("What is the maximum tiller angle?", "value: 60 deg", "68°"),
        ("Which braking mode with System 2 lost?", "points: [EMERGENCY]", "ALTERNATE"),
        ("Who steers on the ground?", "points: [the pilot in the right seat]", "left seat"),
        ("What is the maximum speed for extending the gear?", "value: 230 kt", ""),
        ("What is VLE?", "value: 255 kt", ""),
        ("Where is the spare torch?", "points: [in the left cupboard]", ""),
    ],
)
def test_an_own_key_that_the_books_contradict_is_told(
    run: Runner, tmp_path: Path, ask: str, key: str, told: str
) -> None:
    own = tmp_path / "own.yaml"
    document = "SOP B.1" if ask.startswith("Who") else "AOM 32.40" if "braking" in ask else "LIM 3.1"
    own.write_text(f"questions:\n  - {{ask: '{ask}', {key}, cites: {document}}}\n", encoding="utf-8")
    done = run("sheet", "quiz", "--number", "1", "--own", str(own))

    assert done.code == 0 and ask in done.out
    assert ("what is loaded says" in done.err) == bool(told) and told in done.err


def test_a_set_is_written_under_the_name_of_what_it_is(run: Runner, tmp_path: Path) -> None:
    done = run("sheet", "quiz", "--number", "1", "--save", str(tmp_path / "mön set.yaml"))
    assert done.code == 2 and "ends in .json" in done.err and not list(tmp_path.iterdir())
    assert run("sheet", "quiz", "--number", "1", "--save", str(tmp_path / "mön set.json")).code == 0


def test_own_questions_come_last(run: Runner, tmp_path: Path) -> None:
    own = tmp_path / "own.yaml"
    own.write_text("questions:\n  - {ask: Where is the torch?, points: [left], cites: AOM 32.05.4}\n", encoding="utf-8")
    done = run("sheet", "quiz", "--number", "3", "--own", str(own))
    assert done.code == 0 and " 3. Where is the torch?" in done.out and "AOM 32.05.4, revision 7" in done.out
    own.write_text("questions:\n  - {ask: Where is the torch?, points: [left]}\n", encoding="utf-8")
    done = run("sheet", "quiz", "--own", str(own))
    assert done.code == 1 and f"{own}:2: the paragraph is missing" in done.err


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["sheet"], "name the sheet"),
        (["sheet", "quizz"], "did you mean quiz?"),
        (["sheet", "quiz", "brakes"], "named with --topic"),
        (["sheet", "quiz", "--number", "0"], "from 1 to 200"),
        (["sheet", "quiz", "--number", "ten"], "from 1 to 200"),
        (["sheet", "quiz", "--topic", "catering"], "nothing is known on “catering”"),
        (["sheet", "quiz", "--topic", ""], "--topic takes a value"),
        (["sheet", "quiz", "-o", "quiz.docx"], ".txt, .html or .zip"),
        (["sheet", "quiz", "-o"], "-o takes a value"),
        (["sheet", "quiz", "--paper", "a5", "-o", "q.html"], "there is no paper a5"),
        (["sheet", "quiz", "--set", "s.json", "--seed", "1"], "--seed does not go with --set"),
        (["sheet", "quiz", "--set", "/nowhere/s.json"], "cannot read"),
    ],
)  # fmt: skip
def test_what_is_wrongly_written_is_said_in_one_line(run: Runner, arguments: list[str], said: str) -> None:
    done = run(*arguments)
    assert done.code == 2 and done.out == ""
    assert said in done.err and done.err.count("\n") == 1


def test_what_cannot_be_written_is_said(run: Runner) -> None:
    done = run("sheet", "quiz", "--number", "2", "-o", "/nowhere/quiz.txt")
    assert done.code == 5 and done.err.count("\n") == 1


def test_too_few_questions_are_said(run: Runner) -> None:
    done = run("sheet", "quiz", "--topic", "32-20", "--number", "100")
    assert done.code == 0 and "there are only" in done.err


def test_a_file_that_cannot_be_written_is_named(run: Runner, tmp_path: Path) -> None:
    path = tmp_path / "no" / "such" / "quiz.txt"

    done = run("sheet", "quiz", "--seed", "7", "--number", "1", "-o", str(path))

    assert (done.code, done.err) == (5, f"downlock: cannot write {path}: no such file or directory\n")
