"""Recordings of any kind become the same samples; the spectrum and the resampling agree with scipy's."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import soundfile
from scipy.signal import resample_poly, stft

from assistant.voice.hearing.endpoint import Endpointer, Judge, question_in, speech_in
from assistant.voice.hearing.log_mel import BANDS, _bands, log_mel
from assistant.voice.hearing.numbers import figures_told
from assistant.voice.hearing.recognising import HearingProblem
from assistant.voice.hearing.samples import from_pcm, heard, read_recording, resampled, to_pcm
from assistant.voice.hearing.wording import goes_round, once, plainly
from assistant.voice.sound import BLOCK, RATE
from tests.voice.synthesis import car_noise, formant, mixed, music, padded, white_noise

SENTENCE = "how far does the nose wheel turn at ten knots"


def sine(hertz: float, seconds: float, rate: int) -> np.ndarray:
    return (0.5 * np.sin(2 * np.pi * hertz * np.arange(int(seconds * rate)) / rate)).astype(np.float32)


@pytest.mark.parametrize("rate", [8000, 11025, 22050, 24000, 32000, 44100, 48000, 96000])
def test_any_rate_keeps_pitch_and_level(rate: int) -> None:
    found = resampled(sine(1000, 1.0, rate), rate)

    spectrum = np.abs(np.fft.rfft(found[4000:12000]))
    assert np.argmax(spectrum) * RATE / 8000 == pytest.approx(1000, abs=2)
    assert np.abs(found[4000:12000]).max() == pytest.approx(0.5, abs=0.01)
    assert len(found) == pytest.approx(RATE, abs=1)


def test_resampling_agrees_with_scipy_where_a_voice_is() -> None:
    samples = resample_poly(formant(SENTENCE), 441, 160).astype(np.float32)

    ours, theirs = resampled(samples, 44100), resample_poly(samples, 160, 441)
    size = min(len(ours), len(theirs))

    assert np.corrcoef(ours[:size], theirs[:size])[0, 1] > 0.999


def test_what_is_too_high_does_not_fold_back() -> None:
    found = resampled(sine(11_000, 1.0, 48000), 48000)

    assert np.abs(found[2000:-2000]).max() < 0.005


@pytest.mark.parametrize(("name", "rate", "channels"), [
    ("a.wav", 16000, 1), ("a.wav", 48000, 2), ("a.flac", 44100, 2), ("a.ogg", 48000, 1), ("a.mp3", 44100, 2),
    ("a.wav", 8000, 1),
])  # fmt: skip
def test_a_recording_of_any_kind_is_read(tmp_path: Path, name: str, rate: int, channels: int) -> None:
    tone = sine(440, 1.0, rate)
    soundfile.write(tmp_path / name, np.stack([tone] * channels, axis=1), rate)

    found = read_recording(str(tmp_path / name))

    assert found.dtype == np.float32
    assert len(found) == pytest.approx(RATE, abs=0.08 * RATE)
    spectrum = np.abs(np.fft.rfft(found[3000:11000]))
    assert np.argmax(spectrum) * RATE / 8000 == pytest.approx(440, abs=3)


@pytest.mark.parametrize(("content", "says"), [(None, "no such file"), (b"", "empty"), (b"not sound at all", "no WAV")])
def test_what_is_no_recording_is_one_clear_line(tmp_path: Path, content: bytes | None, says: str) -> None:
    path = tmp_path / "x.wav"
    if content is not None:
        path.write_bytes(content)

    with pytest.raises(HearingProblem, match=says) as problem:
        read_recording(str(path))

    assert "\n" not in str(problem.value)


@pytest.mark.parametrize("name", ["a.wav", "a.flac", "a.ogg", "a.mp3"])
@pytest.mark.parametrize("share", [0.3, 0.5, 0.9])
def test_a_recording_that_is_cut_off_is_not_half_heard(tmp_path: Path, name: str, share: float) -> None:
    whole, path = tmp_path / name, tmp_path / f"cut-{name}"
    soundfile.write(whole, 0.1 * np.random.default_rng(1).standard_normal(3 * RATE), RATE)
    content = whole.read_bytes()
    path.write_bytes(content[: int(share * len(content))])

    with pytest.raises(HearingProblem, match="cannot read"):
        read_recording(str(path))
    assert len(read_recording(str(whole)))


def test_samples_that_are_no_numbers_count_as_silence() -> None:
    found = heard(np.array([[np.nan, np.inf], [0.5, 0.5]], dtype=np.float32), RATE)

    assert found.tolist() == [0.0, 0.5]


def test_the_spectrum_agrees_with_scipys(rng: np.random.Generator) -> None:
    samples = (0.1 * rng.standard_normal(RATE)).astype(np.float32)

    found = log_mel(samples, seconds=1)

    _, _, theirs = stft(samples, RATE, "hann", 400, 240, boundary="even", padded=False, scaling="spectrum")
    power = np.abs(theirs * 200) ** 2  # scipy divides by the sum of the window
    assert found.shape == (BANDS, 100)
    levels = np.log10(np.maximum(_bands() @ power[:, :100], 1e-10))
    levels = (np.maximum(levels, levels.max() - 8) + 4) / 4
    assert found[:, 2:98] == pytest.approx(levels[:, 2:98], abs=0.01)


def test_a_pure_tone_is_in_its_own_band() -> None:
    bands = [int(np.argmax(log_mel(sine(hertz, 1.0, RATE), seconds=1)[:, 50])) for hertz in (200, 1000, 4000)]

    assert bands == sorted(bands)
    # The scale is linear below 1 kHz, 80 bands up to 8 kHz: centres at 3, 15, … mels.
    mels = [3.0, 15.0, 15 + np.log(4) / 0.06875177742094912]
    whole = 15 + np.log(8) / 0.06875177742094912
    assert bands == pytest.approx([m / whole * (BANDS + 1) - 1 for m in mels], abs=1)


@pytest.fixture
def rng() -> np.random.Generator:
    return np.random.default_rng(3)


# --- where speech is


@pytest.mark.parametrize("decibels", [None, 20, 10, 5])
def test_speech_is_bounded_clean_and_in_noise(judge: Judge, decibels: float | None) -> None:
    said = formant(SENTENCE)
    sound = padded(said) if decibels is None else mixed(said, decibels)

    spans = speech_in(sound, judge)

    assert len(spans) == 1
    assert spans[0].start < 0.6 * RATE
    assert spans[0].end > len(sound) - 1.6 * RATE


@pytest.mark.parametrize("noise", [car_noise, white_noise, music])
def test_noise_and_music_hold_no_speech(judge: Judge, noise: object) -> None:
    assert question_in((0.2 * noise(20 * RATE, 7)).astype(np.float32), judge) is None  # type: ignore[operator]


def test_silence_holds_no_speech(judge: Judge) -> None:
    assert question_in(np.zeros(3 * RATE, dtype=np.float32), judge) is None
    assert question_in(np.zeros(0, dtype=np.float32), judge) is None


def test_a_pause_inside_a_question_does_not_cut_it(judge: Judge) -> None:
    pause = np.zeros(int(1.2 * RATE), dtype=np.float32)
    sound = np.concatenate([padded(formant("the brakes are at two hundred")), pause, padded(formant("may i take off"))])

    found = question_in(sound, judge)

    assert found is not None
    assert len(found) > 3.5 * RATE


def test_a_knock_is_no_beginning() -> None:
    likes = iter([0.0, 0.9, 0.9, 0.0, 0.0, 0.0, 0.0, 0.0] * 10)
    pointer = Endpointer(lambda block: next(likes))

    assert [pointer.take(bytes(2 * BLOCK)) for _ in range(80)] == [None] * 80
    assert not pointer.speaking


def test_samples_go_to_a_card_and_back() -> None:
    samples = np.array([0.0, 0.5, -1.0, 0.25], dtype=np.float32)

    assert from_pcm(to_pcm(samples)) == pytest.approx(samples, abs=1e-4)


# --- what recognisers write


@pytest.mark.parametrize(("heard_as", "plain"), [
    ("What is V-L-E?", "What is V L E?"),
    ("at 1-8-0 knots", "at 180 knots"),
    ("at 1, 8, 0 knots", "at 180 knots"),
    ("brakes are at 195, 200, is that all right?", "brakes are at 195, 200 is that all right?"),
    ("After losing hydraulics, one can I still. Go", "After losing hydraulics one can I still Go"),
    ("the free-fall lever", "the free fall lever"),
    ("a 90-degree turn", "a 90 degree turn"),
    ("Um, what is VLO?", "what is VLO?"),
    ("R.T.O. setting", "R T O setting"),
    ("the 120-L", "the 120 L"),
    ("affirm, affirm, affirm, aff", "affirm"),
    ("affirm, affirm,", "affirm"),
    ("Can I turn? Can I turn?", "Can I turn?"),
    ("3.5 degrees", "3.5 degrees"),
    ("at 400 and 20 degrees", "at 420 degrees"), ("a 90th degree turn", "a 90 degree turn"),
    ("between 200 and 50 knots", "between 200 and 50 knots"),
    ("the distance is 30 hundred metres", "the distance is 1300 metres"),
    ("16 hundred and 50 metres", "1650 metres"), ("1,200 hundred", "1,200 hundred"),
    ("How on until the brakes are cool?", "how long until the brakes are cool?"),
    ("how on earth do I stop", "how on earth do I stop"),
])  # fmt: skip
def test_what_was_heard_in_plain_writing(heard_as: str, plain: str) -> None:
    assert plainly(heard_as) == plain


def test_a_text_said_once_stays() -> None:
    assert once("the left and the right brake") == "the left and the right brake"


@pytest.mark.parametrize(("text", "round_"), [
    ("48 tonnes 40 8 tonnes 40 8 tonnes 40 8 tonnes", True), ("no it is no it is no it is not", True),
    ("one one one knots", False), ("system one lost and system two lost", False), ("", False),
])  # fmt: skip
def test_a_recogniser_that_goes_round_has_lost_its_way(text: str, round_: bool) -> None:
    assert goes_round(text) is round_


@pytest.mark.parametrize(("written", "figures"), [
    ("1, 5, not.", "15"), ("1-5 knots.", "15"), ("1.5 knots", "15"), ("5 0. 5 0.", "50"), ("Five zero not.", "50"),
    ("One-eight knots.", "18"), ("no, five zero knots", "50"), ("one two eight three", "1283"), ("15 knots.", ""),
    ("fifteen", ""), ("system one", ""), ("what is it at one five and a half then", ""),
])  # fmt: skip
def test_a_number_said_figure_by_figure_is_told_from_any_other(written: str, figures: str) -> None:
    assert figures_told(written) == figures
