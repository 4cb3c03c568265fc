"""Where an instructor's lines come from: a prompt at which a single key counts without Enter, or lines of a pipe.

A key counts at once only when nothing follows it for a moment, so that words that begin with it can be typed.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Protocol

from assistant.terminal.input_lines import PromptedLines
from assistant.terminal.long_paste import bare_prompt
from assistant.terminal.screen import Screen

if TYPE_CHECKING:
    from prompt_toolkit.input import Input
    from prompt_toolkit.output import Output

_ALONE_S = 0.45
"""Seconds after which a key that nothing follows was meant by itself."""


class Lines(Protocol):
    """Asks for a line. Raises EOFError at the end of the input and KeyboardInterrupt on Ctrl-C."""

    def ask(self, prompt: str, at_once: str = "", within_s: float = 0.0) -> str:
        """Return a line. at_once: keys that count without Enter. within_s: seconds after which it is "" by itself."""


class KeyedLines:
    """A prompt of the terminal, at which a line can be edited and one key alone counts at once."""

    def __init__(self, screen: Screen, source: Input | None = None, sink: Output | None = None) -> None:
        self._at_once = ""
        self._waiting: list[Any] = []
        self._session = bare_prompt(screen, source, sink)
        self._session.default_buffer.on_text_changed += lambda _: self._changed()

    def ask(self, prompt: str, at_once: str = "", within_s: float = 0.0) -> str:
        """Return a line; raises EOFError and KeyboardInterrupt."""
        self._at_once = at_once
        begin = (lambda: self._later(within_s, "")) if within_s else None
        try:
            return " ".join(self._session.prompt(prompt, pre_run=begin).split())
        finally:
            self._stop_waiting()

    def _changed(self) -> None:
        """Wait whether a key stays alone; time to think is over once anything is typed."""
        self._stop_waiting()
        text = self._session.default_buffer.text
        if len(text) == 1 and text.lower() in self._at_once:
            self._later(_ALONE_S, text)

    def _later(self, seconds: float, text: str) -> None:
        from asyncio import get_running_loop

        self._waiting.append(get_running_loop().call_later(seconds, self._give, text))

    def _give(self, text: str) -> None:
        app = self._session.app
        if app.is_running and self._session.default_buffer.text == text and not app.is_done:
            app.exit(result=text)

    def _stop_waiting(self) -> None:
        for each in self._waiting:
            each.cancel()
        self._waiting.clear()


class PipedLines:
    """Lines of the input, after a prompt each where somebody sits at it; every line ends with Enter."""

    def __init__(self, shows_prompt: bool) -> None:
        self._lines = PromptedLines(shows_prompt)

    def ask(self, prompt: str, at_once: str = "", within_s: float = 0.0) -> str:
        """Return a line; raises EOFError."""
        return self._lines.next(prompt)
