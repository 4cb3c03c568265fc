"""The figure that a statement leaves to another paragraph: "above the maximum to begin take-off (LIM 3.2)".

Whoever says the figure has said the point, and whoever says the words has too; the figure of another variant and the
former one are known with it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from assistant.knowledge.records import Fact, Limit
from assistant.practice.marking.finding.elements import told_concepts
from assistant.practice.marking.points import Figure, Point
from assistant.practice.marking.reading.said import plain
from assistant.resolving.knowing import Knowledge

_REFERENCE = re.compile(r"\(([A-Z]{2,4}) (\d[\d.]*)\)")
_BOUND = re.compile(r"\b(?:maximum|minimum|limit)\b")
_SIDES = {plain("above"): "higher", plain("below"): "lower"}


def referred(says: str, fact: Fact, know: Knowledge) -> Limit | None:
    """Return the limit in the paragraph that a statement cites which a phrase of it names, if it is one alone."""
    cited = {(name, paragraph) for name, paragraph in _REFERENCE.findall(fact.says)}
    if not cited or not _BOUND.search(says):
        return None
    named = know.phrase(says).concepts
    found = [
        limit for limit in _limits_in(cited, know)
        if limit.maximum and (told := told_concepts(know.phrase(limit.of)) - _soft(limit.of, know)) and told <= named
    ]  # fmt: skip
    return found[0] if len(found) == 1 else None


def _soft(of: str, know: Knowledge) -> frozenset[str]:
    """Return the concepts of what only measures or bounds in the name of a limit."""
    return frozenset(c for m in know.phrase(of).mentions if know.matcher.is_soft(m) for c in m.concepts)


def _limits_in(cited: Iterable[tuple[str, str]], know: Knowledge) -> Iterator[Limit]:
    for name in know.base.ids("limits"):
        limit = know.base.records[name]
        if {(s.document, s.paragraph) for s in limit.sources} & set(cited):
            yield limit


def with_figure(made: Point, fact: Fact, know: Knowledge) -> Point:
    """Return a point with the figure that its words stand for."""
    limit = referred(made.text, fact, know) if not made.figures else None
    if limit is None or limit.maximum is None:
        return made
    sense = next((_SIDES[w] for e in made.elements for w in e.words if w in _SIDES), "")
    return made._replace(figures=(Figure(limit.maximum.value, limit.maximum.unit, 0.0, sense),), either=True)


def referred_by(fact: Fact, know: Knowledge) -> Iterator[Limit]:
    """Yield the limits whose figures the points of a statement stand for."""
    for text in fact.points:
        limit = referred(text, fact, know)
        if limit is not None:
            yield limit
