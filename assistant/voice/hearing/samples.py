"""Any recording as what recognisers hear: one channel of floats between -1 and 1, 16,000 a second."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from functools import cache
from math import gcd
from typing import TYPE_CHECKING, Any

from assistant.voice.hearing.cut_off import is_cut_off
from assistant.voice.hearing.recognising import HearingProblem
from assistant.voice.sound import RATE

if TYPE_CHECKING:
    from assistant.voice.hearing.recognising import Floats

MOST_S = 3600
"""Seconds of a recording that are read; what follows is left out."""
_CROSSINGS = 16
"""Zero crossings of the filter to either side: enough that nothing audible folds back."""
_BLOCK = 1 << 14
_CANCELLED = 0.1
"""Share of the loudest channel's level under which the mean of all is what they cancel one another out to."""


def read_recording(path: str) -> Floats:
    """Return a recording (WAV, FLAC, Ogg, MP3), of any rate and number of channels. Raises HearingProblem."""
    try:
        import soundfile
    except (ImportError, OSError) as error:
        raise HearingProblem(f"soundfile cannot be used ({error}): {HOW_TO_INSTALL}") from None
    try:
        with quietly(), soundfile.SoundFile(path) as file:
            samples = file.read(MOST_S * file.samplerate, dtype="float32", always_2d=True)
            rate = int(file.samplerate)
            is_cut = is_cut_off(path, min(int(file.frames), MOST_S * rate), len(samples))
    except (OSError, RuntimeError, TypeError) as error:
        raise HearingProblem(f"cannot read {path} as a recording: {_reason(path, error)}") from None
    if is_cut:
        raise HearingProblem(f"cannot read {path} as a recording: it is cut off before its end")
    return heard(samples, rate)


HOW_TO_INSTALL = "install what hearing needs with python3 scripts/start.py --with-voice"


def heard(samples: Any, rate: int) -> Floats:
    """Return samples, shape (count, channels), as one channel at 16 kHz; what is no number counts as silence."""
    import numpy as np

    whole = np.asarray(samples, dtype=np.float32)
    whole = np.nan_to_num(whole, nan=0.0, posinf=0.0, neginf=0.0)
    mono = _mixed(whole) if whole.ndim == 2 else whole
    return np.clip(resampled(mono, rate), -1, 1).astype(np.float32)


def _mixed(channels: Floats) -> Floats:
    """Return channels as one: their mean, or the loudest where they cancel one another out."""
    import numpy as np

    mean: Floats = channels.mean(axis=1)
    if not channels.size:
        return mean
    levels = np.sqrt(np.mean(np.square(channels, dtype=np.float64), axis=0))
    cancelled = np.sqrt(np.mean(np.square(mean, dtype=np.float64))) < _CANCELLED * levels.max()
    return channels[:, int(levels.argmax())] if cancelled else mean


@contextmanager
def quietly() -> Iterator[None]:
    """Keep off the screen what a library writes to the error stream past Python: the one line that counts is ours."""
    with ExitStack() as opened:
        try:
            nowhere = opened.enter_context(open(os.devnull, "wb"))
            kept = os.dup(2)
        except OSError:  # there is no error stream, or nowhere else to write to
            yield
            return
        try:
            sys.stderr.flush()
            os.dup2(nowhere.fileno(), 2)
            yield
        finally:
            os.dup2(kept, 2)
            os.close(kept)


def resampled(samples: Floats, rate: int) -> Floats:
    """Return samples of any rate at 16 kHz, through a windowed sinc that stops what would fold back."""
    import numpy as np

    if rate == RATE or not len(samples):
        return samples
    divisor = gcd(rate, RATE)
    up, down = RATE // divisor, rate // divisor
    filters = _filters(up, down)
    reach = filters.shape[1]
    padded = np.pad(samples, (reach // 2, reach))
    count = len(samples) * up // down
    result = np.empty(count, dtype=np.float32)
    for start in range(0, count, _BLOCK):
        places = np.arange(start, min(start + _BLOCK, count), dtype=np.int64) * down
        windows = padded[(places // up)[:, None] + np.arange(reach)]
        result[start : start + len(places)] = np.einsum("ij,ij->i", windows, filters[places % up])
    return result


@cache
def _filters(up: int, down: int) -> Any:
    """Weights of the samples around each place between two of them, shape (up, taps)."""
    import numpy as np

    narrow = min(1.0, up / down) * 0.95
    half = int(np.ceil(_CROSSINGS / narrow))
    taps = np.arange(-half, half + 1)
    apart = taps[None, :] - (np.arange(up) / up)[:, None]
    window = np.where(np.abs(apart) <= half, 0.5 + 0.5 * np.cos(np.pi * apart / (half + 1)), 0)
    weights = narrow * np.sinc(narrow * apart) * window
    return (weights / weights.sum(axis=1, keepdims=True)).astype(np.float32)


def _reason(path: str, error: Exception) -> str:
    if not os.path.exists(path):
        return "there is no such file"
    if os.path.isdir(path):
        return "it is a folder"
    if not os.access(path, os.R_OK):
        return "it may not be read"
    if not os.path.getsize(path):
        return "it is empty"
    return "it is no WAV, FLAC, Ogg or MP3 that can be read"


def to_pcm(samples: Floats) -> bytes:
    """Return samples as a microphone gives them: 16 bits, little-endian."""
    import numpy as np

    return (np.clip(samples, -1, 1) * 32767).astype("<i2").tobytes()


def from_pcm(pcm: bytes) -> Floats:
    """Return what a microphone gave as floats."""
    import numpy as np

    return np.frombuffer(pcm, dtype="<i2").astype(np.float32) / np.float32(32768)
