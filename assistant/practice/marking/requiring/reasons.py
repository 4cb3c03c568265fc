"""A statement with what a question asks for beside it: its reason, the figure, the other case."""

from __future__ import annotations

import re

from assistant.practice.marking.of_statements.compound import ITEM, WHY, plainly
from assistant.practice.marking.of_statements.of_part import asks_figure
from assistant.practice.marking.questions.asked import Asked, as_asked, ask, record_of
from assistant.practice.marking.questions.parts import CASES, POLAR
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates

_NEAR_BY = 4
_AS_NEAR = 0.03


def with_reason(whole: Asked, text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return a statement with the reason of it, where a question asks for both; the statement alone otherwise."""
    if not WHY.search(text):
        return (whole,)
    if isinstance(whole.result, r.LimitResult):
        return (whole, *_reason_of(whole, know))
    if not isinstance(whole.result, r.FactResult):
        return (whole,)
    fact = whole.result.fact
    if fact.why and fact.why in know.base.records:
        return whole, _fact(fact.why, whole, know)
    told = _explained_by(fact.id, know)
    return (_fact(told, whole, know), whole) if told else (whole,)


def _explained_by(reason: str, know: Knowledge) -> str:
    """Return the first statement that a reason explains, "" for none."""
    explained = know.base.having("facts", "why")
    return next((name for name in explained if know.base.records[name].why == reason), "")


def with_its_figure(whole: Asked, text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the figure that a question asks for before "and why", with the reason that it was answered by."""
    fact = whole.result.fact  # type: ignore[union-attr]
    if not WHY.search(text) or "why" not in fact.answers or not asks_figure(text):
        return ()
    figure = ask(WHY.sub("", text), know)
    return (figure[1], whole) if figure and isinstance(figure[1].result, r.LimitResult) else ()


def with_why(whole: Asked, text: str, know: Knowledge) -> Asked:
    """Return the reason that fits a question for one as well as the statement which was taken."""
    fact = whole.result.fact  # type: ignore[union-attr]
    if "why" in fact.answers or not _ASKS_WHY.match(text):
        return whole
    near = [c for c in candidates(whole.question, know)[:_NEAR_BY] if plainly(c)]
    own = max((c.score for c in near if record_of(c.result) is record_of(whole.result)), default=1.0)
    for candidate in near:
        told = getattr(candidate.result, "fact", None)
        if told is not None and "why" in told.answers and candidate.score >= own - _AS_NEAR:
            return as_asked(text, whole.question, candidate.result, know)
    return whole


_ASKS_WHY = re.compile(r"\s*why\b", re.IGNORECASE)


def both_cases(whole: Asked, text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return a statement with that of the other case in its paragraph, where a question wants each case told."""
    fact = whole.result.fact  # type: ignore[union-attr]
    if not CASES.search(text) or (len(fact.points) > 1 and not POLAR.search(text)):
        return ()
    others = [c.result for c in candidates(whole.question, know)[:_NEAR_BY] if c.score >= ITEM and plainly(c)]
    for other in (o for o in others if isinstance(o, r.FactResult) and o.fact.id != fact.id):
        if set(other.fact.sources) & set(fact.sources) and _OTHER_CASE.search(f"{fact.says} {other.fact.says}"):
            return whole, as_asked(text, whole.question, other, know)
    return ()


_OTHER_CASE = re.compile(r"\b(?:otherwise|unless|except|only if)\b", re.IGNORECASE)


def of_what_it_explains(one: Asked, know: Knowledge) -> Asked:
    """Return the statement that a reason explains, where a yes or no on that is asked for, and no reason."""
    fact, part = getattr(one.result, "fact", None), one.answer.question
    if fact is None or "why" not in fact.answers or not POLAR.match(part) or "why" in part.lower():
        return one
    told = _explained_by(fact.id, know)
    return _fact(told, one, know) if told else one


def _reason_of(whole: Asked, know: Knowledge) -> tuple[Asked, ...]:
    """Return the reason of a stated figure that stands in its own paragraph."""
    sources = set(record_of(whole.result).sources)
    for candidate in candidates(whole.question, know)[:_NEAR_BY]:
        fact = getattr(candidate.result, "fact", None)
        if fact and "why" in fact.answers and sources & set(fact.sources):
            return (as_asked(whole.answer.question, whole.question, candidate.result, know),)
    return _nearest_reason(whole, know)


def _nearest_reason(whole: Asked, know: Knowledge) -> tuple[Asked, ...]:
    """Return the reason in the paragraph of a figure that speaks most of what the figure is of."""
    limit = record_of(whole.result)
    named = know.phrase(limit.of).concepts
    beside = {name for source in limit.sources for name in know.base.standing_on[source]}
    told = (know.base.records[name] for name in know.base.ids("facts") if name in beside)
    near = [fact for fact in told if "why" in fact.answers]
    shared = {fact.id: len(named & know.matcher.vocabulary(fact.id)) for fact in near}
    best = max(near, key=lambda fact: shared[fact.id], default=None)
    return (_fact(best.id, whole, know),) if best and shared[best.id] >= _TWO else ()


_TWO = 2


def _fact(name: str, beside: Asked, know: Knowledge) -> Asked:
    record = know.record(name, beside.question.variant)
    return as_asked(beside.answer.question, beside.question, r.FactResult(record), know)
