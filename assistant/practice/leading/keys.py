"""What an instructor may type: one key each, or the words of radiotelephony as they are spoken."""

from __future__ import annotations

import re

from assistant.frozen import NamedTuple
from assistant.practice.leading.standing import ANSWERING, BETWEEN, BREAK, THINKING
from assistant.practice.recall import MISSED, PARTLY, RIGHT, WRONG
from assistant.practice.sitting_words import (
    AGAIN,
    DISREGARD,
    GO,
    HELP,
    HINT,
    PASS,
    STANDBY,
    STOP,
    UNABLE,
    WHY,
    control_of,
    plain,
)

ENTER, MARK, ANSWER, KEY, NEXT, UNDO, SAY, PAUSE, DROP, END, ON, REASON, HINTED, TELL = (
    "enter", "mark", "answer", "key", "next", "undo", "say", "pause", "drop", "end", "on", "reason", "hint", "tell",
)  # fmt: skip
FORGET, CORRECT, HANDS, ADD, AWAY, BACK, MORE, LISTEN, CLASS, SAID = (
    "forget", "correct", "hands", "add", "away", "back", "more", "listen", "class", "said",
)  # fmt: skip
"""What is asked for; SAID is a text that steers nothing: an answer."""

KEYS = {
    "r": MARK, "p": MARK, "w": MARK, "m": MARK, "a": ANSWER, "h": HINTED, "k": KEY, "n": NEXT, "u": UNDO, "s": SAY,
    "b": PAUSE, "d": DROP, "e": END, "g": ON, "y": REASON, "l": LISTEN, "c": CLASS, "?": TELL, "": ENTER,
}  # fmt: skip
"""Single keys."""
MARKS = {"r": RIGHT, "p": PARTLY, "w": WRONG, "m": MISSED}
_WORDS = {
    AGAIN: SAY, STANDBY: PAUSE, UNABLE: NEXT, PASS: NEXT, HINT: HINTED, HELP: TELL, STOP: END, WHY: REASON, GO: ENTER,
    DISREGARD: FORGET,
}  # fmt: skip
_NAMED = {
    "undo": UNDO, "key": KEY, "reveal": KEY, "drop": DROP, "withdraw": DROP, "and then": ON, "more": MORE,
    "show the class": CLASS, "name": ENTER, "listen": LISTEN, "next person": NEXT, "pass it on": NEXT, "break": PAUSE,
}  # fmt: skip
_MARK_WORDS = {
    "right": RIGHT, "correct": RIGHT, "partly": PARTLY, "partly right": PARTLY, "half right": PARTLY, "wrong": WRONG,
    "incorrect": WRONG, "missed": MISSED,
}  # fmt: skip
"""Marks in words: not yes or no, which are answers."""
_WITH = re.compile(r"(hands|add|away|back)\s+(.+)", re.IGNORECASE)
_CORRECTION = re.compile(r"\s*correction\b[\s,:.;-]*(.*)", re.IGNORECASE | re.DOTALL)
_MARKED = re.compile(r"([rpwm])\s+(\S.*)", re.IGNORECASE | re.DOTALL)
_AT_ONCE = {
    THINKING: "hkcnusbdey?", ANSWERING: "rpwmalhkcnusbde?", BETWEEN: "kcusbegny?", BREAK: "e?",
}  # fmt: skip
_HERE = "add NAME, away NAME, back NAME: who is here. b (or standby): a pause. e: the end, with the report."
_HANDS = "hands 5: so many thought the same."
HELP_LINES: dict[str, tuple[str, ...]] = {
    THINKING: (
        "Enter names who answers: the fewest turns first, among equals by chance.",
        "h a hint, s say again, k reveals the key with its paragraph: here, or where class --key-here runs.",
        "c shows the class the revealed key here too.",
        "d withdraws the question. u takes the last mark back.",
        _HERE,
    ),
    ANSWERING: (
        "r right, p partly, w wrong, m missed: the mark, with what was said after it if you like (w 250 kt).",
        "a, or anything longer: the answer as given. It is marked; Enter keeps that mark, a key overrules it.",
        "l: the answer by ear, with --listen; a silence is no answer. disregard: what was typed does not count.",
        f"n (or pass, unable): on to the next person. {_HANDS}",
        "h a hint, s say again, d withdraws the question, u takes the last mark or pass back.",
        "k the key: here, or where class --key-here runs; c then shows it here too.",
        _HERE,
    ),
    BETWEEN: (
        "Enter: the next question. n: the same one to another person. g: the case goes on. y: why.",
        f"correction right: another mark in the place of the last one; u takes it back. {_HANDS}",
        "k or c: the key with its paragraph, for the class to see. s say again.",
        _HERE,
        "Each step is kept at once: a program that was killed goes on from where it stood.",
    ),
    BREAK: ("Enter: the class goes on. e: the end, with the report.",),
}
"""What may be typed in each phase, few enough lines that the question still stands above them."""


class Said(NamedTuple):
    """What was asked for, the mark if one was named, and what was said with it."""

    what: str
    rest: str = ""
    mark: str = ""


def at_once(phase: str) -> str:
    """Return the keys that count without Enter in a phase, when nothing follows them."""
    return _AT_ONCE.get(phase, "")


def understood(text: str, phase: str) -> Said:
    """Return what a typed line asks for."""
    bare = text.strip()
    key = bare.lower()
    if key in KEYS:
        return Said(KEYS[key], mark=MARKS.get(key, ""))
    corrected = _CORRECTION.fullmatch(bare)
    if corrected:
        return _corrected(corrected[1])
    marked = _MARKED.fullmatch(bare)
    if marked and phase in (ANSWERING, BETWEEN):
        return Said(MARK, marked[2].strip(), MARKS[marked[1].lower()])
    if bare.lower().startswith("a ") and phase == ANSWERING:
        return Said(ANSWER, bare[2:].strip())
    return _in_words(bare, phase)


def _corrected(rest: str) -> Said:
    """CORRECTION, then a mark, or an answer in the place of the one before."""
    found = _MARKED.fullmatch(rest)
    if found:
        return Said(CORRECT, found[2].strip(), MARKS[found[1].lower()])
    mark = _MARK_WORDS.get(plain(rest), MARKS.get(rest.strip().lower(), ""))
    return Said(CORRECT, "" if mark else rest.strip(), mark)


def _in_words(text: str, phase: str) -> Said:
    words = plain(text)
    if words in _NAMED:
        return Said(_NAMED[words])
    mark = _MARK_WORDS.get(words, "")
    if mark and phase in (ANSWERING, BETWEEN):
        return Said(MARK, mark=mark)
    found = _WITH.fullmatch(text)
    if found and (found[1].lower() != "hands" or found[2].strip().isdigit()):
        return Said({"hands": HANDS, "add": ADD, "away": AWAY, "back": BACK}[found[1].lower()], found[2].strip())
    control = control_of(text, tuple(_WORDS))
    return Said(_WORDS[control.name]) if control is not None else Said(SAID, text)
