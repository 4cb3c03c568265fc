"""Answers that tell what people do, or which thing it is, where neither is asked: they claim nothing.

"You look at it on the walk-round" says nothing of what a part does, and "that's the box they showed us" nothing of the
mode. Every clause must be of that kind, or say the question back ("yeah, no steering"), and none may give a reason.
"""

from __future__ import annotations

import re

from assistant.practice.marking.missed.told_aside import names_a_point
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import CONTRASTS, STOPS, word_set

_OPENING = r"(?:(?:well|oh|and|um|uh|er|yeah|yes|so|but|then|just|because|cos|honestly|actually) )*"
_PEOPLE = re.compile(
    rf"{_OPENING}(?:i|we|you|one|pilots?|people|everybody|everyone|nobody|no one|somebody|someone|(?:the|a|my|our) "
    r"(?:captain|engineers?|mechanics?|instructor|examiner|crew|teacher))\b(?! (?:of|is|has|each|for|per)\b)"
    r"(?!(?: would| will| do| d)?(?: always| just| also| only| still)? "
    r"(?:need|have|must|get|got|lose|want|require|keep)\b)"
)
"""What begins with somebody, and tells of no need and no loss."""
_WHICH = re.compile(
    rf"{_OPENING}(?:that|it|this|those|they)(?: is| are| s| was)(?: just| only| really)? (?:the|a|an|that|one of the|"
    r"those) (?:[\w-]+ ){0,4}?(?:thing|things|one|ones|part|bit|box|gadget|shaped|kind|piece|stuff)\b"
)
"""Which thing it is, by no name of the trade."""
_WHAT = re.compile(
    rf"{_OPENING}(?:it|that|this)(?: is| s| was) (?:just |only |simply )?what (?:is|s|was|are|were|i|you|we|they|the|"
    r"people|everybody|everyone)\b"
)
"""What only says that it is so: "that's what's in the cart"."""
_HAS = re.compile(
    rf"{_OPENING}(?:it|they|that|those) (?:has|have|have got|has got|got|comes? with) (?:a|an|two|some)\b"
)
_ASKS_WORK = re.compile(r"\bwhat (?:do|does) .*\bdo\b", re.IGNORECASE)
_ASKS_DEEDS = re.compile(
    r"\bwho\b|\b(?:do|should|must|may|can|will|would|could|have|ought|need|are|did)(?: not|n't)? "
    r"(?:you|we|i|one|the (?:pilots?|crew|captain|commander|first officer))\b|\btechnique\b|\b(?:is|are|be) "
    r"(?:\w+ )?(?:done|to be)\b|\bprocedure\b|\bdrill\b",
    re.IGNORECASE,
)
"""What asks for what somebody does."""
_REASON = re.compile(
    r"\b(?:so that|so it|so they|so the|otherwise|or else|would|could|might|may|d|will|"
    r"to (?:stop|keep|prevent|avoid|let|save))\b"
)
_AFTERWARDS = re.compile(rf"{_OPENING}then (?:i|we|you|they) (?!need)")
"""What is done then, where it is asked why: "then you'd use differential braking"."""
_SAID_BACK = word_set("yeah yes no not gone lost the a it is there you have got and just does do well really")
_OF_FIGURES = word_set("enough fast high hot long low much slow far heavy many little")


def tells_of_people(need: Need, said: Said) -> bool:
    """Return whether an answer that holds no point only tells of people, or which thing it is."""
    question = need.question
    if need.ordered or need.polar or need.cause or need.loss or any(p.verdict or p.state for p in need.points):
        return False
    if said.claims or _ASKS_DEEDS.search(question.text) or names_a_point(need, said):
        return False
    words = said.reading.words
    clauses = [[words[i] for i in piece] for piece in said.pieces(CONTRASTS | STOPS)]
    if question.has("why") and _REASON.search(" ".join(words)):
        return _AFTERWARDS.match(" ".join(words)) is not None
    if any(p.figures for p in need.points) and not _OF_FIGURES.isdisjoint(words):
        return False
    telling = [c for c in clauses if not _says_back(c, need)]
    return bool(telling) and all(_is_of_people(" ".join(c), question.text) for c in telling)


def _is_of_people(clause: str, question: str) -> bool:
    if _PEOPLE.match(clause) or _WHICH.match(clause) or _WHAT.match(clause):
        return True
    return bool(_ASKS_WORK.search(question) and _HAS.match(clause))


def _says_back(clause: list[str], need: Need) -> bool:
    """Return whether a clause has only words of the question."""
    return all(word in _SAID_BACK or plain(word) in need.asked for word in clause)
