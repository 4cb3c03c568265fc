"""Listening for one utterance: what a question by ear, a spoken answer and a control word all begin with.

Time is counted in blocks of sound, not by a clock, so that a fake microphone runs an hour in a moment.
"""

from __future__ import annotations

from collections.abc import Callable

from assistant.frozen import NamedTuple
from assistant.voice.hearing.endpoint import Endpointer
from assistant.voice.sound import BLOCK_S, Microphone, Speaker

_INTERRUPTS_S = 0.25
"""Speech that stops what is being said: longer than a cough."""

Pressed = Callable[[], bool]
"""Whether the key to talk was pressed since this was last asked."""


class Utterance(NamedTuple):
    """What was heard in one go: 16-bit samples, and whether it began while something was being said."""

    pcm: bytes
    over_speech: bool = False


class Closed(Exception):
    """The microphone gives no more."""


class Listener:
    """Waits for utterances at a microphone, and falls silent when it is spoken to.

    pressed: the key to talk, where one is used: then nothing is heard but what follows a press. ready: called whenever
    what was being said has come to its end, and it is the other's turn.
    """

    def __init__(
        self,
        microphone: Microphone,
        speaker: Speaker,
        endpointer: Endpointer,
        pressed: Pressed | None = None,
        ready: Callable[[], None] = lambda: None,
    ) -> None:
        self.waits_its_turn = False
        """Whether nothing is heard while something is being said: where a microphone hears the loudspeaker."""
        self.pausing: Callable[[bytes], None] = lambda said: None
        """Called with what was said so far, whenever it may be all, and with nothing once it goes on after that."""
        self._microphone = microphone
        self._speaker = speaker
        self._endpointer = endpointer
        self._pressed = pressed
        self._ready = ready
        self._held = False
        self._talked = 0.0
        self._over = False
        self._paused = False

    def utterance(self, patience_s: float | None) -> Utterance | None:
        """Return the next utterance; None once nobody has spoken for a time, what is being said not counted.

        patience_s: None waits as long as it takes. Raises Closed when the microphone gives no more.
        """
        self._endpointer.finish()
        self._held, self._talked, self._over, self._paused = False, 0.0, False, False
        quiet, spoke = 0.0, self._speaker.speaking
        while patience_s is None or quiet < patience_s:
            block = self._microphone.read()
            if block is None:
                raise Closed
            ended = self._heard(block)
            if ended:
                return Utterance(ended, self._over)
            speaks = self._speaker.speaking
            if spoke and not speaks and not self._endpointer.speaking:
                self._ready()
            spoke = speaks
            if not speaks and not self._endpointer.speaking:
                quiet += BLOCK_S
        return None

    def _heard(self, block: bytes) -> bytes | None:
        """Take a block; return the utterance that ends with it."""
        if self._pressed is not None:
            if self._pressed():
                return self._switched()
            if not self._held:
                return None
        if self.waits_its_turn and self._speaker.speaking:
            self._endpointer.finish()
            return None
        ended = self._endpointer.take(block)
        self._tell_of_pauses()
        self._talked = self._talked + BLOCK_S if self._endpointer.speaking else 0.0
        if self._endpointer.speaking and self._speaker.speaking:
            self._over = True
            if self._talked >= _INTERRUPTS_S:
                self._speaker.stop()
        return ended

    def _tell_of_pauses(self) -> None:
        if self._endpointer.pausing:
            self._paused = True
            self.pausing(self._endpointer.so_far)
        elif self._paused and self._endpointer.voiced:
            self._paused = False
            self.pausing(b"")

    def _switched(self) -> bytes | None:
        """Begin to hear at a press of the key, or end what is being heard."""
        self._speaker.stop()
        self._held = not self._held
        return self._endpointer.finish()
