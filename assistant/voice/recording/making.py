"""From a script to a file: each part is made once and kept beside the file until that is whole.

An interruption costs no more than the part at hand, since parts are found again by what they say and how.
"""

from __future__ import annotations

import os
import wave
from collections.abc import Callable, Iterator, Sequence
from hashlib import blake2b
from typing import TYPE_CHECKING

from assistant.frozen import NamedTuple
from assistant.voice.recording.formats import FileFormat, format_of
from assistant.voice.recording.levelling import CEILING_DB, TARGET_LUFS, faded, levelled, resampled, trimmed
from assistant.voice.recording.loudness import Meter, true_peak_db
from assistant.voice.recording.script import Part, Script
from assistant.voice.recording.tags import Chapter, Labels, Origin, write_tags
from assistant.voice.speaking.phrases import phrases
from assistant.voice.speaking.problem import VoiceProblem
from assistant.voice.speaking.settings import VoiceSettings
from assistant.voice.speaking.sounds import Sound
from assistant.voice.speaking.synthesis import Synthesiser

if TYPE_CHECKING:
    from assistant.voice.recording.loudness import Samples

PEAK_DB = -1.1
"""True peak, in dBTP, that a finished file keeps below once its encoder has done what it does."""
_PARTS = ".parts"
_LEAD_S = 0.4
"""Seconds of silence before the first word: players cut into the beginning."""
_CLOSE_LU = 0.2
_ROUNDS = 3
_BITS = 32767.0

Progress = Callable[[float], None]
"""Takes the share that is done, 0 to 1."""


class Made(NamedTuple):
    """A finished file: its length in s, its loudness in LUFS and true peak in dBTP, and its chapters."""

    seconds: float
    loudness: float
    peak_db: float
    chapters: tuple[Chapter, ...]


def make_file(
    script: Script,
    path: str,
    synthesiser: Synthesiser,
    settings: VoiceSettings,
    labels: Labels,
    origin: Origin,
    progress: Progress,
) -> Made:
    """Write a script as a file of the kind that its name asks for. Raises VoiceProblem and OSError.

    The file appears when it is whole; until then its parts lie in a folder beside it.
    """
    chosen = format_of(path)
    assert chosen is not None
    folder = path + _PARTS
    os.makedirs(folder, exist_ok=True)
    places = []
    done = 0.0
    for part in script.parts:
        places.append(_made_part(part, folder, chosen.rate, synthesiser, settings))
        done += len(part.text)
        progress(0.9 * done / sum(len(each.text) for each in script.parts))
    made = _assembled(script.parts, places, path, chosen, labels, origin, progress)
    _remove(folder)
    return made


def _made_part(part: Part, folder: str, rate: int, synthesiser: Synthesiser, settings: VoiceSettings) -> str:
    """The file of a part's sound, made now or before."""
    key = repr((part.text, settings._replace(digits=False), rate, TARGET_LUFS, CEILING_DB))
    path = os.path.join(folder, f"{blake2b(key.encode(), digest_size=12).hexdigest()}.wav")
    if not os.path.isfile(path):
        _write_part(path, levelled(_said(part.text, rate, synthesiser, settings), rate), rate)
    return path


def _said(text: str, rate: int, synthesiser: Synthesiser, settings: VoiceSettings) -> Samples:
    """A part's phrases with the pauses between them."""
    import numpy as np

    pieces: list[Samples] = []
    for phrase in phrases(text):
        sound = synthesiser.synthesise(phrase.text, settings)
        pieces.append(faded(resampled(trimmed(_samples(sound), sound.rate), sound.rate, rate), rate))
        pieces.append(np.zeros(round(phrase.pause_s * rate)))
    return np.concatenate(pieces[:-1]) if pieces else np.zeros(0)


def _samples(sound: Sound) -> Samples:
    import numpy as np

    return np.array(sound.samples, dtype=np.float64) / _BITS


def _write_part(path: str, samples: Samples, rate: int) -> None:
    import numpy as np

    beside = f"{path}.{os.getpid()}"
    whole = np.round(np.clip(samples, -1, 1) * _BITS).astype("<i2")
    with wave.open(beside, "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(rate)
        file.writeframes(whole.tobytes())
    os.replace(beside, path)


def _read_part(path: str) -> Samples:
    import numpy as np

    with wave.open(path, "rb") as file:
        return np.frombuffer(file.readframes(file.getnframes()), dtype="<i2").astype(np.float64) / _BITS


def _assembled(
    parts: Sequence[Part],
    places: Sequence[str],
    path: str,
    chosen: FileFormat,
    labels: Labels,
    origin: Origin,
    progress: Progress,
) -> Made:
    """Write all parts into one file, and measure what its encoder made of them; a little gain sets that right."""
    beside = f"{path}.{os.getpid()}"
    gain_db = 0.0
    try:
        for turn in range(_ROUNDS):
            chapters = _written(parts, places, beside, chosen, gain_db)
            seconds, loudness, peak = _measured(beside)
            progress(min(0.99, 0.95 + 0.02 * turn))
            wanted = min(TARGET_LUFS - loudness, PEAK_DB - peak)
            if (abs(TARGET_LUFS - loudness) <= _CLOSE_LU and peak <= PEAK_DB) or abs(wanted) < 0.02:
                break
            gain_db += wanted
        chapters[-1] = chapters[-1]._replace(end_s=seconds)
        write_tags(beside, labels, origin, chapters, path)
        os.replace(beside, path)
    finally:
        if os.path.exists(beside):
            os.remove(beside)
    progress(1.0)
    return Made(seconds, loudness, peak, tuple(chapters))


def _written(
    parts: Sequence[Part], places: Sequence[str], path: str, chosen: FileFormat, gain_db: float
) -> list[Chapter]:
    import numpy as np
    import soundfile

    starts: list[tuple[int, str]] = []
    at = 0
    try:
        with soundfile.SoundFile(
            path, "w", chosen.rate, 1, subtype=chosen.subtype, format=chosen.container
        ) as file:
            for part, samples in _pieces(parts, places, chosen.rate):
                if part is not None and part.chapter:
                    starts.append((at, part.chapter))
                file.write(np.clip(samples * 10 ** (gain_db / 20), -1, 1))
                at += len(samples)
    except soundfile.LibsndfileError as error:
        raise VoiceProblem(f"the sound could not be written: {error.error_string}") from None
    ends = [start for start, _ in starts[1:]] + [at]
    return [
        Chapter(start / chosen.rate, end / chosen.rate, title) for (start, title), end in zip(starts, ends, strict=True)
    ]


def _pieces(parts: Sequence[Part], places: Sequence[str], rate: int) -> Iterator[tuple[Part | None, Samples]]:
    """Yield the sound of each part with what is to be heard after it: nothing."""
    import numpy as np

    yield None, np.zeros(round(_LEAD_S * rate))
    for part, place in zip(parts, places, strict=True):
        yield part, np.concatenate([_read_part(place), np.zeros(round(part.pause_s * rate))])


def _measured(path: str) -> tuple[float, float, float]:
    """Seconds, loudness in LUFS and true peak in dBTP of a file as a player decodes it."""
    import numpy as np
    import soundfile

    meter, peak = None, -np.inf
    with soundfile.SoundFile(path) as file:
        meter = Meter(file.samplerate)
        for block in file.blocks(file.samplerate * 30, dtype="float64"):
            meter.add(block)
            peak = max(peak, true_peak_db(block))
        return file.frames / file.samplerate, meter.loudness(), float(peak)


def _remove(folder: str) -> None:
    """Remove the parts of a finished file, and nothing else that somebody put there."""
    for name in os.listdir(folder):
        if name.endswith(".wav") or ".wav." in name:
            os.remove(os.path.join(folder, name))
    try:
        os.rmdir(folder)
    except OSError:
        return
