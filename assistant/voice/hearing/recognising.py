"""What a recogniser gives: several ways of reading the same sound, each with how sure it is."""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol

from assistant.frozen import NamedTuple

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy import float32
    from numpy.typing import NDArray

    Floats = NDArray[float32]


class Hypothesis(NamedTuple):
    """A text that the sound may be. score: mean natural logarithm of the probability of its parts; 0 is certain."""

    text: str
    score: float


class Recognised(NamedTuple):
    """What one recogniser made of a sound: the likeliest first, and how likely it is that nothing was said."""

    hypotheses: tuple[Hypothesis, ...]
    no_speech: float = 0.0


class Part(NamedTuple):
    """A piece of a text, by its place, with the probability that it was said after what is before it."""

    start: int
    end: int
    chance: float


class Judged(NamedTuple):
    """How well a text fits a sound: the natural logarithm of its probability, and that of each of its parts."""

    total: float
    parts: tuple[Part, ...]


class Recogniser(Protocol):
    """Turns sound into texts."""

    @property
    def name(self) -> str:
        """What it is called where it is told which recogniser ran."""
        ...

    def recognise(self, samples: Floats, expecting: str = "") -> Recognised:
        """Return what samples at 16 kHz may say; no hypothesis where nothing was made out.

        expecting: sentences like the one that is expected, for a second hearing of the same sound.
        """
        ...

    def judge(self, samples: Floats, texts: Sequence[str]) -> list[Judged]:
        """Return how well each of some texts fits the sound; none where this recogniser cannot tell."""
        ...


class HearingProblem(Exception):
    """Nothing can be heard on this machine as asked; the message is one line and says what to do."""
