"""Which of two figures counts: "255 kt or Mach 0.60, whichever is lower", and what is asked and said of it."""

from __future__ import annotations

import re

from assistant.conversation.reading_turns.readings import question_of
from assistant.practice.marking.points import Need, Point
from assistant.practice.marking.questions.asked import Asked, as_asked
from assistant.practice.marking.reading.said import Said
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates

_ASKED = re.compile(
    r",?\s*(?:and |so )?which(?: one)?(?: of (?:the two|them|these|those|both|the)(?: figures| limits| values)?)?"
    r" (?:one )?(?:applies|counts|governs|decides|holds|binds|is binding|limits|is limiting|comes first|matters|wins|"
    r"takes precedence|is used|do you (?:use|take|go by))\b",
    re.IGNORECASE,
)
_TOLD = re.compile(
    r"\bwhichever (?:\w+ ){0,2}?(?:is |comes |happens )?(?:the )?(lower|higher|first|last|smaller|greater)\b"
)
_KINDS = {"lower": "less", "smaller": "less", "higher": "more", "greater": "more", "first": "first", "last": "last"}
_WAYS = {
    "less": re.compile(r"\b(?<!or )(?:lower|lowest|smaller|smallest|lesser|slower|slowest|least|less)\b(?! than)"),
    "more": re.compile(
        r"\b(?<!or )(?<!no )(?<!not )(?:higher|highest|larger|largest|greater|greatest|bigger|biggest|faster|fastest|"
        r"most)\b(?! than)"
    ),
    "first": re.compile(r"\b(?:first|earlier|earliest|sooner|soonest)\b"),
    "last": re.compile(r"\b(?:last|later|latest)\b"),
}
_CONTRARY = {"less": "more", "more": "less", "first": "last", "last": "first"}
_OF_TWO = re.compile(r"\b(?:whichever|which|the|take|use|of)\b")


def without_choice(text: str) -> str:
    """Return a question without its asking which of two figures counts."""
    return _ASKED.sub("", text, count=1) if _ASKED.search(text) else text


def asks_choice(text: str) -> bool:
    """Return whether a question asks which of two figures counts."""
    return _ASKED.search(text) is not None


def tells_choice(text: str) -> bool:
    """Return whether a statement tells which of two figures counts."""
    return _TOLD.search(text.lower()) is not None


def choice_point(text: str, expected: str) -> list[Point]:
    """Return which of two figures counts as a point, where a question asks for it and the full answer tells it."""
    told = _TOLD.search(expected.lower()) if _ASKED.search(text) else None
    return [Point(told.group(), which=_KINDS[told.group(1)], kept=True)] if told else []


def choice_said(which: str, said: Said) -> float:
    """Return 1 where an answer says which of two figures counts, else 0."""
    return float(bool(_WAYS[which].search(" ".join(said.reading.words))))


def other_choice(need: Need, said: Said) -> list[str]:
    """Return the contrary of which of two figures counts: "whichever is higher"."""
    told = _TOLD.search(need.expected.lower())
    which = _KINDS[told.group(1)] if told else ""
    words = " ".join(said.reading.words)
    for found in _WAYS[_CONTRARY[which]].finditer(words) if which else ():
        before = words[: found.start()].split()[-3:]
        if _OF_TWO.search(" ".join(before)) and "not" not in before and "or" not in before[-1:]:
            return [" ".join([*before, found.group()])]
    return []


def with_choice(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the statement of two figures that tells which of them counts, where a question asks for that."""
    question = question_of(text, know, "")
    for candidate in candidates(question, know)[:_NEAREST]:
        fact = getattr(candidate.result, "fact", None)
        if fact and candidate.score >= _CHOICE and tells_choice(fact.says) and not _barred(candidate):
            return (as_asked(text, question, candidate.result, know),)
    return ()


_NEAREST = 8
_CHOICE = 0.35
"""Score from which a statement that tells which of two figures counts is meant, where that is asked for."""


def _barred(candidate: Candidate) -> bool:
    """Return whether something in a question speaks against a candidate, or nothing for it."""
    return candidate.match is None or bool(candidate.match.barred)
