"""Sound that was made: 16-bit samples of one channel, as the synthesisers give it and the player takes it."""

from __future__ import annotations

import sys
from array import array

from assistant.frozen import NamedTuple
from assistant.voice.speaking.problem import VoiceProblem


class Sound(NamedTuple):
    """Samples, one channel of 16 bits, and how many make a second."""

    samples: array[int]
    rate: int

    @property
    def seconds(self) -> float:
        """How long it lasts, in s."""
        return len(self.samples) / self.rate


def silence(seconds: float, rate: int) -> Sound:
    """Return so many seconds of nothing."""
    return Sound(array("h", bytes(2 * max(0, round(seconds * rate)))), rate)


def sound_from_bytes(raw: bytes, rate: int) -> Sound:
    """Return the sound of little-endian samples."""
    samples = array("h", raw[: len(raw) // 2 * 2])
    if sys.byteorder == "big":
        samples.byteswap()
    return Sound(samples, rate)


def sound_bytes(sound: Sound) -> bytes:
    """Return the samples, little-endian."""
    samples = sound.samples
    if sys.byteorder == "big":
        samples = array("h", samples)
        samples.byteswap()
    return samples.tobytes()


def read_sound(path: str) -> Sound:
    """Return the sound of a file that an engine wrote. Raises VoiceProblem."""
    import wave

    try:
        with wave.open(path, "rb") as file:
            channels, width, rate, count = file.getparams()[:4]
            raw = file.readframes(count)
    except (OSError, EOFError, wave.Error):
        return _read_other(path)
    if width != 2:
        return _read_other(path)
    sound = sound_from_bytes(raw, rate)
    return sound if channels == 1 else Sound(sound.samples[::channels], rate)


def _read_other(path: str) -> Sound:
    """What is no 16-bit WAV (the voice of macOS writes AIFF) is read with the library for it."""
    try:
        import soundfile

        samples, rate = soundfile.read(path, dtype="int16", always_2d=True)
    except ImportError:
        raise VoiceProblem("the voice wrote a file that needs soundfile: install the extra voice") from None
    except (OSError, RuntimeError):
        raise VoiceProblem("the voice wrote a file that cannot be read") from None
    return sound_from_bytes(samples[:, 0].astype("<i2").tobytes(), int(rate))
