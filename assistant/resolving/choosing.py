"""Choose what answers a question: every reading that the knowledge allows is scored, and the best is taken.

An answer is given above a threshold; below it two or three choices are offered; what nothing explains is declined.
"""

from __future__ import annotations

from collections.abc import Collection

from assistant.frozen import NamedTuple
from assistant.knowledge.records import Fact
from assistant.resolving.asked_quantity import other_bound
from assistant.resolving.candidates import Candidate
from assistant.resolving.figures_named import figure_named, record_named
from assistant.resolving.from_match import from_match
from assistant.resolving.joining import joined
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.labels_told import with_labels
from assistant.resolving.leaning import ANSWERING
from assistant.resolving.offering import lacks_unit, offered, unsure
from assistant.resolving.paragraphs import in_paragraph
from assistant.resolving.ranking import candidates
from assistant.resolving.results import CheckResult, Choices, Declined, Elsewhere, FactResult, LimitResult, Result
from assistant.resolving.sisters import sister_figures
from assistant.resolving.something_named import is_of_another_thing, names_something
from assistant.resolving.sureness import is_sure
from assistant.resolving.unknown_failed import unknown_failed
from assistant.resolving.which_schedule import which_schedule
from assistant.understanding.matching import Match, strange
from assistant.understanding.mentions import BOUNDS, ELSEWHERE, Mention

_HOW = frozenset(("how", "too", "so", "very", "that"))
"""Words before an ordinary one, which is no label then: "how low"."""


class Scored(NamedTuple):
    """A result with the score it won by; what asks back or declines has none."""

    result: Result
    score: float
    record: str = ""


def resolve(question: Question, know: Knowledge) -> Result:
    """Return the result that answers a question best, a need, some choices, or the reason for declining."""
    return resolve_scored(question, know).result


def resolve_scored(question: Question, know: Knowledge, avoid: Collection[str] = ()) -> Scored:
    """Return the best result with its score and record.

    avoid: records that are not meant, as they have been told already.
    """
    reading = question.reading
    if reading.empty or reading.too_long or _only_a_variant(question):
        return Scored(Declined((), why="too long" if reading.too_long else "empty" if reading.empty else ""), 0.0)
    elsewhere = _elsewhere(question, know)
    if elsewhere:
        return Scored(elsewhere, 0.9)
    named = figure_named(question, know)
    if named:
        return Scored(named, 0.9 if isinstance(named, (LimitResult, FactResult)) else 0.0, record_named(named))
    there = in_paragraph(question, know, candidates)
    if there:
        return Scored(*there)
    found = [c for c in candidates(question, know) if not c.match or c.match.record not in avoid]
    if not found:
        return Scored(Declined(tuple(m.text for m in strange(reading, know.matcher))), 0.0)
    best = found[0]
    record = best.match.record if best.match else ""
    unknown = unknown_failed(question, record, know, {k for c in question.conditions for k in c.where})
    if unknown:
        return Scored(unknown, 0.0)
    other = other_bound(best.result, question.reading)
    if other and best.match and (other not in best.match.concepts or best.match.concepts >= BOUNDS):
        return Scored(Declined((), (offered(know, best.match.record),), f"No {other} of that is stated"), 0.0)
    which = which_schedule((c.result for c in found[:3]), question, know)
    if which:
        return Scored(which, 0.0)
    return _told_or_asked(found, question, know)


def _told_or_asked(found: list[Candidate], question: Question, know: Knowledge) -> Scored:
    """Return the best result where it is sure to be meant, or what is asked back or declined."""
    best = found[0]
    if is_sure(found, question) and not (best.score < ANSWERING and lacks_unit(found, best, question, know)):
        if best.match and not names_something(question, know):
            return Scored(Declined(()), 0.0)
        if best.match and is_of_another_thing(question, best.match.record, know):
            return Scored(Declined(()), 0.0)
        sisters = sister_figures(found, question, know)
        if sisters:
            return Scored(sisters, 0.0)
        whole = with_labels(joined(found, question, know) or best.result, question, know)
        return Scored(whole, best.score, best.match.record if best.match else "")
    return Scored(_outside_all(found) or _which(question, know) or unsure(found, question, know), 0.0)


def _only_a_variant(question: Question) -> bool:
    """Return whether a question names a variant and nothing else: "on the long one" asks nothing by itself."""
    reading = question.reading
    if not question.named_variant or reading.amounts or question.conditions or question.background:
        return False
    return all(m.weak for m in reading.mentions)


def _outside_all(found: list[Candidate]) -> CheckResult | None:
    """Return the checks of an amount that no limit it may be meant for allows: each is said."""
    best = found[0].score
    near = [c for c in found[:8] if isinstance(c.result, CheckResult) and c.score >= max(best - 0.15, 0.4)]
    if not near or found[0] not in near or any(c.match and c.match.barred for c in near):
        return None
    checks = {c.result.checks[0].limit.id: c.result.checks[0] for c in near if isinstance(c.result, CheckResult)}
    outside = all(not check.within for check in checks.values())
    return CheckResult(tuple(checks.values())[:3]) if outside and len(checks) > 1 else None


def _which(question: Question, know: Knowledge) -> Choices | None:
    """Ask back when a question names a bound and no thing at all: "what's the limit?"."""
    mentions = question.reading.mentions
    if not question.reading.has("maximum", "minimum") or not all(know.matcher.is_soft(m) for m in mentions):
        return None
    own = [name for name in know.base.ids("limits") if know.base.records[name].maximum]
    options = tuple((name, know.base.records[name].of) for name in own[:3])
    return Choices(options, "Which limit, and of what? For example:") if options else None


def chosen_record(name: str, question: Question, know: Knowledge) -> Result | None:
    """Return what a record that was chosen answers to the question."""
    match = Match(name, "", 1.0, 1.0, 1.0, 1.0, ())
    found = sorted(from_match(match, question, know), key=lambda c: -c.score)
    return found[0].result if found else None


def _elsewhere(question: Question, know: Knowledge) -> Elsewhere | None:
    for mention in question.reading.mentions:
        for concept in mention.concepts:
            if concept.startswith(ELSEWHERE) and question.reading.words[max(0, mention.start - 1)] not in _HOW:
                fact = know.base.records.get(concept[len(ELSEWHERE) :])
                if isinstance(fact, Fact) and _is_about(fact, mention, question, know):
                    return Elsewhere(mention.text, fact)
    return None


def _is_about(fact: Fact, label: Mention, question: Question, know: Knowledge) -> bool:
    """Return whether a label of another fleet is meant: its subject is named, or nothing else is."""
    subject = know.phrase(fact.asks[0]).mentions[0].concepts
    others = [m for m in question.reading.mentions if m is not label and not know.matcher.is_soft(m)]
    inside = not subject.isdisjoint(know.phrase(label.text.split()[0]).concepts)
    return inside or not others or any(not m.concepts.isdisjoint(subject) for m in others)
