"""Which of two kinds of result goes before the other where both answer: a statement, a result, a verdict, a state."""

from __future__ import annotations

from collections.abc import Callable, Sequence, Set

from assistant.resolving import limits as limit_rules
from assistant.resolving.amounts_held import limits_a_reading
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import ACTS, Knowledge, Question
from assistant.resolving.leaning import ANSWERING
from assistant.resolving.results import (
    BandResult,
    CheckResult,
    FactResult,
    LimitResult,
    ProcedureResult,
    ScheduleResult,
    TableResult,
    TablesResult,
)  # fmt: skip
from assistant.understanding.clauses import asking, asks_whether
from assistant.understanding.matching import Match

_LEAST = 0.4
_JUST = 0.01
_NEAR = 0.1
"""How far a verdict may be behind a statement that it goes before."""
_MUCH = frozenset(("much", "many", "available", "left"))
_WHAT = frozenset(("what", "whats", "which", "who", "how", "why", "where"))
_NEARLY_ALL, _MOST = 0.95, 0.75
_TOLD = 0.6
"""Least score of a statement that goes before what follows from a state that is only told of."""
_NAMED = 0.5
"""Share left to a drill that a verdict names as what follows."""
_TELLS = 2.0
"""How much more of a question than such a state that statement must explain."""


def in_their_order(found: list[Candidate], question: Question, know: Knowledge) -> list[Candidate]:
    """Return the candidates with those put back that answer less to the point than one of another kind."""
    ordered = _statement_first(_result_first(_verdict_first(found, question, know), question), question)
    if question.reading.amounts:
        ordered = _leave_asked_first(_act_asked_first(ordered, question, know), question)
        ordered = _verdict_told_first(_verdict_asked_first(ordered, question), question)
        ordered = _schedule_first(_scale_first(ordered, question), question)
    return ordered if _wants_verdict(ordered, question) else _whole_first(ordered)


def _wants_verdict(found: list[Candidate], question: Question) -> bool:
    """Return whether it is asked whether something may be done at an amount, which no statement without it tells, and
    a verdict on just that is among what may answer.
    """
    if not question.reading.has("can") or all(a.unit is None for a in question.reading.amounts):
        return False
    verdicts = (c for c in found if isinstance(c.result, CheckResult) and c.match and c.score >= _TOLD)
    return any(c.match and c.match.covered >= _NEARLY_ALL for c in verdicts)


def _leave_asked_first(found: list[Candidate], question: Question) -> list[Candidate]:
    """Put what follows from states that are only told far behind the verdict on what it is asked leave for: "the
    accumulator reads 2,150 and the pin is in, | are we good to be pushed".
    """
    if not question.reading.has("can") or not any(_is_only_told(c) for c in found):
        return found
    asks = asking(question.reading.words)
    acts = [m.concepts for m in question.reading.mentions if m.start in asks and not (m.weak or "can" in m.concepts)]
    verdicts = (c for c in found if isinstance(c.result, CheckResult) and c.score >= _TOLD and c.match)
    meant = any(c.match and c.match.covered >= _MOST for c in verdicts if _is_of(c, acts))
    return [c._replace(score=c.score * _NAMED) if _is_only_told(c) else c for c in found] if meant else found


def _is_only_told(candidate: Candidate) -> bool:
    """Return whether a candidate is what follows from states, of which nothing is asked."""
    return isinstance(candidate.result, TableResult) and not candidate.result.asked


def _is_of(candidate: Candidate, acts: Sequence[Set[str]]) -> bool:
    match = candidate.match
    return match is not None and any(not match.concepts.isdisjoint(each) for each in acts)


def _act_asked_first(found: list[Candidate], question: Question, know: Knowledge) -> list[Candidate]:
    """Put the verdict on an act that is asked about before one on its contrary, which is only told as how things stand:
    "we have the gear up at 220 knots | may I select it down".
    """
    reading = question.reading
    asks = asking(reading.words)
    families = know.lexicon.families
    acts = [(c, m.start in asks) for m in reading.mentions for c in m.concepts if families.get(c) == ACTS]
    asked = {c for c, asks_it in acts if asks_it}
    told = {c for c, _ in acts} - asked
    if not asked or not told:
        return found
    of_it = [c.score for c in found if _judges(c, asked)]
    return _put_behind(found, of_it, lambda c: _judges(c, told) and not _judges(c, asked)) if of_it else found


def _judges(candidate: Candidate, acts: Set[str]) -> bool:
    """Return whether a candidate is the verdict on an amount of some acts."""
    match = candidate.match
    return isinstance(candidate.result, CheckResult) and match is not None and not match.concepts.isdisjoint(acts)


def _put_behind(
    found: list[Candidate], leading: list[float], follows: Callable[[Candidate], bool]
) -> list[Candidate]:
    """Return the candidates with those that follow scored no higher than just below the best of the leading scores."""
    most = max(leading) - _JUST
    return [c._replace(score=min(c.score, most)) if follows(c) else c for c in found]


def _whole_first(found: list[Candidate]) -> list[Candidate]:
    """Put a statement that explains all but a number, told by the way, before what is too unsure to be told."""
    if max((c.score for c in found), default=1.0) >= ANSWERING:
        return found
    return [
        c._replace(score=ANSWERING)
        if isinstance(c.result, FactResult) and c.match and _explains_all(c.match) and c.score >= _LEAST
        else c
        for c in found
    ]


def _explains_all(match: Match) -> bool:
    return match.open and match.whole and match.share >= _NEARLY_ALL


def _statement_first(found: list[Candidate], question: Question) -> list[Candidate]:
    """Put a statement that a question asks for whole before what follows from a state that it only tells of.

    "The free-fall lever is pulled, what pushes the nose leg out?" asks for no consequence.
    """
    rows = [c for c in found if isinstance(c.result, TableResult) and not c.result.asked and c.score > _LEAST]
    if not rows or not _WHAT.intersection(question.reading.words):
        return found
    least = min(c.weight for c in rows)
    facts = [
        c.score
        for c in found
        if isinstance(c.result, FactResult) and c.match and c.match.open and c.match.whole
        if c.score >= _TOLD and c.weight > least + _TELLS
    ]
    return _put_behind(found, facts or [1.0], lambda c: c in rows)


def _result_first(found: list[Candidate], question: Question) -> list[Candidate]:
    """Put a result that is asked for with yes or no, under states, before a figure: "accu flat, does it hold?"."""
    rows = [c.score for c in found if isinstance(c.result, TableResult) and c.result.asked and c.score >= ANSWERING]
    given = any(not c.implied and not c.is_result for c in question.conditions)
    if not rows or not given or question.reading.amounts or not asks_whether(question.reading.words):
        return found
    return _put_behind(found, rows, lambda c: isinstance(c.result, LimitResult))


def _verdict_first(found: list[Candidate], question: Question, know: Knowledge) -> list[Candidate]:
    """Put a limit on the very reading that says a state before the state: "accumulator 1,700 psi, park on it?"."""
    verdicts = [
        c.score
        for c in found
        if isinstance(c.result, CheckResult) and c.score >= ANSWERING and c.match and c.match.open
        if limits_a_reading(c.result.checks[0], question, know)
    ]
    if not verdicts:
        return found

    def follows(c: Candidate) -> bool:
        return isinstance(c.result, (TableResult, TablesResult)) and not _tells_more(c.result, question)

    return _put_behind(found, verdicts, follows)


def _verdict_asked_first(found: list[Candidate], question: Question) -> list[Candidate]:
    """Put a verdict that is asked for on an amount before a statement or a drill that has no word of it: "210 knots,
    all looks normal, all right to drop the gear?".
    """
    amounts = [a for a in question.reading.amounts if a.unit is not None]
    if not amounts or not question.reading.has("can"):
        return found
    verdicts = [
        c.score
        for c in found
        if isinstance(c.result, CheckResult) and c.match and c.match.covered >= _NEARLY_ALL and c.score >= _TOLD
    ]
    if not verdicts or max(verdicts) + _NEAR < max(c.score for c in found):
        return found
    return _put_behind(found, verdicts, lambda c: isinstance(c.result, (FactResult, ProcedureResult)))


def _verdict_told_first(found: list[Candidate], question: Question) -> list[Candidate]:
    """Put a drill far behind the verdict on a reading that is only told of, where the limit itself names that drill as
    what follows: "we flew at 270 with the gear down" is within it or not.
    """
    if question.reading.has("steps"):
        return found
    named = " ".join(
        check.limit.exceeded
        for c in found
        if isinstance(c.result, CheckResult) and c.match and c.match.covered >= _NEARLY_ALL and c.score >= _TOLD
        for check in c.result.checks
    )
    return [c._replace(score=c.score * _NAMED) if _is_named(c, named) else c for c in found] if named else found


def _is_named(candidate: Candidate, named: str) -> bool:
    """Return whether a candidate is a drill whose paragraph some words name."""
    if not isinstance(candidate.result, ProcedureResult):
        return False
    return any(f"({s.document} {s.paragraph})" in named for s in candidate.result.procedure.sources)


def _scale_first(found: list[Candidate], question: Question) -> list[Candidate]:
    """Put a whole scale that judges a reading before the check against one of its edges, where no more is asked than
    the reading: "accumulator 1900 ok", but not "to rely on the parking brake".
    """
    for scale in [c for c in found if isinstance(c.result, BandResult) and c.match and c.score >= ANSWERING]:
        most = scale.score - _JUST
        found = [
            c._replace(score=most) if c.score > most and _checks_an_edge(c, scale, question) else c for c in found
        ]
    return found


def _checks_an_edge(candidate: Candidate, whole: Candidate, question: Question) -> bool:
    checks = candidate.result.checks if isinstance(candidate.result, CheckResult) else ()
    scale = whole.result
    if not isinstance(scale, BandResult) or len(checks) != 1 or not candidate.match or not whole.match:
        return False
    if checks[0].given != scale.given or checks[0].unit != scale.bands.unit:
        return False
    own, other = candidate.match.concepts, whole.match.concepts
    said = [m.concepts for m in question.reading.mentions if not m.weak]
    if any(not own.isdisjoint(c) and other.isdisjoint(c) for c in said):
        return False
    edges = {rule.value for rule in scale.bands.rules if rule.unit == scale.bands.unit}
    limit = checks[0].limit
    if limit.maximum and limit.minimum:
        return False  # a range tells as much as the scale
    # A figure that is only stated allows and forbids nothing.
    return checks[0].bound in edges or not (limit.maximum or limit.minimum)


def _schedule_first(found: list[Candidate], question: Question) -> list[Candidate]:
    """Put what a schedule allows at a bare number before the bound of it all: "tiller limit at 60"."""
    words = question.reading.words
    at = {a.value for a in question.reading.amounts if a.unit is None and words[a.start - 1 : a.start] == ("at",)}
    if not at or not (question.reading.has("maximum") or _MUCH.intersection(words)):
        return found
    read = [c for c in found if isinstance(c.result, ScheduleResult) and c.result.given in at and c.score >= _TOLD]
    if not read:
        return found
    units = {c.result.schedule.output_unit for c in read if isinstance(c.result, ScheduleResult)}

    def follows(c: Candidate) -> bool:
        if isinstance(c.result, LimitResult):
            figure = limit_rules.bound_value(c.result.limits[0])
            return figure is not None and figure.unit in units
        return isinstance(c.result, CheckResult) and {check.unit for check in c.result.checks} <= units

    return _put_behind(found, [c.score for c in read], follows)


def _tells_more(result: TableResult | TablesResult, question: Question) -> bool:
    """Return whether a state is asked for that rests on more than a reading: "System 1 lost, accumulator 1,700"."""
    if not isinstance(result, TableResult) or not result.asked or question.reading.has("rely"):
        return False
    read = {a.start for a in question.reading.amounts}
    return any(read.isdisjoint(c.where) for row in result.rows for c in row.conditions)
