"""A phrase of the knowledge as a point: its figures, and its words with how much each tells."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any

from assistant.practice.marking.finding.polarity import denied
from assistant.practice.marking.points import Element, Figure, Point, State
from assistant.practice.marking.reading.amounts import amounts_of
from assistant.practice.marking.reading.said import plain, plain_words, sense_at
from assistant.practice.marking.reading.wording import NEGATORS
from assistant.quantities.amounts import Amount
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import Mention, Reading

_WAYS = """
    up down on off left right behind front open closed above below before after set inboard rearward forward outboard
    all first once beside only both again steady
"""
DIRECTIONS = frozenset(map(plain, _WAYS.split()))
"""Words that tell a point from its contrary, though they are very common."""
SIDES = ((plain("above"),), (plain("below"),))
"""Words that beside a figure say only of which side it is."""
_BOUNDING = frozenset(map(plain, ("above", "below", "up", "after", "before")))
"""Words that before a number only say which side of it."""
_EVENT = "stop-event"
"""The family of what is named as a whole: "take off" is no "off"."""
_SLIGHT = frozenset(map(plain, ["only", "both", "all", "again", "first", "beside"]))


_MOVES: dict[tuple[str, ...], tuple[str, ...]] = {("up", "at"): ("retract", "raise")}
"""Other verbs for a step that is only a way: "then up at 205 kt"."""
_CLAUSES = (("they",), ("it",))
"""Words behind a "once" that only says when: "once they are in"."""


def point(text: str, know: Knowledge, tolerance: float = 0.0, **fields: Any) -> Point:
    """Return a phrase of the knowledge as a point: its figures, its telling words."""
    reading = know.phrase(text)
    amounts = amounts_of(reading, know)
    figures = tuple(_figure(a, reading, tolerance) for a in amounts)
    elements = _without_kind(tuple(_elements(reading, amounts, know)))
    fields.setdefault("state", _absence(reading, elements, know) if not figures else None)
    return Point(text, figures, elements, negated=_is_negated(reading), **fields)


def _without_kind(elements: tuple[Element, ...]) -> tuple[Element, ...]:
    """Return elements without the word for their kind, which stands behind the name that a label is read by."""
    kinds = {c.split(".")[1] for e in elements for c in e.concepts if c[0] == "=" and c.count(".") == _DEEP}
    return tuple(e for e in elements if len(e.concepts) != 1 or not e.concepts & kinds)


_DEEP = 2
"""Dots in the name of one value of a result."""


def _absence(reading: Reading, elements: tuple[Element, ...], know: Knowledge) -> State | None:
    """Return the state that "no autobrake" is: a thing that is not there."""
    words = reading.words
    told = [m for m in reading.mentions if not m.weak]
    if words[:1] == ("no",) and len(told) == 1 and len(elements) == 1:
        return State(_things_in(" ".join(words[1:]), know) or told[0].concepts, False)
    fails = re.match(r"(.+?) (?:does|do) not (?:work|steer)\b", " ".join(words))
    if fails and concepts_in(fails.group(1), know):
        return State(concepts_in(fails.group(1), know), False)
    keeps = next((i for i, word in enumerate(words) if word in ("keep", "keeps")), 0)
    named = know.phrase(" ".join(words[keeps + 1 :])).mentions if keeps else ()
    return State(named[0].concepts, True) if len(named) == 1 and not named[0].weak else None


def _things_in(text: str, know: Knowledge) -> frozenset[str]:
    """Return the concepts of the things that a phrase names: no state, which other words would be of as well."""
    return frozenset(concept for concept in concepts_in(text, know) if not concept.startswith("@"))


def concepts_in(text: str, know: Knowledge) -> frozenset[str]:
    """Return the concepts that a phrase names, without what they bring along."""
    return frozenset(c for m in know.phrase(text).mentions if not m.weak for c in m.concepts)


def told_concepts(reading: Reading) -> frozenset[str]:
    """Return the concepts of the things that a reading itself names, neither weakly nor in passing."""
    return frozenset(c for m in reading.mentions if not (m.weak or m.passing) for c in m.concepts)


def _figure(amount: Amount, reading: Reading, tolerance: float) -> Figure:
    return Figure(amount.value, amount.unit or "", tolerance, sense_at(amount, reading))


def _elements(reading: Reading, amounts: Iterable[Amount], know: Knowledge) -> Iterable[Element]:
    plains = plain_words(reading.words)
    starts = {a.start for a in amounts}
    covered: set[int] = {i for a in amounts for i in range(a.start, a.end)}
    turned = denied(reading.words, reading)
    for mention in reading.mentions:
        bounds = len(mention.taken) == 1 and plains[mention.start] in _BOUNDING
        bounds = bounds and not starts.isdisjoint((mention.end, mention.end + 1))
        if bounds or not covered.isdisjoint(mention.taken):
            continue
        full = [plains[i] for i in mention.taken]
        words = tuple(w for i, w in zip(mention.taken, full, strict=True) if _tells(reading.words[i], know)) or tuple(
            full
        )
        if DIRECTIONS.issuperset(words) and know.lexicon.families.get(next(iter(mention.concepts), "")) == _EVENT:
            words = tuple(full)
        telling = DIRECTIONS.intersection(words)
        if mention.weak:
            continue
        covered.update(mention.taken)
        group = _group(mention.start, reading)
        lack = len(mention.taken) > 1 and reading.words[mention.taken[0]] in ("no", "not", "without")
        off = not lack and not turned.isdisjoint(mention.taken)
        weight = _weight(mention, bool(telling), know)
        yield Element(_narrow(mention, know), words, weight, denied=lack, off=off, group=group)
    for i, word in enumerate(reading.words):
        bound = not starts.isdisjoint((i + 1, i + 2)) and plains[i] in _BOUNDING
        bound = bound and reading.words[i : i + 2] != ("up", "at")  # the way of a step, and no side of a number
        if i in covered or bound:
            continue
        if plains[i] in DIRECTIONS:
            leads = word == "once" and reading.words[i + 1 : i + 2] in _CLAUSES
            weight = 0.2 if leads else 0.6 if plains[i] in _SLIGHT else 1.5
            moved = frozenset(c for m in _MOVES.get(reading.words[i : i + 2], ()) for c in concepts_in(m, know))
            yield Element(moved, (plains[i],), weight, off=i in turned, group=_group(i, reading))
        elif word[0].isalpha() and len(word) > 3 and word not in know.lexicon.weak:
            yield Element(frozenset(), (plains[i],), 0.4, off=i in turned, group=_group(i, reading))


def _tells(word: str, know: Knowledge) -> bool:
    return word not in know.lexicon.weak or plain(word) in DIRECTIONS


def _group(place: int, reading: Reading) -> int:
    return sum(1 for word in reading.words[:place] if word in ("and", ";", ","))


def _narrow(mention: Mention, know: Knowledge) -> frozenset[str]:
    """Return the concepts of a mention, without those that another brings along or that fit nearly any state."""
    brought = {c for own in mention.concepts if own[0] == "=" for c in know.lexicon.implied.get(own, ())}
    exact = frozenset(c for c in mention.concepts - brought if not (c[0] == "@" and "." not in c))
    return exact or mention.concepts


def of_its_subject(made: Point) -> Point:
    """Return a result of which the thing that it is said of tells little: "it castors" for "the nose wheels castor"."""
    first = next((n for n, e in enumerate(made.elements) if any(c[0] == "=" for c in e.concepts)), 0)
    subject = (e._replace(weight=min(e.weight, _SUBJECT)) for e in made.elements[:first])
    return made._replace(elements=(*subject, *made.elements[first:]))


_SUBJECT = 0.5


def named_elements(text: str, know: Knowledge) -> tuple[Element, ...]:
    """Return the telling words of a phrase that is only the name of something."""
    reading = know.phrase(text)
    return tuple(_elements(reading, amounts_of(reading, know), know))


def _weight(mention: Mention, telling: bool, know: Knowledge) -> float:
    kinds = {know.lexicon.kinds.get(c) for c in mention.concepts}
    if telling and len(mention.taken) == 1:
        return 1.5
    if kinds <= {"quantity", "ask", "ask!", "filler"}:
        return 0.3
    if mention.passing:
        return 0.4 if all(c[0] == "~" for c in mention.concepts) else 0.6
    return max(0.8, min(3.0, know.matcher.mention_weight(mention)))


def _is_negated(reading: Reading) -> bool:
    named = {i for m in reading.mentions if not m.weak for i in m.taken}
    return any(word in NEGATORS for i, word in enumerate(reading.words) if i not in named)
