"""Files that are made: their level as players decode it, chapters, tags, and going on after an interruption."""

import json
from pathlib import Path

import mutagen
import numpy as np
import pytest
import soundfile

from assistant.voice.recording.loudness import integrated_loudness, true_peak_db
from assistant.voice.recording.making import Made, make_file
from assistant.voice.recording.script import Ask, Fact, Script, make_script
from assistant.voice.recording.stale import stale_files
from assistant.voice.recording.tags import Labels, Origin, read_origin
from assistant.voice.speaking.problem import VoiceProblem
from assistant.voice.speaking.settings import VoiceSettings
from assistant.voice.speaking.sounds import Sound
from assistant.voice.speaking.synthesis import EngineSynthesiser

KINDS = (".mp3", ".opus", ".flac", ".wav")
ORIGIN = Origin("sample", {"AOM": "7", "LIM": "7 with TR 1"}, ("tiller-maximum",), ("steering",), "3")
LABELS = Labels("Sample: steering", "Sample", "Made from AOM 7. Training only.")
FACTS = [
    Fact(
        "tiller", "tiller-maximum",
        (Ask("What is the tiller's maximum?", "sixty-eight degrees.", "What is the tiller’s maximum?"),
         Ask("How far does the tiller turn?", "sixty-eight degrees.", "How far …?")),
        "Source: A O M thirty-two.",
    ),
    Fact("brakes", "brakes", (Ask("How hot may a brake be?", "two hundred and fifty degrees.", "How hot?"),), ""),
]  # fmt: skip
SCRIPT = make_script(["Sample. Made from A O M seven."], ["That is the end."], FACTS, 120)


class Counting:
    """The engine's voice, which counts, and may be stopped as by a key."""

    def __init__(self, stop_after: int = 1000, problem: str = "") -> None:
        self._engine = EngineSynthesiser({})
        self.said: list[str] = []
        self._stop_after = stop_after
        self._problem = problem

    def synthesise(self, text: str, settings: VoiceSettings) -> Sound:
        if len(self.said) >= self._stop_after:
            if self._problem:
                raise VoiceProblem(self._problem)
            raise KeyboardInterrupt
        self.said.append(text)
        return self._engine.synthesise(text, settings)

    def close(self) -> None:
        self._engine.close()


def make(path: Path, voice: Counting | None = None, shares: list[float] | None = None, script: Script = SCRIPT) -> Made:
    voice = voice or Counting()
    try:
        steps = shares if shares is not None else []
        return make_file(script, str(path), voice, VoiceSettings(), LABELS, ORIGIN, steps.append)
    finally:
        voice.close()


@pytest.fixture(scope="module", params=KINDS)
def file(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Made]:
    path = tmp_path_factory.mktemp("made") / f"a file{request.param}"
    return path, make(path)


def test_its_level_is_even_and_as_wanted(file: tuple[Path, Made]) -> None:
    path, made = file
    samples, rate = soundfile.read(str(path))

    assert samples.ndim == 1
    assert integrated_loudness(samples, rate) == pytest.approx(-16, abs=0.3)
    assert integrated_loudness(samples, rate) == pytest.approx(made.loudness, abs=0.01)
    assert true_peak_db(samples) < -1
    assert made.seconds == pytest.approx(len(samples) / rate)


def test_each_chapter_is_as_loud_as_the_next(file: tuple[Path, Made]) -> None:
    path, made = file
    samples, rate = soundfile.read(str(path))

    for chapter in made.chapters:
        part = samples[round(chapter.start_s * rate) : round(chapter.end_s * rate)]
        assert integrated_loudness(part, rate) == pytest.approx(-16, abs=1)


def test_the_chapters_begin_with_sound_after_silence(file: tuple[Path, Made]) -> None:
    path, made = file
    samples, rate = soundfile.read(str(path))

    for chapter in made.chapters:
        at = round(chapter.start_s * rate)
        before, after = samples[max(0, at - rate // 3) : at - rate // 20], samples[at : at + rate // 3]
        assert np.abs(before).max() < 0.01 < np.abs(after).max()


def test_the_questions_have_their_pauses(file: tuple[Path, Made]) -> None:
    _, made = file
    said = sum(part.pause_s for part in SCRIPT.parts)

    assert made.seconds > said + 5
    assert made.seconds == pytest.approx(SCRIPT.seconds, rel=0.15)


def chapters_of(path: Path) -> list[tuple[float, str]]:
    """Start and title of each chapter, in the order of the file, read with the tag library alone."""
    tags = mutagen.File(path).tags
    if hasattr(tags, "getall"):
        frames = {frame.element_id: frame for frame in tags.getall("CHAP")}
        order = tags.getall("CTOC")[0].child_element_ids
        return [(frames[name].start_time / 1000, str(frames[name].sub_frames["TIT2"])) for name in order]
    count = sum(key.endswith("name") for key in map(str.lower, tags.keys()))
    found = []
    for number in range(1, count + 1):
        hours, minutes, seconds = tags[f"CHAPTER{number:03}"][0].split(":")
        start = 3600 * int(hours) + 60 * int(minutes) + float(seconds)
        found.append((start, tags[f"CHAPTER{number:03}NAME"][0]))
    return found


def test_chapters_and_tags_are_read_back(file: tuple[Path, Made]) -> None:
    path, made = file

    assert chapters_of(path) == [(pytest.approx(each.start_s, abs=0.001), each.title) for each in made.chapters]
    assert [each.title for each in made.chapters] == [
        "Opening", "1. What is the tiller’s maximum?", "2. How hot?", "3. How far …?", "End",
    ]  # fmt: skip
    assert read_origin(str(path)) == ORIGIN
    tags = mutagen.File(path).tags
    title = tags["TIT2"] if "TIT2" in tags else tags["TITLE"][0]
    assert str(title) == LABELS.title


def test_chapter_frames_of_an_mp3_are_in_order(tmp_path: Path) -> None:
    make(tmp_path / "a.mp3")
    raw = (tmp_path / "a.mp3").read_bytes()

    starts = [raw.index(f"chapter{number}\0".encode(), raw.index(b"CHAP")) for number in range(1, 6)]
    assert starts == sorted(starts)
    assert raw[:5] == b"ID3\x03\x00"


def test_nothing_is_left_beside_the_file(file: tuple[Path, Made]) -> None:
    assert [path.name for path in file[0].parent.iterdir()] == [file[0].name]


def test_it_goes_on_after_an_interruption(tmp_path: Path) -> None:
    path = tmp_path / "a.flac"
    first = Counting(stop_after=5)
    with pytest.raises(KeyboardInterrupt):
        make(path, first)
    assert not path.exists()

    second = Counting()
    make(path, second)

    whole = Counting()
    make(tmp_path / "b.flac", whole)
    assert len(first.said) + len(second.said) <= len(whole.said) + 1
    assert set(first.said) | set(second.said) == set(whole.said)
    assert not path.with_name("a.flac.parts").exists()


def test_a_failing_voice_leaves_no_file(tmp_path: Path) -> None:
    with pytest.raises(VoiceProblem, match="no voice"):
        make(tmp_path / "a.wav", Counting(2, "no voice"))

    assert not (tmp_path / "a.wav").exists()


def test_parts_of_somebody_else_stay(tmp_path: Path) -> None:
    (tmp_path / "a.wav.parts").mkdir()
    (tmp_path / "a.wav.parts" / "letter.txt").write_text("mine")
    make(tmp_path / "a.wav")

    assert (tmp_path / "a.wav.parts" / "letter.txt").read_text() == "mine"


def test_progress_goes_forward_to_the_end(tmp_path: Path) -> None:
    shares: list[float] = []
    make(tmp_path / "a.wav", shares=shares)

    assert shares == sorted(shares)
    assert shares[-1] == 1
    assert len(shares) > len(SCRIPT.parts)


@pytest.mark.parametrize("content", [b"", b"not sound", b"ID3\x03\x00\x00\x00\x00\x00\x20" + b"\xff" * 40])
def test_a_file_that_is_none_of_ours_tells_nothing(tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "a.mp3"
    path.write_bytes(content)

    assert read_origin(str(path)) is None


def test_an_origin_that_makes_no_sense_is_none(tmp_path: Path) -> None:
    path = tmp_path / "a.flac"
    make(path)
    tagged = mutagen.File(path)
    for text in ("{", "[]", json.dumps({"revisions": 3}), "[" * 10_000):
        tagged["DOWNLOCK"] = text
        tagged.save()
        assert read_origin(str(path)) is None


LOADED = {"AOM": "7", "LIM": "8"}


@pytest.mark.parametrize(
    ("origin", "reason"),
    [
        (Origin("sample", {"AOM": "7"}, ("a",)), ""),
        (Origin("sample", {"AOM": "6", "LIM": "8"}, ("a",)), "made from AOM 6, now AOM 7"),
        (Origin("sample", {"SOP": "2"}), "SOP is no longer loaded"),
        (Origin("sample", {}, ("a", "b", "c")), "2 of its facts are no longer there"),
        (Origin("sample", {"LIM": "7"}, ("b",)), "made from LIM 7, now LIM 8; 1 of its facts is no longer there"),
        (Origin("another", {"AOM": "1"}), ""),
    ],
)
def test_what_a_revision_outdates(origin: Origin, reason: str) -> None:
    found = stale_files([("x.mp3", origin)], "sample", LOADED, ["a"])

    assert [each.reason for each in found] == ([reason] if reason else [])
