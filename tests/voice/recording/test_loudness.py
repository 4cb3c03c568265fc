"""Loudness and true peak against the minimum requirements test signals of EBU Tech 3341, made as it describes them."""

from itertools import pairwise

import numpy as np
import pytest

from assistant.voice.recording.levelling import CEILING_DB, TARGET_LUFS, levelled, limited, resampled, trimmed
from assistant.voice.recording.loudness import Meter, integrated_loudness, true_peak_db

RATES = (48_000, 44_100, 22_050)


def tone(level_db: float, seconds: float, rate: int, frequency: float = 1000.0) -> np.ndarray:
    moments = np.arange(round(seconds * rate)) / rate
    return 10 ** (level_db / 20) * np.sin(2 * np.pi * frequency * moments)


def stereo(samples: np.ndarray) -> np.ndarray:
    return np.stack([samples, samples], axis=1)


PROGRAMMES = {
    "1": ([(-23, 20)], -23),
    "2": ([(-33, 20)], -33),
    "3": ([(-36, 10), (-23, 60), (-36, 10)], -23),
    "4": ([(-72, 10), (-36, 10), (-23, 60), (-36, 10), (-72, 10)], -23),
    "5": ([(-26, 20), (-20, 20.1), (-26, 20)], -23),
}


@pytest.mark.parametrize("case", PROGRAMMES)
@pytest.mark.parametrize("rate", RATES)
def test_programme_loudness(case: str, rate: int) -> None:
    parts, expected = PROGRAMMES[case]
    programme = np.concatenate([tone(level, seconds, rate) for level, seconds in parts])

    assert integrated_loudness(stereo(programme), rate) == pytest.approx(expected, abs=0.1)


def test_surround_weights_are_not_needed_one_channel_is_three_lu_less() -> None:
    one = tone(-20, 5, 48_000)

    assert integrated_loudness(stereo(one), 48_000) - integrated_loudness(one, 48_000) == pytest.approx(3.01, abs=0.01)


@pytest.mark.parametrize(
    ("frequency", "phase", "level", "expected"),
    [  # cases 15 to 19; the rate is 48 kHz
        (12_000, 0.0, 0.50, -6.0),
        (12_000, 45.0, 0.50, -6.0),
        (8_000, 60.0, 0.50, -6.0),
        (6_000, 67.5, 0.50, -6.0),
        (12_000, 45.0, 1.41, 3.0),
    ],
)
def test_true_peak(frequency: int, phase: float, level: float, expected: float) -> None:
    rate = 48_000
    samples = level * np.sin(2 * np.pi * frequency * np.arange(rate) / rate + np.radians(phase))
    samples[:100] *= np.linspace(0, 1, 100)
    samples[-100:] *= np.linspace(1, 0, 100)

    assert expected - 0.4 <= true_peak_db(samples) <= expected + 0.2


def test_pieces_measure_as_the_whole() -> None:
    rate = 44_100
    chance = np.random.default_rng(1)
    programme = chance.standard_normal(rate * 21) * np.abs(np.sin(np.arange(rate * 21) / rate)) * 0.1
    meter = Meter(rate)
    for start, end in pairwise([0, 1000, rate * 3, rate * 3 + 7, rate * 20, rate * 21]):
        meter.add(programme[start:end])

    assert meter.loudness() == pytest.approx(integrated_loudness(programme, rate), abs=1e-6)


def test_silence_has_no_loudness() -> None:
    assert integrated_loudness(np.zeros(48_000), 48_000) == -np.inf
    assert Meter(48_000).loudness() == -np.inf
    assert true_peak_db(np.zeros(100)) == -np.inf
    assert true_peak_db(np.zeros(0)) == -np.inf


@pytest.mark.parametrize("level", [-30, -20, -12, -3])
def test_levelled_speech_is_as_loud_as_wanted_without_its_peaks(level: float) -> None:
    rate = 22_050
    chance = np.random.default_rng(2)
    syllables = np.clip(np.sin(np.arange(4 * rate) / rate * 12), 0, 1) ** 2
    speech = chance.standard_normal(4 * rate) * syllables * 10 ** (level / 20) * 0.3
    speech[rate] = 0.99  # a click

    found = levelled(speech, rate)

    assert integrated_loudness(found, rate) == pytest.approx(TARGET_LUFS, abs=0.1)
    assert true_peak_db(found) <= CEILING_DB + 0.1


def test_what_is_not_too_loud_is_left_alone() -> None:
    quiet = tone(-10, 1, 48_000)

    assert limited(quiet, 48_000) is quiet
    assert levelled(np.zeros(5000), 48_000).max() == 0


@pytest.mark.parametrize(("rate", "wanted"), [(22_050, 48_000), (22_050, 44_100), (48_000, 22_050), (16_000, 44_100)])
def test_another_rate_is_the_same_sound(rate: int, wanted: int) -> None:
    edge = wanted // 10
    found = resampled(tone(-6, 2, rate), rate, wanted)

    assert len(found) == 2 * wanted
    np.testing.assert_allclose(found[edge:-edge], tone(-6, 2, wanted)[edge:-edge], atol=1e-4)


def test_ends_without_sound_are_cut() -> None:
    sound = np.concatenate([np.zeros(5000), tone(-20, 1, 22_050), np.zeros(9000)])

    assert 22_050 <= len(trimmed(sound, 22_050)) <= 22_050 * 1.07
    assert len(trimmed(np.zeros(100), 22_050)) == 0
