"""`class` as an instructor uses it: at a prompt, through a pipe, through kills, beside the view of the key."""

import csv
import io
import json
import os
import re
import subprocess
import sys
import time
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from assistant.practice.asking.pool import drillable
from assistant.practice.keeping.record import Record, open_record
from assistant.practice.keeping.rows import Seated
from assistant.practice.leading.plan import Aims, aims_values
from assistant.practice.making import make_questions
from assistant.terminal import class_begin, class_ear
from assistant.terminal.class_key import KeyView
from assistant.terminal.class_prompt import KeyedLines
from assistant.terminal.class_room import ClassRoom, desk_for
from assistant.terminal.class_voice import ClassVoice
from assistant.terminal.key_sign import KeySign
from assistant.terminal.screen import Screen
from assistant.terminal.session import Session
from assistant.voice.hearing.recognising import HearingProblem
from tests.terminal.conftest import Runner
from tests.voice.hearing.fakes import FakeMicrophone, FakeTones
from tests.voice.synthesis import neural, padded

TWELVE = "Ana,Ben,Cleo,Dan,Eva,Finn,Gita,Hugo,Ida,Jon,Kim,Leo"
TYPE = "aldermere_120"


@pytest.fixture
def record(own_places: Path) -> Iterator[Record]:
    with open_record(str(own_places), lambda: datetime.now(UTC)) as opened:
        yield opened


class Led:
    """The command in a process of its own, at its input and output; `kill` is kill -9."""

    def __init__(self, home: Path, *arguments: str) -> None:
        environment = {**os.environ, "DOWNLOCK_HOME": str(home), "PYTHONUNBUFFERED": "1"}
        command = [sys.executable, "-m", "assistant", "class", *arguments]
        self.process = subprocess.Popen(
            command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, env=environment
        )
        assert self.process.stdout is not None
        os.set_blocking(self.process.stdout.fileno(), False)
        self.seen = ""

    def until(self, pattern: str, patience_s: float = 60) -> re.Match[str]:
        """Wait until the output since the last look matches."""
        end = time.monotonic() + patience_s
        assert self.process.stdout is not None
        while not (found := re.search(pattern, self.seen)):
            self.seen += (self.process.stdout.read() or b"").decode()
            assert time.monotonic() < end, f"{pattern} in {self.seen}"
            time.sleep(0.01)
        self.seen = self.seen[found.end() :]
        return found

    def type(self, *lines: str) -> None:
        assert self.process.stdin is not None
        self.process.stdin.write("".join(f"{line}\n" for line in lines).encode())
        self.process.stdin.flush()

    def kill(self) -> None:
        self.process.kill()
        self.process.wait()
        for stream in (self.process.stdin, self.process.stdout):
            assert stream is not None
            stream.close()


def marks_in(home: Path) -> list[tuple[str, str]]:
    with open_record(str(home), lambda: datetime.now(UTC)) as record:
        (sitting,) = record.sittings.all(TYPE)
        return [(turn.asking.question, turn.mark) for turn in record.sittings.turns(sitting.id)]


def test_a_class_of_twelve_through_kills_loses_nothing_and_stands_where_it_stood(own_places: Path) -> None:
    led = Led(own_places, "--names", TWELVE, "--number", "13", "--seed", "4")
    led.until("12 people, 13 questions")
    told: list[tuple[str, str]] = []
    called: list[str] = []
    for turn in range(12):
        led.type("")
        asked = led.until(r"Question \d+, .*\n(.*)\n")[1]
        if turn == 2:  # killed while everybody thinks
            led.kill()
            led = Led(own_places)
            led.type("")
            assert led.until(r"Question 3, .*\n(.*)\n")[1] == asked
        led.type("")
        name = led.until(r"(\w+), please\.")[1]
        called.append(name)
        if turn == 5:  # killed while one of them answers, after the program has marked it
            led.type("250 kt")
            mark = led.until(r"The program's mark: (\w+)")[1]
            led.kill()
            led = Led(own_places)
            led.type("")
            assert led.until(r"Question 6, .*\n(.*)\n")[1] == asked
            assert led.until(r"(\w+), please\.")[1] == name
            assert led.until(r"The program's mark: (\w+)")[1] == mark
        given = "rpwm"[turn % 4]
        led.type(given)
        word = led.until(rf"{name}: (right|partly right|wrong|missed)\.")[1].split()[0]
        told.append((asked, word))
        if turn in (7, 10):  # killed right after the mark was shown
            led.kill()
            assert [mark for _, mark in marks_in(own_places)] == [mark for _, mark in told]
            led = Led(own_places)
            led.type("")
            assert led.until(rf"Last: {name}, question {turn + 1}: (right|partly|wrong|missed)")[1] == told[-1][1]
    led.type("e", "y")
    led.until("Formative, not a record of\\s+qualification")
    led.process.wait(timeout=60)
    led.kill()

    kept = marks_in(own_places)
    assert [mark for _, mark in kept] == [mark for _, mark in told]
    assert set(called) <= set(TWELVE.split(","))
    assert max(map(called.count, called)) <= 2


def test_an_unfinished_class_is_offered_and_can_be_ended(run: Runner, own_places: Path) -> None:
    first = run("class", "--names", "Ana, Ben", "--number", "3", "--title", "Speeds", typed=b"\n\nr\n")
    assert first.code == 0
    assert first.out.rstrip().endswith("downlock class goes on from here.")

    again = run("class", typed=b"what\nend\n")

    assert again.code == 0
    assert "A class has not ended: “Speeds”, 2 people (Ana, Ben), 1 question so far" in again.out
    assert "Type new or end, or just Enter." in again.out
    assert "1 question: 1 right; 100% of the points." in again.out
    assert "A class has not ended" not in run("class", "--names", "Ana", typed=b"").out


def test_of_many_in_a_class_that_stands_the_first_are_named(run: Runner, own_places: Path) -> None:
    run("class", "--names", "Ana, Ben, Cleo, Dan, Eva, Finn", "--number", "2", typed=b"\n")

    assert "6 people (Ana, Ben, Cleo, Dan and 2 more)" in " ".join(run("class", typed=b"").out.split())


def test_what_is_wrong_with_a_roster_comes_without_the_caution(run: Runner, tmp_path: Path) -> None:
    nobody = tmp_path / "crew.csv"
    nobody.write_bytes(b"\x00\x01\x02\x7f" * 50)
    done = run("class", "--roster", str(nobody), typed=b"")

    assert done.code == 2
    assert done.out == ""
    assert "crew.csv: this is no list of names" in done.err
    assert run("class", "--names", "Ana", "--number", "1", typed=b"").out.count("Not for use in flight") == 1


def test_a_new_class_ends_the_unfinished_one(run: Runner, own_places: Path) -> None:
    run("class", "--names", "Ana, Ben", "--number", "3", typed=b"\n")
    done = run("class", "--names", "Cleo", "--number", "2", typed=b"new\n\n\nw\ne\ny\n")

    assert "Class 1 is ended; downlock class report 1 tells of it." in " ".join(done.out.split())
    assert "Cleo: wrong." in done.out
    assert "No question was marked" in run("class", "report", "1").out


def test_names_are_asked_for_where_none_were_given(run: Runner, record: Record) -> None:
    run("class", "--number", "2", typed=b"\nAna Lima, Ben (Red)\nCleo\n\n\n\nr\n")

    (sitting,) = record.sittings.all(TYPE)
    assert [(seat.name, seat.team) for seat in record.sittings.seats(sitting.id)] == [
        ("Ana Lima", ""), ("Ben", "Red"), ("Cleo", ""),
    ]  # fmt: skip


def test_a_roster_file_and_its_notes(run: Runner, tmp_path: Path, record: Record) -> None:
    roster = tmp_path / "crew.csv"
    roster.write_bytes(b"\xef\xbb\xbfName;Team\r\nAna;Red\r\nBen;Blue\r\nana;Red\r\n")
    done = run("class", "--roster", str(roster), typed=b"")

    assert done.err.startswith("crew.csv:4: ana stands in line 2 already; named once; if they are two people, add")
    assert len(record.sittings.seats(1)) == 2


def test_notes_of_a_roster_break_between_words_on_a_narrow_screen(
    run: Runner, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("assistant.terminal.screen.is_terminal", lambda stream: True)
    monkeypatch.setenv("COLUMNS", "40")
    done = run("class", "--names", "Ann (Red), Ben, Cy, ann", typed=b"")

    lines = done.err.splitlines()
    assert len(lines) > 1
    assert all(len(line) <= 80 for line in lines)
    assert " ".join(done.err.split()).endswith("add what tells them apart")


def test_files_are_written_where_they_were_named_even_after_a_break(run: Runner, tmp_path: Path) -> None:
    page, table, own, xapi = (tmp_path / name for name in ("c.html", "c.csv", "own.html", "c.json"))
    run(
        "class", "--names", "Anatol, Benedikt", "--number", "2", "--page", str(page), "--csv", str(table),
        "--own-copy", str(own), "--xapi", str(xapi), typed=b"\n\nr\n",
    )  # fmt: skip
    done = run("class", typed=b"\ne\ny\n")

    assert done.code == 0
    assert "Anatol" not in page.read_text() + table.read_text() + xapi.read_text()
    assert "Anatol" in own.read_text()
    assert table.read_text(encoding="utf-8-sig").startswith("turn,section,record")
    rows = list(csv.reader(io.StringIO(table.read_text(encoding="utf-8-sig"))))
    assert rows[1][5] == "right"
    assert len(json.loads(xapi.read_text())) == 1
    named = run("class", "report", "--xapi", str(xapi), "--names-too")
    assert "Anatol" in xapi.read_text() or "Benedikt" in xapi.read_text()
    assert "with their names" in named.out


def test_without_files_the_page_and_the_table_lie_with_the_user_s_own(run: Runner, own_places: Path) -> None:
    run("class", "--names", "Anatol", "--number", "1", typed=b"\n\nw 205 kt\n\n")

    found = sorted((own_places / "classes").iterdir())
    assert [path.suffix for path in found] == [".csv", ".html"]
    assert not [path for path in found if "Anatol" in path.read_text(encoding="utf-8")]
    assert all(path.stat().st_mode & 0o077 == 0 for path in found)


def test_a_file_of_somebody_else_is_not_overwritten(run: Runner, tmp_path: Path) -> None:
    page = tmp_path / "c.html"
    page.write_text("mine")
    done = run("class", "--names", "Ana", "--number", "1", "--page", str(page), typed=b"\n\nr\n\n")

    assert done.code == 5
    assert "is there already and is not a page of a class" in done.err
    assert page.read_text() == "mine"


def test_every_class_is_asked_the_same_from_a_set(run: Runner, tmp_path: Path, record: Record) -> None:
    kept = tmp_path / "set.json"
    run("class", "--names", "Ana", "--number", "4", "--seed", "8", "--save", str(kept), typed=b"\n\nr\n" * 4 + b"\n")
    run("class", "--names", "Ben", "--set", str(kept), typed=b"\n\nr\n" * 4 + b"\n")

    two, one = record.sittings.all(TYPE)
    asked = [[turn.asking.question for turn in record.sittings.turns(each.id)] for each in (one, two)]
    assert len(asked[0]) == 4
    assert asked[0] == asked[1]


def test_own_questions_are_asked_among_the_others(run: Runner, tmp_path: Path, record: Record) -> None:
    own = tmp_path / "own.yaml"
    own.write_text("questions:\n  - ask: Where is the spare torch?\n    points: [left]\n    cites: AOM 32.30.1\n")
    run("class", "--names", "Ana", "--number", "3", "--own", str(own), typed=b"\n\nleft\nr\n" * 3)

    asked = [turn.asking.question for turn in record.sittings.turns(1)]
    assert "Where is the spare torch?" in asked
    assert len(asked) == 3


@pytest.mark.parametrize(
    "arguments, told",
    [
        (["--roster", "no.csv"], "cannot read no.csv"),
        (["--names", " , ,"], "there is nobody in the class"),
        (["--names", "Ana", "--roster", "x.csv"], "not both"),
        (["--names", "Ana", "--number", "0"], "--number takes a number from 1 to 200"),
        (["--names", "Ana", "--number", "2", "--minutes", "3"], "not both"),
        (["--names", "Ana", "--difficulty", "4"], "--difficulty takes a number from 1 to 3"),
        (["--names", "Ana", "--topic", "gallery"], "nothing is known on"),
        (["--names", "Ana", "--page", "x.pdf"], "--page takes a file that ends in .html"),
        (["--names", "Ana", "--csv", "nowhere/x.csv"], "there is no folder"),
        (["--names", "Ana", "--set", "x", "--topic", "brakes"], "--topic does not go with --set"),
        (["report", "7"], "there is no class in the record yet"),
        (["report", "x"], "write: downlock class report [NUMBER]"),
        (["speak"], "has no place here"),
        (["--names-too"], "--names-too goes with --xapi"),
    ],
)
def test_wrong_usage_is_one_line(run: Runner, arguments: list[str], told: str) -> None:
    done = run("class", *arguments)

    assert done.code == 2
    assert told in done.err.splitlines()[-1]


@pytest.mark.parametrize("width", [40, 80])
def test_every_line_fits(run: Runner, width: int) -> None:
    typed = b"\nh\n\ns\n?\n205 kt\nw\nk\n\n\nr\ng\nb\n\ne\ny\n"
    done = run("class", "--names", TWELVE, "--number", "3", "--seed", "2", "--width", str(width), typed=typed)

    assert "\x1b" not in done.out
    assert [line for line in done.out.splitlines() if len(line) > width and "written:" not in line] == []


def test_an_unwritable_folder_is_told_and_the_class_goes_on(run: Runner, own_places: Path) -> None:
    own_places.write_text("a file where the folder should be")
    done = run("class", "--names", "Ana", "--number", "1", typed=b"\n\nr\n\n")

    assert "Ana: right." in done.out
    assert "nothing" in done.err or "cannot" in done.err


@pytest.mark.parametrize("typed", [b"", b"\n\nr\n", b"\n\n250\n", b"\nb\n"])
def test_a_class_that_cannot_be_kept_is_not_said_to_be(run: Runner, own_places: Path, typed: bytes) -> None:
    own_places.write_text("a file where the folder should be")
    done = run("class", "--names", "Ana", "--number", "2", typed=typed)
    told = " ".join(done.out.split())

    assert done.code == 5 and "The class is not kept" in told
    assert "kept as it stands" not in told and "nothing is lost" not in told


# --- the prompt


@pytest.mark.parametrize(
    "typed, got", [("r", "r"), ("right\r", "right"), ("\r", ""), ("230 kt\r", "230 kt"), ("x\r", "x"), ("r\r", "r")]
)
def test_a_key_alone_counts_at_once_and_words_are_typed_whole(typed: str, got: str) -> None:
    with create_pipe_input() as source:
        lines = KeyedLines(Screen(io.StringIO()), source, DummyOutput())
        source.send_text(typed)

        assert lines.ask("", at_once="rpwm") == got


def test_time_to_think_ends_by_itself() -> None:
    with create_pipe_input() as source:
        lines = KeyedLines(Screen(io.StringIO()), source, DummyOutput())

        assert lines.ask("", within_s=0.05) == ""
        source.send_text("s\r")
        assert lines.ask("", within_s=30) == "s"


# --- the second view


def test_the_view_of_the_key_follows_the_class(run: Runner, record: Record) -> None:
    out = io.StringIO()
    view = KeyView(record, TYPE, Screen(out), plain=True)
    assert view.look()
    assert "No class is going on" in out.getvalue()
    run("class", "--names", "Ana", "--number", "2", "--seed", "5", typed=b"\n")
    assert not view.look()
    assert "Key: " not in out.getvalue()
    run("class", typed=b"\nk\n")
    assert not view.look()
    first = out.getvalue()
    turn = record.sittings.current(1)
    assert turn is not None
    assert turn.asking.expected[:30] in " ".join(first.split())
    assert turn.asking.sources[0].split(",")[0] in first

    view.look()
    assert out.getvalue() == first  # nothing changed, nothing is written
    run("class", typed=b"\n\nr\ne\ny\n")
    assert view.look()
    assert "The class has ended." in out.getvalue()


def test_the_view_of_the_key_as_a_command_of_its_own(run: Runner, own_places: Path) -> None:
    run("class", "--names", "Ana", "--number", "2", typed=b"\n")
    view = Led(own_places, "--key-here")
    view.until("Nobody is named yet")
    assert "The key is shown in the other terminal" in run("class", typed=b"\nk\n").out
    view.until("Key: ")
    run("class", typed=b"\n\n")
    view.until(r"Named:\s+Ana")
    view.kill()


def test_a_class_that_begins_tells_where_its_key_is_shown(run: Runner, own_places: Path) -> None:
    alone = run("class", "--names", "Ana", "--number", "1", typed=b"").out
    sign = KeySign()
    sign.renew()
    beside = run("class", "--names", "Ana", "--number", "1", typed=b"new\n").out
    sign.take_down()

    assert "downlock class --key-here, in a terminal that the class does not see" in " ".join(alone.split())
    assert "The key is shown in the other terminal, once k reveals it" in " ".join(beside.split())


# --- the voice


class FakeSpeaker:
    def __init__(self) -> None:
        self.said: list[str] = []
        self.speaking = False

    def say(self, text: str) -> None:
        self.said.append(text)

    def stop(self) -> None:
        return

    def wait(self, timeout_s: float | None = None) -> bool:
        return True


def test_questions_and_names_are_said_as_they_are_spoken(session: Session) -> None:
    speaker = FakeSpeaker()
    voice = ClassVoice(session, Screen(io.StringIO()), speaker)
    voice.say("Is 250 kt within VLE?")
    voice.close()

    assert speaker.said == ["Is two hundred and fifty knots within V L E?"]


def test_ending_the_unfinished_class_begins_no_other(run: Runner, record: Record) -> None:
    run("class", "--names", "Ana", "--number", "3", typed=b"\n\nr\n")
    run("class", "--names", "Ben", "--number", "3", typed=b"end\n\n\nr\n")

    assert len(record.sittings.all(TYPE)) == 1


def test_a_class_whose_plan_cannot_be_read_is_ended_and_said_so(run: Runner, record: Record) -> None:
    run("class", "--names", "Ana", "--number", "3", typed=b"\n")
    record.sittings.keep_plan(1, {"next": "?"})
    done = run("class", typed=b"\n")

    assert done.code == 1
    assert "class 1 cannot go on" in done.err
    assert record.sittings.all(TYPE, open_only=True) == ()


def test_an_answer_is_heard_and_a_microphone_that_fails_is_told(session: Session, record: Record) -> None:
    heard = iter(["230 knots", HearingProblem("no microphone can be opened")])

    def hear() -> str:
        found = next(heard)
        if isinstance(found, HearingProblem):
            raise found
        return found

    made = make_questions(session.knowledge, "1", entries=("vlo-extension",), forms=("figure",))[:1]
    options = aims_values(Aims(made, "1"), TYPE)
    sitting = record.sittings.begin(TYPE, [Seated("Ana")], options=options)
    pool = drillable(session.knowledge.base, datetime.now(UTC).date())
    out, typed = io.StringIO(), iter(["", "", "l", "l", "", ""])

    class Typed:
        def ask(self, prompt: str, at_once: str = "", within_s: float = 0.0) -> str:
            return next(typed)

    room = ClassRoom(record, sitting, desk_for(session, pool, True), Typed(), Screen(out), hear=hear)

    assert room.hold()
    assert "The program's mark: right." in out.getvalue()
    assert "no microphone can be opened" in out.getvalue()
    (turn,) = record.sittings.turns(sitting.id)
    assert (turn.mark, turn.answer) == ("right", "230 knots")


def test_an_answer_is_heard_by_the_ear_of_the_voice(session: Session, monkeypatch: pytest.MonkeyPatch) -> None:
    class Microphone(FakeMicrophone):
        def __init__(self, otherwise: str) -> None:
            super().__init__([padded(neural("two hundred and thirty knots"))])

        def close(self) -> None:
            return

    monkeypatch.setattr(class_ear, "CardMicrophone", Microphone)
    monkeypatch.setattr(class_ear, "CardTones", lambda player: FakeTones())
    ear = class_ear.ClassEar(session)
    try:
        heard = ear.hear()
    finally:
        ear.close()

    assert "230" in heard or "two hundred and thirty" in heard.lower()


def test_a_class_that_is_to_listen_tells_at_once_that_there_is_no_microphone(
    run: Runner, session: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    def missing(otherwise: str) -> None:
        raise HearingProblem(f"no microphone can be opened: connect one, or {otherwise}")

    monkeypatch.setattr(class_ear, "CardMicrophone", missing)

    done = run("class", "--names", "Ana", "--number", "1", "--listen")

    told = "answers are not heard: no microphone can be opened: connect one, or type the answer after a"
    assert told in done.err
    assert "The class is kept as it stands" in done.out


def test_the_prompts_before_a_class_fit_forty_columns() -> None:
    for asked in (class_begin._ROSTER_PROMPT, class_begin._GOES_ON):
        assert [part for part in asked.split("\n") if len(part) > 40] == []
