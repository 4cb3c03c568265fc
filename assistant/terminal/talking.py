"""A conversation at the terminal: what its screens say, which words end it, and its plain form, line by line.

The plain form serves pipes, terminals that place no cursor and whoever asks for it; editing a line,
completing names and recalling questions is `conversation`, which alone needs the library for it.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator

from assistant.conversation.opening import Knowledge
from assistant.rendering.text import answer_text, wrap
from assistant.terminal.ask import NOT_TEXT, lines_of
from assistant.terminal.options import Parsed
from assistant.terminal.screen import Screen, is_dumb, is_terminal, prepare, screen_for
from assistant.terminal.session import Session, open_session

PROMPT = "Question: "
FAREWELL = "The conversation has ended."
HOW_TO_LEAVE = 'To end the conversation, type "stop" or press Ctrl-D.'
CAUTION = (
    "Not for use in flight or for operational decisions: the approved documents and licensed instructors "
    "prevail. Never read a screen while driving."
)
_ENDING = frozenset({"stop", "exit", "quit", "goodbye", "good bye", "bye"})


def converse(parsed: Parsed) -> int:
    """Hold a conversation until it is ended; return 0. Raises UsageProblem and BrokenKnowledge."""
    by_hand = is_terminal(sys.stdin) and is_terminal(sys.stdout)
    session = open_session(parsed, disputes=by_hand, keeps=by_hand)
    prepare(sys.stdout, json=False)
    screen = screen_for(parsed, sys.stdout)
    if not by_hand:
        talk_plainly(session, screen, _typed(prompt=""))
    elif parsed.has("--plain") or is_dumb():
        screen.say(opening(session.knowledge, session.variant, screen.width))
        talk_plainly(session, screen, _typed(PROMPT))
    else:
        _talk_with_editing(session, screen, parsed)
    return 0


def _talk_with_editing(session: Session, screen: Screen, parsed: Parsed) -> None:
    from assistant.terminal.conversation import history_path, talk

    screen.say(opening(session.knowledge, session.variant, screen.width))
    talk(session, screen, "" if parsed.has("--no-history") else history_path())


def talk_plainly(session: Session, screen: Screen, lines: Iterator[bytes]) -> None:
    """Answer lines as they come, until one ends the conversation or there are no more."""
    for raw in lines:
        try:
            text = raw.decode("utf-8").strip()
        except UnicodeDecodeError:
            screen.say(NOT_TEXT + "\n")
            continue
        if not text:
            continue
        said = reply(text, session, screen)
        if said is None:
            return
        screen.say(said + "\n")


def reply(text: str, session: Session, screen: Screen) -> str | None:
    """Return what is said to a line, or None when the line ends the conversation."""
    word = text.strip(" .!").lower()
    if word in _ENDING:
        return None
    if word == "help":
        return help_screen(session.knowledge, screen.width)
    return answer_text(session.answer(text), screen.width, screen.color)


def opening(knowledge: Knowledge, variant: str, width: int) -> str:
    """Return the first screen: what is loaded, the caution in full, questions that work."""
    info = knowledge.base.type_info
    lines = wrap(f"{knowledge.type_name}{_variants(knowledge, variant)}", width)
    lines += wrap(f"Loaded: {knowledge.loaded_line}.", width)
    lines += ["", *wrap(f"{info.caution or 'Training only.'} {CAUTION}", width), "", "Ask, for example:"]
    lines += [line for example in knowledge.examples[:3] for line in wrap(f"  {example}", width, "    ")]
    return "\n".join([*lines, *wrap('"help" tells what else can be said, and "stop" ends.', width), ""])


def help_screen(knowledge: Knowledge, width: int) -> str:
    """Return what can be asked and said, in a few lines."""
    lines = wrap("Ask in any words about the landing gear, brakes and nose-wheel steering:", width)
    lines += [line for example in knowledge.examples for line in wrap(f"  {example}", width, "    ")]
    sayings = [
        '"and at 60 kt?" or "with fans on" changes just that in the last question.',
        '"why" and "where does it say that" tell the reason and the paragraph; "say again" repeats.',
        '"correction", then what you meant, replaces; "disregard" drops the last question.',
        *_about_variants(knowledge),
        '"dispute" sets the last answer aside as doubtful, until you say "clear dispute".',
        'Tab completes a name. "stop" or Ctrl-D ends.',
    ]
    return "\n".join([*lines, *(line for saying in sayings for line in wrap(saying, width, "  "))])


def _variants(knowledge: Knowledge, variant: str) -> str:
    """The variants loaded and the one that questions are about: " (120, 120L); in use: 120"."""
    names = knowledge.variant_names
    if len(names) < 2:
        return ""
    used = knowledge.base.variants[variant].show if variant else names[0]
    return f"; variants {', '.join(names)}; in use: {used}"


def _about_variants(knowledge: Knowledge) -> list[str]:
    names = knowledge.variant_names
    if len(names) < 2:
        return []
    last = names[-1]
    return [
        f'Variants: {", ".join(names)}. "on the {last}" in a question asks of it; "{last}" alone keeps to it.'
    ]


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
