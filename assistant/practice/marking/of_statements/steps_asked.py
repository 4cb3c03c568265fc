"""Single steps of a procedure that a question asks for in its parts: "how often is it cycled, and at what speed?"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.practice.marking.finding.elements import point
from assistant.practice.marking.points import Point
from assistant.practice.marking.questions.asked import Asked, as_asked
from assistant.practice.marking.reading.said import plain
from assistant.resolving import results as r
from assistant.resolving.asked_quantity import AS_ASKED, QUANTITIES
from assistant.resolving.knowing import Knowledge

HOW_OFTEN = re.compile(r"\bhow (?:often|many times)\b", re.IGNORECASE)
_FIGURE = re.compile(
    r"\b(?:what|which) (?:\w+ ){0,2}(?:speed|time|pressure|height)\b|\bhow (?:fast|long)\b", re.IGNORECASE
)
_DO = re.compile(r"\bwhat (?:do|should|must) (?:you|we|i) do (?:if|when)\b", re.IGNORECASE)


def steps_asked(parts: Sequence[str], text: str, whole: Asked | None, know: Knowledge) -> tuple[Asked, ...]:
    """Return the step that each part of a question asks a figure of; nothing unless every part surely does."""
    result = whole.result if whole else None
    if not isinstance(result, r.ProcedureResult) or len(parts) < 2 or not whole or not all(map(_is_of_step, parts)):
        return ()
    steps = [point(step.do, know) for step in result.procedure.steps]
    chosen = _in_turn(parts, steps, know) or _by_words(parts, steps, know)
    told = [(part, n) for part, n in zip(parts, chosen, strict=False)]
    kinds = {(_kind(part, know), n) for part, n in told}
    if len(told) < len(parts) or len(kinds) < len(parts):
        return ()
    return tuple(as_asked(part, whole.question, result._replace(step=n), know) for part, n in told)


def _is_of_step(part: str) -> bool:
    return bool(HOW_OFTEN.search(part) or _FIGURE.search(part) or _DO.search(part))


def _kind(part: str, know: Knowledge) -> frozenset[str]:
    """Return what a part asks of a step: a quantity, how often; nothing where it asks what to do."""
    if HOW_OFTEN.search(part):
        return frozenset(("how often",))
    return know.phrase(part).concepts & QUANTITIES if _FIGURE.search(part) else frozenset()


def _holds(step: Point, kind: frozenset[str], know: Knowledge) -> bool:
    """Return whether a step tells what a part asks of it."""
    if "how often" in kind:
        return any(e.words == _ONCE for e in step.elements)
    return not kind or any(f.unit and measured(f.unit, know) in kind for f in step.figures)


def _in_turn(parts: Sequence[str], steps: Sequence[Point], know: Knowledge) -> list[int]:
    """Return the steps in their order, where each part asks the same of as many steps as tell it."""
    kinds = {_kind(part, know) for part in parts}
    telling = [n for n, step in enumerate(steps) if len(kinds) == 1 and _holds(step, next(iter(kinds)), know)]
    return telling if len(telling) == len(parts) and kinds != {frozenset()} else []


def _by_words(parts: Sequence[str], steps: Sequence[Point], know: Knowledge) -> list[int]:
    """Return the step that the words of each part name most, or that of the part before where it names none."""
    chosen: list[int] = []
    for part in parts:
        words = {plain(w) for w in know.phrase(part).words if len(w) > _SHORT}
        counts = [
            sum(1 for w in words if w in _plain_words(step)) if _holds(step, _kind(part, know), know) else -1
            for step in steps
        ]
        best = [n for n, count in enumerate(counts) if count == max(counts) >= 0]
        best = [n for n in best if n in chosen[-1:]] or best
        if len(best) != 1:
            return []
        chosen += best
    return chosen


def _plain_words(step: Point) -> set[str]:
    return {plain(w) for w in re.findall(r"[a-z]+", step.text.lower())}


_SHORT = 3


def of_step(made: Point, part: str, know: Knowledge) -> Point:
    """Return the point of a step as far as a part asks for it: how often, or its figures of one kind."""
    if HOW_OFTEN.search(part):
        kept = tuple(e._replace(weight=_TELLING) if e.words == _ONCE else e._replace(given=True) for e in made.elements)
        return made._replace(figures=(), elements=kept, kept=True) if any(e.words == _ONCE for e in kept) else made
    if not _FIGURE.search(part):
        return made
    asked = know.phrase(part).concepts & QUANTITIES
    figures = tuple(f for f in made.figures if f.unit and measured(f.unit, know) in asked)
    return made._replace(figures=figures, figures_suffice=True) if figures else made


def measured(unit: str, know: Knowledge) -> str:
    """Return the quantity that a unit measures, as questions name it."""
    dimension = know.units.get(unit).dimension
    return AS_ASKED.get(dimension, dimension)


_ONCE = (plain("once"),)
_TELLING = 1.5
