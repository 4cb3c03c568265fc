"""The voice before a class: questions and names said aloud while the text goes on; what silences it is told once."""

from __future__ import annotations

from assistant.terminal.screen import Screen
from assistant.terminal.session import Session
from assistant.terminal.sitting_screen import say
from assistant.terminal.speaking import kept_voice, make_aloud
from assistant.voice.sound import Speaker
from assistant.voice.speaking.settings import VoiceSettings


class ClassVoice:
    """Says texts aloud. speaker: what makes the sound, by default the voice of this machine. settings: as last left."""

    def __init__(
        self, session: Session, screen: Screen, speaker: Speaker | None = None, settings: VoiceSettings | None = None
    ) -> None:
        self._session = session
        self._screen = screen
        self._problems: list[str] = []
        self._settings = settings or kept_voice()
        self._own = None if speaker is not None else make_aloud(session, self._settings, self._problems.append)[0]
        self._speaker: Speaker | None = speaker if speaker is not None else self._own

    def say(self, text: str) -> None:
        """Begin to say a written text; once the voice has failed, nothing more is tried."""
        self._tell()
        if self._speaker is not None:
            from assistant.voice.speaking.phrases import said_aloud

            self._speaker.say(said_aloud(text, self._session.knowledge, self._settings))

    def stop(self) -> None:
        """Fall silent at once."""
        if self._speaker is not None:
            self._speaker.stop()

    def wait(self, timeout_s: float | None = None) -> bool:
        """Return once all is said or stopped, True; or False once a time is over."""
        return self._speaker is None or self._speaker.wait(timeout_s)

    def close(self) -> None:
        """Fall silent, and end what makes the sound."""
        self._tell()
        if self._own is not None:
            self._own.close()

    def _tell(self) -> None:
        if self._problems:
            say(f"The voice is off: {self._problems[0]}.", self._screen)
            self._problems.clear()
            self._speaker = None
