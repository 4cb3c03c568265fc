"""Saying things aloud while everything else goes on: one thread that makes and plays, and stops when it is told to."""

from __future__ import annotations

import queue
import threading
from collections.abc import Callable, Sequence

from assistant.voice.speaking.phrases import Phrase, phrases
from assistant.voice.speaking.player import Player
from assistant.voice.speaking.problem import VoiceProblem
from assistant.voice.speaking.settings import VoiceSettings
from assistant.voice.speaking.sounds import Sound, silence
from assistant.voice.speaking.synthesis import Synthesiser


class Aloud:
    """Says texts aloud: a new one takes the place of the one being said. It is a `Speaker` of `assistant.voice.sound`.

    tell: takes the one line of what keeps it from speaking; the same line is told once, until something was said.
    """

    def __init__(
        self,
        synthesiser: Synthesiser,
        player: Player,
        tell: Callable[[str], None],
        settings: VoiceSettings | None = None,
    ) -> None:
        self.settings = settings or VoiceSettings()
        self._synthesiser = synthesiser
        self._player = player
        self._tell = tell
        self._told = ""
        self._turn = 0
        self._lock = threading.Lock()
        self._waiting: queue.SimpleQueue[tuple[int, tuple[Phrase, ...]] | None] = queue.SimpleQueue()
        self._idle = threading.Event()
        self._idle.set()
        self._thread: threading.Thread | None = None

    def say(self, text: str) -> None:
        """Begin to say a spoken text in place of whatever is being said, and return at once."""
        self.say_phrases(phrases(text))

    def say_phrases(self, said: Sequence[Phrase]) -> None:
        """Begin to say phrases in place of whatever is being said, and return at once."""
        self.stop()
        if not said:
            return
        with self._lock:
            self._idle.clear()
            self._waiting.put((self._turn, tuple(said)))
            if self._thread is None:
                self._thread = threading.Thread(target=self._run, name="speaking", daemon=True)
                self._thread.start()

    def stop(self) -> None:
        """Fall silent at once; nothing happens when nothing is being said."""
        with self._lock:
            self._turn += 1
        try:
            self._player.stop()
        except VoiceProblem:
            return

    def wait(self, timeout_s: float | None = None) -> bool:
        """Return once all is said or stopped, or the time is over; whether all is said."""
        return self._idle.wait(timeout_s)

    @property
    def speaking(self) -> bool:
        """Whether something is being said."""
        return not self._idle.is_set()

    def close(self) -> None:
        """Fall silent, and end what makes and plays the sound."""
        self.stop()
        self._waiting.put(None)
        self._player.close()
        self._synthesiser.close()
        if self._thread is not None:
            self._thread.join(timeout=2)
            self._thread = None

    def _run(self) -> None:
        while (waiting := self._waiting.get()) is not None:
            turn, said = waiting
            if turn == self._turn:
                self._say(turn, said)
            with self._lock:
                if self._waiting.empty():
                    self._idle.set()
        self._idle.set()

    def _say(self, turn: int, said: Sequence[Phrase]) -> None:
        try:
            for number, phrase in enumerate(said, 1):
                sound = self._synthesiser.synthesise(phrase.text, self.settings)
                pause_s = phrase.pause_s if number < len(said) else 0.0  # whoever waits may speak now
                if not self._played(turn, sound, pause_s):
                    return
            self._told = ""
            self._player.wait()
        except VoiceProblem as problem:
            self._say_problem(turn, str(problem))

    def _played(self, turn: int, sound: Sound, pause_s: float) -> bool:
        """Whether the turn still holds; then its sound is on the way to be heard.

        The lock is not held meanwhile, since a card may take long and `stop` must not wait for it.
        """
        if turn != self._turn:
            return False
        self._player.play(Sound(sound.samples + silence(pause_s, sound.rate).samples, sound.rate))
        if turn != self._turn:
            self._player.stop()
        return turn == self._turn

    def _say_problem(self, turn: int, problem: str) -> None:
        if turn == self._turn and problem != self._told:
            self._told = problem
            self._tell(problem)
