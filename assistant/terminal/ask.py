"""`ask`: one question, or every line of a file, answered as text or JSON."""

from __future__ import annotations

import sys
from typing import BinaryIO

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer
from assistant.rendering.text import answer_text
from assistant.terminal.input_lines import LONGEST_LINE, lines_of, open_named
from assistant.terminal.options import Parsed
from assistant.terminal.screen import Screen, complain, prepare, screen_for
from assistant.terminal.session import Session, open_session

EXIT_CODES = {ANSWER: 0, CLARIFY: 3, DECLINE: 4}
NOT_TEXT = "This line is not text in UTF-8."
CUT = "…"
"""Ends a question that was too long to be kept whole."""
NOTHING_ASKED = "There is no question on this line."


def ask(parsed: Parsed) -> int:
    """Answer what the command line asks; return the exit code. Raises UsageProblem and BrokenKnowledge."""
    prepare(sys.stdout, parsed.has("--json"))
    screen = screen_for(parsed, sys.stdout)
    if not parsed.has("--batch"):
        return _ask_one(parsed, screen)
    with open_named(parsed.values["--batch"]) as file:
        return _ask_all(file, parsed, screen)


def _ask_one(parsed: Parsed, screen: Screen) -> int:
    session = open_session(parsed, disputes=True)
    if parsed.words == ("-",):
        raw = sys.stdin.buffer.read(LONGEST_LINE)
        answer = _answer_raw(raw, session)
    else:
        answer = session.answer(" ".join(parsed.words))
    shown = _ssml(answer, session, parsed) if parsed.has("--ssml") else _shown(answer, parsed, screen, deference=True)
    screen.say(shown)
    if parsed.has("--speak"):
        speak(answer, session, parsed)
    return EXIT_CODES[answer.outcome]


def speak(answer: Answer, session: Session, parsed: Parsed) -> None:
    """Say an answer, until it is said or a key is pressed; what keeps it from being said is one line."""
    from assistant.terminal.keys import until_key
    from assistant.terminal.speaking import chosen_voice, make_aloud
    from assistant.voice.speaking.phrases import answer_phrases

    aloud, _ = make_aloud(session, chosen_voice(parsed), complain)
    try:
        aloud.say_phrases(answer_phrases(answer, session.knowledge, aloud.settings))
        until_key(aloud.wait)
    finally:
        aloud.close()


def _ssml(answer: Answer, session: Session, parsed: Parsed) -> str:
    from assistant.terminal.speaking import chosen_voice
    from assistant.voice.speaking.phrases import answer_phrases
    from assistant.voice.speaking.ssml import ssml

    settings, knowledge = chosen_voice(parsed, kept=False), session.knowledge
    return ssml(answer_phrases(answer, knowledge, settings), settings, knowledge.base.phonemes)


def _ask_all(file: BinaryIO, parsed: Parsed, screen: Screen) -> int:
    """Answer each line as it comes. Every line gets an answer, but a blank one that starts afresh."""
    follows, json = parsed.has("--conversation"), parsed.has("--json")
    session = open_session(parsed, disputes=follows)
    for raw in lines_of(file):
        if not follows or not raw.strip():
            session.start_afresh()
        if follows and not raw.strip():
            continue
        answer = _answer_raw(raw, session)
        screen.say(_shown(answer, parsed, screen) + ("" if json else "\n"))
    if not json:
        screen.say(session.knowledge.deference)
    return 0


def _answer_raw(raw: bytes, session: Session) -> Answer:
    """Answer the bytes of a question; what cannot be read, or is nothing, is declined."""
    cut = len(raw) >= LONGEST_LINE
    try:
        text = raw.decode("utf-8", "replace" if cut else "strict").strip()
    except UnicodeDecodeError:
        return session.unanswered(raw.decode("utf-8", "replace"), NOT_TEXT)
    answer = session.answer(text) if text else session.unanswered("", NOTHING_ASKED)
    return answer._replace(question=f"{text}{CUT}") if cut else answer


def _shown(answer: Answer, parsed: Parsed, screen: Screen, deference: bool = False) -> str:
    if parsed.has("--json"):
        from assistant.rendering.json_lines import answer_json

        return answer_json(answer)
    text = answer_text(answer, screen.width, screen.color, deference)
    if not parsed.has("--explain"):
        return text
    from assistant.rendering.explain import explain_text

    return f"{text}\n\n{explain_text(answer)}"
