"""`rehearse --mark`: mark the answers of a file, a line of JSON for a line, without a learner at the keyboard."""

from __future__ import annotations

import json
import sys
from typing import Any, BinaryIO

from assistant.practice.marking.mark import NOTHING, UNMARKED, Mark, Marker
from assistant.rendering.json_lines import json_line
from assistant.rendering.text import clean
from assistant.terminal.ask import NOT_TEXT
from assistant.terminal.input_lines import lines_of, open_named
from assistant.terminal.options import REHEARSE, Parsed, UsageProblem
from assistant.terminal.screen import Screen, complain, prepare, screen_for
from assistant.terminal.session import open_session

LONGEST_LINE, LONGEST_ANSWER = 1 << 20, 5_000
"""Bytes of a line that are read, and characters of an answer that are marked: many minutes of speech."""
NO_QUESTION = "the question of this line is empty"
TOO_LONG = f"the answer of this line has more than {LONGEST_ANSWER:,} characters"
CUT = f"this line is longer than {LONGEST_LINE:,} bytes"
NOT_JSON = 'this line is no JSON object with a "question" and an "answer", both text'
UNKNOWN = "nothing loaded answers this question"
FAULT = "this answer met a fault in the program and is not marked"


def mark(parsed: Parsed) -> int:
    """Mark the file that --mark names; return the exit code. Raises UsageProblem and BrokenKnowledge."""
    if not parsed.has("--mark"):
        raise UsageProblem(f"say which answers to mark: {REHEARSE.usage}")
    prepare(sys.stdout, True)
    screen = screen_for(parsed, sys.stdout)
    with open_named(parsed.values["--mark"]) as file:
        return _mark_all(file, parsed, screen)


def _mark_all(file: BinaryIO, parsed: Parsed, screen: Screen) -> int:
    """Mark each line as it comes; every line gets one, a blank or unreadable one too."""
    marker = Marker(open_session(parsed, learnt=True).knowledge)
    for number, raw in enumerate(lines_of(file, LONGEST_LINE), 1):
        screen.say(json_line(_line(raw, number, marker)))
    return 0


def _line(raw: bytes, number: int, marker: Marker) -> dict[str, Any]:
    question, answer, problem = _read(raw)
    if problem:
        return _unmarked(problem)
    try:
        given = marker.mark(question, answer)
    except Exception as fault:  # a fault at one answer must not cost those after it
        complain(f"{type(fault).__name__} at line {number}: {' '.join(clean(question).split())[:200]}")
        return _unmarked(FAULT)
    return _unmarked(UNKNOWN) if given.mark == UNMARKED else _marked(given)


def _read(raw: bytes) -> tuple[str, str, str]:
    """Return the question and the answer of a line, or what keeps it from being read."""
    try:
        found = json.loads(raw.decode("utf-8"))
    except UnicodeDecodeError:
        return "", "", NOT_TEXT[:1].lower() + NOT_TEXT[1:].rstrip(".")
    except (ValueError, RecursionError):
        return "", "", CUT if len(raw) >= LONGEST_LINE else NOT_JSON
    question, answer = (found.get("question"), found.get("answer")) if isinstance(found, dict) else (None, None)
    if not isinstance(question, str) or not isinstance(answer, str):
        return "", "", NOT_JSON
    problem = TOO_LONG if len(answer) > LONGEST_ANSWER else "" if question.strip() else NO_QUESTION
    return question, answer, problem


def _marked(given: Mark) -> dict[str, Any]:
    return {
        "mark": given.mark,
        "share": given.share,
        "missing": given.missing,
        "wrong": given.wrong,
        "expected": given.expected,
        "sources": [source._asdict() for source in given.sources],
    }


def _unmarked(problem: str) -> dict[str, Any]:
    return {**_marked(NOTHING), "problem": problem}
