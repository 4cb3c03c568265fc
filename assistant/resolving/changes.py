"""What a revision changed, and how a variant differs."""

from __future__ import annotations

from assistant.knowledge.records import Change, Limit
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import ChangeResult, CompareResult, Result, VariantResult
from assistant.understanding.matching import Match

Scored = tuple[float, float, Result]
_STRANGE = 0.62
"""Share left for each amount of a question that is neither the former figure nor the present one."""


def changes_of(record: str, know: Knowledge) -> tuple[Change, ...]:
    """Return the changes that a revision made to a record."""
    return tuple(c for c in know.base.changes.values() if c.record == record)


def change_result(question: Question, know: Knowledge, ranked: list[Match]) -> Scored | None:
    """Return the change that a question asks about, or all of them when it names none."""
    if not question.reading.has("changed"):
        return None
    others = [m for m in question.reading.mentions if not m.weak and not m.holds("changed")]
    content = [m for m in others if not know.matcher.is_soft(m)]
    changes = list(know.base.changes.values())
    if not content or all(m.holds("document") or m.holds("source_of") for m in content):
        return (0.95, 1.0, ChangeResult(tuple(changes), True)) if changes else None
    scored = [(_fit(question, know, change), change) for change in changes]
    best = max(scored, key=lambda pair: pair[0], default=None)
    if best and best[0] > 0.55:
        tied = tuple(c for s, c in scored if s > best[0] - 0.05)
        told = {a.value for c in tied for text in (c.now, c.formerly) for a in know.phrase(text).amounts}
        strange = sum(1 for a in question.reading.amounts if a.value not in told)
        return (0.7 + 0.3 * best[0]) * _STRANGE**strange, 2.0, ChangeResult(tied)
    return None


def _fit(question: Question, know: Knowledge, change: Change) -> float:
    """Return the share of the question's content that a changed record and its subject explain."""
    subject = know.phrase(change.subject)
    known = subject.concepts | know.matcher.vocabulary(change.record)
    content = [m for m in question.reading.mentions if not m.weak and not m.holds("changed")]
    if not content:
        return 0.0
    explained = sum(know.matcher.mention_weight(m) for m in content if not known.isdisjoint(m.concepts))
    total = sum(know.matcher.mention_weight(m) for m in content) or 1.0
    parts = [m for m in subject.mentions if not m.weak]
    covered = sum(1 for m in parts if not m.concepts.isdisjoint(question.reading.concepts)) / (len(parts) or 1)
    return explained / total * (0.4 + 0.6 * covered)


def variant_result(question: Question, know: Knowledge, ranked: list[Match]) -> Scored | None:
    """Return how the variants differ: in all, or in the one figure that the question names."""
    reading = question.reading
    comparing = reading.has("compare")
    both = len(set(reading.variants)) > 1
    if not comparing and not both:
        return None
    named = [v for v in reading.variants if v in know.variants[1:]] or know.variants[1:2]
    if not named or not (reading.variants or reading.has("variant")):
        return None
    content = [m for m in reading.mentions if not m.weak and not know.matcher.is_soft(m) and not m.holds("variant")]
    if not content and reading.amounts:
        return _of_figure(question, know)
    if not content:
        overrides = tuple(o for o in know.base.overrides if o.variant == named[0])
        return 0.96, 1.0, VariantResult(named[0], overrides)
    for match in ranked[:4]:
        record = know.base.records[match.record]
        if isinstance(record, Limit) and match.open and match.covered > 0.8:
            found = tuple((v, know.record(match.record, v)) for v in know.variants)
            return 0.98, match.matched, CompareResult(found)
    return None


def _of_figure(question: Question, know: Knowledge) -> Scored | None:
    """Return the variants' figures of the limit that is named by its figure: "is the 800 psi rule different?"."""
    amount = question.reading.amounts[0]
    for name in know.base.ids("limits"):
        limit = know.base.records[name]
        figure = limit.maximum or limit.minimum or limit.value
        if figure and amount.unit and figure.unit == amount.unit and figure.value == amount.value:
            return 0.9, 1.0, CompareResult(tuple((v, know.record(name, v)) for v in know.variants))
    return None
