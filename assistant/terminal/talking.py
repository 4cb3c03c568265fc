"""Which form a conversation takes, and its plain form, line by line.

The plain form serves pipes, terminals that place no cursor and whoever asks for it. Editing a line,
completing names and recalling questions is `conversation`, which alone needs the library for it.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from types import ModuleType

from assistant.rendering.text import wrap
from assistant.terminal.ask import NOT_TEXT
from assistant.terminal.input_lines import lines_of
from assistant.terminal.options import Parsed
from assistant.terminal.screen import Screen, is_dumb, is_terminal, prepare, screen_for
from assistant.terminal.screens import FAREWELL, HOW_TO_LEAVE, PROMPT, opening, reply
from assistant.terminal.session import Session, open_session
from assistant.terminal.speaking import TerminalVoice, chosen_voice


def converse(parsed: Parsed) -> int:
    """Hold a conversation until it is ended; return 0. Raises UsageProblem and BrokenKnowledge."""
    by_hand = is_terminal(sys.stdin) and is_terminal(sys.stdout)
    session = open_session(parsed, disputes=True, keeps=by_hand)
    prepare(sys.stdout, json=False)
    screen = screen_for(parsed, sys.stdout)
    voice = TerminalVoice(session, settings=chosen_voice(parsed))
    try:
        if not by_hand:
            _turn_on(voice, screen, parsed)
            talk_plainly(session, screen, _typed(prompt=""), session.knowledge.deference, voice)
        elif parsed.has("--plain") or is_dumb():
            screen.say(opening(session.knowledge, session.variant, screen.width))
            _turn_on(voice, screen, parsed)
            talk_plainly(session, screen, _typed(PROMPT), FAREWELL, voice)
        else:
            _talk_with_editing(session, screen, parsed, voice)
    finally:
        voice.close()
    return 0


def _turn_on(voice: TerminalVoice, screen: Screen, parsed: Parsed) -> None:
    if parsed.has("--speak"):
        screen.say("\n".join(wrap(voice.turn_on(), screen.width)) + "\n")


def _talk_with_editing(session: Session, screen: Screen, parsed: Parsed, voice: TerminalVoice) -> None:
    editing = _editing()
    screen.say(opening(session.knowledge, session.variant, screen.width))
    _turn_on(voice, screen, parsed)
    editing.talk(session, screen, "" if parsed.has("--no-history") else editing.history_path(), voice=voice)


def _editing() -> ModuleType:
    """Return the module of the prompt, imported as on a system without encryption.

    Its library needs asyncio, which brings encryption along where there is any: a megabyte that nothing here uses.
    """
    hides = sys.modules.setdefault("ssl", None) is None  # type: ignore[arg-type]
    try:
        from assistant.terminal import conversation
    finally:
        if hides:
            del sys.modules["ssl"]
    return conversation


def talk_plainly(
    session: Session, screen: Screen, lines: Iterator[bytes], closing: str, voice: TerminalVoice | None = None
) -> None:
    """Answer lines as they come, until one ends the conversation or there are no more."""
    for raw in lines:
        try:
            text = raw.decode("utf-8").strip()
        except UnicodeDecodeError:
            screen.say(NOT_TEXT + "\n")
            continue
        if not text:
            continue
        said = reply(text, session, screen, voice)
        if said is None:
            break
        screen.say(said + "\n")
    screen.say("\n".join(wrap(closing, screen.width)))


def _typed(prompt: str) -> Iterator[bytes]:
    """Lines of the input, after a prompt each where somebody sits at it; Ctrl-C says how to leave."""
    lines = lines_of(sys.stdin.buffer)
    while True:
        if prompt:
            sys.stdout.write(prompt)
            sys.stdout.flush()
        try:
            line = next(lines, None)
        except KeyboardInterrupt:
            if not prompt:
                raise
            sys.stdout.write(f"\n{HOW_TO_LEAVE}\n")
            lines = lines_of(sys.stdin.buffer)
            continue
        if line is None:
            return
        yield line
