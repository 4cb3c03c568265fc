"""Which of two things it is, where a question leaves the choice: "is that the brake's temperature or the plug's?"."""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.practice.marking.finding.elements import named_elements
from assistant.practice.marking.finding.polarity import denied
from assistant.practice.marking.points import Element, Point
from assistant.practice.marking.questions.parts import pieces
from assistant.practice.marking.reading.said import plain, plain_words
from assistant.resolving.knowing import Knowledge

_CHOICE = re.compile(
    r"\b(?:is|are|was|does|do) (?:that|this|it|they|those|these)(?: figure| number| value)? (?:of |by |on |for |in )?"
    r"(?:the |an? )?([^,?.]+?) or (?:of |by |on |for |in )?(?:the |an? )?([^,?.]+?)(?=[,?.]|$)", re.IGNORECASE,
)  # fmt: skip
_WHICH = re.compile(
    r"^(?:which|what|who)(?: of (?:them|these|those))? [^,?]*, (?:the |an? )?([^,?.]+?) or (?:the |an? )?"
    r"([^,?.]+?)\?\s*$", re.IGNORECASE,
)  # fmt: skip
_HEAVY = 1.0


def chosen(text: str, expected: str, know: Knowledge) -> tuple[Point, Point] | None:
    """Return the one of two things that holds, and the other, where the full answer denies one and not the other."""
    found = _CHOICE.search(text) or _WHICH.search(text)
    if found is None:
        return None
    pair = [_own(found.group(n), know) for n in (1, 2)]
    if not all(pair) or {e.words for e in pair[0]} & {e.words for e in pair[1]}:
        return None
    full = know.phrase(expected)
    turned = denied(full.words, full)
    said = list(enumerate(plain_words(full.words)))
    off = [any(w in e.words and i in turned for e in own for i, w in said) for own in pair]
    on = [any(w in e.words and i not in turned for e in own for i, w in said) for own in pair]
    if not any(off) and all(on):
        off = _put_behind(pair, said)
    for k in (0, 1):
        if on[k] and off[1 - k] and not off[k]:
            return Point(found.group(k + 1), (), pair[k], kept=True), Point(found.group(2 - k), (), pair[1 - k])
    return None


def ways_named(text: str, told: Iterable[str], know: Knowledge) -> list[Point]:
    """Return the one of two ways that a clause of a question offers which statements tell: "slowly or at once"."""
    made = []
    said = [frozenset(plain_words(know.phrase(each).words)) for each in told]
    for piece in pieces(text):
        found = _OFFERED.fullmatch(piece)
        pair = [named_elements(way, know) for way in found.groups()] if found else []
        words = [{w for e in own for w in e.words} for own in pair]
        if not all(words) or len(words) < _PAIR:
            continue
        holds = [any(own <= each for each in said) for own in words]
        if holds[0] is not holds[1]:
            n = 0 if holds[0] else 1
            own = tuple(e._replace(weight=max(e.weight, _OFFERED_WEIGHT)) for e in pair[n])
            made.append(Point(found[n + 1] if found else "", (), own, kept=True, chosen=True))
    return made


_PAIR = 2
_OFFERED = re.compile(r"([a-z-]+(?: [a-z-]+)?) or ([a-z-]+(?: [a-z-]+)?)", re.IGNORECASE)
_OFFERED_WEIGHT = 1.5


def _put_behind(pair: list[tuple[Element, ...]], said: list[tuple[int, str]]) -> list[bool]:
    """Return which of two things the full answer puts behind the other: "this has priority over that"."""
    words = [w for _, w in said]
    over = next((i for i, w in enumerate(words) if w == plain("over")), -1)
    return [over >= 0 and any(w in e.words for e in own for w in words[over + 1 :]) for own in pair]


def _own(words: str, know: Knowledge) -> tuple[Element, ...]:
    """Return what tells one of the two things: not that both are temperatures."""
    return tuple(e for e in named_elements(words, know) if e.weight >= _HEAVY)
