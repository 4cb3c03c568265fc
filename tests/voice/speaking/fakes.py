"""A voice and a sound card that remember what they were given."""

import threading
from array import array

from assistant.voice.speaking.problem import VoiceProblem
from assistant.voice.speaking.settings import VoiceSettings
from assistant.voice.speaking.sounds import Sound

RATE = 100


class FakeSynthesiser:
    """Makes a sample a letter. `hold` keeps it from answering until it is set; `problem` is what it says instead."""

    def __init__(self, problem: str = "") -> None:
        self.said: list[str] = []
        self.settings: list[VoiceSettings] = []
        self.problem = problem
        self.hold: threading.Event | None = None
        self.closed = False

    def synthesise(self, text: str, settings: VoiceSettings) -> Sound:
        if self.hold is not None:
            self.hold.wait(10)
        if self.problem:
            raise VoiceProblem(self.problem)
        self.said.append(text)
        self.settings.append(settings)
        return Sound(array("h", [1000] * len(text)), RATE)

    def close(self) -> None:
        self.closed = True


class FakePlayer:
    """Plays at once, or, while `sounding` is set, until it is stopped."""

    def __init__(self, problem: str = "") -> None:
        self.played: list[Sound] = []
        self.stops = 0
        self.problem = problem
        self.sounds_on = False
        self._silent = threading.Event()

    def play(self, sound: Sound) -> None:
        if self.problem:
            raise VoiceProblem(self.problem)
        self.played.append(sound)
        if self.sounds_on:
            self._silent.clear()

    def stop(self) -> None:
        self.stops += 1
        self._silent.set()

    def wait(self) -> None:
        if self.sounds_on:
            self._silent.wait(10)

    def close(self) -> None:
        self._silent.set()
