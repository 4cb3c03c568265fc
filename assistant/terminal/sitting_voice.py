"""The lines of a sitting as they are said: without what only the eye needs, and told as said, not typed."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Protocol

from assistant.answering.parts import upper
from assistant.conversation.opening import Knowledge
from assistant.practice.sitting_marks import ASKED, CITED, HEAD, Line
from assistant.practice.sitting_state import State
from assistant.rendering.text import clean
from assistant.terminal.class_voice import ClassVoice
from assistant.terminal.keys import until_key
from assistant.voice.speaking.phrases import said_aloud
from assistant.voice.speaking.settings import VoiceSettings

_UNSAID = (HEAD, CITED)
_OPTION = r"[;:,]?[^;:.,]*(?<!\w)--[^;.]*(?=[;.]|$)"
"""A remark that names an option of the command line."""
_STEP = r"\d{1,2}\. "
_TYPED = (("is typed", "is said"), ("was typed", "was said"), ("be typed", "be said"), ("you typed", "you said"),
          ("Type ", "Say "), ("type ", "say "), ("before Enter", "before the next question"),
          ("“stop” or Ctrl-D", "“stop”"))  # fmt: skip


class LineVoice(Protocol):
    """Says lines of a sitting, beside the screen that shows them."""

    def say(self, lines: Iterable[Line], state: State) -> None:
        """Begin to say lines; state: where the sitting stands once they are told."""
        ...

    def stop(self) -> None:
        """Fall silent at once."""
        ...


class TypedVoice:
    """Says what is asked and marked while the answers are typed."""

    def __init__(self, voice: ClassVoice) -> None:
        self._voice = voice
        self._told: list[str] = []

    def say(self, lines: Iterable[Line], state: State) -> None:
        """Begin to say lines, after those that were told since the last answer."""
        if text := written(lines):
            self._told.append(text)
            self._voice.say(" ".join(self._told))

    def stop(self) -> None:
        """Fall silent at once."""
        self._told.clear()
        self._voice.stop()

    def finish(self) -> None:
        """Wait until all is said, or a key is pressed."""
        until_key(self._voice.wait)
        self._voice.stop()


def written(lines: Iterable[Line]) -> str:
    """Return lines as one text, before its words and numbers are said."""
    return " ".join(_texts(lines))


def lines_said(lines: Iterable[Line], knowledge: Knowledge, settings: VoiceSettings) -> str:
    """Return lines as they are said with these settings, each by itself: what one tells is no part of the next."""
    return " ".join(upper(said_aloud(clean(text), knowledge, settings)) for text in _texts(lines))


def _texts(lines: Iterable[Line]) -> list[str]:
    """Return what is told in lines: a list of what to read again is for the eye, and so is what leads to it."""
    told: list[str] = []
    for line in lines:
        if line.text.startswith("- "):
            told = told[:-1] if told and told[-1].endswith(":") else told
        elif re.match(_STEP, line.text) and told:
            told[-1] = f"{told[-1].rstrip('.')}{'' if told[-1].endswith(':') else ';'} {line.text}"
        elif line.kind not in _UNSAID:
            told.append(_told(line))
    return [text for text in told if text]


def _told(line: Line) -> str:
    if line.kind == ASKED:
        return line.text
    text = re.sub(_OPTION, "", line.text).strip() if "--" in line.text else line.text
    for typed, spoken in _TYPED:
        text = text.replace(typed, spoken)
    return text if not text or text[-1] in ".?!:" else f"{text}."
