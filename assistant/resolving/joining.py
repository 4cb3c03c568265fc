"""Answers that belong together: limits on one quantity, checks of one action, tables asked for at once."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TypeVar

from assistant.knowledge.records import Limit, Source
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import check
from assistant.resolving.results import (
    BandResult,
    BothResult,
    Check,
    CheckResult,
    FactResult,
    LimitResult,
    Result,
    ScheduleResult,
    TableResult,
    TablesResult,
)  # fmt: skip

_ASKED = 0.75
"""Share of its way of asking that another check must have, to be held against its amount as well."""
_NAMED = 0.9
"""Share of its way of asking that another schedule must have, to be told as well."""
_NEEDED = 0.5
"""Share of its way of asking that a check must have, to be given with one whose verdict needs it to hold."""
_MUCH = 0.5
"""Share of the question that another check's way of asking must explain for a limit that is broken to be told."""
_NEAR = 0.08
_EQUAL = 0.03
_ALIKE = 0.05
"""How far apart the scores of two verdicts may be for the reading to be of either thing."""
_ABOVE = 1.1
"""How many times a set figure a reading may be, and still be one of it."""
_SAME = 0.02
"""How far apart the scores of two limits may be for both to be meant."""

_WHILE = " while "
_BARE = frozenset(("at", "the", "is", "it", "so", "then", "and", "what", "about", "with", ",", "?", ".", "-", ":", "!"))
_STANDING = frozenset({
    "fly", "flying", "flew", "flown", "cruise", "cruising", "level", "hold", "holding", "with", "already", "still",
    "keep", "keeping", "stay", "staying", "leave", "left", "is", "was", "have", "has", "got",
})  # fmt: skip
"""Words by which something has been done already, and only stands so."""
_R = TypeVar("_R")


def joined(found: list[Candidate], question: Question, know: Knowledge) -> Result | None:
    """Return the best result with those that belong to it, or None when it stands alone."""
    best = found[0]
    if isinstance(best.result, CheckResult):
        return _joined_checks(found, best.result, question, know)
    if isinstance(best.result, TableResult):
        return _joined_tables(found, best.score)
    if isinstance(best.result, BandResult):
        return _both_bands(found, best.result) or _either_band(found, best.result)
    if isinstance(best.result, ScheduleResult):
        return _both_schedules(found, best.result)
    alone = None
    if isinstance(best.result, LimitResult):
        alone = _joined_limits(found, best.result, question)
    if isinstance(best.result, (FactResult, LimitResult)) and (alone is None or len(alone.limits) == 1):
        return _both(found, best.result) or alone
    return alone


def _others(found: list[Candidate], kind: type[_R], least: float) -> Iterator[_R]:
    """Yield the next results of a kind, where they and the best one have more than a share of their way of asking."""
    best = found[0].match
    for c in found[1:6] if best and best.covered > least else ():
        if isinstance(c.result, kind) and c.match and not c.match.barred and c.match.covered > least:
            yield c.result


def _both_bands(found: list[Candidate], first: BandResult) -> BothResult | None:
    """Join the verdicts on readings of two things: "main tyres 185 and nose tyres 130"."""
    for other in _others(found, BandResult, _ASKED):
        differs = other.bands.id != first.bands.id and other.given != first.given
        if differs and other.bands.unit == first.bands.unit:
            worse = other.rule.verdict == "outside" and first.rule.verdict != "outside"
            return BothResult(other, first) if worse else BothResult(first, other)
    return None


def _either_band(found: list[Candidate], first: BandResult) -> Result | None:
    """Join the verdicts on one reading of two things of a kind, where the question does not say of which it is:
    "strut 65 mm" is too little for the nose, and enough for a main leg.
    """
    best = found[0]
    for c in found[1:4]:
        other = c.result
        if not isinstance(other, BandResult) or best.score - c.score > _ALIKE or not _like(first, other):
            continue
        if _too_much(other):
            return None
        if _too_much(first):
            return other
        worse = other.rule.verdict == "outside" and first.rule.verdict != "outside"
        return BothResult(other, first) if worse else BothResult(first, other)
    return None


def _like(one: BandResult, other: BandResult) -> bool:
    """Return whether two verdicts hold one reading to rules of one paragraph, each for its own thing."""
    differs = one.bands.id != other.bands.id and one.bands.unit == other.bands.unit and one.given == other.given
    return differs and one.bands.sources[:1] == other.bands.sources[:1] and one.bands.of != other.bands.of


def _too_much(result: BandResult) -> bool:
    """Return whether a reading is so far above what is set that another thing's is meant."""
    return result.reference is not None and result.given > _ABOVE * result.reference


def _both_schedules(found: list[Candidate], first: ScheduleResult) -> BothResult | None:
    """Join two schedules that a question names, read at its one amount: "tiller and pedal limits at 45"."""
    for other in _others(found, ScheduleResult, _NAMED):
        if other.schedule.id != first.schedule.id and other.given == first.given and first.value is not None:
            return BothResult(first, other)
    return None


def _both(found: list[Candidate], first: FactResult | LimitResult) -> BothResult | None:
    """Join two statements of different paragraphs that fit equally well: telling both is better than a guess."""
    best = found[0]
    for c in found[1:4]:
        if best.score - c.score > _EQUAL:
            break
        other = c.result
        if not isinstance(other, (FactResult, LimitResult)) or not c.match or not best.match or c.match.barred:
            continue
        if c.match.record != best.match.record and not set(_sources(first)) & set(_sources(other)):
            return BothResult(first, other)
    return None


def _sources(result: FactResult | LimitResult) -> tuple[Source, ...]:
    record = result.fact if isinstance(result, FactResult) else result.limits[0]
    return tuple(record.sources[:1])


def _joined_limits(found: list[Candidate], first: LimitResult, question: Question) -> LimitResult:
    """Join limits that fit as well; the most restrictive leads."""
    best = found[0]
    limits = [first.limits[0]]
    for c in found[1:6]:
        if isinstance(c.result, LimitResult) and best.score - c.score <= _SAME and c.weight >= best.weight - 0.01:
            limits.append(c.result.limits[0])
    chosen = list(dict.fromkeys(limits))[:3]
    if all(x.when and x.maximum for x in chosen):
        chosen.sort(key=lambda x: x.maximum.value if x.maximum else 0.0)
    return LimitResult(tuple(chosen), question.conditions, claimed=first.claimed)


def _joined_tables(found: list[Candidate], score: float) -> Result | None:
    """Join the rows of every table whose results the question names."""
    results = [
        c.result for c in found if isinstance(c.result, TableResult) and c.result.asked and c.score >= score - 0.3
    ]
    distinct = {r.table.id: r for r in reversed(results)}
    return TablesResult(tuple(reversed(distinct.values()))) if len(distinct) > 1 else None


def _joined_checks(found: list[Candidate], first: CheckResult, question: Question, know: Knowledge) -> Result:
    """Join the checks of an action's other amounts; one that is not within leads."""
    checks: list[Check] = [first.checks[0]]
    units = {first.checks[0].unit}
    for candidate in found[1:12]:
        other = _other_check(candidate, found[0].score)
        if other and _warns(other, checks, candidate, found[0]):
            checks.append(other)
        elif other and _is_same_number(other, checks):
            continue  # one number is not two things at once
        elif other and other.unit not in units and not (first.checks[0].limit.second and other.unit == "ft"):
            units.add(other.unit)
            checks.append(other)
    checks.extend(_broken_besides(found, checks, know))
    checks.extend(_broken_needs(found, checks, know))
    checks.extend(_needs_unasked(checks, question, know))
    checks.extend(_while_it_moves(checks, question, know))
    checks.sort(key=lambda c: c.within)
    return CheckResult(tuple(checks))


def _broken_besides(found: list[Candidate], checks: list[Check], know: Knowledge) -> Iterator[Check]:
    """Yield the checks of other amounts that a question gives, where one breaks a limit on the same thing.

    "Within" on the temperature of the brakes would mislead who has said that the stay is too long for the brake.
    """
    units = {each.unit for each in checks}
    things = _of_things(checks[0].limit, know)
    for candidate in found[1:] if all(each.within for each in checks) else ():
        match = candidate.match
        if not isinstance(candidate.result, CheckResult) or not match or match.barred:
            continue
        other = candidate.result.checks[0]
        asked = match.covered >= _NAMED and match.share >= _MUCH
        if not asked or other.within or other.beyond or other.limit.applies or other.unit in units:
            continue
        if things.isdisjoint(_of_things(other.limit, know)):
            continue
        units.add(other.unit)
        yield other


def _of_things(limit: Limit, know: Knowledge) -> frozenset[str]:
    """Return the things that a limit is on."""
    return frozenset(c for m in know.matcher.telling(know.phrase(limit.of)) for c in m.concepts if c[0] not in "#~")


def _broken_needs(found: list[Candidate], checks: list[Check], know: Knowledge) -> Iterator[Check]:
    """Yield the checks of what must hold besides, where the question gives an amount at which it does not.

    "Within" with "also needed: at or below 20,000 ft" would mislead who has said that it is 21,000 ft.
    """
    units = {check.unit for check in checks}
    needs = [n for check in checks if check.within for need in check.limit.needed for n in know.phrase(need).amounts]
    for candidate in found if needs else ():
        match = candidate.match
        if not isinstance(candidate.result, CheckResult) or not match or match.barred or match.covered < _NEEDED:
            continue
        other = candidate.result.checks[0]
        if other.within or other.unit in units or _is_same_number(other, checks):
            continue
        if any(n.unit == other.unit and n.value == other.bound for n in needs):
            units.add(other.unit)
            yield other


def _needs_unasked(checks: list[Check], question: Question, know: Knowledge) -> Iterator[Check]:
    """Yield such checks also where the question names nothing that their limits are asked for by."""
    units = {check.unit for check in checks}
    needs = [need for check in checks if check.within for need in check.limit.needed]
    for amount in question.reading.amounts if needs else ():
        if amount.unit is None or any(fits(amount, unit, know.units) is not None for unit in units):
            continue
        for limit in _limits_needed(needs, amount, know):
            other = check(limit, amount, question, know)
            if other and not other.within:
                units.add(other.unit)
                yield other
                break


def _while_it_moves(checks: list[Check], question: Question, know: Knowledge) -> Iterator[Check]:
    """Yield the check of what must hold while something is done, which the same reading does not meet, where a question
    leaves open whether it is done or has been: "gear down at 240 kt, ok?".
    """
    first = checks[0]
    if len(checks) > 1 or not first.within or not _leaves_open(question):
        return
    needs = [need for need in first.limit.needed if _WHILE in need]
    for amount in question.reading.amounts if needs else ():
        for limit in _limits_needed(needs, amount, know):
            other = check(limit, amount, question, know)
            if other and other.unit == first.unit and other.given == first.given and not other.within:
                yield other


def _leaves_open(question: Question) -> bool:
    """Return whether nothing is said but a thing, an amount and whether it may be: no verb tells how things stand."""
    words = question.reading.words
    said = {k for m in question.reading.mentions for k in m.taken if m.known}
    said.update(k for a in question.reading.amounts for k in range(a.start, a.end))
    said.update(k for m in question.reading.mentions if m.weak or m.passing for k in m.taken)
    opened = max((k for k, word in enumerate(words) if word == ":"), default=0)
    told = (k in said or word in _BARE for k, word in enumerate(words) if k >= opened)
    return all(told) and _STANDING.isdisjoint(words)


def _limits_needed(needs: Sequence[str], amount: Amount, know: Knowledge) -> Iterator[Limit]:
    """Yield the limits whose bound and paragraph are named in what must hold, of a quantity that an amount can be."""
    bounds = {
        (n.value, n.unit): need
        for need in needs
        for n in know.phrase(need).amounts
        if n.unit and fits(amount, n.unit, know.units) is not None
    }
    for name in know.base.ids("limits") if bounds else ():
        limit: Limit = know.base.records[name]
        figure = limit.maximum or limit.minimum
        need = bounds.get((figure.value, figure.unit)) if figure and not limit.when else None
        if need and any(f"{s.document} {s.paragraph}" in need for s in limit.sources):
            yield limit


def _is_same_number(other: Check, checks: list[Check]) -> bool:
    """Return whether a check reads a number anew, in another unit, that is held against a limit already."""
    return any(c.given == other.given and c.unit != other.unit for c in checks)


def _warns(other: Check, checks: list[Check], candidate: Candidate, best: Candidate) -> bool:
    """Return whether a limit that may as well be meant is exceeded, though the best one is not."""
    near = best.score - candidate.score <= _NEAR and bool(candidate.match and candidate.match.whole)
    known = {c.limit.id for c in checks}
    bound = other.limit.maximum or other.limit.minimum
    return near and bool(bound) and not other.within and checks[0].within and other.limit.id not in known


def _other_check(candidate: Candidate, best: float) -> Check | None:
    """Return the check of a candidate that is nearly as good as the best and wholly asked for."""
    match = candidate.match
    if not isinstance(candidate.result, CheckResult) or candidate.score < best - 0.2:
        return None
    return candidate.result.checks[0] if match and match.open and match.covered > _ASKED else None
