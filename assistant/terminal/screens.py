"""What the screens of a conversation say: the first one, the help, and the reply to each line."""

from __future__ import annotations

from assistant.conversation.control_words.controls import control
from assistant.conversation.opening import Knowledge
from assistant.rendering.text import answer_text, wrap
from assistant.terminal.screen import Screen
from assistant.terminal.session import Session
from assistant.terminal.speaking import TerminalVoice
from assistant.voice import control_words as words
from assistant.voice.control_words import control_word

PROMPT = "Question: "
FAREWELL = "The conversation has ended."
HOW_TO_LEAVE = 'To end the conversation, type "stop" or press Ctrl-D.'
CAUTION = (
    "Not for use in flight or for operational decisions: the approved documents and licensed instructors "
    "prevail. Never read a screen while driving."
)
REHEARSE = "A rehearsal is a command of its own: end this, and write downlock rehearse; with --hands-free, by ear."
_ENDING = frozenset({"stop", "exit", "quit", "goodbye", "good bye", "bye"})


def reply(text: str, session: Session, screen: Screen, voice: TerminalVoice | None = None) -> str | None:
    """Return what is said to a line, or None when the line ends the conversation. A voice says the answer aloud."""
    word = text.strip(" .!").lower()
    if word in _ENDING:
        return None
    if control(text) == "help":
        return help_screen(session.knowledge, screen.width)
    if control_word(text) == words.REHEARSE:
        return "\n".join(wrap(REHEARSE, screen.width))
    told = voice.told(text) if voice is not None else None
    if told is not None:
        return "\n".join(line for each in told.split("\n") for line in wrap(each, screen.width))
    answer = session.answer(text)
    shown = answer_text(answer, screen.width, screen.color)
    if voice is None:
        return shown
    voice.say(answer)
    return "\n".join([shown, *voice.problems()])


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
        '"voice on" says the answers aloud, "voice off" no longer; "slower", "digits" and "voices" change how.',
        '"dispute", with what speaks against it, sets the last answer aside as doubtful, until "clear dispute"; '
        '"disputes" lists them.',
        'Tab completes a name. "stop" or Ctrl-D ends.',
    ]
    return "\n".join([*lines, *(line for saying in sayings for line in wrap(saying, width, "  "))])


def _variants(knowledge: Knowledge, variant: str) -> str:
    """The variants loaded and the one that questions are about: " (A, B); in use: A"."""
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
