"""Choose what answers a question: every reading that the knowledge allows is scored, and the best is taken.

An answer is given above a threshold; below it two or three choices are offered; what nothing explains is declined.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any, NamedTuple

from assistant.knowledge.records import (
    Bands,
    Fact,
    Limit,
    Model,
    Procedure,
    Schedule,
    StateTable,
)  # fmt: skip
from assistant.quantities.amounts import Amount
from assistant.resolving import limits as limit_rules
from assistant.resolving.changes import change_result, variant_result
from assistant.resolving.conversions import conversion
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.models import bind, resolve_model
from assistant.resolving.results import (
    BandResult,
    Check,
    CheckResult,
    Choices,
    Declined,
    Elsewhere,
    FactResult,
    LimitResult,
    ModelResult,
    Needed,
    NotApplicable,
    ProcedureResult,
    Result,
    ScheduleResult,
    TableResult,
    TablesResult,
)  # fmt: skip
from assistant.resolving.schedules import leftover, resolve_schedule
from assistant.resolving.state_questions import state_candidates
from assistant.resolving.steering_order import resolve_order
from assistant.understanding.matching import Match, strange
from assistant.understanding.reading import Mention

ANSWERING = 0.7
OFFERING = 0.34
_SAME = 0.02
_NOW = frozenset(("at", "now", "current", "currently", "present", "doing"))
"""Words by which a question means one speed, though it does not say which."""
_LEAST = 0.4
_COVER = 0.6
_AHEAD = 0.08


class Candidate(NamedTuple):
    """A result with its score and how much of the question's weight stands behind it."""

    score: float
    weight: float
    result: Result
    match: Match | None = None


class Scored(NamedTuple):
    """A result with the score it won by; what asks back or declines has none."""

    result: Result
    score: float


def resolve(question: Question, know: Knowledge) -> Result:
    """Return the result that answers a question best, a need, some choices, or the reason for declining."""
    return resolve_scored(question, know).result


def resolve_scored(question: Question, know: Knowledge) -> Scored:
    """Return the best result with its score."""
    reading = question.reading
    if reading.empty or reading.too_long:
        return Scored(Declined((), why="too long" if reading.too_long else "empty"), 0.0)
    elsewhere = _elsewhere(question, know)
    if elsewhere:
        return Scored(elsewhere, 0.9)
    found = candidates(question, know)
    if not found:
        return Scored(Declined(tuple(m.text for m in strange(reading, know.matcher))), 0.0)
    best = found[0]
    if _sure(found):
        return Scored(_tied(found, question, know) or best.result, best.score)
    return Scored(_unsure(found, question, know), 0.0)


def _sure(found: list[Candidate]) -> bool:
    """Return whether the best reading is good enough: by itself, or well ahead of any other."""
    best = found[0]
    if best.match and best.match.barred:
        return False
    if best.score >= ANSWERING:
        return True
    others = [c.score for c in found[1:] if not _same_place(best, c)]
    ahead = best.score - max(others, default=0.0)
    return bool(best.match and best.score >= _LEAST and best.match.covered >= _COVER and ahead >= _AHEAD)


def _same_place(one: Candidate, other: Candidate) -> bool:
    """Return whether two candidates say the same: one record, or statements of one paragraph."""
    if not one.match or not other.match:
        return False
    first, second = (getattr(c.result, "fact", None) or getattr(c.result, "limits", (None,))[0] for c in (one, other))
    same = bool(first and second and set(first.sources[:1]) & set(second.sources[:1]))
    return one.match.record == other.match.record or same


def chosen_record(name: str, question: Question, know: Knowledge) -> Result | None:
    """Return what a record that was chosen answers to the question."""
    match = Match(name, "", 1.0, 1.0, 1.0, 1.0, (), ())
    found = sorted(_from_match(match, question, know), key=lambda c: -c.score)
    return found[0].result if found else None


def candidates(question: Question, know: Knowledge) -> list[Candidate]:
    """Return everything that might answer, best first."""
    given = _given(question, know) | question.background
    excused = {k for c in question.conditions for k in c.where}
    ranked = know.matcher.rank(question.reading, given)
    found: list[Candidate] = []
    for match in ranked[:24]:
        if match.score < 0.1:
            break
        found.extend(_from_match(match, question, know))
    found.extend(_by_figure(question, know))
    found.extend(Candidate(s, w, r) for s, w, r in state_candidates(question, know, excused))
    for special in (_conversion, _changes, _variant):
        candidate = special(question, know, ranked)
        if candidate:
            found.append(candidate)
    found = [_by_asked(c, question, know) for c in found]
    found.sort(key=lambda c: (-round(c.score, 3), -c.weight))
    return found


def _by_figure(question: Question, know: Knowledge) -> Iterable[Candidate]:
    """A limit that depends on a state is meant when its very figure is named: "must I stick to 800 psi?"."""
    for name in know.base.ids("limits"):
        limit = know.base.records[name]
        figure = limit.maximum or limit.minimum
        if not limit.when or not figure:
            continue
        for amount in question.reading.amounts:
            if amount.unit == figure.unit and amount.value == figure.value:
                holds = limit_rules.holds(limit, question, know)
                if holds is not None:
                    found: Result = (
                        LimitResult((limit,), question.conditions)
                        if holds
                        else NotApplicable(limit, "", question.conditions)
                    )
                    yield Candidate(0.99, 3.0, found)


def _by_asked(candidate: Candidate, question: Question, know: Knowledge) -> Candidate:
    """Let a result of another quantity than the one asked for step back: "how long" wants no temperature."""
    asked = question.reading.asked & QUANTITIES
    if asked and isinstance(candidate.result, (TableResult, TablesResult)):
        return candidate._replace(score=candidate.score * (0.9 if "count" in asked else 0.7))
    mine = quantity_of(candidate.result, know)
    if not asked and mine and mine in question.reading.concepts:
        return candidate._replace(score=candidate.score * 1.03)
    if not asked or not mine:
        return candidate
    return candidate._replace(score=candidate.score * (1.04 if mine in asked else 0.66))


QUANTITIES = frozenset(
    (
        "speed",
        "duration",
        "temperature",
        "pressure",
        "angle",
        "mass",
        "length",
        "altitude",
        "energy",
        "deceleration",
        "count",
        "ratio",
        "factor",
    )
)
_AS_ASKED = {"time": "duration", "acceleration": "deceleration", "temperature_difference": "temperature"}


def quantity_of(result: Result, know: Knowledge) -> str:
    """Return the quantity that a computed result is of, as questions name it."""
    unit = ""
    if isinstance(result, ModelResult) and result.values:
        unit = result.values[0].unit
    elif isinstance(result, Needed) and isinstance(result.record, Model):
        unit = result.record.output_unit
    elif isinstance(result, ScheduleResult) and result.given == result.given:
        unit = result.schedule.output_unit if result.value is not None else result.schedule.input_unit
    elif isinstance(result, LimitResult):
        figure = limit_rules.bound_value(result.limits[0])
        unit = figure.unit if figure else ""
    if not unit:
        return ""
    dimension = know.units.get(unit).dimension
    if unit == "ft":
        return "altitude"
    return _AS_ASKED.get(dimension, dimension)


def _given(question: Question, know: Knowledge) -> set[str]:
    """Return the concepts that the question's amounts supply: knots say that a speed is meant."""
    given: set[str] = set()
    for amount in question.reading.amounts:
        given.add(f"#{amount.value:g}")
        if amount.unit:
            dimension = know.units.get(amount.unit).dimension
            given.add({"time": "duration", "acceleration": "deceleration"}.get(dimension, dimension))
            if amount.unit == "deg":
                given.add("temperature")
            if amount.unit in ("ft", "m"):
                given.add("altitude")
    return given


# --- one match, by the kind of its record


def _from_match(match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    record = know.record(match.record, question.variant)
    maker = _MAKERS.get(type(record))
    found = maker(record, match, question, know) if maker else ()
    if _is_general(record, know):
        # What is true of all aeroplanes steps back behind what this type's own documents say.
        return [c._replace(score=c.score * 0.96) for c in found]
    return found


def _is_general(record: Any, know: Knowledge) -> bool:
    documents = know.base.documents
    return all(s.document in documents and documents[s.document].published for s in record.sources)


def _fact(fact: Fact, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    score = match.score * _amount_penalty(match, question.reading.amounts, know)
    score *= _state_penalty(match, question, know)
    yield Candidate(score, match.matched, FactResult(fact), match)


def _amount_penalty(match: Match, amounts: Iterable[Amount], know: Knowledge) -> float:
    """Numbers that a statement does not hold speak against it."""
    penalty = 1.0
    vocabulary = know.matcher.vocabulary(match.record)
    for amount in amounts:
        dimension = know.units.get(amount.unit).dimension if amount.unit else ""
        if (f"#{amount.value:g}:{dimension}" if dimension else f"#{amount.value:g}") not in vocabulary:
            penalty *= 0.62
    return penalty


def _state_penalty(match: Match, question: Question, know: Knowledge) -> float:
    """States that a statement does not speak of speak against it."""
    vocabulary = know.matcher.vocabulary(match.record)
    terms = {know.base.inputs[c.input].term for c in question.conditions if "." not in c.input}
    return 0.62 ** sum(1 for term in terms if term not in vocabulary and not _implied_by(term, vocabulary, know))


def _implied_by(term: str, vocabulary: frozenset[str], know: Knowledge) -> bool:
    return any(term in know.lexicon.implied.get(c, ()) for c in vocabulary)


def _limit(limit: Limit, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    amounts = question.reading.amounts
    amount = limit_rules.amount_for(limit, amounts, question, know)
    holds = limit_rules.holds(limit, question, know)
    applies = limit_rules.applies(limit, question, know)
    score = match.score
    if applies is False:
        score *= 0.5
    elif limit.applies and applies:
        score = min(1.0, score * 1.12)
    if holds is False:
        score *= 0.6
        yield Candidate(score, match.matched, NotApplicable(limit, "", question.conditions), match)
        return
    if limit.when:
        score *= 1.1 if holds else 0.97
    if amount is None:
        if match.tag == "check":
            score *= 0.8
        used = limit_rules.applied_to(limit, amounts, know)
        penalty = _amount_penalty(match, [a for a in amounts if a not in used], know)
        if question.reading.has("maximum", "minimum"):
            bound = "maximum" if limit.maximum else "minimum" if limit.minimum else ""
            score *= 1.1 if bound and question.reading.has(bound) else 0.95
        yield Candidate(score * penalty, match.matched, LimitResult((limit,), question.conditions), match)
        return
    found = limit_rules.check(limit, amount, question, know)
    if found is None:
        return
    if not (limit.maximum or limit.minimum):
        score *= 0.85
    others = [a for a in amounts if a is not amount]
    used = sum(1 for _ in limit.applies)
    rest = max(0, len(others) - used)
    score *= 0.8**rest
    if not question.reading.has("can") and (question.reading.asked & QUANTITIES or "what" in question.reading.words):
        score *= 0.85
    asking = 1.16 if question.reading.has("can") else 1.04
    yield Candidate(min(score * asking, 1.2), match.matched + 0.5, CheckResult((found,)), match)


def _bands(bands: Bands, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    judged = limit_rules.judge(bands, question, know, question.reading.amounts)
    if judged:
        rest = len(question.reading.amounts) - 1
        yield Candidate(min(1.2, match.score * 1.1) * 0.9**rest, match.matched + 0.6, judged, match)
    elif bands.says:
        score = match.score * 0.9 * _amount_penalty(match, question.reading.amounts, know)
        yield Candidate(score, match.matched, BandResult(bands, float("nan"), bands.rules[0], None), match)


def _schedule(schedule: Schedule, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    result = resolve_schedule(schedule, question, know)
    if isinstance(result, ScheduleResult):
        rest = len(leftover(schedule, question, know))
        yield Candidate(min(1.2, match.score * 1.12) * 0.6**rest, match.matched + 0.6, result, match)
    elif isinstance(result, Needed):
        here = 1.15 if _NOW.intersection(question.reading.words) else 0.93
        yield Candidate(match.score * here, match.matched, result, match)
    else:
        shown = 0.93 if question.reading.has("maximum", "list_all", schedule.output) else 0.7
        yield Candidate(match.score * shown, match.matched, ScheduleResult(schedule, float("nan"), None), match)


def _procedure(procedure: Procedure, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    step = int(match.tag.split(".")[1]) if match.tag.startswith("step.") else None
    score = match.score * _amount_penalty(match, question.reading.amounts, know) ** 0.5
    memory = "memory" in question.reading.words
    if question.reading.has("steps"):
        score *= 1.08
    yield Candidate(score, match.matched, ProcedureResult(procedure, step, memory), match)


def _model(model: Model, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    if model.function == "total_order":
        result = resolve_order(model, question, know)
        if result is not None:
            score = 1.1 if isinstance(result, ModelResult) else 0.9
            bar = 0.5 ** len(match.barred)
            yield Candidate(max(match.score, score * bar), match.matched + 1.0, result, match)
        return
    if model.needs and not all(any(question.reading.has(c) for c in _concepts(know, n)) for n in model.needs):
        return
    result = resolve_model(model, question, know)
    if result is None:
        return
    binding = bind(model, question, know)
    score = match.score * 0.62 ** len(binding.left) * (1 - 0.03 * min(binding.cost, 12))
    if isinstance(result, ModelResult):
        if not result.values and not result.note:
            return
        score *= 1.06 if binding.amounts_used else 0.97
        if binding.amounts_used >= 3 and not binding.left and match.open and binding.cost < 3.4:
            score = max(score + 0.25, 0.76 - 0.02 * binding.cost)
        weight = match.matched + 0.35 * binding.amounts_used
        yield Candidate(min(1.15, score), weight, result, match)
    else:
        share = binding.amounts_used / (binding.amounts_used + len(binding.missing))
        base = 0.93 if match.covered > 0.99 else 0.84
        yield Candidate(score * (base + 0.06 * share), match.matched + 0.2 * binding.amounts_used, result, match)


def _concepts(know: Knowledge, phrase: str) -> set[str]:
    return {c for m in know.phrase(phrase).mentions for c in m.concepts}


def _table(table: StateTable, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    return ()


_MAKERS: dict[type, Callable[[Any, Match, Question, Knowledge], Iterable[Candidate]]] = {
    Fact: _fact, Limit: _limit, Bands: _bands, Schedule: _schedule, Procedure: _procedure, Model: _model,
    StateTable: _table,
}  # fmt: skip


# --- readings that are no single record's


def _conversion(question: Question, know: Knowledge, ranked: list[Match]) -> Candidate | None:
    found = conversion(question, know)
    return Candidate(0.97, 1.0, found) if found else None


def _changes(question: Question, know: Knowledge, ranked: list[Match]) -> Candidate | None:
    return _as_candidate(change_result(question, know, ranked))


def _variant(question: Question, know: Knowledge, ranked: list[Match]) -> Candidate | None:
    return _as_candidate(variant_result(question, know, ranked))


def _as_candidate(found: tuple[float, float, Result] | None) -> Candidate | None:
    return Candidate(*found) if found else None


def _elsewhere(question: Question, know: Knowledge) -> Elsewhere | None:
    for mention in question.reading.mentions:
        for concept in mention.concepts:
            if concept.startswith("elsewhere:"):
                fact = know.base.records.get(concept[10:])
                if isinstance(fact, Fact) and _is_about(fact, mention, question, know):
                    return Elsewhere(mention.text, fact)
    return None


def _is_about(fact: Fact, label: Mention, question: Question, know: Knowledge) -> bool:
    """Return whether a label of another fleet is meant: its subject is named, or nothing else is."""
    subject = know.phrase(fact.asks[0]).mentions[0].concepts
    others = [m for m in question.reading.mentions if m is not label and not know.matcher.is_soft(m)]
    inside = not subject.isdisjoint(know.phrase(label.text.split()[0]).concepts)
    return inside or not others or any(not m.concepts.isdisjoint(subject) for m in others)


# --- two that fit, or none


def _tied(found: list[Candidate], question: Question, know: Knowledge) -> Result | None:
    """Join checks of one action; the most restrictive of limits on one quantity leads."""
    best = found[0]
    if isinstance(best.result, CheckResult):
        return _joined_checks(found, question)
    if isinstance(best.result, TableResult):
        return _joined_tables(found, best.score)
    if isinstance(best.result, LimitResult):
        same = [
            c
            for c in found[1:6]
            if isinstance(c.result, LimitResult) and best.score - c.score <= _SAME and c.weight >= best.weight - 0.01
        ]
        limits = [
            best.result.limits[0],
            *(c.result.limits[0] for c in same if isinstance(c.result, LimitResult)),
        ]
        chosen = list(dict.fromkeys(limits))[:3]
        if all(x.when and x.maximum for x in chosen):
            chosen.sort(key=lambda x: x.maximum.value if x.maximum else 0.0)
        return LimitResult(tuple(chosen), question.conditions)
    return None


def _joined_tables(found: list[Candidate], score: float) -> Result | None:
    """Join the rows of every table whose results the question names."""
    results = [
        c.result for c in found if isinstance(c.result, TableResult) and c.result.asked and c.score >= score - 0.3
    ]
    distinct = {r.table.id: r for r in reversed(results)}
    return TablesResult(tuple(reversed(distinct.values()))) if len(distinct) > 1 else None


def _joined_checks(found: list[Candidate], question: Question) -> Result:
    best = found[0]
    assert isinstance(best.result, CheckResult)
    checks: list[Check] = [best.result.checks[0]]
    amounts = {best.result.checks[0].unit}
    for candidate in found[1:12]:
        result = candidate.result
        if (
            not isinstance(result, CheckResult)
            or candidate.score < best.score - 0.2
            or (candidate.match and candidate.match.barred)
        ):
            continue
        other = result.checks[0]
        if other.unit not in amounts and candidate.match and candidate.match.covered > 0.99:
            amounts.add(other.unit)
            checks.append(other)
    checks.sort(key=lambda c: c.within)
    return CheckResult(tuple(checks))


def _unsure(found: list[Candidate], question: Question, know: Knowledge) -> Result:
    """Offer what fits in part, when every word of the question is understood; decline otherwise."""
    unknown = strange(question.reading, know.matcher)
    good = [c for c in found if c.match and c.match.open and c.score >= OFFERING]
    if unknown or not good:
        return Declined(_words(found, unknown), _near(found, know))
    options: dict[str, str] = {}
    for candidate in good[:8]:
        if candidate.match and candidate.match.record not in options:
            options[candidate.match.record] = offered(know, candidate.match.record)
    chosen = list(options.items())[:3]
    if len(chosen) == 1 and good[0].match and good[0].match.covered >= _COVER:
        return good[0].result
    return Choices(tuple(chosen), "") if chosen else Declined((), _near(found, know))


def offered(know: Knowledge, record: str) -> str:
    """Return how a record is offered as a choice: as a question that it answers."""
    found = know.base.records[record]
    for field in ("of", "title"):
        text = getattr(found, field, "")
        if text:
            return str(text)
    asks = getattr(found, "asks", ())
    return str(asks[0]).replace("[", "").replace("]", "") if asks else record


def _words(found: list[Candidate], unknown: list[Mention]) -> tuple[str, ...]:
    if unknown:
        return tuple(dict.fromkeys(m.text for m in unknown))
    best = next((c.match for c in found if c.match), None)
    return tuple(dict.fromkeys(m.text for m in best.barred)) if best else ()


def _near(found: list[Candidate], know: Knowledge) -> tuple[str, ...]:
    near = [c.match.record for c in found if c.match and c.match.covered > 0.5 and c.match.share > 0.2]
    return tuple(dict.fromkeys(offered(know, name) for name in near))[:3]
