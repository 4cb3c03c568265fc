"""A prompt with a bound on what is taken into its line: a paste must not fill the memory, hold everything up or end it.
Its line is broken between words.

The line is drawn anew with every key and kept many times over, so it is bounded before the editor sees it. What looks
like the report of a mouse is dropped: none is asked for, and coloured text that is pasted looks like one cut short.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import TYPE_CHECKING, Any

from assistant.terminal.screen import Screen

if TYPE_CHECKING:
    from prompt_toolkit import PromptSession
    from prompt_toolkit.input import Input
    from prompt_toolkit.key_binding import KeyPress
    from prompt_toolkit.output import Output

LONGEST_TYPED = 4000
"""Characters of a line at a prompt; longer than any question that is read, so that it is still told to be too long."""
_MOUSE = ("<vt100-mouse-event>", "<windows-mouse-event>")
"""Keys that stand for the report of a mouse."""


def bare_prompt(screen: Screen, source: Input | None, sink: Output | None) -> PromptSession[str]:
    """Return a bounded prompt at which a line can be edited; nothing of it is kept, and nothing is suggested."""
    from prompt_toolkit import PromptSession
    from prompt_toolkit.history import DummyHistory
    from prompt_toolkit.output import ColorDepth

    depth = None if screen.color else ColorDepth.DEPTH_1_BIT
    prompt: PromptSession[str] = PromptSession(history=DummyHistory(), color_depth=depth, input=source, output=sink)
    fit(prompt)
    return prompt


def fit(prompt: PromptSession[str]) -> None:
    """Let a prompt take no more than a line may have, and break what it takes between words."""
    from assistant.terminal.word_ends import break_at_words

    bound(prompt)
    break_at_words(prompt)


def bound(prompt: PromptSession[str]) -> None:
    """Let a prompt take no more characters than a line may have; what goes beyond is dropped as it comes."""
    source: Any = prompt.app.input
    read: Callable[[], list[KeyPress]] = source.read_keys
    source.read_keys = lambda: list(_fitting(read(), LONGEST_TYPED - len(prompt.default_buffer.text)))


def _fitting(keys: Iterable[KeyPress], room: int) -> Iterator[KeyPress]:
    """Yield the keys without the characters for which a line has no room; Enter begins a new line."""
    for press in keys:
        name = str(getattr(press.key, "value", press.key))
        if name in _MOUSE:
            continue
        if name == "<bracketed-paste>":
            press = type(press)(press.key, press.data[: max(room, 0)])
            room -= len(press.data)
        elif len(name) == 1:
            room -= 1
            if room < 0:
                continue
        elif name in ("c-m", "c-j", "c-c"):
            room = LONGEST_TYPED
        yield press
