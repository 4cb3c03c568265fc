"""What an instructor's own question asks for: the points and the number that they wrote, and nothing else.

What the assistant itself would answer need not be said: the instructor may ask for one step of a procedure, or for
what no document says. Its figures are true besides.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from assistant.answering.answer import Citation
from assistant.practice.marking.finding.elements import named_elements, point
from assistant.practice.marking.mark import PARTLY, RIGHT, WRONG, Mark, mark_against
from assistant.practice.marking.of_statements.narrowing import distinct, weighed, without_given
from assistant.practice.marking.points import Figure, Need, Point
from assistant.practice.marking.questions.parts import POLAR
from assistant.practice.marking.reading.amounts import amounts_of
from assistant.practice.marking.reading.said import plain
from assistant.practice.marking.requiring.required import required
from assistant.quantities.show import exact_shown
from assistant.resolving.knowing import Knowledge

_LEAD = re.compile(r"(yes|no)\b(?:\s*[,:.;]\s*|\s*$)", re.IGNORECASE)


def need_of_key(
    text: str, points: Sequence[str], values: Sequence[tuple[float, str]], ordered: bool, know: Knowledge,
    expected: str = "", sources: tuple[Citation, ...] = (),
) -> Need:  # fmt: skip
    """Return what an answer must hold: each of the points, and each number in its unit, exactly."""
    reading = know.reader.read(text)
    made = [_value(value, unit, text, know) for value, unit in values]
    polar = bool(POLAR.search(text))
    made += [one for each in points for one in _points(each, polar, know)]
    known = required(text, know)
    return Need(
        question=reading,
        points=tuple(weighed(distinct(without_given(made, reading, False)))),
        ordered=ordered,
        allowed=amounts_of(reading, know),
        extra=_true_besides(known, bool(values)),
        said=know.phrase(expected).concepts | (known.said if known else frozenset()),
        expected=expected,
        sources=sources,
        polar=polar,
        asked=frozenset(map(plain, reading.words)),
    )


def mark_own(need: Need, answer: str, know: Knowledge) -> Mark:
    """Return the mark of an answer against an own key; the order of points counts though their words tell little."""
    found = mark_against(need, answer, know)
    late = _out_of_order(need, answer, know) if need.ordered and found.mark in (RIGHT, PARTLY) else ""
    return found._replace(mark=WRONG, wrong=(f"out of order: {late}",)) if late else found


def _out_of_order(need: Need, answer: str, know: Knowledge) -> str:
    """Return the point that is said wholly before the one that it follows, or nothing."""
    said = [plain(word) for word in know.reader.read(answer).words]
    words = [frozenset(word for each in one.elements for word in each.words) for one in need.points]
    placed = []
    for i, one in enumerate(need.points):
        own = words[i].difference(*words[:i], *words[i + 1 :])
        places = [place for place, word in enumerate(said) if word in own]
        placed += [(one.text, places)] if places else []
    pairs = pairwise(placed)
    return next((text for (_, before), (text, after) in pairs if max(after) < min(before)), "")


def _true_besides(known: Need | None, measured: bool) -> tuple[Figure, ...]:
    """Return the figures that the documents hold on the same question: true, though the instructor asks for less."""
    if known is None:
        return ()
    return known.extra if measured else (*known.extra, *(figure for each in known.points for figure in each.figures))


def _value(value: float, unit: str, text: str, know: Knowledge) -> Point:
    shown = exact_shown(value, unit, know.units)
    return Point(shown, (Figure(value, unit),), named_elements(text, know), figures_suffice=True)


def _points(text: str, polar: bool, know: Knowledge) -> list[Point]:
    """Return a point, and before it a yes or no that it begins with."""
    lead = _LEAD.match(text) if polar else None
    if lead is None:
        return [point(text, know)]
    rest = text[lead.end() :].strip()
    verdict = Point(lead[1], verdict=lead[1].lower())
    return [verdict, *([point(rest, know)] if rest else [])]
