"""`ask --hear`: a recorded question answered, with what was heard and which recogniser ran."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator

from assistant.answering.answer import DECLINE, Answer
from assistant.answering.parts import upper
from assistant.rendering.text import answer_text, clean, wrap
from assistant.terminal.ask import EXIT_CODES
from assistant.terminal.input_lines import lines_of, open_named
from assistant.terminal.options import Parsed, UsageProblem
from assistant.terminal.screen import Screen, complain, prepare, screen_for
from assistant.terminal.session import Session, open_session
from assistant.voice.hearing.ear import Ear, Heard
from assistant.voice.hearing.endpoint import question_in, voice_judge
from assistant.voice.hearing.opening import open_ear
from assistant.voice.hearing.recognising import HearingProblem
from assistant.voice.hearing.samples import read_recording


def ask_heard(parsed: Parsed) -> int:
    """Answer a recording, or each that a file names; return the exit code. Raises UsageProblem, BrokenKnowledge."""
    prepare(sys.stdout, parsed.has("--json"))
    screen = screen_for(parsed, sys.stdout)
    session = open_session(parsed, disputes=not parsed.has("--batch") or parsed.has("--conversation"))
    try:
        ear, lacks = open_ear(session.knowledge)
        if lacks:
            complain(lacks)
        if parsed.has("--batch"):
            return _all(ear, session, parsed, screen)
        return _one(ear, session, parsed, screen)
    except HearingProblem as problem:
        raise UsageProblem(str(problem)) from None


def _one(ear: Ear, session: Session, parsed: Parsed, screen: Screen) -> int:
    heard = _heard(parsed.values["--hear"], ear, session)
    screen.say(_shown(heard, parsed, screen, deference=True))
    if parsed.has("--speak"):
        from assistant.terminal.ask import speak

        speak(heard.answer, session, parsed)
    return EXIT_CODES[heard.answer.outcome]


def _all(ear: Ear, session: Session, parsed: Parsed, screen: Screen) -> int:
    """Answer each recording that a file names, a line each; one that cannot be read is declined with the reason."""
    for path in _paths(parsed.values["--batch"] or parsed.values["--hear"]):
        if not parsed.has("--conversation") or not path:
            session.start_afresh()
        if not path and parsed.has("--conversation"):
            continue
        try:
            heard = _heard(path, ear, session)
        except HearingProblem as problem:
            heard = ear.nothing(session.context)
            told = f"{upper(str(problem))}."
            heard = heard._replace(answer=Answer("", DECLINE, told, told))
        screen.say(_shown(heard, parsed, screen) + ("" if parsed.has("--json") else "\n"))
    if not parsed.has("--json"):
        screen.say(session.knowledge.deference)
    return 0


def _paths(source: str) -> Iterator[str]:
    """Yield the recordings that a file names, one a line, from its own folder."""
    beside = "" if source == "-" else os.path.dirname(source)
    with open_named(source) as file:
        for line in lines_of(file):
            path = os.fsdecode(line.strip())
            near = os.path.join(beside, path)
            yield path if not path or os.path.exists(path) or not os.path.exists(near) else near


def _heard(path: str, ear: Ear, session: Session) -> Heard:
    if not path:
        raise HearingProblem("there is no recording on this line")
    question = question_in(read_recording(path), voice_judge())
    if question is None:
        return ear.nothing(session.context)
    heard = ear.hear(question, session.context)
    session.take(heard.after)
    return heard


def _shown(heard: Heard, parsed: Parsed, screen: Screen, deference: bool = False) -> str:
    if parsed.has("--json"):
        from assistant.rendering.json_lines import answer_json

        more = {
            "heard": heard.text, "confidence": heard.confidence, "recogniser": heard.recogniser,
            "hear_ms": heard.hear_ms,
        }  # fmt: skip
        return answer_json(heard.answer, more)
    text = answer_text(heard.answer, screen.width, screen.color, deference)
    if parsed.has("--explain"):
        from assistant.rendering.explain import explain_text

        text = f"{text}\n\n{explain_text(heard.answer)}"
    return "\n".join([*wrap(heard_line(heard), screen.width), "", text])


def heard_line(heard: Heard) -> str:
    """Return what was heard, by which recogniser, and how surely."""
    if heard.nothing:
        return f"Heard: nothing ({heard.recogniser})."
    return f'Heard: "{clean(heard.text)}" ({heard.recogniser}, {100 * heard.confidence:.0f}% sure).'
