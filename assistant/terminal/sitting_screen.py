"""The lines of a sitting on a screen: wrapped to its width, with colour only where order and words say it already."""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.conversation.opening import Knowledge
from assistant.practice.sitting_marks import ASKED, CITED, HEAD, MARK, Line
from assistant.rendering.text import wrap
from assistant.terminal.screen import Screen
from assistant.terminal.screens import CAUTION

_NUMBERED = re.compile(r"(?:-|\d{1,2}\.) ")
"""What begins a line of a list: what goes on below it stands under its words."""
_BOLD, _DIM, _RESET = "\x1b[1m", "\x1b[2m", "\x1b[0m"
_STYLES = {ASKED: _BOLD, MARK: _BOLD, HEAD: _DIM, CITED: _DIM}


def show(lines: Iterable[Line], screen: Screen) -> None:
    """Write lines; a heading with a blank line before it."""
    for line in lines:
        if line.kind == HEAD:
            screen.say("")
        numbered = _NUMBERED.match(line.text)
        hanging = " " * len(numbered[0]) if numbered else "  " if line.kind == CITED else ""
        for part in wrap(line.text, screen.width, hanging):
            style = _STYLES.get(line.kind, "") if screen.color else ""
            screen.say(f"{style}{part}{_RESET if style else ''}")


def say(text: str, screen: Screen) -> None:
    """Write a text of any length."""
    show([Line(text)], screen)


def opening(knowledge: Knowledge, title: str, screen: Screen) -> None:
    """Write what a sitting begins with: who and what, the documents loaded, the caution once."""
    info = knowledge.base.type_info
    say(f"{title}: {knowledge.type_name}. Loaded: {knowledge.loaded_line}.", screen)
    say(f"{info.caution or 'Training only.'} {CAUTION}", screen)
