"""What one matching record answers to a question: a candidate for each kind of record, with its penalties."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable
from itertools import pairwise
from typing import Any

from assistant.frozen import NamedTuple
from assistant.knowledge.records import Bands, Fact, Limit, Model, Procedure, Schedule
from assistant.quantities.amounts import Amount
from assistant.resolving import claims, reading_asked
from assistant.resolving import limits as limit_rules
from assistant.resolving.amounts_for import fits
from assistant.resolving.asked_quantity import QUANTITIES, asked_of
from assistant.resolving.controls_in_use import moved_in_vain, set_in_vain
from assistant.resolving.deflections import deflections
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_inputs import Binding, bind
from assistant.resolving.models import resolve_model
from assistant.resolving.read_at_an_order import read_at_an_order
from assistant.resolving.results import (
    BandResult,
    BothResult,
    Check,
    CheckResult,
    FactResult,
    LimitResult,
    ModelResult,
    Needed,
    NotApplicable,
    ProcedureResult,
    Result,
    ScheduleResult,
    TableResult,
)  # fmt: skip
from assistant.resolving.schedules import asks_input, has_it, leftover, resolve_schedule
from assistant.resolving.siblings import sibling_named
from assistant.resolving.state_asked import left_open
from assistant.resolving.steering_order import resolve_order
from assistant.understanding.asked_singly import asks_singly
from assistant.understanding.clauses import asks_whether
from assistant.understanding.matching import Match

_HAD = 1.4
"""How much more a schedule is worth where it is asked how much of it one has."""
_NOW = frozenset({"at", "now", "current", "currently", "present", "doing"})
"""Words by which a question means one speed, though it does not say which."""


_PRESENT = reading_asked.PRESENT
_NO_VERDICT = 0.8
_BELIEVED_RIGHTLY = 1.2
_OTHER_STATE = 0.6
_SEVERAL = 2
_WHEN = frozenset({"when", "until", "till", "long", "soon", "time", "minutes", "wait", "before", "already", "yet"})
"""Words by which a time is asked for."""
_UNCOMPARED = 0.8
_FAR_OFF = 0.6
_OF_ANOTHER_ACT = 0.6
_OF_A_SIBLING = 0.5
_SELDOM_BARE = {"min": ("duration",), "s": ("duration",), "h": ("duration",), "m": ("length", "distance")}
"""Units that a bare number seldom has, with what names the quantity."""
_COMPARING = frozenset({
    "enough", "within", "inside", "says", "say", "said", "told", "reckons", "thinks", "claims", "right", "true",
    "correct", "wrong", "sufficient", "suffice", "would", "could", "fit",
})  # fmt: skip
"""Words by which a result that is given wants to be judged."""
_WHOLE_STORY, _MOSTLY, _OF_STORY = 3, 0.7, 1.8
"""Amounts, and the share of a way of asking, from which on a calculation is meant whatever words a story has besides;
what it regains for each of them.
"""
_AS_SOUGHT = 1.15
"""What a calculation gains whose input is what is asked for."""
_ASKED_ITSELF = 0.6
"""What remains of asking back for what a question itself asks for."""
_OF_A_PART = 1.25
"""What asks for a part of a control is no question of its limit: "half tiller at 40 kt"."""
_IN_VAIN = 1.2
"""What it gains that a setting does not work, over the calculation with it."""
_MOVED_IN_VAIN = 1.45
"""What it gains that a control does nothing, over what its schedule gives."""
_OPEN = frozenset({"what", "which", "how", "when", "where", "why"})
_BESIDES = 0.9
"""What a limit's schedule is worth at most where an amount is given besides the one that it is read at."""


class Candidate(NamedTuple):
    """A result with its score and how much of the question's weight stands behind it."""

    score: float
    weight: float
    result: Result
    match: Match | None = None


def from_match(match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    """Return what a matching record answers; nothing when its kind is answered from elsewhere."""
    record = know.record(match.record, question.variant)
    maker = _MAKERS.get(type(record))
    sibling = sibling_named(match, question, know)
    if sibling:
        match = match._replace(barred=(*match.barred, sibling), score=match.score * _OF_A_SIBLING)
    found = maker(record, match, question, know) if maker else ()
    if know.is_general_record(match.record, question.variant):
        # What is true of all aeroplanes steps back behind what this type's own documents say.
        return [c._replace(score=c.score * 0.96) for c in found]
    return found


def _fact(fact: Fact, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    against = _amount_penalty(match, question.reading.amounts, know)
    # A figure that is only believed ("the gear speed is 300, right?") is there to be corrected.
    score = match.score * (against**0.3 if against < 1 and claims.believed(question) else against)
    other = _speaks_of_another(fact, question, know) or _speaks_of_fewer(fact, question, know)
    score *= _state_penalty(match, question, know) * (_OTHER_STATE if other else 1.0)
    yield Candidate(score, match.matched, FactResult(fact), match)


def _speaks_of_fewer(fact: Fact, question: Question, know: Knowledge) -> bool:
    """Return whether a statement is titled by one failure, and another of its like is given as well: "the gear with
    System 2 lost", where both are.
    """
    if len(question.stated) < _SEVERAL:
        return False
    given = {c.input: c.value for c in question.conditions if not c.is_result and not c.implied}
    titled = dict(know.phrase_states(fact.title))
    if not titled or any(given.get(name) != value for name, value in titled.items()):
        return False
    terms = {name: know.base.inputs[name].term for name in given}
    families = {name: know.lexicon.families.get(terms[name], "") for name in given}
    kinds = {families[name] for name in titled} - {""}
    more = (name for name in given if name not in titled and families[name] in kinds)
    return any(given[name] == know.states.failed(name) for name in more)


def _speaks_of_another(fact: Fact, question: Question, know: Knowledge) -> bool:
    """Return whether a statement holds in a state of a thing, or is titled by one, that the question says is not so."""
    if all(c.implied for c in question.conditions):
        return False
    titled = (pair for pair in know.phrase_states(fact.title) if pair[0] in know.states.failures)
    held = (*fact.when, *titled)
    if not held:
        return False  # most statements hold whatever is lost
    undecided = left_open(question, know)
    given = {c.input: c.value for c in question.conditions if not c.implied and undecided.isdisjoint(c.where)}
    return any(limit_rules.is_so(name, value, given, know) is False for name, value in held)


def _amount_penalty(match: Match, amounts: Collection[Amount], know: Knowledge) -> float:
    """Numbers that a statement does not hold speak against it."""
    penalty = 1.0
    if not amounts:
        return penalty
    vocabulary = know.matcher.vocabulary(match.record)
    for amount in amounts:
        dimension = know.units.get(amount.unit).dimension if amount.unit else ""
        if (f"#{amount.value:g}:{dimension}" if dimension else f"#{amount.value:g}") not in vocabulary:
            penalty *= 0.62
    return penalty


def _state_penalty(match: Match, question: Question, know: Knowledge) -> float:
    """States that a statement does not speak of speak against it."""
    if not question.conditions:
        return 1.0
    vocabulary = know.matcher.vocabulary(match.record)
    terms = {know.base.inputs[name].term for name in question.stated}
    return 0.62 ** sum(t not in vocabulary and vocabulary.isdisjoint(know.lexicon.implying.get(t, ())) for t in terms)


def _limit(limit: Limit, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    amount = limit_rules.amount_for(limit, question, know)
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
        yield from _schedule(schedule, meant, question, know)
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
    meant = named or not question.reading.has("can") or not _OPEN.isdisjoint(question.reading.words)
    return min(1.0, score * 1.12) if meant else score


def _stated(limit: Limit, score: float, match: Match, question: Question, know: Knowledge) -> Candidate:
    """Return the limit's own figure, for a question that gives none to hold against it."""
    amounts = question.reading.amounts
    if match.tag == "check" or _PRESENT.intersection(question.reading.words):
        score *= 0.8
    used = limit_rules.applied_to(limit, amounts, know, question.reading.words)
    left = [a for a in amounts if a not in used and not limit_rules.reads_a_state(a, question)]
    penalty = _amount_penalty(match, left, know)
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
        score *= _UNCOMPARED
    if amount.unit is None and not amount.value:
        score *= _UNCOMPARED
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
        asking = 1.2 if _OPEN.isdisjoint(reading.words) else 1.16
    return Candidate(min(score * asking, 1.2), match.matched + 0.5, CheckResult((found,)), match)


def _bands(bands: Bands, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    amounts = question.reading.amounts
    held_true = any(limit_rules.is_bound(a, question) for a in amounts) and claims.believed(question)
    mine = limit_rules.own_amounts(bands.id, question, know)
    judged = None if held_true else limit_rules.judge(bands, question, know, mine)
    if judged:
        compared = bands.unit == "K" and len(amounts) > 1
        others = [] if compared else [a for a in amounts if fits(a, bands.unit, know.units) != judged.given]
        strange = sum(1 for a in others if a.unit and fits(a, bands.unit, know.units) is None and a.unit != "percent")
        rest = 0 if compared else len(amounts) - 1 - strange - 0.5 * (len(amounts) - len(mine))
        score = min(1.2, match.score * (1.35 if compared and question.reading.has("can") else 1.1))
        score *= _UNCOMPARED if _wants_distance(bands, question, know) else 1.0
        result = with_each(bands, judged, question, know) if compared else judged
        yield Candidate(score * 0.9**rest * 0.6**strange, match.matched + 0.6, result, match)
    elif to_read := reading_asked.to_judge(bands, question, know):
        yield Candidate(match.score * 1.05, match.matched, Needed(bands, (f"the {to_read}",), (to_read,)), match)
    elif bands.says:
        score = match.score * 0.9 * _amount_penalty(match, amounts, know)
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


_UP_TO_WHAT = 0.6
"""A schedule as a whole, where it is asked up to what input something holds, which a figure of its own may tell."""


def _schedule(schedule: Schedule, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    idle = moved_in_vain(schedule, question, know)
    if idle:
        yield Candidate(min(1.2, match.score * _MOVED_IN_VAIN), match.matched + 1.0, idle, match)
        return
    result = resolve_schedule(schedule, question, know)
    if not schedule.works:
        match = match._replace(score=match.score * _state_penalty(match, question, know))
    if isinstance(result, ScheduleResult):
        rest = len(leftover(schedule, question, know)) + read_at_an_order(question, know)
        yield Candidate(min(1.2, match.score * 1.12) * 0.6**rest, match.matched + 0.6, result, match)
    elif isinstance(result, Needed):
        here = 1.15 if _NOW.intersection(question.reading.words) else 0.93
        here = _HAD if has_it(question.reading.words) else here
        yield Candidate(match.score * here, match.matched, result, match)
    else:
        shown = 0.93 if question.reading.has("maximum", "list_all", schedule.output) else 0.7
        shown = _UP_TO_WHAT if asks_input(schedule, question, know) else shown
        yield Candidate(match.score * shown, match.matched, ScheduleResult(schedule, float("nan"), None), match)


def _procedure(procedure: Procedure, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    step = int(match.tag.split(".")[1]) if match.tag.startswith("step.") else None
    score = match.score * _amount_penalty(match, question.reading.amounts, know) ** 0.5
    memory = "memory" in question.reading.words
    if question.reading.has("steps"):
        score *= 1.08
    if step is None and asks_singly(question.reading.words):
        yield Candidate(score, match.matched, ProcedureResult(procedure, 0, memory, alone=True), match)
        return
    yield Candidate(score, match.matched, ProcedureResult(procedure, step, memory), match)


def _model(model: Model, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    if model.function == "total_order":
        yield from _order(model, match, question, know)
        return
    if model.function == "remaining" and not question.reading.amounts:
        return  # the whole number is asked for, and nothing has been used
    if model.needs and not all(any(question.reading.has(c) for c in _concepts(know, n)) for n in model.needs):
        return
    binding = bind(model, question, know)
    result = resolve_model(model, binding, question, know)
    if result is None:
        return
    if isinstance(result, ModelResult) and not result.values:
        named = _named_by_figure(question, know)
        if named:
            yield from _model(know.record(model.id, named.variant), match, named, know)
            return
    idle = set_in_vain(model, binding, question, know)
    yield from _in_vain(idle, match) if idle else _worked_out(result, binding, match, question)


def _in_vain(idle: TableResult, match: Match) -> Iterable[Candidate]:
    """Yield the state in which a setting does not work, in the place of the calculation with it."""
    yield Candidate(min(1.2, match.score * _IN_VAIN), match.matched + 1.0, idle, match)


def _worked_out(
    result: ModelResult | Needed, binding: Binding, match: Match, question: Question
) -> Iterable[Candidate]:
    """Yield a calculation, or what it lacks, by how much of the question it has a use for."""
    match = _without_story(match, binding)
    score = match.score * 0.62 ** len(binding.left) * (1 - 0.03 * min(binding.cost, 12))
    if isinstance(result, Needed):
        score *= _ASKED_ITSELF if _wants_missing(result, question) or _wants_known(result, question) else 1.0
        share = binding.amounts_used / (binding.amounts_used + len(binding.missing))
        base = 0.93 if match.whole else 0.84
        yield Candidate(score * (base + 0.06 * share), match.matched + 0.2 * binding.amounts_used, result, match)
    elif result.values or result.note:
        if result.model.output == "duration" and _asks_leave(question):
            score *= _UNCOMPARED
        if result.against is not None and not _compares(question):
            score *= _UNCOMPARED
        yield _calculated(result, binding, score, match)


def _asks_leave(question: Question) -> bool:
    """Return whether a question asks if something may be done, and for no time: "OAT 12, brakes 245, may I go"."""
    reading = question.reading
    return reading.has("can") and not reading.has("duration") and not _WHEN.intersection(reading.words)


def _without_story(match: Match, binding: Binding) -> Match:
    """Return a match without the ordinary words that bar it, where a calculation has a use for every amount of a
    story: "52 tonnes on board".
    """
    used = binding.amounts_used >= _WHOLE_STORY and not binding.left and match.covered >= _MOSTLY
    if not match.barred or not used or any(not m.is_plain or not m.known or m.mended for m in match.barred):
        return match
    return match._replace(barred=(), score=match.score * _OF_STORY ** len(match.barred))


def _wants_missing(result: Needed, question: Question) -> bool:
    """Return whether what a calculation lacks is itself asked for: "above which altitude does the Mach number …"."""
    lacking = {i.quantity for i in result.record.inputs if i.id in result.names} - {result.record.output}
    asked = question.reading.asked
    near = {c for m in question.reading.mentions if m.concepts & asked for c in m.implied}
    return bool(lacking) and lacking <= asked | near


def _wants_known(result: Needed, question: Question) -> bool:
    """Return whether what is asked for is a figure that a calculation takes by itself: "by what do I multiply …"."""
    known = {i.quantity for i in result.record.inputs if i.default and i.id not in result.names}
    return bool(asked_of(question.reading) & known - {result.record.output})


def _named_by_figure(question: Question, know: Knowledge) -> Question | None:
    """Return a question whose bare figure, which nothing can be calculated from, is the variant of that name."""
    bare = [a for a in question.reading.amounts if a.unit is None and f"{a.value:g}" in know.variants]
    if len(bare) != 1:
        return None
    reading = question.reading._replace(amounts=tuple(a for a in question.reading.amounts if a is not bare[0]))
    variant = question.variant if question.named_variant else f"{bare[0].value:g}"
    return question._replace(reading=reading, variant=variant)


def _compares(question: Question) -> bool:
    """Return whether a result that is given is to be held against the one calculated: "would 1,200 m do?"."""
    reading = question.reading
    whether = "is" in reading.words and _OPEN.isdisjoint(reading.words)
    whether = whether or asks_whether(reading.words) or reading.has("can") or claims.believed(question)
    return whether or not _COMPARING.isdisjoint(reading.words)


def _order(model: Model, match: Match, question: Question, know: Knowledge) -> Iterable[Candidate]:
    result = resolve_order(model, question, know)
    if isinstance(result, TableResult):
        yield Candidate(1.5, match.matched + 1.0, result)  # whatever quantity is asked for
    elif result is not None:
        score = 1.1 if isinstance(result, ModelResult) else 0.9
        score = _OF_A_PART if any(d.part != 1.0 for d in deflections(question, know)) else score
        bar = 0.5 ** len(match.barred) * _state_penalty(match, question, know)
        yield Candidate(max(match.score, score * bar), match.matched + 1.0, result, match)


def _calculated(result: ModelResult, binding: Binding, score: float, match: Match) -> Candidate:
    """Return a calculation; one that has a use for every amount of a question is hardly meant otherwise."""
    score *= 1.06 if binding.amounts_used else 0.97
    if binding.amounts_used >= 3 and not binding.left and match.open and binding.cost < 3.4:
        score = max(score + 0.25, 0.76 - 0.02 * binding.cost)
    if result.solved and not binding.left and (result.against is not None or result.solved == binding.sought):
        score *= _AS_SOUGHT
    # A model that is meant only by certain words, and they were said, comes before one that is meant without them.
    score = min(1.15, score) * (1.03 if result.model.needs else 1.0)
    return Candidate(score, match.matched + 0.35 * binding.amounts_used, result, match)


def _concepts(know: Knowledge, phrase: str) -> set[str]:
    return {c for m in know.phrase(phrase).mentions for c in m.concepts}


_MAKERS: dict[type, Callable[[Any, Match, Question, Knowledge], Iterable[Candidate]]] = {
    Fact: _fact, Limit: _limit, Bands: _bands, Schedule: _schedule, Procedure: _procedure, Model: _model,
}  # fmt: skip
"""State tables are missing: they are answered by the states a question gives, whatever it matches."""
