"""The prompt: a line that can be edited, completes names on Tab and recalls former questions.

The one module that imports the library for it, since its import costs more than many answers.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable
from functools import cached_property

from prompt_toolkit import PromptSession
from prompt_toolkit.auto_suggest import AutoSuggestFromHistory
from prompt_toolkit.completion import CompleteEvent, Completer, Completion
from prompt_toolkit.document import Document
from prompt_toolkit.history import FileHistory, History, InMemoryHistory
from prompt_toolkit.input import Input
from prompt_toolkit.key_binding import KeyBindings, KeyPressEvent
from prompt_toolkit.output import ColorDepth, Output
from prompt_toolkit.shortcuts import CompleteStyle

from assistant.rendering.text import clean
from assistant.terminal.long_paste import fit
from assistant.terminal.places import data_folder
from assistant.terminal.screen import Screen
from assistant.terminal.screens import FAREWELL, HOW_TO_LEAVE, PROMPT, reply
from assistant.terminal.session import Session
from assistant.terminal.speaking import TerminalVoice

_FILE = "questions"
_WRAPPED = 50
"""Characters of a line from which on it may be one that was broken where it became too wide."""
_MOST_WORDS = 5
"""Words before the cursor that may begin a name."""


class Names(Completer):
    """Completes the name that the last words before the cursor begin, however they are written."""

    def __init__(self, names: Callable[[], Iterable[str]]) -> None:
        self._gather = names

    def get_completions(self, document: Document, complete_event: CompleteEvent) -> Iterable[Completion]:
        """Yield the names that go on from the longest beginning of one."""
        before = document.text_before_cursor
        words = before.split(" ")
        for count in range(min(_MOST_WORDS, len(words)), 0, -1):
            begun = " ".join(words[-count:])
            found = [name for name in self._names if begun and name.lower().startswith(begun.lower())]
            if found:
                return [Completion(name, -len(begun)) for name in found]
        return []

    @cached_property
    def _names(self) -> tuple[str, ...]:
        return tuple(self._gather())  # not before the first Tab: most conversations need none


class PrivateHistory(FileHistory):
    """Former questions in a file that only its owner reads; a place that fails keeps none, quietly."""

    def __init__(self, path: str) -> None:
        os.makedirs(os.path.dirname(path), mode=0o700, exist_ok=True)
        os.close(os.open(path, os.O_RDWR | os.O_CREAT, 0o600))
        os.chmod(path, 0o600)
        super().__init__(path)

    def store_string(self, string: str) -> None:
        """Keep a question, without signs that a later screen would obey."""
        try:
            super().store_string(clean(string))
        except OSError:
            return


def talk(
    session: Session,
    screen: Screen,
    path: str,
    source: Input | None = None,
    sink: Output | None = None,
    voice: TerminalVoice | None = None,
) -> None:
    """Ask and answer until the conversation is ended. `path` is the file of former questions, or empty.

    A voice says the answers aloud, and is silent from the first key on.
    """
    prompt = _prompt(session, screen, path, source, sink)
    if voice is not None:
        prompt.app.key_processor.before_key_press += lambda _: voice.stop()
    waiting: list[str] = []
    while True:
        try:
            waiting = waiting or turns_in(prompt.prompt(PROMPT))
            said = reply(waiting.pop(0), session, screen, voice) if waiting else ""
        except KeyboardInterrupt:
            waiting = []
            screen.say(HOW_TO_LEAVE)
            continue
        except EOFError:
            said = None
        if said is None:
            screen.say(FAREWELL)
            return
        if said:
            screen.say(said + "\n")


def turns_in(text: str) -> list[str]:
    """Return the turns of what was entered at once: each line of a paste is one, but for a long one that goes on."""
    turns: list[str] = []
    open_end = False
    for line in (" ".join(each.split()) for each in text.splitlines()):
        if line and open_end:
            turns[-1] = f"{turns[-1]} {line}"
        elif line:
            turns.append(line)
        open_end = len(line) >= _WRAPPED and line[-1] not in ".?!;:"
    return turns


def history_path() -> str:
    """Return the file of former questions, in the folder of the user's own files."""
    return os.path.join(data_folder(), _FILE)


def _prompt(
    session: Session, screen: Screen, path: str, source: Input | None, sink: Output | None
) -> PromptSession[str]:
    # A suggestion differs from what is typed by its colour alone, so without colour there is none.
    prompt: PromptSession[str] = PromptSession(
        history=_history(path),
        completer=Names(session.knowledge.completions),
        complete_while_typing=False,
        complete_style=CompleteStyle.READLINE_LIKE,
        auto_suggest=AutoSuggestFromHistory() if screen.color else None,
        color_depth=None if screen.color else ColorDepth.DEPTH_1_BIT,
        key_bindings=_keys(),
        input=source,
        output=sink,
    )
    fit(prompt)
    return prompt


def _history(path: str) -> History:
    if not path:
        return InMemoryHistory()
    try:
        return PrivateHistory(path)
    except OSError:
        return InMemoryHistory()


def _keys() -> KeyBindings:
    keys = KeyBindings()

    @keys.add("c-c", eager=True)
    @keys.add("<sigint>", eager=True)
    def clear_or_tell(event: KeyPressEvent) -> None:
        """Clear what is typed; on an empty line let it be said how to leave."""
        buffer = event.current_buffer
        if buffer.text:
            buffer.reset()
        else:
            event.app.exit(exception=KeyboardInterrupt())

    return keys
