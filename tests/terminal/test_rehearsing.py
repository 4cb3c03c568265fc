"""`rehearse` as its learner uses it: at the prompt, through a pipe, on a full disk, over two weeks of days."""

import io
import json
import os
import re
import shutil
import sys
from collections.abc import Callable
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from assistant.knowledge.location import knowledge_root
from assistant.practice import recall, sitting_summary
from assistant.practice.asking import day_share
from assistant.practice.keeping.opening import FILE
from assistant.practice.keeping.record import Record, open_record
from assistant.practice.keeping.rows import Answered
from assistant.rendering.text import columns
from assistant.terminal import rehearsal, rehearsing
from assistant.terminal.arguments import parse
from assistant.terminal.places import data_folder
from assistant.terminal.rehearsing import sit
from assistant.terminal.screen import Screen
from assistant.terminal.session import open_session
from assistant.terminal.simulated import clock
from assistant.terminal.sitting_prompt import EditedLines
from assistant.terminal.sitting_room import Wanted
from tests.terminal.conftest import Runner

TYPE = "aldermere_120"
CTRL_C, CTRL_D = "\x03", "\x04"
Typed = Callable[..., str]


@pytest.fixture(autouse=True)
def today(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("DOWNLOCK_TODAY", "2026-11-25")


@pytest.fixture
def typed(monkeypatch: pytest.MonkeyPatch) -> Typed:
    """Types keys at the prompt, a sitting's options given, and returns what is shown."""

    def typing(keys: str, *options: str, width: int = 80, number: int | None = 3, color: bool = False) -> str:
        out = io.StringIO()
        parsed = parse(["rehearse", *options])
        screen = Screen(out, width, color)
        with create_pipe_input() as source:
            source.send_text(keys)
            asking = EditedLines(screen, source, DummyOutput())
            wanted = Wanted(number, None, (), "1")
            assert sit(parsed, open_session(parsed), wanted, asking, screen, True, clock()) == 0
        return out.getvalue()

    return typing


def answers(home: Path, name: str = "Ana") -> tuple[Answered, ...]:
    with open_record(str(home), clock) as record:
        learner = record.find(name)
        return record.history(learner, TYPE) if learner else ()


# --- at the prompt


def test_somebody_new_is_asked_for_a_name_and_begins(typed: Typed, own_places: Path) -> None:
    shown = typed("\rAna\rpass\r\rstop\r")

    assert "A name is needed." in shown
    assert "Ana is new in the record." in shown
    assert "Rehearsal of Ana: Aldermere 120. Loaded: AOM 7" in shown
    assert "1/3 [........] " in shown
    assert "Missed." in shown
    assert "2/3 [##......] " in shown
    assert "1 answered: 1 missed." in shown
    assert shown.rstrip().endswith("Kept in the record of Ana.")
    assert [each.note.mark for each in answers(own_places)] == ["missed"]


def test_the_caution_stands_once_at_the_start(typed: Typed) -> None:
    shown = " ".join(typed("pass\r\rpass\r\rpass\r\r", "--learner", "Ana").split())

    assert shown.count("Training only") == 1
    assert shown.count("licensed instructors prevail") == 1


def test_the_only_one_in_the_record_is_not_asked_for(typed: Typed) -> None:
    typed("stop\r", "--learner", "Ana")

    assert "Rehearsal of Ana" in typed("stop\r")
    typed("stop\r", "--learner", "Ben")
    shown = typed("ben\rstop\r")
    assert "In the record: Ana, Ben." in shown
    assert "Rehearsal of Ben" in shown


def test_a_mark_is_overruled_and_recorded_so(typed: Typed, own_places: Path) -> None:
    shown = typed("nonsense\roverrule right\r\rstop\r", "--learner", "Ana")

    assert "Right: your mark, recorded as overruled." in shown
    assert "1 mark overruled by you, and recorded so." in shown
    (kept,) = answers(own_places)
    assert (kept.note.mark, kept.note.share, kept.note.overruled) == ("right", 1.0, True)
    assert kept.note.marked in ("wrong", "missed")


def test_hesitation_is_measured_before_the_first_key(typed: Typed, own_places: Path) -> None:
    typed("pass\r\rnonsense\rstop\r", "--learner", "Ana")

    passed, answered = answers(own_places)
    assert passed.note.hesitation is None
    assert answered.note.hesitation is not None
    assert 0 <= answered.note.hesitation < 5


@pytest.mark.parametrize("keys", [CTRL_C, CTRL_D, f"half an ans{CTRL_C}"])
def test_ctrl_c_and_ctrl_d_end_with_a_summary_and_lose_the_answer_in_hand_alone(
    typed: Typed, own_places: Path, keys: str
) -> None:
    shown = typed(f"pass\r\r{keys}", "--learner", "Ana")

    assert "1 answered: 1 missed." in shown
    assert "Kept in the record of Ana." in shown
    assert len(answers(own_places)) == 1


def test_ctrl_d_instead_of_a_name_leaves(typed: Typed, own_places: Path) -> None:
    assert typed(CTRL_D).endswith("Your record stays on this machine.\n\n")
    assert answers(own_places) == ()


def test_lines_fit_forty_columns_without_colour(typed: Typed) -> None:
    shown = typed("help\rhint\rpass\rwhy\r\rpass\roverrule right\r\rpass\r\r", "--learner", "Ana", width=40)

    assert max(columns(line) for line in shown.splitlines()) <= 40
    assert "\x1b" not in shown


def test_colour_only_repeats_what_is_said(typed: Typed) -> None:
    plain = typed("pass\r\rstop\r", "--learner", "Ana")
    colored = typed("pass\r\rstop\r", "--learner", "Ben", color=True)

    assert "\x1b[1m" in colored
    assert re.sub(r"\x1b\[\dm", "", colored).replace("Ben", "Ana").replace(" (there is Ana)", "") == plain


def test_an_escape_in_an_answer_does_not_come_back(typed: Typed, own_places: Path) -> None:
    shown = typed("\x1b[200~\x1b[31m280 \x07 kt\x1b[201~\r\rstop\r", "--learner", "Ana")

    assert "\x1b" not in shown
    assert "\x07" not in shown


def test_a_question_of_ones_own_is_answered_after_the_mark(typed: Typed) -> None:
    shown = typed("pass\rwhat is VLO for retraction\r\rstop\r", "--learner", "Ana")

    assert "205 kt IAS" in shown


# --- an oral examination


def test_an_oral_examination_ends_with_a_debrief(typed: Typed, own_places: Path) -> None:
    shown = typed("pass\runable\rpass\rno idea\rpass\rpass\r" + "pass\r" * 3 + "overrule 2 right\r\r", "--learner",
                  "Ana", "--oral", number=None)  # fmt: skip

    assert "Oral examination of Ana" in shown
    assert [line for line in shown.splitlines() if line.startswith("Scenario ")] == [f"Scenario {n}" for n in (1, 2, 3)]
    assert shown.count("That is as far as you know it.") == 3
    assert "Debrief, by paragraph" in shown
    assert "9 answered: 9 missed." in shown
    assert "9 answered: 1 right, 8 missed." in shown.split("2. Right: your mark, recorded.")[1]
    kept = answers(own_places)
    assert {each.note.how for each in kept} == {"oral"}
    assert [each.note.mark for each in kept] == ["missed", "right", *["missed"] * 7]
    assert kept[1].note.overruled


def test_an_oral_examination_of_so_many_questions(typed: Typed, own_places: Path) -> None:
    shown = typed("pass\r" * 5 + "\r", "--learner", "Ana", "--oral", number=5, width=40)

    assert "5 answered" in shown
    assert "That is the end of the examination." in shown
    assert max(columns(line) for line in shown.splitlines()) <= 40


def test_ctrl_d_in_an_oral_examination_is_debriefed_too(typed: Typed) -> None:
    shown = typed(f"pass\r{CTRL_D}", "--learner", "Ana", "--oral", number=None)

    assert "Debrief, by paragraph" in shown
    assert shown.rstrip().endswith("Kept in the record of Ana.")


# --- through a pipe


def test_a_pipe_answers_line_by_line_and_nothing_is_timed(run: Runner, own_places: Path) -> None:
    done = run("rehearse", "--learner", "Ana", "--number", "2", "--seed", "1", typed=b"pass\n\n\xff\n")

    assert (done.code, done.err) == (0, "")
    assert "Answer, hint" not in done.out
    assert "2 answered" in done.out
    assert {each.note.hesitation for each in answers(own_places)} == {None}


@pytest.mark.parametrize(
    ("lines", "answered"),
    [
        (b"pass\npass\npass\n", 3),
        (b"pass\n\npass\n\npass\n", 3),
        (b"pass\nwhy\npass\noverrule right\n12 kt\n", 3),
        (b"pass\n17 blue elephants\nstop\n", 2),
        (b"pass\npass\npass\npass\npass\n", 4),
    ],
)
def test_no_line_of_a_pipe_is_lost(run: Runner, lines: bytes, answered: int) -> None:
    done = run("rehearse", "--learner", "Ana", "--number", "4", "--seed", "1", typed=lines)

    assert f"{answered} answered" in done.out


def test_the_same_seed_asks_the_same(run: Runner, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    shown = []
    for home in ("one", "two"):
        monkeypatch.setenv("DOWNLOCK_HOME", str(tmp_path / home))
        shown.append(run("rehearse", "--learner", "Ana", "--number", "5", "--seed", "8", typed=b"pass\n\n" * 5).out)

    assert shown[0] == shown[1]


@pytest.mark.parametrize(
    ("topic", "sections"),
    [("32-50", {"32-50"}), ("brakes, 32-60", {"32-40", "32-60"}), ("general", {"General"})],
)
def test_a_topic_is_kept_to(run: Runner, topic: str, sections: set[str]) -> None:
    done = run("rehearse", "--learner", "Ana", "--number", "8", "--topic", topic, typed=b"pass\n\n" * 8)

    found = set(re.findall(r"^\d/8 \[[#.]*\] (\d\d-\d\d|[^\d].*)", done.out, re.MULTILINE))
    assert found == sections


def test_minutes_end_it_and_the_time_left_is_told(run: Runner, monkeypatch: pytest.MonkeyPatch) -> None:
    times = iter(range(1000))
    began = datetime(2026, 11, 25, 18, 0).astimezone()
    monkeypatch.setattr(rehearsal, "clock", lambda: began + timedelta(seconds=10 * next(times)))

    done = run("rehearse", "--learner", "Ana", "--minutes", "2", typed=b"pass\n\n" * 40)

    assert "1, 2 min left [" in done.out
    assert 2 <= done.out.count("Missed.") <= 12


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--number", "0", "--learner", "A"], "--number takes a number from 1 to 500, not 0"),
        (["--number", "many", "--learner", "A"], "--number takes a number from 1 to 500, not many"),
        (["--minutes", "-5", "--learner", "A"], "--minutes takes a number from 1 to 480, not -5"),
        (["--ready-by", "soon", "--learner", "A"], "--ready-by takes a day such as 2026-11-25, not soon"),
        (["--ready-by", "2026-11-24", "--learner", "A"], "--ready-by 2026-11-24 is over; today is 2026-11-25"),
        (["--topic", "sails", "--learner", "A"], "nothing is known on “sails”"),
        (["--learner", "export"], '--learner: "export" is a word of the command'),
        (["--learner", ""], "--learner takes a value"),
        (["--mark", "-", "--oral"], "--oral does not go with --mark, which needs no learner"),
        ([], "say who rehearses: --learner NAME"),
    ],
)
def test_what_is_written_wrongly(run: Runner, arguments: list[str], said: str) -> None:
    done = run("rehearse", *arguments)

    assert (done.code, done.err.count("\n")) == (2, 1)
    assert said in done.err


def test_a_day_that_cannot_be_read(run: Runner, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("DOWNLOCK_TODAY", "tomorrow")

    done = run("rehearse", "--learner", "Ana")

    assert (done.code, done.err) == (2, "downlock: DOWNLOCK_TODAY takes a day such as 2026-12-01, not tomorrow\n")


@pytest.mark.parametrize("named", ["2027-02-28", "2027-02-28T18:30", "2027-02-28T18:30+01:00"])
def test_another_day_is_today(monkeypatch: pytest.MonkeyPatch, named: str) -> None:
    monkeypatch.setenv("DOWNLOCK_TODAY", named)

    first, second = clock(), clock()

    assert first.date() == date(2027, 2, 28)
    assert first.tzinfo is not None
    assert second >= first


def test_progress_tells_of_what_is_true_of_all_aeroplanes_once_it_was_asked(run: Runner) -> None:
    run("rehearse", "--learner", "Ana", "--number", "1", typed=b"pass\n\n")
    before = run("progress", "ana").out
    run("rehearse", "--learner", "Ana", "--number", "1", "--topic", "general", typed=b"pass\n\n")
    after = json.loads(run("progress", "ana", "--json").out)

    assert "True of all aeroplanes" not in before
    assert [each["shaky"] + each["unknown"] for each in after["sections"] if each["section"] == "general"] == [1]


def test_nothing_is_new_for_ever(run: Runner) -> None:
    shown = [run("rehearse", "--learner", "Ana", "--topic", "BRAKE HEAT", typed=b"pass\n\n" * 40).out for _ in range(2)]

    assert "new)" in shown[0]
    assert "new)" not in shown[1]


# --- the day to be ready by


def test_the_day_to_be_ready_by_is_kept_and_cleared(run: Runner, monkeypatch: pytest.MonkeyPatch) -> None:
    sat = [
        run("rehearse", "--learner", "Ana", *options, typed=b"stop\n").out
        for options in (["--ready-by", "2026-12-10"], [], ["--ready-by", "none"], ["--ready-by", "2026-11-26"])
    ]
    monkeypatch.setenv("DOWNLOCK_TODAY", "2026-11-27")
    late = run("rehearse", "--learner", "Ana", typed=b"stop\n").out

    assert ["Ready by 2026-12-10: 16 days with today" in out for out in sat[:3]] == [True, True, False]
    assert "Ready by 2026-11-26: 2 days with today" in sat[3]
    assert "The day to be ready by, 2026-11-26, is over" in late


# --- where nothing can be kept


def test_where_nothing_can_be_kept_it_goes_on_and_says_so(
    run: Runner, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    (tmp_path / "file").write_text("here already")
    monkeypatch.setenv("DOWNLOCK_HOME", os.fspath(tmp_path / "file"))

    done = run("rehearse", "--learner", "Ana", "--number", "2", typed=b"pass\n\npass\n\n")

    assert done.code == 0
    assert done.err.count("\n") == 1
    assert "Going on unsaved: nothing is kept." in done.err
    assert "2 answered: 2 missed." in done.out
    assert "Not kept: the record of Ana cannot be written." in done.out


def test_a_disk_that_fills_up_in_the_midst_is_said_once(
    typed: Typed, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def full(width: int | None) -> Record:
        record = open_record(data_folder(), clock)
        record.enrol("Ana")
        connection = record._keeper.connection
        connection.execute(f"PRAGMA max_page_count = {connection.execute('PRAGMA page_count').fetchone()[0]}")
        return record

    monkeypatch.setattr(rehearsing, "opened_record", full)
    shown = typed("pass\r\r" * 40, "--learner", "Ana", number=40)

    assert "40 answered: 40 missed." in shown
    assert "Not kept: the record of Ana cannot be written." in shown
    told = capsys.readouterr().err
    assert told.count("downlock:") == 1
    assert max(map(len, told.splitlines())) <= 80
    assert "cannot be written: the disk is full. Going on unsaved: nothing more is kept." in " ".join(told.split())


def test_a_damaged_record_is_set_aside_and_the_sitting_goes_on(run: Runner, own_places: Path) -> None:
    run("rehearse", "--learner", "Ana", "--number", "1", typed=b"pass\n\n")
    (own_places / FILE).write_bytes(b"not a record" * 500)

    done = run("rehearse", "--learner", "Ana", "--number", "2", typed=b"pass\n\npass\n\n")

    assert "was damaged and is set aside as" in done.err
    assert "Kept in the record of Ana." in done.out
    assert len(answers(own_places)) == 3


@pytest.mark.parametrize("width", [40, 60])
def test_what_is_said_of_the_record_keeps_to_the_width_asked_for(run: Runner, own_places: Path, width: int) -> None:
    run("rehearse", "--learner", "Ana", "--number", "1", typed=b"pass\n\n")
    (own_places / FILE).write_bytes(b"not a record" * 500)

    done = run("progress", "--width", f"{width}")

    assert len(done.err.splitlines()) > 2
    assert max(map(len, done.err.splitlines())) <= width


@pytest.mark.parametrize(
    "arguments",
    [
        ["rehearse", "--learner", "Ana", "--number", "2"],
        ["rehearse", "--learner", "Ana", "--oral"],
        ["progress", "Ana"],
    ],
)
def test_a_package_that_is_missing_is_said_in_one_line_before_anything_is_asked(
    run: Runner, monkeypatch: pytest.MonkeyPatch, arguments: list[str]
) -> None:
    run("rehearse", "--learner", "Ana", "--number", "1", typed=b"pass\n\n")
    recall._scheduler.cache_clear()
    recall._ratings.cache_clear()
    monkeypatch.setitem(sys.modules, "fsrs", None)

    done = run(*arguments, typed=b"pass\n\npass\n\n")

    assert done.code == 1
    assert done.err == "downlock: the package fsrs is missing, which this needs; install it: pip install fsrs\n"
    assert "1/2" not in done.out


# --- how much a day asks


def test_a_day_asks_no_more_than_its_share_and_says_what_waits(
    run: Runner, own_places: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(day_share, "MOST_A_DAY", 6)
    monkeypatch.setattr(sitting_summary, "MOST_A_DAY", 6)
    first = run("rehearse", "--learner", "Ana", "--ready-by", "2026-12-10", typed=b"pass\n\n" * 4)
    told = " ".join(first.out.split())
    assert "Today: 6 to ask (6 new), about 5 min, and again what you miss." in told
    assert "more" not in told.split("what you miss.")[1].split("Answer in")[0]
    assert "1/6 [" in first.out

    second = run("rehearse", typed=b"pass\n\n" * 20)
    assert "Today: 2 to ask (2 new)" in second.out
    assert "Today: 0 to ask again, 2 new; 16 days" not in second.out
    assert len({each.note.record for each in answers(own_places)}) == 6
    assert "Today's 6 questions are answered. Fading by tomorrow: " in second.out

    third = run("rehearse")
    assert "Today's 6 questions are answered. --minutes 10 asks some more now." in " ".join(third.out.split())
    assert "1/" not in third.out

    more = run("rehearse", "--number", "3", typed=b"pass\n\n" * 3)
    assert "3 answered" in more.out


def test_somebody_removed_meanwhile_is_told_and_goes_on(typed: Typed, monkeypatch: pytest.MonkeyPatch) -> None:
    noted = Record.note_answer

    def removed_before(self: Record, learner, type_id, note):  # type: ignore[no-untyped-def]
        self.forget(learner)
        return noted(self, learner, type_id, note)

    monkeypatch.setattr(Record, "note_answer", removed_before)
    shown = typed("pass\roverrule right\r\rpass\r\rstop\r", "--learner", "Ana")

    assert shown.count("Ana was removed from the record meanwhile; nothing more is kept.") == 1
    assert "Not kept" in shown


# --- a revision in the midst, and a document out of force


@pytest.fixture
def library(tmp_path: Path) -> Path:
    """A copy of the knowledge base, to be revised."""
    root = tmp_path / "library"
    shutil.copytree(knowledge_root(), root)
    return root


def _revise(library: Path, file: str, *edits: tuple[str, str]) -> None:
    path = library / TYPE / file
    text = path.read_text("utf-8")
    for old, new in edits:
        assert old in text, old
        text = text.replace(old, new, 1)
    path.write_text(text, "utf-8")


def test_what_a_revision_changed_is_due_at_once_and_says_what_it_was(
    run: Runner, library: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    options = ("rehearse", "--learner", "Ana", "--knowledge", str(library), "--topic", "VLO")
    run(*options, "--number", "20", typed=b"pass\n\n" * 20)
    documents = (library / TYPE / "documents.yaml").read_text("utf-8")
    entry = next(part for part in documents.split("- id: ") if part.startswith("LIM\n"))
    revision = re.search(r"revision: \"?(\w+)\"?", entry)
    assert revision is not None and revision[1] == "7"
    _revise(library, "documents.yaml", (entry, entry.replace(revision[0], 'revision: "8"')))
    limits = (library / TYPE / "limits.yaml").read_text("utf-8")
    block = next(part for part in limits.split("- id: ") if part.startswith("vlo-extension\n"))
    _revise(library, "limits.yaml", (block, block.replace("230 kt", "225 kt")))
    both = next(part for part in limits.split("- id: ") if part.startswith("vlo-both\n"))
    _revise(library, "limits.yaml", (both, both.replace("230 kt", "225 kt")))
    monkeypatch.setenv("DOWNLOCK_TODAY", "2026-11-26")

    done = run(*options, "--number", "2", "--seed", "1", typed=b"230 kt\n\n" * 2)

    assert "2 changed" in done.out
    assert "A revision has changed this since you were last asked (LIM 8)." in done.out
    assert "Wrong" in done.out
    told = " ".join(done.out.split())
    assert "New since you were last asked (LIM 8): was at most 230 kt, now at most 225 kt." in told


def test_figures_that_do_not_agree_are_not_rehearsed(run: Runner, library: Path) -> None:
    limits = (library / TYPE / "limits.yaml").read_text("utf-8")
    block = next(part for part in limits.split("- id: ") if part.startswith("vlo-extension\n"))
    _revise(library, "limits.yaml", (block, block.replace("230 kt", "225 kt")))

    for command in (("rehearse", "--learner", "Ana"), ("progress",), ("sheet", "quiz")):
        done = run(*command, "--knowledge", str(library), typed=b"stop\n")
        assert (done.code, done.out) == (1, "")
        assert "limits.yaml" in done.err


@pytest.mark.parametrize("wrong", [("--ready-by", "2026-13-40"), ("--topic", "bananas"), ("--number", "0")])
def test_who_mistypes_an_option_is_not_written_down(run: Runner, own_places: Path, wrong: tuple[str, str]) -> None:
    done = run("rehearse", "--learner", "Lost", *wrong, typed=b"stop\n")

    assert done.code == 2
    assert "new in the record" not in done.out
    assert not own_places.exists() or answers(own_places, "Lost") == ()
    assert "Lost" not in run("progress").out


def test_a_record_set_aside_is_not_asked(run: Runner, own_places: Path) -> None:
    own_places.mkdir()
    (own_places / "disputed.json").write_text(json.dumps({TYPE: [["vle", "check the placard"]]}))

    done = run("rehearse", "--learner", "Ana", "--topic", "VLE", typed=b"stop\n")

    told = "Not asked: maximum speed with the gear down, VLE is set aside as disputed: check the placard"
    assert told in " ".join(done.out.split())
