"""What goes wrong around an answer is said in a line, and costs nothing but that answer."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from assistant.terminal import session as session_module
from assistant.terminal.arguments import parse
from assistant.terminal.help import ENDINGS
from assistant.terminal.session import FAULT, NOT_KEPT, open_session
from tests.terminal.conftest import Runner

ROOT = Path(__file__).parents[2]
ASK = [sys.executable, "-m", "assistant", "ask", "pedal limit 90kt"]


def test_a_fault_at_one_question_leaves_the_others(run: Runner, monkeypatch: pytest.MonkeyPatch) -> None:
    sound = session_module.answer_turn

    def faulty(text: str, *rest: object) -> object:
        if text == "break\x1b[2J":
            raise ZeroDivisionError
        return sound(text, *rest)  # type: ignore[arg-type]

    monkeypatch.setattr(session_module, "answer_turn", faulty)

    done = run("ask", "--json", "--batch", "-", typed=b"pedal limit 90kt\nbreak\x1b[2J\npedal limit 90kt\n")

    found = [json.loads(line) for line in done.out.splitlines()]
    assert [answer["outcome"] for answer in found] == ["answer", "decline", "answer"]
    assert found[1]["text"] == FAULT
    assert done.err == "downlock: ZeroDivisionError at: break\n"
    assert done.code == 0


def test_a_dispute_that_cannot_be_kept_is_said(own_places: Path) -> None:
    own_places.write_text("a file where the folder would be", "utf-8")
    session = open_session(parse([]), disputes=True, keeps=True)
    session.answer("vle")

    assert NOT_KEPT in session.answer("dispute").cautions
    assert "disputed" in session.answer("vle").text


@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="there is no full device here")
def test_an_output_that_takes_nothing_is_named() -> None:
    with open("/dev/full", "wb") as full:
        done = subprocess.run(ASK, cwd=ROOT, stdout=full, stderr=subprocess.PIPE, check=False)

    assert done.returncode == 5
    assert done.stderr.startswith(b"downlock: cannot read or write: ")
    assert done.stderr.count(b"\n") == 1


@pytest.mark.skipif(sys.platform == "win32", reason="the shell that closes a stream is not here")
@pytest.mark.parametrize(
    ("closed", "code", "told"),
    [
        ("ask 'pedal limit 90kt' >&-", 5, b"downlock: cannot read or write: the output is closed\n"),
        ("ask --help >&-", 5, b"downlock: cannot read or write: the output is closed\n"),
        ("ask 'pedal limit 90kt' 2>&-", 0, b""),
        ("nonsense 2>&-", 2, b""),
        ("ask 'pedal limit 90kt' >&- 2>&-", 5, b""),
        ("ask - <&-", 4, b""),
        ("ask --batch - <&-", 0, b""),
        ("<&-", 0, b""),
    ],
)
def test_a_closed_stream_is_no_fault(closed: str, code: int, told: bytes) -> None:
    command = f"'{sys.executable}' -m assistant {closed}"

    done = subprocess.run(["sh", "-c", command], cwd=ROOT, capture_output=True, check=False)

    assert (done.returncode, done.stderr) == (code, told)


@pytest.mark.parametrize("encoding", ["ascii", "cp1252", "utf-16"])
def test_json_is_utf_8_whatever_the_screen_writes(encoding: str) -> None:
    environment = {**os.environ, "PYTHONIOENCODING": encoding}

    done = subprocess.run([*ASK, "--json"], cwd=ROOT, env=environment, capture_output=True, check=False)

    assert json.loads(done.stdout.decode("utf-8"))["text"].startswith("2.0° ")


def test_a_screen_that_lacks_a_sign_shows_another() -> None:
    environment = {**os.environ, "PYTHONIOENCODING": "ascii"}

    done = subprocess.run(ASK, cwd=ROOT, env=environment, capture_output=True, check=False)

    assert (done.returncode, done.stdout[:8]) == (0, b"2.0 deg ")


@pytest.mark.parametrize("encoding", ["ascii", "cp1252", "cp437", "latin-1"])
def test_a_minus_stays_one_whatever_the_screen_writes(encoding: str) -> None:
    environment = {**os.environ, "PYTHONIOENCODING": encoding}
    ask = [*ASK[:-1], "pre-charge at -10 degC"]

    done = subprocess.run(ask, cwd=ROOT, env=environment, capture_output=True, check=False)

    assert "to -10 " in done.stdout.decode(encoding)
    assert "?" not in done.stdout.decode(encoding)


def test_a_cache_that_cannot_be_kept_is_told_of(run: Runner, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", "utf-8")
    monkeypatch.setenv("DOWNLOCK_CACHE", str(tmp_path / "file" / "cache"))

    done = run("ask", "vle")

    assert done.code == 0
    assert done.err.startswith("downlock: the knowledge base is compiled at each start, as it cannot be kept in ")


def test_what_a_knowledge_file_holds_commands_no_terminal(run: Runner, tmp_path: Path) -> None:
    (tmp_path / "a").mkdir()
    (tmp_path / "a" / "type.yaml").write_text('type: {id: a, name: A}\n"x\\e[2Jy": 3\n', "utf-8")

    for done in (run("check", "--knowledge", str(tmp_path)), run("ask", "vle", "--knowledge", str(tmp_path))):
        assert done.code == 1
        assert all(line.isprintable() for line in (done.out + done.err).splitlines())


@pytest.mark.parametrize("command", ENDINGS)
def test_help_ends_with_what_else_is_to_be_known(command: str, run: Runner) -> None:
    arguments = [command, "--help"] if command else ["--help"]

    assert run(*arguments).out.endswith(f"\n\n{ENDINGS[command]}\n")
