"""Where the answers of a sitting come from: a line that can be edited, or lines of a pipe.

Time before the first key is measured only where somebody types at a prompt of their own.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import TYPE_CHECKING, Protocol

from assistant.terminal.input_lines import PromptedLines
from assistant.terminal.long_paste import bare_prompt
from assistant.terminal.screen import Screen

if TYPE_CHECKING:
    from prompt_toolkit.input import Input
    from prompt_toolkit.output import Output
_ROOMY = 60
"""Columns from which on an answer stands on the line of its prompt."""


class Asking(Protocol):
    """Asks for a line. Raises EOFError at the end of the input and KeyboardInterrupt on Ctrl-C."""

    def ask(self, prompt: str) -> tuple[str, float | None]:
        """Return a line and the seconds before its first key, if they were measured."""


class EditedLines:
    """A prompt at which a line can be edited; nothing of it is kept, and nothing is suggested."""

    def __init__(
        self,
        screen: Screen,
        source: Input | None = None,
        sink: Output | None = None,
        clock: Callable[[], float] = time.monotonic,
    ) -> None:
        self.on_key: Callable[[], None] = lambda: None
        """Called at the first key of a line."""
        self._screen = screen
        self._clock = clock
        self._first: float | None = None
        self._session = bare_prompt(screen, source, sink)
        self._session.app.key_processor.before_key_press += lambda _: self._pressed()

    def ask(self, prompt: str) -> tuple[str, float | None]:
        """Return a line and the seconds before its first key."""
        began, self._first = self._clock(), None
        text = self._session.prompt(self._laid_out(prompt))
        return " ".join(text.split()), (self._first or self._clock()) - began

    def _laid_out(self, prompt: str) -> str:
        """Return a prompt with the answer on a line of its own where there is little room beside it."""
        return prompt if self._screen.width >= _ROOMY else f"{prompt.rstrip()}\n"

    def _pressed(self) -> None:
        if self._first is None:
            self._first = self._clock()
            self.on_key()


class PlainLines:
    """Lines of the input, after a prompt each where somebody sits at it."""

    def __init__(self, shows_prompt: bool) -> None:
        self._lines = PromptedLines(shows_prompt)

    def ask(self, prompt: str) -> tuple[str, float | None]:
        """Return a line; the time before it says nothing."""
        return self._lines.next(prompt), None
