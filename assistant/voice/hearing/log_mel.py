"""The spectrum that a Whisper model hears: how loud each of 80 bands of pitch is, a hundred times a second.

Bands on the scale of Slaney's Auditory Toolbox (Interval Research technical report 1998-010), each of the same
area; powers as in the model's own preparation (OpenAI Whisper, `audio.py`, MIT): log10, no lower than 8 under the
loudest, then (x + 4) / 4.
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any

from assistant.voice.sound import RATE

if TYPE_CHECKING:
    from numpy import float32
    from numpy.typing import NDArray

    Floats = NDArray[float32]

WINDOW = 400
HOP = 160
BANDS = 80
WHOLE_S = 30
"""Seconds of sound that the model was trained to hear at a time."""
_LINEAR_HZ = 200 / 3
_BREAK_HZ = 1000.0
_STEP = 0.06875177742094912
"""Natural logarithm of 6.4, in 27 steps: the width of a band above the break."""


def log_mel(samples: Floats, seconds: float = WHOLE_S) -> Floats:
    """Return the spectrum of samples at 16 kHz, shape (80, 100 × seconds); silence is added or the end cut off."""
    import numpy as np

    wanted = int(seconds * RATE)
    sound = np.zeros(wanted, dtype=np.float32)
    sound[: min(wanted, len(samples))] = samples[:wanted]
    around = np.pad(sound, WINDOW // 2, mode="reflect")
    frames = np.lib.stride_tricks.sliding_window_view(around, WINDOW)[::HOP][: wanted // HOP]
    spectrum = np.fft.rfft(frames * _window(), axis=1)
    power = (spectrum.real**2 + spectrum.imag**2).astype(np.float32)
    levels = np.log10(np.maximum(_bands() @ power.T, 1e-10))
    levels = (np.maximum(levels, levels.max() - 8) + 4) / 4
    return np.ascontiguousarray(levels, dtype=np.float32)


@cache
def _window() -> Any:
    import numpy as np

    # Periodic: one longer than needed, without its last sample.
    return np.hanning(WINDOW + 1)[:-1].astype(np.float32)


@cache
def _bands() -> Any:
    """Weights of each frequency in each band, shape (80, 201)."""
    import numpy as np

    frequencies = np.linspace(0, RATE / 2, WINDOW // 2 + 1)
    edges = _hertz(np.linspace(0, _mel(RATE / 2), BANDS + 2))
    widths = np.diff(edges)
    slopes = edges[:, None] - frequencies[None, :]
    rising = -slopes[:-2] / widths[:-1, None]
    falling = slopes[2:] / widths[1:, None]
    triangles = np.maximum(0, np.minimum(rising, falling))
    return (triangles * (2 / (edges[2:] - edges[:-2]))[:, None]).astype(np.float32)


def _mel(hertz: float) -> float:
    from math import log

    return _BREAK_HZ / _LINEAR_HZ + log(hertz / _BREAK_HZ) / _STEP if hertz >= _BREAK_HZ else hertz / _LINEAR_HZ


def _hertz(mels: Any) -> Any:
    import numpy as np

    first = _BREAK_HZ / _LINEAR_HZ
    return np.where(mels < first, mels * _LINEAR_HZ, _BREAK_HZ * np.exp(_STEP * (np.maximum(mels, first) - first)))
