"""The clauses of the statements and figures of a paragraph, and the one that tells what a part of a question asks for.

A statement has more in it than the points that it is asked for by itself: the case in which it holds, where something
is, what follows. So has the name of a figure: "speed above which it brakes when both levers come to idle".
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Sequence
from typing import Any

from assistant.frozen import NamedTuple
from assistant.knowledge.records import Fact, Limit, Source
from assistant.practice.marking.finding.elements import DIRECTIONS, point
from assistant.practice.marking.of_statements.step_clauses import CONTEXT, content_words, kind_of
from assistant.practice.marking.of_statements.steps_asked import measured
from assistant.practice.marking.points import Point
from assistant.practice.marking.reading.said import plain
from assistant.resolving.knowing import Knowledge

_BETWEEN = re.compile(
    r"[.:;,]\s+(?:and |or |but |then )?|\s+(?:and|but)\s+(?=[^\s.:;,]+ \S)|"
    r"\s+(?=(?:when|if|because|so that|at which|in which|above which|below which|past which|after which) )",
    re.IGNORECASE,
)
_SINCE = re.compile(
    r"\b(?:counted|measured|reckoned|timed|starting|running) (?:from|since)\b|\b(?:from|since) when\b",
    re.IGNORECASE,
)
"""What asks from when on a time is counted."""
_AFTER = re.compile(r"\b(?:after|since|from) (.+)", re.IGNORECASE)
_TELLING, _ORDINARY = 0.7, 0.4
_SURELY = 1.0
_ASIDE = 0.3


class Told(NamedTuple):
    """A clause of a record of a paragraph. words: its words in their plainest form. figures: their quantities."""

    record: Fact | Limit
    text: str
    words: frozenset[str]
    figures: frozenset[str]
    point: Point


def told_in(home: Collection[Source], know: Knowledge, variant: str) -> list[Told]:
    """Return the clauses of all that some paragraphs state."""
    records = (know.record(name, variant) for kind in ("facts", "limits") for name in know.base.ids(kind))
    return [told for record in records if set(record.sources) & set(home) for told in _clauses(record, know)]


def _clauses(record: Any, know: Knowledge) -> Iterator[Told]:
    if isinstance(record, Limit):
        for piece in (each.strip(" ,") for each in _BETWEEN.split(record.of)):
            if piece:
                yield Told(record, piece, content_words(piece), _of_limit(record, know), point(piece, know))
        return
    for piece in (each.strip(" ,.") for each in _BETWEEN.split(record.says)):
        if piece:
            made = point(piece, know)
            units = {f.unit for f in made.figures if f.unit}
            figures = frozenset(measured(unit, know) for unit in units if unit not in ("count", "factor"))
            yield Told(record, piece, content_words(piece), figures, made)


def _of_limit(limit: Limit, know: Knowledge) -> frozenset[str]:
    value = limit.value or limit.maximum or limit.minimum
    return frozenset((measured(value.unit, know),)) if value and value.unit else frozenset()


def best_told(part: str, told: Sequence[Told], scores: dict[str, float], question: str, know: Knowledge) -> Told | None:
    """Return the clause that surely tells what a part asks for, if one does.

    scores: how well each record of the paragraph answers the part. question: all of it, whose words are no news.
    """
    given = frozenset(map(plain, know.phrase(question).words))
    ranked = [(fit, n) for n, each in enumerate(told) if (fit := _fit(part, each, told, scores, given, know))]
    return told[max(ranked, key=lambda pair: (pair[0], -pair[1]))[1]] if ranked else None


def _fit(
    part: str, clause: Told, told: Sequence[Told], scores: dict[str, float], given: frozenset[str], know: Knowledge
) -> float:
    """Return how well a clause tells what a part asks for; 0 where it does not surely."""
    asked, aside = content_words(CONTEXT.sub("", part)), content_words(part)
    shared = sum((1.0 if w in asked else _ASIDE) / _spread(w, told) for w in aside & clause.words)
    score = scores.get(clause.record.id, 0.0)
    kind = kind_of(part, know)
    if _SINCE.search(part):
        since = _AFTER.search(clause.text)
        return 1.0 + score if since and has_news(point(since[1], know), given) else 0.0
    if ASKS_PURPOSE.fullmatch(part):
        told_for = purpose_told(clause.text)
        return 1.0 + score if told_for and has_news(point(told_for, know), given) and score >= _LEAST else 0.0
    if kind:
        lacking = _LACKS.search(clause.text) is not None and not clause.point.figures and shared >= 1
        measured_so = bool(kind & clause.figures) or lacking
        return 1.0 + shared + score if measured_so and (shared >= _FEW or score >= _LIKELY) else 0.0
    at_last = content_words(clause.text.split()[-1]) - given  # what is asked for often stands at the end
    least = _ORDINARY if shared >= _SURELY and at_last else _TELLING
    named = isinstance(clause.record, Limit) and not _CLAUSE.match(clause.text)
    if named or not has_news(clause.point, given, least):
        return 0.0
    surely = max(0.0, score - _LIKELY)
    return shared + score if shared + surely >= _MANY and shared >= _FEW and score >= _LEAST else 0.0


ASKS_PURPOSE = re.compile(r"(?:and )?(?:what for|for what(?: purpose)?)", re.IGNORECASE)
"""What asks for what something is done, and names nothing."""
_PURPOSE = re.compile(r"(?<=\w )to (?!(?:the|an?|its|your|\d)\b)(?:\w+ ?)+$", re.IGNORECASE)


def purpose_told(text: str) -> str:
    """Return for what something is done, of the clause that tells it: "to spin it off"."""
    found = _PURPOSE.search(text)
    return found[0] if found else ""


_LACKS = re.compile(r"\b(?:no|without) \w+(?: \w+)*$", re.IGNORECASE)


def lack_told(text: str) -> str:
    """Return that there is none of what is asked for, of the clause that tells it: "no hydraulic pressure"."""
    found = _LACKS.search(text)
    return found[0] if found else text


def run_of(told: Told, number: int) -> list[str]:
    """Return so many things as a statement lists one after the other, from a clause on: "flush, or below it"."""
    record: Any = told.record
    pieces = [each.strip(" ,.") for each in _BETWEEN.split(record.says)]
    place = pieces.index(told.text)
    return pieces[place : place + number]


_CLAUSE = re.compile(r"when |if |the |both |all ", re.IGNORECASE)
"""How what the name of a figure tells besides begins: "when both levers come to idle"."""
_FEW, _MANY = 0.3, 0.7
_LIKELY, _LEAST = 0.4, 0.25


def _spread(word: str, told: Sequence[Told]) -> int:
    """Return in how many records of a paragraph a word stands."""
    return max(1, len({each.record.id for each in told if word in each.words}))


def has_news(made: Point, given: Collection[str], least: float = _TELLING) -> bool:
    """Return whether a point tells something that the question does not say."""
    return any(
        not set(given).issuperset(e.words) for e in made.elements
        if e.weight >= least or not DIRECTIONS.isdisjoint(e.words)
    )  # fmt: skip


def since_told(text: str) -> str:
    """Return what a time is counted from, of the clause that tells it."""
    found = _AFTER.search(text)
    return found[0] if found else text


def asks_since(part: str) -> bool:
    """Return whether a part asks from when on a time is counted."""
    return _SINCE.search(part) is not None
