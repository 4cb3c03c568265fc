"""What a matching limit or band answers to a question: its figure, or a verdict on an amount held against it."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from assistant.knowledge.records import Bands, Limit, Schedule
from assistant.quantities.amounts import Amount
from assistant.resolving import claims, reading_asked
from assistant.resolving import limits as limit_rules
from assistant.resolving.amounts_for import fits
from assistant.resolving.amounts_held import amount_for, applied_to, own_amounts, reads_a_state
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.candidates import OPEN, UNCOMPARED, Candidate, amount_penalty
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import (
    BandResult,
    BothResult,
    Check,
    CheckResult,
    LimitResult,
    Needed,
    NotApplicable,
    Result,
)
from assistant.resolving.schedule_candidates import of_schedule
from assistant.understanding.matching import Match

_NO_VERDICT = 0.8
_BELIEVED_RIGHTLY = 1.2
_FAR_OFF = 0.6
_OF_ANOTHER_ACT = 0.6
_SELDOM_BARE = {"min": ("duration",), "s": ("duration",), "h": ("duration",), "m": ("length", "distance")}
"""Units that a bare number seldom has, with what names the quantity."""
_BESIDES = 0.9
"""What a limit's schedule is worth at most where an amount is given besides the one that it is read at."""


def of_limit(limit: Limit, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    """Yield what is stated of a limit, or the verdict on an amount, or that it does not hold here."""
    amount = amount_for(limit, question, know)
    holds = limit_rules.holds(limit, question, know)
    score = _where_it_applies(match.score, limit, question, know)
    if holds is False:
        yield Candidate(score * 0.6, match.matched, NotApplicable(limit, "", question.conditions), match)
        return
    if limit.when and (limit.value is None or (holds and len(question.conditions) > 1)):
        score *= 0.97 if not holds else 1.1 if _names_more(question) else 1.0
    amount = None if amount and _stops_at(amount, limit, question, know) else amount
    besides = amount is not None and _also_read_at(amount, question)
    schedule = _schedule_below(limit, question, know) if amount is None or besides else None
    if schedule:  # "rolling at 40 kt, what's the most the handwheel can order": the most there
        meant = match._replace(score=min(match.score, _BESIDES)) if besides else match
        yield from of_schedule(schedule, meant, question, know)
        return
    if amount is None:
        enough = reading_asked.whether_enough(limit, question, know) or reading_asked.to_judge(limit, question, know)
        yield _stated(limit, score * (_NO_VERDICT if enough else 1.0), match, question, know)
        if enough or reading_asked.for_verdict(limit, question):
            kind = enough or know.units.get((limit.maximum or limit.minimum).unit).dimension.replace("_", " ")  # type: ignore[union-attr]
            yield Candidate(score * 1.05, match.matched, Needed(limit, (f"the {kind}",), (kind,)), match)
        return
    if limit_rules.is_bound(amount, question) and claims.believed(question):
        # "It counts as lost below 2,000, right?" believes a bound, and reads nothing: the bound itself is told.
        yield Candidate(score * 1.05, match.matched, LimitResult((limit,), question.conditions), match)
        return
    found = limit_rules.check(limit, amount, question, know)
    claimed = found.given if found is not None and claims.is_claimed(found, amount, question, match) else None
    if found is not None and (claims.names_it(found, question, know) or claimed is not None):
        told = LimitResult((limit,), question.conditions, claimed=claimed)
        whole = claimed is not None and amount is not None and claims.is_said_of_the_whole(amount, question, match)
        yield Candidate(score * (_BELIEVED_RIGHTLY if whole else 1.05), match.matched + 0.5, told, match)
    elif found is not None:
        # The figure itself, believed, is of this limit and of no sibling of it.
        true = found.given == found.bound and claims.believed(question)
        yield _checked(found, amount, score * (_BELIEVED_RIGHTLY if true else 1.0), match, question, know)


def _schedule_below(limit: Limit, question: Question, know: Knowledge) -> Schedule | None:
    """Return the schedule that a limit is the top of, where a question gives an amount to read it at."""
    units = {a.unit for a in question.reading.amounts if a.unit}
    ends = any(_says_end(a, question) for a in question.reading.amounts)
    for name in know.base.ids("schedules") if units or ends else ():
        found = know.record(name, question.variant)
        if isinstance(found, Schedule) and found.top == limit.id and (ends or found.input_unit in units):
            return found
    return None


def _also_read_at(amount: Amount, question: Question) -> bool:
    """Return whether another amount with its unit tells where the most is asked for: "68 at 30 knots"."""
    return any(a is not amount and a.unit not in (None, "count", amount.unit) for a in question.reading.amounts)


def _stops_at(amount: Amount, limit: Limit, question: Question, know: Knowledge) -> bool:
    """Return whether a bare number is where a control is said to end, and no angle: "does the tiller die at 60"."""
    return _says_end(amount, question) and _schedule_below(limit, question, know) is not None


def _is_reached(amount: Amount, limit: Limit, question: Question, know: Knowledge) -> bool:
    """Return whether a bare number behind "at" is where a schedule is read that a limit tops: "tiller at 42"."""
    before = question.reading.words[max(0, amount.start - 1) : amount.start]
    return before == ("at",) and any(know.base.records[n].top == limit.id for n in know.base.ids("schedules"))


def _says_end(amount: Amount, question: Question) -> bool:
    before = question.reading.words[max(0, amount.start - 1) : amount.start]
    return amount.unit is None and before in (("at",), ("by",)) and question.reading.has("@lost")


def _names_more(question: Question) -> bool:
    """Return whether a question names more than the states a limit holds under: "emergency mode" asks what it is."""
    told = {k for c in question.conditions for k in c.where}
    return any(not m.weak and told.isdisjoint(m.taken) for m in question.reading.mentions)


def _where_it_applies(score: float, limit: Limit, question: Question, know: Knowledge) -> float:
    applies = limit_rules.applies(limit, question, know)
    if applies is False:
        return score * 0.5
    if not limit.applies or not applies:
        return score
    figure = limit_rules.bound_value(limit)
    named = figure is not None and question.reading.has(know.units.get(figure.unit).dimension)
    # "Is it good for eleven hours?": that a limit would apply is no sign that it is meant, unless it is spoken of.
    meant = named or not question.reading.has("can") or not OPEN.isdisjoint(question.reading.words)
    return min(1.0, score * 1.12) if meant else score


def _stated(limit: Limit, score: float, match: Match, question: Question, know: Knowledge) -> Candidate:
    """Return the limit's own figure, for a question that gives none to hold against it."""
    amounts = question.reading.amounts
    if match.tag == "check" or reading_asked.PRESENT.intersection(question.reading.words):
        score *= 0.8
    used = applied_to(limit, amounts, know, question.reading.words)
    left = [a for a in amounts if a not in used and not reads_a_state(a, question)]
    penalty = amount_penalty(match, left, know)
    if question.reading.has("maximum", "minimum"):
        bound = "maximum" if limit.maximum else "minimum" if limit.minimum else ""
        score *= 1.1 if bound and question.reading.has(bound) else 0.95
    return Candidate(score * penalty, match.matched, LimitResult((limit,), question.conditions), match)


def _asks_for_another_act(match: Match, question: Question, know: Knowledge) -> bool:
    """Return whether what a question asks to be allowed is nothing that a record speaks of: "can I silence it?"."""
    said = know.matcher.vocabulary(match.record)
    mentions = question.reading.mentions
    after = (m for one, m in pairwise(mentions) if one.holds("can") and m.start == one.end and m.text != "be")
    return any(not know.matcher.is_soft(m) and said.isdisjoint(m.concepts | m.implied) for m in after)


def _checked(
    found: Check, amount: Amount, score: float, match: Match, question: Question, know: Knowledge
) -> Candidate:
    """Return the verdict on an amount; amounts that the limit has no use for speak against it."""
    limit, reading = found.limit, question.reading
    if not (limit.maximum or limit.minimum):
        score *= 0.85 if reading.has("can") or "is" in reading.words else 0.75
        score *= _NO_VERDICT if reading_asked.judging_bands(limit, know) else 1.0
        score *= _OF_ANOTHER_ACT if _asks_for_another_act(match, question, know) else 1.0
    if limit_rules.is_far(found, amount):
        score *= _FAR_OFF
    if amount.unit is None and found.unit in _SELDOM_BARE and not reading.has(*_SELDOM_BARE[found.unit]):
        score *= UNCOMPARED
    if amount.unit is None and not amount.value:
        score *= UNCOMPARED
    elif amount.unit is None and _is_reached(amount, limit, question, know):
        score *= _FAR_OFF
    others = [a for a in reading.amounts if a is not amount]
    used = len(limit.applies) + (1 if found.bound_from or (limit.second and "ft" in {a.unit for a in others}) else 0)
    alike = sum(1 for a in others if a.unit == amount.unit)
    score *= (0.65 if alike and not used else 0.8) ** max(0, len(others) - used)
    if not reading.has("can") and (reading.asked & QUANTITIES or "what" in reading.words):
        score *= 0.85
    asking = 1.04
    if reading.has("can"):
        asking = 1.2 if OPEN.isdisjoint(reading.words) else 1.16
    return Candidate(min(score * asking, 1.2), match.matched + 0.5, CheckResult((found,)), match)


def of_bands(bands: Bands, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    """Yield the band that amounts fall into, or what bands lack, or what they say as a whole."""
    amounts = question.reading.amounts
    held_true = any(limit_rules.is_bound(a, question) for a in amounts) and claims.believed(question)
    mine = own_amounts(bands.id, question, know)
    judged = None if held_true else limit_rules.judge(bands, question, know, mine)
    if judged:
        compared = bands.unit == "K" and len(amounts) > 1
        others = [] if compared else [a for a in amounts if fits(a, bands.unit, know.units) != judged.given]
        strange = sum(1 for a in others if a.unit and fits(a, bands.unit, know.units) is None and a.unit != "percent")
        rest = 0 if compared else len(amounts) - 1 - strange - 0.5 * (len(amounts) - len(mine))
        score = min(1.2, match.score * (1.35 if compared and question.reading.has("can") else 1.1))
        score *= UNCOMPARED if _wants_distance(bands, question, know) else 1.0
        result = with_each(bands, judged, question, know) if compared else judged
        yield Candidate(score * 0.9**rest * 0.6**strange, match.matched + 0.6, result, match)
    elif to_read := reading_asked.to_judge(bands, question, know):
        yield Candidate(match.score * 1.05, match.matched, Needed(bands, (f"the {to_read}",), (to_read,)), match)
    elif bands.says:
        score = match.score * 0.9 * amount_penalty(match, amounts, know)
        yield Candidate(score, match.matched, BandResult(bands, float("nan"), bands.rules[0], None), match)


def _wants_distance(bands: Bands, question: Question, know: Knowledge) -> bool:
    """Return whether a distance is named that a verdict on another quantity has no word of: "RTO stopping distance"."""
    if know.units.get(bands.unit).dimension == "length":
        return False
    explained = know.matcher.vocabulary(bands.id)
    return any(
        m.holds("distance") and explained.isdisjoint(m.concepts) for m in question.reading.mentions if not m.weak
    )


def with_each(bands: Bands, judged: BandResult, question: Question, know: Knowledge) -> Result:
    """Return the verdict on readings compared, with that on the one nearest to a limit for each; the worse leads."""
    limit = know.record(bands.each, question.variant) if bands.each else None
    checks = [limit_rules.check(limit, a, question, know) for a in question.reading.amounts] if limit else []
    found = [check for check in checks if check is not None]
    if not found:
        return judged
    extreme = (max if found[0].limit.maximum else min)(found, key=lambda check: check.given)
    checked = CheckResult((extreme,))
    if extreme.within and judged.rule.verdict == "outside":
        return BothResult(judged, checked)
    return BothResult(checked, judged)
