"""Choose what answers a question: every reading that the knowledge allows is scored, and the best is taken.

An answer is given above a threshold; below it two or three choices are offered; what nothing explains is declined.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence

from assistant.frozen import NamedTuple
from assistant.knowledge.records import Fact, Limit, Source
from assistant.resolving import claims
from assistant.resolving import limits as limit_rules
from assistant.resolving.asked_quantity import (
    NOT_TOLD,
    asked_of,
    given_concepts,
    is_asked,
    is_told_in,
    measure_asked,
    other_bound,
    quantity_of,
    tells_measure,
    tells_outright,
    tells_quantity,
)
from assistant.resolving.beside_the_point import without_beside
from assistant.resolving.candidates import Candidate
from assistant.resolving.changes import change_result
from assistant.resolving.conversions import conversion
from assistant.resolving.counts_left import count_left
from assistant.resolving.deflections import deflections, leaves_centred, names_part, names_side
from assistant.resolving.figures_named import figure_named, record_named
from assistant.resolving.former_figures import former_believed
from assistant.resolving.from_match import from_match
from assistant.resolving.going_first import in_their_order
from assistant.resolving.joining import joined
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.labels_told import label_shown, with_labels
from assistant.resolving.leaning import ANSWERING, by_what_it_leans_on
from assistant.resolving.next_step import next_step
from assistant.resolving.offering import COVER, lacks_unit, offered, unsure
from assistant.resolving.paragraphs import in_paragraph
from assistant.resolving.results import (
    BandResult,
    CheckResult,
    Choices,
    Declined,
    Elsewhere,
    FactResult,
    LimitResult,
    ModelResult,
    NotApplicable,
    ProcedureResult,
    Result,
    TableResult,
    TablesResult,
)  # fmt: skip
from assistant.resolving.sisters import sister_figures
from assistant.resolving.something_named import names_something
from assistant.resolving.state_questions import state_candidates
from assistant.resolving.steering_order import resolve_order
from assistant.resolving.unknown_failed import unknown_failed
from assistant.resolving.variants import variant_result
from assistant.resolving.which_schedule import which_schedule
from assistant.understanding.matching import Match, strange
from assistant.understanding.mentions import BOUNDS, ELSEWHERE, Mention

_LEAST = 0.4
_AHEAD = 0.08
_FOLLOWS = 0.6
"""How well what follows from the states given must fit, where nothing else fits nearly as well."""
_MUCH, _CLOSE = 0.75, 0.06
"""Share of a way of asking below which a record leaves as open what is meant as one that fits nearly as well."""
_ACTION = 0.9
"""Share of its way of asking that a verdict must have, to be given together with another on the same action."""
_WANTED, _OF_ANOTHER = 1.1, 0.66
_NO_BOUND = 0.6
_BOUND_WORDS = frozenset({"least", "most", "minimum", "maximum", "min", "max", "lowest", "highest"})
_WHAT_IS_THE = ("what", "is", "the")
_NO_ORDER = 1.5
"""Where nothing steers, that is said whatever quantity is asked for."""
_ORDERED = 1.15
"""What one control orders, where another is said to be left alone."""
_COUNT_LEFT = 1.1
_FORMER = 1.2
"""What took the place of a former figure that somebody holds to be in force."""
_SEVERAL, _COMPARED = 3, 1.1
"""Readings that are compared with one another rather than held against a limit each, and the score of that."""
_FEW = 4
"""Words at most of a question for a part of a control that gives no speed."""
_CONVERTED, _OF_ONE = 0.97, 0.8
"""Of one of a unit that is only named a statement is told first: "a knot in mph"."""
_LABEL = 1.0
_HOW = frozenset(("how", "too", "so", "very", "that"))
"""Words before an ordinary one, which is no label then: "how low"."""
_ANOTHER = "another_type"
"""The concept of words for an aeroplane of another type."""
_COMING = frozenset({"from", "than", "unlike", "flew", "fly", "flown", "off"})
"""Words before it, by which it is only told of."""
_OF_ALL = 0.75
"""How well what is true of all aeroplanes must fit, where another type is asked of."""
_HELPING = frozenset(("do", "does", "is", "am", "are", "have", "has", "will"))
_NO_TIME = 0.9
_BARE = frozenset(("factor",))
"""Units that nobody says with a figure: "do I still need 1.6?"."""
_JUDGING = frozenset(("within", "inside", "exactly"))
"""Words by which an amount that is given wants to be judged."""


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
    if _sure(found, question) and not (best.score < ANSWERING and lacks_unit(found, best, question, know)):
        if best.match and not names_something(question, know):
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


def _sure(found: list[Candidate], question: Question) -> bool:
    """Return whether the best reading is good enough: by itself, or well ahead of any other."""
    best = found[0]
    if best.match and best.match.barred:
        return False
    if _is_no_verdict(best, question):
        return False
    if best.score >= ANSWERING or _held_at_once(found):
        return bool(question.reading.amounts) or not _undecided(best, found)
    others = [c.score for c in found[1:] if not _same_place(best, c)]
    ahead = best.score - max(others, default=0.0)
    if best.match is None and isinstance(best.result, TableResult):
        return best.score >= _FOLLOWS and ahead >= _AHEAD
    return bool(best.match and best.score >= _LEAST and best.match.covered >= COVER and ahead >= _AHEAD)


def _is_no_verdict(best: Candidate, question: Question) -> bool:
    """Return whether a statement is held against a number that it does not know: "free fall at 240 ok?"."""
    if not isinstance(best.result, FactResult) or not question.reading.has("can"):
        return False
    told = {f"{value.value:g}" for value in best.result.fact.values} | {
        word.strip("%°.,") for word in best.result.fact.says.split()
    }
    judged = [a for a in question.reading.amounts if a.unit is None and f"{a.value:g}" not in told]
    return bool(judged) if best.score >= ANSWERING else bool(question.reading.amounts)


def _held_at_once(found: list[Candidate]) -> bool:
    """Return whether the best two are verdicts on two amounts of one action: "extend at 20,000 ft with 220 kt"."""
    best = found[0]
    if not isinstance(best.result, CheckResult) or not best.match or best.score < _LEAST:
        return False
    one = best.result.checks[0]
    for c in found[1:4]:
        if isinstance(c.result, CheckResult) and c.match and c.match.open and c.score >= best.score - _AHEAD:
            other = c.result.checks[0]
            if other.unit != one.unit and other.given != one.given:
                return best.match.covered > _ACTION and c.match.covered > _ACTION
    return False


def _undecided(best: Candidate, found: list[Candidate]) -> bool:
    """Return whether a question holds as much of another figure as of the best one, and no more: "maximum mass"."""
    match = best.match
    if match is None or match.covered >= _MUCH or not isinstance(best.result, LimitResult):
        return False
    return any(
        c.match and c.score >= best.score - _CLOSE and c.match.share == match.share and c.match.record != match.record
        for c in found[1:4]
        if isinstance(c.result, LimitResult)
    )


def _same_place(one: Candidate, other: Candidate) -> bool:
    """Return whether a candidate says what another does: one record, or a statement of what stands in one paragraph."""
    if isinstance(one.result, TableResult) and isinstance(other.result, TableResult):
        return (one.result.table, one.result.rows) == (other.result.table, other.result.rows)
    if not one.match or not other.match:
        return False
    states = isinstance(one.result, (FactResult, LimitResult))
    same = states and set(_sources(one.result)[:1]) & set(_sources(other.result)[:1])
    return one.match.record == other.match.record or bool(same)


def _sources(result: Result) -> tuple[Source, ...]:
    """Return the paragraphs of the statement, figure or procedure that a result tells."""
    if isinstance(result, LimitResult):
        return result.limits[0].sources
    told = getattr(result, "fact", None) or getattr(result, "procedure", None) or getattr(result, "bands", None)
    return told.sources if told else ()


def chosen_record(name: str, question: Question, know: Knowledge) -> Result | None:
    """Return what a record that was chosen answers to the question."""
    match = Match(name, "", 1.0, 1.0, 1.0, 1.0, ())
    found = sorted(from_match(match, question, know), key=lambda c: -c.score)
    return found[0].result if found else None


def candidates(question: Question, know: Knowledge) -> list[Candidate]:
    """Return everything that might answer, best first."""
    given = given_concepts(question, know) | question.background | _states_named(question, know)
    excused = {k for c in question.conditions for k in c.where}
    ranked = know.matcher.rank(question.reading, given)
    found: list[Candidate] = []
    for match in ranked[:24]:
        if match.score < 0.1:
            break
        found.extend(from_match(match, question, know))
    found.extend(_by_figure(question, know))
    if len(question.reading.amounts) >= _SEVERAL:
        from assistant.resolving.readings_compared import readings_compared  # few questions give so many

        found.extend(Candidate(_COMPARED, _COMPARED, result) for result in readings_compared(question, know))
    found.extend(Candidate(s, w, r) for s, w, r in state_candidates(question, know, excused))
    found.extend(_specials(question, know, ranked))
    if measure_asked(question.reading):
        found = [_by_measure(c, question, know) for c in found]
    asked = asked_of(question.reading)
    found = [_by_asked(c, asked, question, know) for c in found]
    if _asks_when(question.reading.words):
        found = [_told_when(c) for c in found]
    found = by_what_it_leans_on(found, question, know)
    found = in_their_order(found, question, know)
    found = without_beside(found, question, know)
    another = next((m for m in question.reading.mentions if _ANOTHER in m.concepts), None)
    if another and not question.named_variant and _COMING.isdisjoint(question.reading.words[: another.start][-1:]):
        found = _of_all_aeroplanes(found, another, question, know)
    found.sort(key=lambda c: (-round(c.score, 3), -c.weight))
    return _with_former(found, question, know)


def _asks_when(words: Sequence[str]) -> bool:
    """Return whether it is asked when something is so: "when do I have no wheel brakes"."""
    return words[:1] == ("when",) and not _HELPING.isdisjoint(words[1:2])


def _told_when(candidate: Candidate) -> Candidate:
    """Let a drill for a case step back where it is asked when that case comes about."""
    if isinstance(candidate.result, ProcedureResult):
        return candidate._replace(score=candidate.score * _NO_TIME)
    return candidate


def _with_former(found: list[Candidate], question: Question, know: Knowledge) -> list[Candidate]:
    """Return the candidates after the change of a former figure that is held to be in force, unless the record of that
    figure answers already.
    """
    former = former_believed(question, know)
    if former is None:
        return found
    best = found[0] if found else None
    of_it = best is not None and best.match is not None and best.match.record == former.changes[0].record
    if best is not None and of_it and best.score >= ANSWERING and isinstance(best.result, (CheckResult, LimitResult)):
        return found
    return [Candidate(_FORMER, 3.0, former), *found]


def _of_all_aeroplanes(
    found: Iterable[Candidate], said: Mention, question: Question, know: Knowledge
) -> list[Candidate]:
    """Return what is true of other aeroplanes too; what is known of this type is no more than nearby."""
    kept = [c for c in found if c.match is not None]
    general = [know.is_general_record(c.match.record, question.variant) for c in kept if c.match]
    found = []
    for each, everywhere in zip(kept, general, strict=True):
        if each.match and not (everywhere and each.score >= _OF_ALL):
            each = each._replace(score=each.score * 0.5, match=each.match._replace(barred=(said,)))
        found.append(each)
    return found


def _states_named(question: Question, know: Knowledge) -> set[str]:
    """Return the names of the states given: who says that the free-fall lever is pulled speaks of a free fall."""
    named = know.states.named
    return {named[c.input, c.value] for c in question.conditions if (c.input, c.value) in named}


def _by_figure(question: Question, know: Knowledge) -> Iterable[Candidate]:
    """A limit that depends on a state is meant when its very figure is named: "must I stick to 800 psi?"."""
    amounts = [a for a in question.reading.amounts if not limit_rules.reads_a_state(a, question)]
    for limit in know.limits_in_states if amounts else ():
        figure = limit.maximum or limit.minimum or (limit.value if limit.value and limit.value.unit in _BARE else None)
        for amount in amounts:
            unit = amount.unit or (figure.unit if figure and figure.unit in _BARE else None)
            if figure and unit == figure.unit and amount.value == figure.value:
                yield from _in_state(limit, question, know)


def _in_state(limit: Limit, question: Question, know: Knowledge) -> Iterable[Candidate]:
    holds = limit_rules.holds(limit, question, know)
    amount = limit_rules.amount_for(limit, question, know)
    found = limit_rules.check(limit, amount, question, know) if amount else None
    named = found is not None and claims.names_it(found, question, know)
    if holds is not False and named:
        yield Candidate(0.99, 3.0, LimitResult((limit,), question.conditions))
    elif holds and found and (question.reading.has("can") or not _JUDGING.isdisjoint(question.reading.words)):
        yield Candidate(0.99, 3.0, CheckResult((found,)))
    elif holds:
        yield Candidate(0.99, 3.0, LimitResult((limit,), question.conditions))
    elif holds is False:
        here = _instead(limit, question, know)
        told = LimitResult((here,), question.conditions) if here else NotApplicable(limit, "", question.conditions)
        yield Candidate(0.99, 3.0, told)


def _instead(limit: Limit, question: Question, know: Knowledge) -> Limit | None:
    """Return the limit that holds here in the place of one that depends on the same and does not."""
    keys, figure = [name for name, _ in limit.when], limit_rules.bound_value(limit)
    for name in know.base.ids("limits"):
        other: Limit = know.record(name, question.variant)
        own = limit_rules.bound_value(other)
        alike = [key for key, _ in other.when] == keys and own and figure and own.unit == figure.unit
        if alike and limit_rules.holds(other, question, know):
            return other
    return None


def _by_measure(candidate: Candidate, question: Question, know: Knowledge) -> Candidate:
    """Let what tells another measure of a thing than the one asked for step back: "temperature of the nose tyre"."""
    match = candidate.match
    if match is None or tells_measure(candidate.result, match.concepts, question.reading, know):
        return candidate
    return candidate._replace(score=candidate.score * NOT_TOLD)


def _by_asked(candidate: Candidate, asked: frozenset[str], question: Question, know: Knowledge) -> Candidate:
    """Let a result of another quantity than the one asked for step back: "how long" wants no temperature."""
    if asked and isinstance(candidate.result, (TableResult, TablesResult)):
        own = isinstance(candidate.result, TableResult) and _is_its_own(candidate.result, asked, know)
        if own or candidate.match:  # with a match, it stands in the place of a figure that a control does not give now
            return candidate
        bound = _NO_BOUND if _asks_bound(question) else 1.0
        return candidate._replace(score=candidate.score * (0.9 if "count" in asked else 0.7) * bound)
    if isinstance(candidate.result, TableResult) and _asks_bound(question):
        return candidate._replace(score=candidate.score * _NO_BOUND)
    told = candidate.match.concepts if candidate.match else frozenset()
    if not tells_outright(candidate.result, told, question.reading, know):
        return candidate._replace(score=candidate.score * NOT_TOLD)
    in_unit = _in_the_unit(candidate.result, asked, question, know)
    if in_unit < 1.0:
        return candidate._replace(score=candidate.score * in_unit)
    mine = quantity_of(candidate.result, know)
    if question.wanted and mine == question.wanted:
        return candidate._replace(score=candidate.score * _WANTED)
    if not asked and mine and mine in question.reading.concepts:
        return candidate._replace(score=candidate.score * 1.03)
    if not asked or not mine:
        return candidate
    return candidate._replace(score=candidate.score * (1.04 if is_asked(mine, asked) else _OF_ANOTHER))


def _in_the_unit(result: Result, asked: frozenset[str], question: Question, know: Knowledge) -> float:
    """Return how well a result may be said in the unit that is asked for: no verdict on a speed is in megajoules."""
    if not is_told_in(result, question.reading, know):
        return NOT_TOLD
    bands = isinstance(result, BandResult) and bool(question.reading.unit)
    return _OF_ANOTHER if bands and not tells_quantity(result, asked, know) else 1.0


def _asks_bound(question: Question) -> bool:
    """Return whether a question asks outright for a least or a most: "what's the least for parking?"."""
    words = question.reading.words
    bounds = (m for m in question.reading.mentions if m.text.removeprefix("the ") in _BOUND_WORDS)
    return any(words[max(0, m.end - 4) : m.end - 1] == _WHAT_IS_THE for m in bounds)


def _is_its_own(result: TableResult, asked: frozenset[str], know: Knowledge) -> bool:
    """Return whether a table itself tells what is asked for as a quantity: "how hard may I press" is a technique."""
    asks = (ask for o in result.table.outputs if o.id in result.asked for ask in o.asks)
    return any(not asked.isdisjoint(m.concepts) for ask in asks for m in know.phrase(ask).mentions)


def _specials(question: Question, know: Knowledge, ranked: list[Match]) -> Iterable[Candidate]:
    """Readings that are no single record's: a conversion, what a revision changed, what a variant differs in."""
    converted = conversion(question, know)
    if converted:
        yield Candidate(_CONVERTED if question.reading.amounts else _OF_ONE, 1.0, converted)
    yield from _orders(question, know)
    label = label_shown(question, know)
    if label:
        yield Candidate(_LABEL, 6.0, label)
    left = count_left(question, know)
    if left:
        yield Candidate(_COUNT_LEFT, 6.0, left)
    following = next_step(question, know, ranked)
    if following:
        yield Candidate(following[0], 3.0, following[1])
    for found in (change_result(question, know), variant_result(question, know, ranked)):
        if found:
            yield Candidate(*found)


def _orders(question: Question, know: Knowledge) -> Iterable[Candidate]:
    """Orders of several controls, each with its side, are to be summed in whatever words the sum is asked for."""
    words = question.reading.words
    if not (names_side(words) or names_part(words)) or any(m.is_outside for m in question.reading.mentions):
        return
    orders, centred = deflections(question, know), leaves_centred(words)
    part = any(order.part != 1.0 for order in orders)
    if part and not question.reading.amounts and len(words) > _FEW:
        return  # "pedals halfway down on the landing roll" may be of the brakes
    if not orders or not (len(orders) > 1 or orders[0].number > 1 or centred or part):
        return
    summed = _ORDERED if (centred and orders[0].side) or part else 1.0
    for name in know.base.ids("models"):
        if know.base.records[name].function != "total_order":
            continue
        result = resolve_order(know.record(name, question.variant), question, know)
        if result is not None:
            both = len(orders) > 1 and all(order.side for order in orders)
            sure = summed if isinstance(result, ModelResult) else 0.68 + 0.25 * (part or both)
            sure = _NO_ORDER if isinstance(result, TableResult) else sure
            yield Candidate(sure, 6.0, result)


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
