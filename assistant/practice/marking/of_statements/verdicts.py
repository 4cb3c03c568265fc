"""Whether a statement that gives no yes or no says no to a question, and a yes or no that nobody asked for."""

from __future__ import annotations

import re

from assistant.knowledge.records import Fact
from assistant.practice.marking.finding.elements import told_concepts
from assistant.practice.marking.finding.polarity import denied
from assistant.practice.marking.points import Need, Point
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import FORBIDDEN, FORBIDS
from assistant.resolving.knowing import Knowledge

_ASKS_NOT = re.compile(r"\b(?:no|not|cannot|only)\b|^\W*(?:and )?(?:is|are) .*\blost\b")
_BEFORE_FLIGHT = re.compile(r"\bbefore (?:the )?(?:next )?flight\b")
_LEAVES = re.compile(
    r"\b(?:may|can|could|do) (?:you|we|i|it|the aeroplane) (?:depart|dispatch|fly|go|leave|take off)\b", re.IGNORECASE
)
"""Asking to leave with what has to be put right first."""
_FORM = re.compile(r"\byes or no\b[,;:.]?", re.IGNORECASE)
GONE = re.compile(r"\b(?:no|not|cannot|lost|only)\b")


def forbidden_said(point: Point, said: Said) -> bool:
    """Return whether a point only forbids, and an answer does so behind its first word: "there is no pushback"."""
    return bool(FORBIDDEN.match(point.text)) and FORBIDS.search(" ".join(said.reading.words[1:])) is not None


_SHORT = 3


def says_no(fact: Fact, text: str, know: Knowledge) -> bool:
    """Return whether a statement without a verdict says no to a question: it denies what is asked, or has it lost."""
    text = _FORM.sub(" ", text)
    asked = know.reader.read(text)
    inside = {i for m in asked.mentions if len(m.taken) > 1 for i in m.taken}
    own = " ".join(w for i, w in enumerate(asked.words) if i not in inside)
    if _ASKS_NOT.search(own) or re.search(r"\b(?:or|must|need)\b", text, re.IGNORECASE):
        return False
    if _BEFORE_FLIGHT.search(fact.says) and _LEAVES.search(text):
        return True
    saved = re.search(r"\bunless (.+)", fact.says)
    kept = [m for m in know.phrase(saved[1]).mentions if not (m.weak or m.passing)] if saved else []
    if kept and all(m.concepts & asked.concepts for m in kept):
        return True
    first = know.phrase(re.split(r"[.;]\s", fact.says)[0])
    if re.search(r"\b(?:is|are) lost\b", " ".join(first.words)):
        return True
    turned = denied(first.words, first)
    told = told_concepts(asked)
    words = set(map(plain, asked.words))
    if any(plain(first.words[i]) in words and len(first.words[i]) > _SHORT for i in turned):
        return True
    return any(not m.concepts.isdisjoint(told) and not turned.isdisjoint(m.taken) for m in first.mentions)


_FOR, _AGAINST = frozenset(("fine", "ok", "okay", "yes", "allowed")), frozenset(("no", "forbidden"))


def stand_wrong(need: Need, said: Said) -> list[str]:
    """Return a yes or no that an answer begins with unasked, where a judged reading is otherwise."""
    first = said.reading.words[:2]
    if need.within is None or any(p.verdict for p in need.points) or len(first) < 2 or first[1] != ",":
        return []
    given = True if first[0] in _FOR else False if first[0] in _AGAINST else None
    return [first[0]] if given is not None and given is not need.within else []
