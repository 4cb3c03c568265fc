"""How much more of a thing there is, where a statement tells the law: the square of 10 % more speed is 21 % more."""

from __future__ import annotations

import re

from assistant.conversation.reading_turns.readings import question_of
from assistant.knowledge.records import Fact
from assistant.practice.marking.finding.elements import point
from assistant.practice.marking.points import Element, Figure, Point
from assistant.practice.marking.questions.asked import Asked, as_asked
from assistant.practice.marking.reading.said import plain
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates

_LAW = re.compile(r"\b(?:rises|grows|goes|scales) (?:with|as) the (square(?: root)?) of\b", re.IGNORECASE)
_HOW_MUCH = re.compile(
    r"\bhow (?:much|many times) (?:more|less|longer|further|higher|lower|larger|greater|bigger)\b|"
    r"\b(?:by )?(?:how much|what (?:factor|share|percentage))\b|\bhow many (?:per ?cent|%)",
    re.IGNORECASE,
)
_LESS = re.compile(r"\b(?:slow|slower|less|lower|softer|lighter|below|under|short of)\b", re.IGNORECASE)
_GROUNDED = re.compile(r"\b(?:why|law|rule|relation)\b", re.IGNORECASE)
_ROUNDED = 0.05
"""How far a share may be from what it comes to, as it is worked out in the head."""
_HEAVY = 3.0


def law_points(fact: Fact, text: str, know: Knowledge) -> list[Point]:
    """Return what a law comes to at the share that a question gives, and the law where it asks for it; else nothing."""
    law = _LAW.search(fact.says)
    share = _share(text, know)
    if law is None or share is None or not _HOW_MUCH.search(text):
        return []
    factor = _factor(share, law[1])
    change = abs(factor - 1) * 100
    figures = (Figure(change, "percent", _ROUNDED), Figure(factor, "", _ROUNDED / 2))
    much = Point(f"{change:.0f}% {'more' if factor > 1 else 'less'}", figures, figures_suffice=True, any_figure=True)
    told = Element(frozenset(), tuple(plain(w) for w in law[1].split()), _HEAVY)
    named = point(law[1], know).elements or (told,)
    return [much, Point(law[1], (), named, kept=True)] if _GROUNDED.search(text) else [much]


def of_law(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the law of what a question asks the change of, where another statement on its subject is nearer."""
    if _share(text, know) is None or not _HOW_MUCH.search(text):
        return ()
    question = question_of(_WHY.sub("?", text), know, "")
    for candidate in candidates(question, know)[:_NEAR_BY]:
        fact = getattr(candidate.result, "fact", None)
        law = _LAW.search(fact.says) if fact else None
        subject = _long_words(fact.says[: law.start()]) if fact and law else frozenset()
        if candidate.score >= _SURE and subject & _long_words(text):
            return (as_asked(text, question, candidate.result, know),)
    return ()


def _long_words(text: str) -> frozenset[str]:
    return frozenset(plain(w) for w in re.findall(r"[a-z]+", text.lower()) if len(w) > _SHORT)


_SHORT = 4
_WHY = re.compile(r",? and (?:why|by what law)\b[^?]*\?", re.IGNORECASE)
_NEAR_BY = 4
_SURE = 0.2


def law_extras(fact: Fact, text: str, know: Knowledge) -> list[Figure]:
    """Return the figures of the working of a law: the factor that is squared, and what it comes to."""
    law, share = _LAW.search(fact.says), _share(text, know)
    if law is None or share is None:
        return []
    return [Figure(1 + share, ""), Figure(_factor(share, law[1]), "", _ROUNDED / 2)]


def _factor(share: float, law: str) -> float:
    return (1 + share) ** (0.5 if "root" in law else 2)


def _share(text: str, know: Knowledge) -> float | None:
    """Return by what share of it a question has a thing more or less."""
    shares = [a for a in know.reader.read(text).amounts if a.unit == "percent"]
    if len(shares) != 1:
        return None
    place = text.find(shares[0].raw)
    near = text[max(0, place - _NEAR) : place + len(shares[0].raw) + 2 * _NEAR]
    return -shares[0].value / 100 if _LESS.search(near) else shares[0].value / 100


_NEAR = 12
"""Letters before a share, and half of those behind it, in which it is said whether it is more or less."""
