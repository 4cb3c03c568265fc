"""What of a statement a part of a question asks for: its figure, what it says of the thing named; the rest is spare.

A statement that answers one part tells more than that part asks: when, where, what else follows. Such points may be
said, and may not be contradicted.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.knowledge.records import Fact
from assistant.practice.marking.finding.elements import DIRECTIONS
from assistant.practice.marking.of_statements.itemised import cases_named
from assistant.practice.marking.of_statements.steps_asked import measured
from assistant.practice.marking.points import Point
from assistant.practice.marking.questions.asked import Asked, measures
from assistant.practice.marking.questions.parts import POLAR, parts_of
from assistant.practice.marking.reading.said import plain
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge

FIGURE = re.compile(
    r"\b(?:above|below|under|over|past|until|up to|by) (?:about )?what\b(?! order)|"
    r"\b(?:what|which) (?:\w+ ){0,3}(?:speeds?|"
    r"pressures?|temperatures?|angles?|shares?|heights?|mass(?:es)?|times?|distances?|decelerations?|delays?)\b|"
    r"\bhow (?:much|many|long|far|fast|high|hot|deep|wide|heavy)\b",
    re.IGNORECASE,
)
_WHEN = re.compile(
    r"\b(?:when|where|how long|until|after|before|order|sequence|steps|cases?|conditions?|list|all|happens?)\b", re.I
)
_ASIDES = frozenset(
    ("after", "against", "at", "before", "by", "from", "in", "on", "once", "to", "until", "when", "while", "with")
)
_ABOUT = re.compile(r": (?:and )?what about [^?]+, ", re.IGNORECASE)
"""What names all that it asks of: "what about cord, cuts and flat spots?"."""
_GIVE = re.compile(r"\b(?:give|name|state|list) (?:the |all )?(two|three|four) (?:things|effects|points)\b", re.I)
_CASES = re.compile(r"\b(two|three|four) (?:cases|conditions|occasions|ways|reasons|events)\b", re.IGNORECASE)
SMALL = {"two": 2, "three": 3, "four": 4}
"""The numbers of things that a question says it asks for."""
_LISTED = re.compile(r",.*\band\b")
_TWO = 2


def asks_figure(part: str) -> bool:
    """Return whether a part of a question asks for a figure."""
    return FIGURE.search(part) is not None and not POLAR.match(part)


def of_part(points: list[Point], one: Asked, alone: bool, text: str, know: Knowledge) -> list[Point]:
    """Return the points of a statement, those optional that the part of a question which it answers does not ask for.

    alone: whether it answers the question as a whole.
    """
    if not isinstance(getattr(one.result, "fact", None), Fact):
        return points
    part = one.answer.question
    if not alone and part != text and _HOW.match(part) and all(p.figures_suffice for p in points):
        return points if asks_figure(part) else [p._replace(optional=True) for p in points]
    if len(points) < _TWO:
        return points
    if alone:
        return _of_all(points, one, text, know)
    if part == text:
        return points
    fact: Fact = one.result.fact  # type: ignore[union-attr]
    told = [p.text for p in points]
    said = _of_its_clause(points, fact, part, know) if told == list(fact.points) else []
    return _but(points, said) if said else _of_its_part(points, part, text, know)


def _of_its_clause(points: list[Point], fact: Fact, part: str, know: Knowledge) -> list[Point]:
    """Return the points of the one clause of a statement that names a thing which a part names; none where all do."""
    texts = re.split(r"[.:;]\s+", fact.says.rstrip("."))
    clauses = [know.phrase(clause).concepts for clause in texts]
    words = [frozenset(map(plain, re.findall(r"\w+", clause))) for clause in texts]
    if len(clauses) < _TWO or asks_figure(part):
        return []
    named = [[n for n, told in enumerate(clauses) if thing & told] for thing in things_in(part, know)]
    own = {n for places in named if len(places) == 1 for n in places if n}
    if len(own) != 1:
        return []
    place = own.pop()
    held = [max(range(len(words)), key=lambda n, p=p: _shared(p, words[n])) for p in points]  # type: ignore[misc]
    told = [p for p, n in zip(points, held, strict=True) if n == place]
    return [] if any(_only_says(p, part, know) for p in told) else told


def _shared(point: Point, words: frozenset[str]) -> int:
    """Return how many words of a point stand in a clause."""
    return len(words.intersection(map(plain, re.findall(r"\w+", point.text))))


_HOW = re.compile(r"(?:and )?(?:how (?:is|are)|what about)\b", re.IGNORECASE)


def _of_all(points: list[Point], one: Asked, text: str, know: Knowledge) -> list[Point]:
    """Return the points of the one statement that answers a question: those that it lists, or the first so many."""
    if _ABOUT.search(text):
        return [p._replace(kept=True, optional=False) for p in points]
    how_many = _CASES.search(text)
    fresh = [p for p in points if not _is_given(p, text, know)] if how_many else []
    if how_many and len(fresh) == SMALL[how_many.group(1).lower()] < len(points):
        return _but(points, fresh)
    counted = _GIVE.search(text)
    if counted and len(points) > SMALL[counted.group(1).lower()]:
        return _but(points, points[: SMALL[counted.group(1).lower()]])
    cases = cases_named([p.text for p in points], one.question, know) if _LISTED.search(text) else []
    if cases:
        return _but(points, [p for p in points if p.text in {each.text for each in cases}])
    return _of_those_listed(points, text, know) if len(parts_of(text)) < _TWO else points


def _of_its_part(points: list[Point], part: str, text: str, know: Knowledge) -> list[Point]:
    """Return the points of a statement that answers one part: its figure, what is said of the thing named."""
    fresh = [p for p in points if not _is_asked(p, part, know)]
    if fresh and len(fresh) < len(points):
        kept = [p._replace(kept=True) for p in fresh]
        spare = [p._replace(optional=True) for p in points if p not in fresh]
        return [*(_of_its_part(kept, part, text, know) if len(kept) > 1 else kept), *spare]
    if asks_figure(part):
        return _but(points, [p for p in points if _tells_figure(p, part, know)])
    cased = _in_case(points, part) if _WHAT_IF.match(part) else []
    if cased:
        return [p._replace(kept=True, optional=False) if p in cased else p._replace(optional=True) for p in points]
    named = [p for p in _named(points, part, know) if _tells_more(p, text, know)]
    plain = [p for p in points if not p.figures and p.text.split()[0] not in _ASIDES]
    if re.search(r"\b(?:why|when)\b", part, re.IGNORECASE):
        return points
    if len(named) == 1 and named[0] in plain and not _PLACE.search(part):
        return _but(points, named)
    asking = _AGENT.sub(r"\1", part)
    if _WHEN.search(asking) or any(p.text.split()[0] in ("or", "and") for p in points):
        return points
    return _but(points, [p for p in plain if _tells_more(p, text, know)])


def _is_asked(point: Point, part: str, know: Knowledge) -> bool:
    """Return whether a point only tells what a part says itself, of which it asks when or how: "is replaced"."""
    return bool(_ASKS_WHEN.match(part)) and "by when" not in part and _only_says(point, part, know)


def _only_says(point: Point, part: str, know: Knowledge) -> bool:
    """Return whether all that tells much in a point stands in a part."""
    if point.figures or point.state or point.verdict:
        return False
    words = frozenset(map(plain, know.phrase(part).words))
    telling = [e for e in point.elements if e.weight > _TELLING]
    return bool(telling) and all(words.issuperset(e.words) for e in telling)


_TELLING = 2.0
_ASKS_WHEN = re.compile(
    r"(?:and )?(?:when|at (?:what|which)|under (?:what|which)|in (?:what|which)|by what|if what|on (?:what|which)) ",
    re.IGNORECASE,
)


def _is_given(point: Point, text: str, know: Knowledge) -> bool:
    """Return whether a question says a point itself, but for small words: "chocks in first"."""
    words = frozenset(map(plain, know.phrase(text).words))
    telling = [e for e in point.elements if not DIRECTIONS.issuperset(e.words)]
    return not point.figures and bool(telling) and all(words.issuperset(e.words) for e in telling)


def _tells_more(point: Point, text: str, know: Knowledge) -> bool:
    """Return whether a point says anything besides what a question names itself: "TOW PIN memo" does not."""
    reading = know.reader.read(text)
    words = frozenset(map(plain, reading.words))
    own = [e for e in point.elements if e.concepts.isdisjoint(reading.concepts) or words.isdisjoint(e.words)]
    return bool(own or point.figures)


_PLACE = re.compile(
    r"\bfrom where\b|\bwhere from\b|\b(?:from|on|at) (?:which|what) (?:side|direction|way)\b", re.IGNORECASE
)
_AGENT = re.compile(
    r"^((?:and )?(?:what|who) (?:stops|holds|drives|moves|locks|keeps|releases)\b.*?) "
    r"(?:after|before|when|while|once|at)\b.*$",
    re.IGNORECASE,
)
"""What asks which thing does something, and tells when besides."""
_WHAT_IF = re.compile(r"(?:and |but )?what if\b", re.IGNORECASE)
_LONG = 4


def _in_case(points: Sequence[Point], part: str) -> list[Point]:
    """Return the points that tell what is done in the case that a part puts: "deeper than 13 mm: retract again"."""
    words = [w for w in re.findall(r"[a-z]+", part.lower()) if len(w) >= _LONG and w not in ("what", "they", "were")]
    cases = [(p, p.text.lower().partition(":")[0]) for p in points if ":" in p.text]
    return [p for p, case in cases if any(w.startswith(word) for w in case.split() for word in words)]


def _but(points: list[Point], kept: Sequence[Point]) -> list[Point]:
    """Return points, all but some of them optional; all as they were where none is left."""
    return [p if p in kept or p.verdict or p.state else p._replace(optional=True) for p in points] if kept else points


def _tells_figure(point: Point, part: str, know: Knowledge) -> bool:
    wanted = know.phrase(part).concepts & QUANTITIES
    units = [f.unit for f in point.figures if f.unit not in ("", "count", "factor", "percent")]
    return bool(point.figures) and (not wanted or not units or any(measured(u, know) in wanted for u in units))


def things_in(text: str, know: Knowledge) -> list[frozenset[str]]:
    """Return the things that a text names, each with all the concepts that its name stands for."""
    told = know.phrase(text).mentions
    return [m.concepts for m in told if not know.matcher.is_soft(m) and not measures(m.concepts, know)]


def _named(points: list[Point], part: str, know: Knowledge) -> list[Point]:
    """Return the points that hold a thing which a part names, where no other point does."""
    things = things_in(part, know)
    holding = [[p for p in points if any(e.concepts & thing for e in p.elements)] for thing in things]
    return list({p.text: p for held in holding if len(held) == 1 for p in held}.values())


def _of_those_listed(points: list[Point], text: str, know: Knowledge) -> list[Point]:
    """Return points, of which a question lists some by what they are of: "to the doors, to the steering and ..."."""
    named = _named(points, text, know) if _LISTED.search(text) else []
    return _but(points, named) if len(named) >= _TWO else points
