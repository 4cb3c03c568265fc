"""How loud a sound is: programme loudness (ITU-R BS.1770-5, EBU R 128) and true peak, in numpy alone.

The K-weighting is the standard's two filters, designed for the rate at hand from their analogue shape, and applied as
one finite impulse response by Fourier transform. Checked in the tests against the signals of EBU Tech 3341.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Samples = NDArray[np.floating[Any]]

SILENCE_LUFS = -70.0
"""The absolute gate: what is quieter counts as silence."""
_RELATIVE_LU = -10.0
_BLOCK_S, _STEP_S = 0.4, 0.1
_OFFSET = -0.691
_RESPONSE_S = 0.1
"""Seconds of the filter's response; what follows is below 1e-8 of it."""
_SHELF = (1681.9744509555319, 3.99984385397, 0.7071752369554193)
"""Frequency in Hz, gain in dB and quality of the shelf that stands for the head (BS.1770, stage 1)."""
_HIGH_PASS = (38.13547087613982, 0.5003270373253953)
"""Frequency in Hz and quality of the high pass (stage 2)."""
_OVERSAMPLED = 4
_REACH = 16
"""Samples on either side that the signal between two of them is reckoned from."""
_TRANSFORMED = 1 << 15
"""Samples of one Fourier transform."""


class Meter:
    """Gathers a programme of one channel piece by piece, so that a long one need not be in memory at once."""

    def __init__(self, rate: int) -> None:
        import numpy as np

        self._rate = rate
        self._history: Samples = np.zeros(0)
        """The samples before the next piece that the filter still remembers."""
        self._squares: Samples = np.zeros(0)
        """Weighted squares that the next block begins with."""
        self._energies: list[Samples] = []

    def add(self, samples: Samples) -> None:
        """Add the next piece of the programme."""
        import numpy as np

        known = len(self._history)
        joined = np.concatenate([self._history, samples])
        self._squares = np.concatenate([self._squares, k_weighted(joined, self._rate)[known:] ** 2])
        self._history = joined[-len(_response(self._rate)) :]
        if len(self._squares) >= round(_BLOCK_S * self._rate):
            self._energies.append(_block_means(self._squares, self._rate))
            self._squares = self._squares[len(self._energies[-1]) * round(_STEP_S * self._rate) :]

    def loudness(self) -> float:
        """Return the integrated loudness of all pieces, in LUFS."""
        import numpy as np

        if self._energies:
            return _gated(np.concatenate(self._energies))
        return _gated(_block_means(self._squares, self._rate)) if len(self._squares) else -np.inf


def integrated_loudness(samples: Samples, rate: int) -> float:
    """Return the integrated loudness in LUFS; minus infinity for silence.

    samples: of one channel, or (samples, channels) of front channels, full scale being 1.
    """
    return _gated(block_energies(samples[:, None] if samples.ndim == 1 else samples, rate))


def true_peak_db(samples: Samples) -> float:
    """Return the highest true peak of all channels in dBTP: that of the signal between its samples."""
    import numpy as np

    if not len(samples):
        return -np.inf
    peak = max(float(np.max(np.abs(oversampled(channel)), initial=0.0)) for channel in np.atleast_2d(samples.T))
    return 20 * float(np.log10(peak)) if peak > 0 else -np.inf


def oversampled(samples: Samples) -> Samples:
    """Return the signal of one channel at four times its rate, as (samples, 4): each sample and three after it."""
    import numpy as np

    columns = [samples, *(np.convolve(samples, phase, mode="same") for phase in _between())]
    return np.stack(columns, axis=1)


@lru_cache(maxsize=1)
def _between() -> tuple[Samples, ...]:
    """The filters that give the signal a quarter, half and three quarters of the way to the next sample."""
    import numpy as np

    places = np.arange(-_REACH, _REACH + 1)
    filters = []
    for part in range(1, _OVERSAMPLED):
        distance = places + part / _OVERSAMPLED
        window = np.cos(np.pi * distance / (2 * (_REACH + 1))) ** 2
        shape = np.sinc(distance) * window
        filters.append(shape / shape.sum())
    return tuple(filters)


def block_energies(samples: Samples, rate: int) -> Samples:
    """Return the weighted mean square of each block of 0.4 s, one beginning every 0.1 s, all channels together.

    What is shorter than a block is taken for one.
    """
    import numpy as np

    return _block_means(np.sum([k_weighted(channel, rate) ** 2 for channel in samples.T], axis=0), rate)


def _block_means(squares: Samples, rate: int) -> Samples:
    """The mean of each whole block of weighted squares."""
    import numpy as np

    size, step = round(_BLOCK_S * rate), round(_STEP_S * rate)
    sums = np.concatenate([[0.0], np.cumsum(squares)])
    if len(sums) <= size:
        return np.array([sums[-1] / max(1, len(sums) - 1)])
    starts = np.arange(0, len(sums) - size, step)
    means: Samples = (sums[starts + size] - sums[starts]) / size
    return means


def k_weighted(samples: Samples, rate: int) -> Samples:
    """Return the samples of one channel as the standard weighs them."""
    import numpy as np

    response = _response(rate)
    size = max(_TRANSFORMED, 1 << (2 * len(response)).bit_length())
    step = size - len(response) + 1
    transformed = np.fft.rfft(response, size)
    out = np.zeros(len(samples) + len(response) - 1)
    for start in range(0, len(samples), step):
        piece = samples[start : start + step]
        filtered = np.fft.irfft(np.fft.rfft(piece, size) * transformed, size)
        end = min(len(out), start + size)
        out[start:end] += filtered[: end - start]
    return out[: len(samples)]


def _gated(energies: Samples) -> float:
    import numpy as np

    loud = energies[energies > _energy(SILENCE_LUFS)]
    if not len(loud):
        return -np.inf
    gate = 10 ** (_RELATIVE_LU / 10) * loud.mean()
    return float(_OFFSET + 10 * np.log10(loud[loud > gate].mean()))


def _energy(loudness: float) -> float:
    return float(10 ** ((loudness - _OFFSET) / 10))


@lru_cache(maxsize=4)
def _response(rate: int) -> Samples:
    """The impulse response of both filters at a rate."""
    import numpy as np

    impulse = np.zeros(round(_RESPONSE_S * rate))
    impulse[0] = 1.0
    return _filtered(_filtered(impulse, *_shelf(rate)), *_high_pass(rate))


def _filtered(samples: Samples, forward: tuple[float, ...], back: tuple[float, ...]) -> Samples:
    """The samples through a filter of second order, the first coefficient of `back` being 1."""
    import numpy as np

    out = []
    x1 = x2 = y1 = y2 = 0.0
    for x in samples.tolist():
        y = forward[0] * x + forward[1] * x1 + forward[2] * x2 - back[1] * y1 - back[2] * y2
        x1, x2, y1, y2 = x, x1, y, y1
        out.append(y)
    return np.array(out)


def _shelf(rate: int) -> tuple[tuple[float, ...], tuple[float, ...]]:
    from math import pi, tan

    frequency, gain, quality = _SHELF
    k, high = tan(pi * frequency / rate), 10 ** (gain / 20)
    middle = high**0.4996667741545416
    first = 1 + k / quality + k * k
    forward = (high + middle * k / quality + k * k, 2 * (k * k - high), high - middle * k / quality + k * k)
    back = (1.0, 2 * (k * k - 1) / first, (1 - k / quality + k * k) / first)
    return tuple(each / first for each in forward), back


def _high_pass(rate: int) -> tuple[tuple[float, ...], tuple[float, ...]]:
    from math import pi, tan

    frequency, quality = _HIGH_PASS
    k = tan(pi * frequency / rate)
    first = 1 + k / quality + k * k
    return (1.0, -2.0, 1.0), (1.0, 2 * (k * k - 1) / first, (1 - k / quality + k * k) / first)
