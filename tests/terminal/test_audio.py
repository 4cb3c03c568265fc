"""`audio`, as its user runs it."""

import io
import re
from itertools import pairwise
from pathlib import Path

import mutagen
import pytest

from assistant.practice.asking import due as due_now
from assistant.terminal import audio_facts
from assistant.terminal.progress_bar import ProgressBar
from assistant.voice.recording.script import Ask, Fact
from tests.terminal.conftest import Runner

FEW = ("audio", "--topic", "32-20", "--minutes", "1")


def test_the_script_tells_what_it_was_made_from_and_the_caution(run: Runner) -> None:
    done = run(*FEW, "--script", "--width", "400")
    lines = done.out.split("\n")

    assert done.code == 0
    assert lines[:2] == ["# Opening", lines[1]]
    assert lines[1].startswith("Aldermere one twenty: Nose gear and doors. Made from A O M revision seven")
    assert "Training only. Check your library. Set this up before you move off." in lines[2]
    assert "Not for use in flight" in lines[2]
    assert done.out.count("to answer]") >= 2


def test_the_same_seed_gives_the_same_script(run: Runner) -> None:
    one, same, other = (run(*FEW, "--script", "--seed", seed).out for seed in ("5", "5", "6"))

    assert one == same != other


def test_a_fact_comes_again_in_other_words_only(run: Runner) -> None:
    script = run("audio", "--topic", "steering", "--minutes", "15", "--script", "--width", "400").out
    asked = re.findall(r"^# \d+\. (.+)$", script, re.MULTILINE)
    sources = re.findall(r"^Source: (.+)$", script, re.MULTILINE)

    assert len(asked) > 20
    assert len(set(asked)) == len(asked)
    assert sum(one == two for one, two in pairwise(sources)) <= 1
    assert not re.search(r"^(Within|Outside) limits\. ", script, re.MULTILINE)  # what is no limit is not called one


def test_numbers_digit_by_digit(run: Runner) -> None:
    said = run(*FEW, "--script", "--digits", "--width", "400").out

    assert "Made from A O M revision seven" in said
    assert re.search(r"\b(fife|niner|tree|one zero|two zero)\b", said)


def test_a_file_is_made_and_known_again(run: Runner, tmp_path: Path) -> None:
    path = tmp_path / "steering.opus"
    done = run(*FEW, "-o", str(path), "--width", "400")

    assert done.code == 0
    assert done.out.startswith(f"written: {path} (")
    assert "−16." in done.out or "−15.9" in done.out
    assert done.err == ""
    assert mutagen.File(path)["ALBUM"] == ["Aldermere 120, questions to answer aloud"]
    assert "Made from AOM 7" in mutagen.File(path)["COMMENT"][0]

    assert run("audio", "--stale", str(tmp_path)).out == "1 audio file of Aldermere 120: none outdated.\n"
    assert run(*FEW, "-o", str(path)).code == 0  # its own file may be made again


def test_an_outdated_file_is_named(run: Runner, tmp_path: Path) -> None:
    path = tmp_path / "old.flac"
    run(*FEW, "-o", str(path))
    tagged = mutagen.File(path)
    tagged["DOWNLOCK"] = tagged["DOWNLOCK"][0].replace('"AOM": "7"', '"AOM": "6"')
    tagged.save()

    done = run("audio", "--stale", str(tmp_path), "--width", "400")

    assert done.out == f"{path}: made from AOM 6, now AOM 7\n1 audio file of Aldermere 120: 1 outdated.\n"
    assert done.code == 1


def test_a_file_of_somebody_else_is_left_alone(run: Runner, tmp_path: Path) -> None:
    path = tmp_path / "song.mp3"
    path.write_bytes(b"a song")
    done = run(*FEW, "-o", str(path))

    assert done.code == 2
    assert "was not made by this" in done.err
    assert path.read_bytes() == b"a song"


@pytest.mark.parametrize(
    ("arguments", "problem"),
    [
        ((), "name the file to make with -o"),
        (("-o", "x.doc"), "has no ending that tells the kind of file"),
        (("-o", "x"), "has no ending that tells the kind of file"),
        (("-o", "no/such/x.mp3"), "there is no folder"),
        (("--minutes", "0", "--script"), "--minutes takes a number from 1 to 180, not 0"),
        (("--minutes", "lots", "--script"), "--minutes takes a number"),
        (("--pace", "9", "--script"), "--pace takes a number from 80 to 320, not 9"),
        (("--topic", "sailing", "--script"), "nothing is known on “sailing”"),
        (("--stale", "no such"), "there is no folder no such"),
        (("--briefing", "-o", "x.mp3"), "a briefing cannot be made into a file yet"),
        (("--learner", "nobody", "--topic", "steering", "--script"), "there is no nobody in the record"),
        (("steering", "-o", "x.mp3"), "steering has no place here"),
    ],
)
def test_what_cannot_be_done_is_one_line(run: Runner, arguments: tuple[str, ...], problem: str) -> None:
    done = run("audio", *arguments)

    assert done.code == 2
    assert problem in done.err
    assert done.err.count("\n") == 1
    assert done.out == ""


def test_too_few_questions_are_told(run: Runner) -> None:
    done = run("audio", "--topic", "bypass pin", "--minutes", "120", "--script")

    assert done.code == 0
    assert "the file will be that long" in done.err


def test_an_unknown_voice_is_one_line(run: Runner, tmp_path: Path) -> None:
    done = run(*FEW, "-o", str(tmp_path / "x.wav"), "--voice", "nobody")

    assert done.code == 1
    assert done.err == 'downlock: there is no voice "nobody"; "voices" tells which there are\n'
    assert not (tmp_path / "x.wav").exists()


def test_what_a_learner_is_due_comes_first(monkeypatch: pytest.MonkeyPatch) -> None:
    found = [Fact(name, name, (Ask("?", "!", "?"),), "") for name in "abcd"]
    chosen = [type("Choice", (), {"record": name}) for name in "ca"]
    monkeypatch.setattr(audio_facts, "due", lambda *_: chosen)
    monkeypatch.setattr(audio_facts, "somebody", lambda *_: None)
    monkeypatch.setattr(audio_facts, "_pool", lambda *_: None)
    assert due_now.due is not None

    ordered = audio_facts.in_order_due(found, "Ann", None, "1", "")  # type: ignore[arg-type]

    assert [fact.name for fact in ordered] == ["c", "a", "b", "d"]


class Watched(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_the_bar_tells_the_time_left_on_one_narrow_line() -> None:
    moments = iter([0.0, 0.5, 10.0, 10.01, 40.0])
    out = Watched()
    bar = ProgressBar("x.mp3", out, lambda: next(moments))
    for share in (0.1, 0.25, 0.26, 1.0):
        bar.show(share)
    bar.clear()

    lines = out.getvalue().split("\r")
    assert lines[1] == "[##------------------]  10%"
    assert lines[2] == "[#####---------------]  25%, 0:30 left"
    assert lines[3].rstrip() == "[####################] 100%"
    assert lines[4].strip() == ""
    assert max(map(len, lines)) <= 40


def test_nobody_watching_sees_no_bar() -> None:
    out = io.StringIO()
    bar = ProgressBar("x.mp3", out)
    bar.show(0.5)
    bar.clear()

    assert out.getvalue() == ""
