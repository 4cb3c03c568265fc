"""Sound brought to one rate and one level, so that nobody reaches for the volume in traffic."""

from __future__ import annotations

from math import gcd
from typing import TYPE_CHECKING

from assistant.voice.recording.loudness import SILENCE_LUFS, integrated_loudness, oversampled

if TYPE_CHECKING:
    from assistant.voice.recording.loudness import Samples

TARGET_LUFS = -16.0
CEILING_DB = -3.0
"""True peak that levelled sound keeps below, in dBTP: encoders that drop what is not heard add up to a decibel."""
_LOOK_S = 0.005
"""Seconds over which the gain goes down before a peak, and up after it."""
_ROUNDS = 10
_PUSH = 1.6
"""How much more gain each round gives than seems missing, since the peaks held down take some of it."""
_CLOSE_LU = 0.05


def levelled(samples: Samples, rate: int) -> Samples:
    """Return the samples of one channel at the target loudness, peaks held below the ceiling."""
    loudness = integrated_loudness(samples, rate)
    if loudness < SILENCE_LUFS:
        return samples
    gain, out = 0.0, samples
    for turn in range(_ROUNDS):
        gain += (TARGET_LUFS - loudness) * (_PUSH if turn else 1.0)
        out = limited(samples * 10 ** (gain / 20), rate)
        loudness = integrated_loudness(out, rate)
        if abs(loudness - TARGET_LUFS) < _CLOSE_LU:
            break
    return out


def limited(samples: Samples, rate: int) -> Samples:
    """Return the samples with each true peak held below the ceiling, the gain changing smoothly around it."""
    import numpy as np

    ceiling = 10 ** (CEILING_DB / 20)
    peaks = np.abs(oversampled(samples)).max(axis=1)
    if peaks.max(initial=0.0) <= ceiling:
        return samples
    wanted = np.minimum(1.0, ceiling / np.maximum(peaks, ceiling))
    reach = max(1, round(_LOOK_S * rate))
    # the lowest gain of twice the reach on either side, then its mean over the reach, twice: never above what is wanted
    lowest = _lowest(np.pad(wanted, 2 * reach, constant_values=1.0), 4 * reach + 1)
    smooth = _mean(_mean(np.pad(lowest, 2 * reach, mode="edge"), 2 * reach + 1), 2 * reach + 1)
    return samples * smooth


def _lowest(values: Samples, size: int) -> Samples:
    """The least of each `size` values that follow one another."""
    import numpy as np

    covered = 1
    while covered < size:
        step = min(covered, size - covered)
        values = np.minimum(values[: len(values) - step], values[step:])
        covered += step
    return values


def _mean(values: Samples, size: int) -> Samples:
    """The mean of each `size` values that follow one another."""
    import numpy as np

    sums = np.concatenate([[0.0], np.cumsum(values)])
    means: Samples = (sums[size:] - sums[:-size]) / size
    return means


def resampled(samples: Samples, rate: int, wanted: int) -> Samples:
    """Return the samples of one channel at another rate, of what both rates can hold."""
    import numpy as np

    if rate == wanted or not len(samples):
        return samples
    common = gcd(rate, wanted)
    up, down = wanted // common, rate // common
    edge = 2 * down
    blocks = 1 << (-(-(len(samples) + 2 * edge) // down) - 1).bit_length()
    size, made = blocks * down, blocks * up
    spectrum = np.fft.rfft(np.concatenate([np.zeros(edge), samples]), size)
    kept = np.zeros(made // 2 + 1, dtype=complex)
    count = min(len(kept), len(spectrum))
    kept[:count] = spectrum[:count]
    dense = np.fft.irfft(kept, made) * (made / size)
    first = edge * up // down
    return dense[first : first + -(-len(samples) * up // down)]


def trimmed(samples: Samples, rate: int) -> Samples:
    """Return the samples without the silence at both ends, but for a little that keeps the first sound whole."""
    import numpy as np

    loud = np.flatnonzero(np.abs(samples) > 0.003)
    if not len(loud):
        return samples[:0]
    margin = round(0.03 * rate)
    return samples[max(0, loud[0] - margin) : loud[-1] + margin]


def faded(samples: Samples, rate: int) -> Samples:
    """Return the samples with ends that begin and stop without a click."""
    import numpy as np

    size = min(len(samples) // 2, round(0.005 * rate))
    if not size:
        return samples
    out = samples.copy()
    ramp = np.linspace(0, 1, size)
    out[:size] *= ramp
    out[-size:] *= ramp[::-1]
    return out
