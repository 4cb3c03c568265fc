"""Figures that one question asks for under two conditions: "with and without fans", "normally, and once …"."""

from __future__ import annotations

import re

from assistant.conversation.reading_turns.readings import question_of
from assistant.practice.marking.questions.asked import Asked, as_asked
from assistant.practice.marking.reading.amounts import amounts_of
from assistant.practice.marking.reading.said import side_of
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.ranking import candidates
from assistant.understanding.mentions import Reading

_SIBLING = 0.45
_AS_NEAR = 0.05
"""Score from which a figure is asked for as well; of two cases asked for at once, how much less it may be."""
BOTH = re.compile(
    r"\b(?:with (?:\w+ )?(?:and|or) without|without (?:\w+ )?(?:and|or) with|normally and)\b", re.IGNORECASE
)
"""Two cases of one figure asked for at once."""


def with_siblings(one: Asked, text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Add the figures that the same question asks for under another condition: "normally, and once …"."""
    if not isinstance(one.result, r.LimitResult) or " and " not in text:
        return (one,)
    unit = _unit(one.result)
    question = question_of(text, know, one.question.variant)
    explained = know.phrase(one.result.limits[0].of).concepts
    left = [m for m in question.reading.mentions if not know.matcher.is_soft(m) and explained.isdisjoint(m.concepts)]
    found = [one]
    counterparts: list[Asked] = []
    near = candidates(question, know)[:8]
    best = near[0].score if near and BOTH.search(text) else 1.0
    for candidate in near:
        result = candidate.result
        if isinstance(result, r.NotApplicable) and BOTH.search(text):
            result = one.result._replace(limits=(result.limit,))
        if (
            candidate.score < min(_SIBLING, best - _AS_NEAR)
            or not isinstance(result, r.LimitResult)
            or _unit(result) != unit
        ):
            continue
        of = know.phrase(result.limits[0].of)
        if _is_other_band(question.reading, of, know):
            continue
        other = _is_counterpart(one.result.limits[0].of, result.limits[0].of, question)
        if other or any(not of.concepts.isdisjoint(m.concepts) for m in left):
            found.append(as_asked(text, question, result, know))
            counterparts += found[-1:] if other else []
    without = {"with", "without"} <= set(question.reading.words)
    return (one, *counterparts) if counterparts and without else tuple(found)


def _is_other_band(asked_for: Reading, of: Reading, know: Knowledge) -> bool:
    """Return whether a figure is of the other side of a number that a question names: "in turns of more than 60°"."""
    sides = {(a.value, bound) for a in amounts_of(asked_for, know) if (bound := side_of(a, asked_for))}
    named = {value for value, _ in sides}
    told = [(a.value, bound) for a in amounts_of(of, know) if (bound := side_of(a, of))]
    return any(value in named and (value, bound) not in sides for value, bound in told)


def _is_counterpart(of: str, other: str, question: Question) -> bool:
    """Return whether a figure is the other of two asked for: "with and without fans", "normally and once …"."""
    if question.reading.has("normal") or not {"normally", "ordinarily"}.isdisjoint(question.reading.words):
        what, _, when = of.partition(", ")
        if when and other != of and other.partition(", ")[0] == what:
            return True
    both = {"with", "without"}
    mine, theirs = (set(re.findall(r"\w+", each)) - both for each in (of, other))
    return (
        both <= set(question.reading.words) and len({"without" in of.split(), "without" in other.split()}) == 2
        and len(mine ^ theirs) <= _FEW
    )  # fmt: skip


_FEW = 2
"""Words by which the names of two such figures differ at the most."""


def _unit(result: r.LimitResult) -> str:
    limit = result.limits[0]
    figure = limit.value or limit.maximum or limit.minimum
    return figure.unit if figure else ""


def asks_both_ends(result: r.Result, text: str) -> bool:
    """Return whether a figure with two ends is asked for both: "what is the least, and what is the most?"."""
    limit = result.limits[0] if isinstance(result, r.LimitResult) else None
    return limit is not None and bool(limit.minimum and limit.maximum and _BOTH_ENDS.search(text))


_BOTH_ENDS = re.compile(r"\b(?:least|minimum|smallest)\b.*\b(?:most|maximum|greatest)\b|"
                        r"\b(?:most|maximum|greatest)\b.*\b(?:least|minimum|smallest)\b", re.IGNORECASE)  # fmt: skip
