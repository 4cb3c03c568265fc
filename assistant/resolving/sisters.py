"""Figures of which a question holds as much of one as of another: "how long does the gear take", "steering limit".

Each is stated of one case, extension or retraction, tiller or pedals, and the question names none of them. Which one is
meant is asked back; to tell the one whose words come nearest would answer for the other as well.
"""

from __future__ import annotations

from assistant.knowledge.records import Limit
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import bound_value
from assistant.resolving.offering import offered
from assistant.resolving.results import CheckResult, Choices, LimitResult

_MUCH, _NEAR = 0.75, 0.13
"""Share of its way of asking from which a figure is meant as it is, and how far behind a sister of it may be."""
_LOOKED_AT, _MOST = 10, 3
_ALIKE = 0.5


def sister_figures(found: list[Candidate], question: Question, know: Knowledge) -> Choices | None:
    """Return the figures of one kind that a question may mean alike, where it says of none which case is meant."""
    best = found[0]
    told = _told(best)
    if told is None or best.match is None or best.match.covered >= _MUCH or question.context or question.background:
        return None
    others = [c for c in found[1:_LOOKED_AT] if _is_sister(c, best, told)]
    decisive = [c for c in others if c.score >= best.score - _NEAR and _tells_otherwise(c, best)]
    if not decisive:
        return None
    named: dict[str, str] = {}
    for each in (best, *others):
        limit = _told(each)
        if limit and (each in decisive or _alike(limit, told)):
            named.setdefault(limit.id, offered(know, limit.id))
    return Choices(tuple(named.items())[:_MOST], "") if len(named) > 1 else None


def _told(candidate: Candidate) -> Limit | None:
    """Return the one figure that a candidate tells, or holds an amount against."""
    result = candidate.result
    if isinstance(result, LimitResult) and len(result.limits) == 1:
        return result.limits[0]
    return result.checks[0].limit if isinstance(result, CheckResult) and len(result.checks) == 1 else None


def _is_sister(candidate: Candidate, best: Candidate, told: Limit) -> bool:
    """Return whether a candidate tells another figure in the same unit, of which a question holds as little."""
    other = _told(candidate)
    if other is None or other.id == told.id or type(candidate.result) is not type(best.result):
        return False
    if candidate.match is None or best.match is None or candidate.match.barred or not candidate.match.open:
        return False
    one, two = bound_value(other), bound_value(told)
    alike = one is not None and two is not None and one.unit == two.unit
    return alike and candidate.match.share == best.match.share and candidate.match.covered < _MUCH


def _tells_otherwise(candidate: Candidate, best: Candidate) -> bool:
    """Return whether a candidate says something else than the best: two figures, or two verdicts that differ."""
    if isinstance(candidate.result, CheckResult) and isinstance(best.result, CheckResult):
        return candidate.result.checks[0].within != best.result.checks[0].within
    return True


def _alike(one: Limit, two: Limit) -> bool:
    """Return whether two figures are named alike: "time for a normal extension", "time for a free-fall extension"."""
    words, others = set(one.of.split()), set(two.of.split())
    return len(words & others) >= _ALIKE * min(len(words), len(others))
