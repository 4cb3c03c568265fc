"""The voice at the terminal: what turns it on and changes it, and answers said aloud while the text goes on.

The light part, which knows the words, is imported with every conversation; what makes sound is imported when the
voice is first turned on.
"""

from __future__ import annotations

import os
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from assistant.answering.answer import Answer
from assistant.answering.parts import upper
from assistant.rendering.text import clean
from assistant.terminal.options import Parsed, UsageProblem
from assistant.terminal.places import data_folder, write_private
from assistant.terminal.screen import remark
from assistant.terminal.session import Session

if TYPE_CHECKING:
    from assistant.voice.speaking.aloud import Aloud
    from assistant.voice.speaking.settings import VoiceSettings
    from assistant.voice.speaking.synthesis import ChosenSynthesiser

_FILE = "voice.json"
_OFF = 'The voice is off; "voice on" turns it on.'
_HELP = (
    '"voice on" and "voice off"; "slower" and "faster", or "rate 120"; "voices", then "voice NAME", or "human voice"; '
    '"digits" and "whole numbers" say how numbers are said; '
    'what you set is kept for the next time, and "usual settings" undoes it.'
)
_UNDO = '"usual settings" said there undoes that, --usual-voice here.'
_MANNERS: dict[str, dict[str, Any]] = {
    "digits": {"digits": True}, "digits on": {"digits": True}, "digit by digit": {"digits": True},
    "whole numbers": {"digits": False}, "digits off": {"digits": False},
    "human": {"human": True}, "human on": {"human": True},
    "human off": {"human": False, "voice": ""}, "usual": {"human": False, "voice": ""},
}  # fmt: skip
"""How to speak, in the words that ask for it after "voice"."""
_ALONE = {
    **{said: said for said in ("digits", "digits on", "digits off", "digit by digit", "whole numbers")},
    **dict.fromkeys(("human voice", "human voice on", "more human voice"), "human"),
    **dict.fromkeys(("human voice off", "usual voice"), "usual"),
}  # fmt: skip
"""The same asked without that word before it."""
_PACES = {"slower": -1, "faster": 1}
_PATIENCE_S = 5.0
"""Seconds that turning the voice on waits for the first words, or for a problem; a later one is told with an answer."""
_MOST_WORDS = 5

Maker = Callable[[Session, "VoiceSettings", Callable[[str], None]], "tuple[Aloud, ChosenSynthesiser]"]


def kept_voice() -> VoiceSettings:
    """Return the voice's settings as they were last left."""
    from assistant.voice.speaking.settings import read_settings

    try:
        with open(_path(), encoding="utf-8") as file:
            return read_settings(file.read())
    except (OSError, UnicodeDecodeError):
        return read_settings("")


def chosen_voice(parsed: Parsed, kept: bool = True) -> VoiceSettings:
    """Return the settings as they were last left, with what options say instead. Raises UsageProblem.

    kept: whether what was last left counts at all; --usual-voice leaves it out.
    """
    from assistant.voice.speaking.settings import FASTEST, SLOWEST, VoiceSettings

    first = VoiceSettings()
    settings = kept_voice() if kept and not parsed.has("--usual-voice") else first
    if settings != first:
        remark(f"The voice is as it was last set in a conversation: {manner_told(settings)}. {_UNDO}", parsed.width)
    pace = parsed.values.get("--pace", "")
    if pace:
        if not (pace.isascii() and pace.isdecimal() and len(pace) < 6 and SLOWEST <= int(pace) <= FASTEST):
            raise UsageProblem(f"--pace takes a number from {SLOWEST} to {FASTEST}, not {clean(pace)}")
        settings = settings._replace(rate=int(pace))
    if "--voice" in parsed.values:
        settings = settings._replace(voice=parsed.values["--voice"], human=False)
    return settings._replace(
        human=settings.human or parsed.has("--human"), digits=settings.digits or parsed.has("--digits")
    )


def make_aloud(
    session: Session, settings: VoiceSettings, tell: Callable[[str], None]
) -> tuple[Aloud, ChosenSynthesiser]:
    """Return what says things aloud on this machine's sound card, and what makes its sound."""
    from assistant.voice.speaking.aloud import Aloud
    from assistant.voice.speaking.player import CardPlayer
    from assistant.voice.speaking.synthesis import ChosenSynthesiser

    synthesiser = ChosenSynthesiser(session.knowledge.base.respelt)
    return Aloud(synthesiser, CardPlayer(), tell, settings), synthesiser


class TerminalVoice:
    """The voice of one conversation: off until it is asked for. settings: by default as they were last left."""

    def __init__(self, session: Session, make: Maker = make_aloud, settings: VoiceSettings | None = None) -> None:
        self._session = session
        self._make = make
        self._settings = settings
        self._made: tuple[Aloud, ChosenSynthesiser] | None = None
        self._on = False
        self._problems: list[str] = []
        self._last: Answer | None = None

    def told(self, text: str) -> str | None:
        """Do what a line asks of the voice and return what is said to it; None when it asks nothing of the voice."""
        self.stop()
        words = text.strip(" .!?").lower().split()
        if not words or len(words) > _MOST_WORDS:
            return None
        if words[-1] in _PACES and words[:-1] in ([], ["speak"], ["voice"]):
            return self._paced(_PACES[words[-1]]) if self._on else _OFF
        if len(words) > 1 and words[-2] == "rate" and words[:-2] in ([], ["voice"]):
            return self._rated(words[-1])
        if manner := _ALONE.get(" ".join(words)):
            return self._voice(manner)
        if words in (["usual", "settings"], ["voice", "usual", "settings"]):
            return self._tried(self._ready()[0].settings._replace(**_first_settings()))
        if words == ["voices"]:
            return self._voices()
        return self._voice(" ".join(words[1:])) if words[0] == "voice" else None

    def say(self, answer: Answer) -> None:
        """Say an answer, when the voice is on; return at once."""
        self._last = answer
        if self._on and self._made is not None:
            from assistant.voice.speaking.phrases import answer_phrases

            aloud = self._made[0]
            aloud.say_phrases(answer_phrases(answer, self._session.knowledge, aloud.settings))

    def problems(self) -> list[str]:
        """Return what has kept the voice from speaking since this was last asked, and turn it off then."""
        found = [f"{upper(problem)}." for problem in self._problems]
        self._problems.clear()
        self._on = self._on and not found
        return found

    def stop(self) -> None:
        """Fall silent at once."""
        if self._made is not None:
            self._made[0].stop()

    def close(self) -> None:
        """Fall silent, and end the processes that speak."""
        if self._made is not None:
            self._made[0].close()
            self._made = None

    def turn_on(self) -> str:
        """Turn the voice on, say what is loaded with the caution, and return what is said to that."""
        from assistant.voice.speaking.phrases import phrases, said_aloud

        aloud, _ = self._ready()
        self._on = True
        knowledge = self._session.knowledge
        heard = phrases(said_aloud(knowledge.deference, knowledge, aloud.settings))
        aloud.say_phrases(heard[:1])
        if aloud.wait(_PATIENCE_S):
            problems = self.problems()
            if problems:
                return problems[0]
        aloud.say_phrases(heard[1:])
        return f"The voice is on. {_HELP}"

    def _ready(self) -> tuple[Aloud, ChosenSynthesiser]:
        if self._made is None:
            self._made = self._make(self._session, self._settings or kept_voice(), self._problems.append)
        return self._made

    def _voice(self, wanted: str) -> str | None:
        if wanted in ("on", "off"):
            return self.turn_on() if wanted == "on" else self._turn_off()
        if wanted == "":
            return f"The voice is {'on' if self._on else 'off'}. {_HELP}"
        settings = self._ready()[0].settings
        if wanted in _MANNERS:
            return self._tried(settings._replace(**_MANNERS[wanted]))
        if not self._on and len(wanted.split()) > 1:
            return None
        return self._tried(settings._replace(voice=wanted, human=False), is_name=True)

    def _turn_off(self) -> str:
        self._on = False
        self.close()
        return _OFF

    def _paced(self, steps: int) -> str:
        aloud, _ = self._ready()
        self._take(aloud.settings.faster(steps))
        return f"{aloud.settings.rate} words a minute."

    def _rated(self, wanted: str) -> str:
        from assistant.voice.speaking.settings import FASTEST, SLOWEST

        if not wanted.isdecimal() or not SLOWEST <= int(wanted) <= FASTEST:
            return f'The rate is in words a minute, from {SLOWEST} to {FASTEST}: "rate 120".'
        aloud, _ = self._ready()
        self._take(aloud.settings._replace(rate=int(wanted)))
        return f"{wanted} words a minute."

    def _tried(self, settings: VoiceSettings, is_name: bool = False) -> str | None:
        """Speak so from now on, if it can be done; a line that names no voice is a question, if it may be one."""
        from assistant.voice.speaking.problem import VoiceProblem

        try:
            self._ready()[1].synthesise("One.", settings)
        except VoiceProblem as problem:
            return None if is_name and " " in settings.voice else f"{upper(str(problem))}."
        self._take(settings)
        voice = "the more human voice" if settings.human else settings.voice or "the usual voice"
        return f"Now: {voice}, {'numbers digit by digit' if settings.digits else 'whole numbers'}."

    def _take(self, settings: VoiceSettings) -> None:
        """Keep settings, also for later conversations, and say the last answer again with them."""
        from assistant.voice.speaking.settings import settings_text

        self._ready()[0].settings = self._settings = settings
        write_private(_path(), settings_text(settings))
        if self._last is not None:
            self.say(self._last)

    def _voices(self) -> str:
        from assistant.voice.speaking.problem import VoiceProblem

        try:
            found = self._ready()[1].engine.voices()
        except VoiceProblem as problem:
            return f"{upper(str(problem))}."
        english = [each for each in found if any(lang.startswith("en") for lang in each.languages)] or found
        return "\n".join(_voice_line(each.id, each.name) for each in english)


def _first_settings() -> dict[str, Any]:
    from assistant.voice.speaking.settings import VoiceSettings

    return VoiceSettings()._asdict()


def manner_told(settings: VoiceSettings) -> str:
    """Return how it is spoken: "120 words a minute, numbers digit by digit"."""
    voice = "the more human voice" if settings.human else f"voice {settings.voice}" if settings.voice else ""
    digits = "numbers digit by digit" if settings.digits else ""
    return ", ".join(filter(None, (f"{settings.rate} words a minute", voice, digits)))


def _path() -> str:
    return os.path.join(data_folder(), _FILE)


def _voice_line(name: str, shown: str) -> str:
    """How a voice is chosen: by the end of its name, where that has parts."""
    return f'"voice {name.rpartition("/")[2]}": {shown}'
