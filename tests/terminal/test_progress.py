"""`progress` as its user writes it: somebody's standing, pages, the record out and in, and a person out of it."""

import json
import os
import sqlite3
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from assistant.practice.keeping.backups import FOLDER as BACKUPS
from assistant.practice.keeping.opening import FILE
from assistant.practice.keeping.record import Record, open_record
from assistant.practice.keeping.rows import Note
from assistant.terminal import progress_files
from tests.terminal.conftest import Runner

TYPE = "aldermere_120"


def tomorrow() -> str:
    return (datetime.now().date() + timedelta(days=1)).isoformat()


def practised(home: Path, *names: str) -> None:
    with open_record(str(home), lambda: datetime.now(UTC)) as record:
        for name in names:
            learner = record.enrol(name)
            for mark in ("wrong", "right"):
                note = Note("vle", "What is VLE?", "255", mark, float(mark == "right"))
                record.note_answer(
                    learner, TYPE, note._replace(confused_with="vlo-extension" if mark == "wrong" else "")
                )


def test_nothing_recorded_yet_is_said(run: Runner) -> None:
    done = run("progress")

    assert (done.code, done.err) == (0, "")
    assert done.out.startswith("Nothing is recorded yet.")
    assert json.loads(run("progress", "--json").out) == {"learners": []}


def test_looking_at_no_record_makes_none(run: Runner, own_places: Path) -> None:
    done = run("progress", "Mia")

    assert done.code == 2
    assert "there is no Mia in the record; it is empty" in done.err
    assert not own_places.exists() or not list(own_places.iterdir())


def test_one_learner_is_shown_without_being_named(run: Runner, own_places: Path) -> None:
    practised(own_places, "Ana")

    done = run("progress")

    assert done.code == 0
    assert done.out.startswith("Ana: Aldermere 120, ")
    assert "32-40 Wheels and brakes" in done.out
    assert done.out.splitlines()[-1].startswith("Training only. Loaded: ")


def test_several_learners_are_listed_and_one_is_named(run: Runner, own_places: Path) -> None:
    practised(own_places, "Ana Lima", "Ben")

    assert run("progress").out.startswith("2 in the record: Aldermere 120\n\nAna Lima\n")
    assert run("progress", "ANA", "lima").out.startswith("Ana Lima: Aldermere 120")
    assert [each["learner"] for each in json.loads(run("progress", "--json").out)["learners"]] == ["Ana Lima", "Ben"]


@pytest.mark.parametrize("width", [40, 80])
def test_the_lines_fit(run: Runner, own_places: Path, width: int) -> None:
    practised(own_places, "Ana")

    done = run("progress", "--width", str(width), "--ready-by", tomorrow())

    assert max(map(len, done.out.splitlines())) <= width
    assert done.out.isascii()


def test_the_object_of_a_learner(run: Runner, own_places: Path) -> None:
    practised(own_places, "Ana")

    values = json.loads(run("progress", "ana", "--json", "--ready-by", tomorrow()).out)

    assert (values["learner"], values["type"], values["ready_by"]) == ("Ana", TYPE, tomorrow())
    assert values["total"]["known"] == 1
    assert values["confusions"][0]["with"] == "vlo-extension"
    assert 0 < values["total"]["recall_ready_by"] <= values["total"]["recall_today"] < 0.1


def test_a_record_set_aside_is_not_asked(run: Runner, own_places: Path) -> None:
    practised(own_places, "Ana")
    (own_places / "disputed.json").write_text(json.dumps({TYPE: [["vle", "check the placard"]]}))

    values = json.loads(run("progress", "ana", "--json").out)

    line = "maximum speed with the gear down, VLE is set aside as disputed: check the placard"
    assert {"record": "vle", "why": "disputed", "line": line} in values["not_asked"]


def test_a_page_is_written_for_its_owner_alone_and_over_nothing_else(
    run: Runner, own_places: Path, tmp_path: Path
) -> None:
    practised(own_places, "Ana", "Ben")
    page, other = tmp_path / "ana.html", tmp_path / "notes.html"
    other.write_text("my notes")

    for _ in range(2):
        assert run("progress", "ana", "--page", str(page)).out == f"written: {page}\n"
    refused = run("progress", "ana", "--page", str(other))

    assert "<h1>Progress of Ana</h1>" in page.read_text()
    assert page.stat().st_mode & 0o077 == 0
    assert run("progress", "--page", str(tmp_path / "all.html")).code == 0
    assert (refused.code, other.read_text()) == (2, "my notes")
    assert refused.err == f"downlock: {other} is there already and is not a page of progress; name another file\n"


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["anna"], "there is no anna in the record; did you mean Ana?"),
        (["zzz"], "there is no zzz in the record; there is Ana"),
        (["--ready-by", "soon"], "--ready-by takes a day such as "),
        (["--ready-by", "2020-01-01"], "--ready-by 2020-01-01 is over; today is "),
        (["--page", "no/such/folder/x.html"], "there is no folder "),
        (["--page", "."], ". is a folder; name a file in it"),
        (["export"], "write: downlock progress export FILE"),
        (["import"], "write: downlock progress import FILE"),
        (["import", "a", "b"], "write: downlock progress import FILE"),
        (["forget"], "write: downlock progress forget NAME"),
        (["forget", "zoe"], "there is no zoe in the record"),
        (["export", "x.json", "--json"], "--json does not go with: progress export"),
        (["import", "no-such-file.json"], "cannot read no-such-file.json: No such file or directory"),
    ],
)
def test_what_is_written_wrongly(run: Runner, own_places: Path, arguments: list[str], said: str) -> None:
    practised(own_places, "Ana")

    done = run("progress", *arguments)

    assert (done.code, done.out) == (2, "")
    assert done.err.startswith(f"downlock: {said}")
    assert done.err.count("\n") == 1


def test_the_record_out_and_in_again(
    run: Runner, own_places: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    practised(own_places, "Ana", "Ben")
    file = tmp_path / "record.json"

    written = run("progress", "export", str(file))
    monkeypatch.setenv("DOWNLOCK_HOME", str(tmp_path / "elsewhere"))
    taken, again = run("progress", "import", str(file)), run("progress", "import", "-", typed=file.read_bytes())

    assert written.out == f"written: {file}\nIt holds 2 people by name, 4 answers.\n"
    assert file.stat().st_mode & 0o077 == 0
    assert taken.out == "Taken in: 2 new people, 4 answers, 0 class sittings.\n"
    assert " ".join(again.out.split()).endswith("0 class sittings; 4 answers were here already.")
    assert json.loads(run("progress", "export", "-").out)["learners"][0]["name"] == "Ana"


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "line 1 is not JSON"),
        (b"{\n\n", "line 3 is not JSON"),
        (b"\xff\xfe\x00", "it is not JSON in UTF-8"),
        (b"[" * 100_000, "it is not JSON in UTF-8"),
        (b'{"learners": []}', "it is not an export of a record"),
        (b'{"record_of_practice": 1, "learners": [{"name": "A"}]}', 'learners 1: "since" is missing'),
    ],
)
def test_a_file_that_cannot_be_taken_in(
    run: Runner, own_places: Path, tmp_path: Path, content: bytes, said: str
) -> None:
    file = tmp_path / "broken.json"
    file.write_bytes(content)

    done = run("progress", "import", str(file))

    assert (done.code, done.out) == (1, "")
    assert done.err.startswith(f"downlock: {file}: ")
    assert said in done.err
    assert done.err.endswith("; nothing was taken in\n")
    assert done.err.count("\n") == 1


def test_a_person_is_forgotten(run: Runner, own_places: Path) -> None:
    practised(own_places, "Wilhelmina", "Ben")

    done = run("progress", "forget", "wilhelmina", "--width", "100", typed=b"yes\n")

    assert done.code == 0
    assert done.out.startswith(
        "Removed: Wilhelmina, with 2 answers and 0 class turns, from the record and its backups."
    )
    assert all(b"Wilhelmina" not in path.read_bytes() for path in own_places.rglob("*") if path.is_file())
    assert run("progress").out.startswith("Ben: ")


def test_a_pipe_without_a_yes_forgets_nobody(run: Runner, own_places: Path) -> None:
    practised(own_places, "Ana")

    done = run("progress", "forget", "ana", typed=b"")

    assert (done.code, done.err) == (2, 'downlock: nothing was removed; a "yes" on the input removes\n')
    assert run("progress").out.startswith("Ana: ")


@pytest.mark.parametrize(("typed", "stays"), [(b"\n", True), (b"no\n", True), (b"yes\n", False), (b"YES \n", False)])
def test_at_a_keyboard_forgetting_is_asked_for_once_more(
    run: Runner, own_places: Path, monkeypatch: pytest.MonkeyPatch, typed: bytes, stays: bool
) -> None:
    practised(own_places, "Ana")
    monkeypatch.setattr(progress_files, "is_typed", lambda: True)

    done = run("progress", "forget", "ana", typed=typed)

    assert 'Type "yes" to remove' in " ".join(done.out.split())
    assert ("Nothing was removed." in done.out) == stays
    assert run("progress").out.startswith("Ana: " if stays else "Nothing is recorded yet.")


def test_a_damaged_record_is_named_and_its_backup_shown(run: Runner, own_places: Path) -> None:
    practised(own_places, "Ana")
    (own_places / FILE).write_bytes(b"not a record" * 1000)

    done = run("progress")

    assert done.code == 0
    assert done.out.startswith("Ana: ")
    assert "was damaged and is set aside as" in done.err
    assert done.err.count("\n") == 1


def test_where_nothing_can_be_kept_an_import_says_so(
    run: Runner, tmp_path: Path, own_places: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    practised(own_places, "Ana")
    file = tmp_path / "record.json"
    run("progress", "export", str(file))
    monkeypatch.setenv("DOWNLOCK_HOME", os.fspath(file))  # a file where the folder should be

    done = run("progress", "import", str(file))

    assert (done.code, done.out) == (5, "")
    assert "there is a file where its folder should be" in done.err


@pytest.mark.parametrize(
    "words", [["Ana"], [], ["--json"], ["forget", "Ana"], ["export", "-"], ["Zoe"]], ids=lambda words: " ".join(words)
)
def test_a_record_that_cannot_be_read_does_not_pass_for_empty(
    run: Runner, own_places: Path, words: list[str]
) -> None:
    practised(own_places, "Ana")
    connection = sqlite3.connect(own_places / FILE)
    connection.execute("PRAGMA user_version = 99")
    connection.close()

    done = run("progress", *words, typed=b"yes\n")

    assert done.code != 0 and done.out == ""
    assert "newer version" in done.err and "cannot be read" in done.err and "empty" not in done.err


def _damaged(home: Path, content: bytes) -> None:
    (home / FILE).write_bytes(content)
    for path in (home / BACKUPS).iterdir():
        path.write_bytes(content)


@pytest.mark.parametrize("content", [b"x", b"x\n", b"no database at all" * 400])
def test_what_was_damaged_is_told_though_nobody_is_left_in_the_record(
    run: Runner, own_places: Path, content: bytes
) -> None:
    practised(own_places, "Ana")
    _damaged(own_places, content)

    done = run("progress", "Ana")

    assert "set aside as" in done.err and "was opened" not in done.err and "there is no Ana in the record" in done.err


def test_a_name_is_forgotten_that_only_a_damaged_file_holds(run: Runner, own_places: Path) -> None:
    practised(own_places, "Wilhelmina")
    _damaged(own_places, b"Wilhelmina was here")
    run("progress")

    done = run("progress", "forget", "Wilhelmina", typed=b"yes\n")

    assert done.code == 0 and "Removed, since it held the name" in " ".join(done.out.split())
    assert not list(own_places.glob("practice-damaged-*"))


def test_nobody_is_said_to_be_removed_from_a_record_that_cannot_be_written(
    run: Runner, own_places: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    practised(own_places, "Ana")
    monkeypatch.setattr(Record, "saved", False)

    done = run("progress", "forget", "Ana", typed=b"yes\n")

    assert done.code == 5 and "Removed" not in done.out and "Ana is not removed" in done.err
