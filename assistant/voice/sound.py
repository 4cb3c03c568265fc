"""What the voice needs of a machine's sound: a microphone, a speaker, short tones; and how samples are counted.

Nothing here opens a device. The edge hands in real ones, and tests hand in fakes, so that a conversation by ear is
a function of what is heard and said.
"""

from __future__ import annotations

from typing import Protocol

RATE = 16_000
"""Samples a second of everything that is heard: one channel, 16 bits, the sign in the high byte (little-endian)."""
BLOCK = 512
"""Samples of a block from a microphone: 32 ms."""
BLOCK_S = BLOCK / RATE


class Microphone(Protocol):
    """Where sound comes from, block after block."""

    def read(self) -> bytes | None:
        """Return the next block of BLOCK samples, waiting for it; None once there will be no more."""
        ...


class Speaker(Protocol):
    """What says a text aloud without keeping anybody waiting."""

    def say(self, text: str) -> None:
        """Begin to say a text in place of whatever is being said, and return at once."""
        ...

    def stop(self) -> None:
        """Fall silent at once; nothing happens when nothing is being said."""
        ...

    def wait(self, timeout_s: float | None = None) -> bool:
        """Return once all is said or stopped, True; or False once a time is over."""
        ...

    @property
    def speaking(self) -> bool:
        """Whether something is being said."""
        ...


class Tones(Protocol):
    """What gives the short tones that tell listening, thinking and not understood apart."""

    def sound(self, tone: str) -> None:
        """Give a tone by its name, one of those in `tones`, and return at once."""
        ...
