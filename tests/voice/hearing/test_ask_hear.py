"""`ask --hear` as its user runs it: recordings in, answers out, and a clear line for what is no recording."""

from __future__ import annotations

import io
import json
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, NamedTuple

import numpy as np
import pytest
import soundfile
from scipy.signal import resample_poly

from assistant.terminal.main import main
from tests.voice.synthesis import car_noise, neural, padded

QUESTION = "the brakes read two hundred and twenty five degrees may i take off"


class Run(NamedTuple):
    code: int
    out: str
    err: str


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path) -> Callable[..., Run]:
    monkeypatch.setenv("DOWNLOCK_HOME", str(tmp_path / "home"))

    def runner(*arguments: str) -> Run:
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(b"")))
        code = main(list(arguments))
        return Run(code, *capsys.readouterr())

    return runner


@pytest.fixture(scope="module")
def recordings(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("recordings")
    said = padded(neural(QUESTION))
    wide = resample_poly(said, 441, 160).astype(np.float32)
    soundfile.write(folder / "a.wav", said, 16000)
    soundfile.write(folder / "b.flac", np.stack([wide, 0.5 * wide], axis=1), 44100)
    soundfile.write(folder / "c.ogg", wide, 44100)
    soundfile.write(folder / "d.mp3", wide, 44100)
    soundfile.write(folder / "noise.wav", 0.2 * car_noise(16000 * 8, 2), 16000)
    (folder / "list.txt").write_text("a.wav\nb.flac\nc.ogg\nd.mp3\nnoise.wav\nmissing.wav\n", "utf-8")
    return folder


def test_a_recorded_question_is_answered_and_shown_as_heard(run: Callable[..., Run], recordings: Path) -> None:
    done = run("ask", "--hear", str(recordings / "a.wav"), "--width", "200")

    assert done.code == 0
    assert done.out.startswith('Heard: "')
    assert "whisper" in done.out.splitlines()[0]
    assert "Within LIM 3.2" in done.out


def test_json_adds_what_was_heard(run: Callable[..., Run], recordings: Path) -> None:
    found = json.loads(run("ask", "--hear", str(recordings / "a.wav"), "--json").out)

    assert found["outcome"] == "answer"
    assert "225" in found["heard"]
    assert 0 < found["confidence"] <= 1
    assert found["recogniser"] == "whisper tiny.en"
    assert found["hear_ms"] > 0
    assert found["values"][0]["value"] == 250


def lines(done: Run) -> Iterator[dict[str, Any]]:
    return map(json.loads, done.out.splitlines())


@pytest.mark.parametrize("order", ["--hear --batch LIST", "--batch LIST --hear", "--hear LIST --batch"])
def test_a_file_names_recordings_of_every_kind(run: Callable[..., Run], recordings: Path, order: str) -> None:
    arguments = [str(recordings / "list.txt") if each == "LIST" else each for each in order.split()]

    done = run("ask", "--json", *arguments)

    found = list(lines(done))
    assert done.code == 0
    # No two runs of the engine sound alike: what one run answers, another may put up for confirmation.
    assert all(each["outcome"] == "answer" or each["text"].startswith("CONFIRM") for each in found[:4])
    assert [each["outcome"] for each in found[4:]] == ["decline"] * 2
    assert found[4]["heard"] == ""
    assert "no such file" in found[5]["text"]


@pytest.mark.parametrize(("arguments", "says"), [
    (("--hear", "missing.wav"), "there is no such file"),
    (("--hear",), "--hear takes a value"),
    (("--hear", "a.wav", "vle"), "leave out the question"),
    (("--hear", "a.wav", "--batch", "b.txt"), "--hear takes one recording"),
    (("--hear", "--batch"), "--hear takes one recording"),
])  # fmt: skip
def test_what_cannot_be_heard_is_one_line(run: Callable[..., Run], arguments: tuple[str, ...], says: str) -> None:
    done = run("ask", *arguments)

    assert done.code == 2
    assert says in done.err
    assert done.err.count("\n") == 1
    assert done.out == ""


def test_nothing_said_is_declined(run: Callable[..., Run], recordings: Path) -> None:
    done = run("ask", "--hear", str(recordings / "noise.wav"))

    assert done.code == 4
    assert "Heard: nothing" in done.out


def test_hands_free_without_a_microphone_is_one_line(run: Callable[..., Run], monkeypatch: pytest.MonkeyPatch) -> None:
    import miniaudio

    def refuse(*arguments: object, **options: object) -> None:
        raise miniaudio.MiniaudioError("none")

    monkeypatch.setattr(miniaudio, "CaptureDevice", refuse)

    done = run("--hands-free")

    assert done.code == 2
    assert done.err == "downlock: no microphone can be opened: connect one, or leave out --hands-free\n"


def test_two_recordings_on_one_line_are_one_too_many(run: Callable[..., Run], recordings: Path) -> None:
    done = run("ask", "--hear", str(recordings / "a.wav"), "--hear", str(recordings / "b.flac"))

    assert done.code == 2
    assert "--hear is given twice" in done.err


def test_channels_that_cancel_one_another_out_are_heard(run: Callable[..., Run], tmp_path: Path) -> None:
    said = padded(neural(QUESTION))
    soundfile.write(tmp_path / "opposite.wav", np.stack([said, -said], axis=1), 16000)

    done = run("ask", "--hear", str(tmp_path / "opposite.wav"), "--json")

    assert "225" in json.loads(done.out)["heard"]


def test_only_our_own_line_tells_of_what_is_no_recording(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("DOWNLOCK_HOME", str(tmp_path / "home"))
    (tmp_path / "text.mp3").write_text("This is a text and no sound at all. " * 200, "utf-8")

    main(["ask", "--hear", str(tmp_path / "text.mp3")])

    assert len(capfd.readouterr().err.strip().splitlines()) == 1
