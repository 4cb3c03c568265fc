"""Short tones of our own: two rising for listening, one soft for thinking, two falling for not understood."""

from __future__ import annotations

from array import array
from math import pi, sin

LISTENING, THINKING, NOT_UNDERSTOOD, ENDED = "listening", "thinking", "not understood", "ended"
TONE_RATE = 22_050
_LOUDNESS = 0.22
_NOTES = {
    LISTENING: ((523.25, 0.07), (783.99, 0.09)),
    THINKING: ((392.0, 0.05),),
    NOT_UNDERSTOOD: ((440.0, 0.09), (0.0, 0.04), (293.66, 0.14)),
    ENDED: ((659.25, 0.08), (523.25, 0.08), (392.0, 0.12)),
}
"""Frequencies in Hz (0 for a rest) with how many seconds each lasts."""
_EDGE_S = 0.012


def tone(name: str) -> array[int]:
    """Return the samples of a tone, 16 bits, TONE_RATE a second."""
    samples = array("h")
    for hertz, seconds in _NOTES[name]:
        count = round(seconds * TONE_RATE)
        edge = round(_EDGE_S * TONE_RATE)
        for i in range(count):
            swell = min(1.0, i / edge, (count - i) / edge)
            samples.append(round(32767 * _LOUDNESS * swell * sin(2 * pi * hertz * i / TONE_RATE)))
    return samples
