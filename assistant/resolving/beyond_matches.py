"""What may answer a question besides the records that match it: a figure named, orders to be summed, a conversion."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.knowledge.records import Limit
from assistant.resolving import claims
from assistant.resolving import limits as limit_rules
from assistant.resolving.amounts_held import amount_for, reads_a_state
from assistant.resolving.candidates import Candidate
from assistant.resolving.changes import change_result
from assistant.resolving.controls_named import leaves_centred
from assistant.resolving.conversions import conversion
from assistant.resolving.counts_left import count_left
from assistant.resolving.deflections import deflections, names_part, names_side
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.labels_told import label_shown
from assistant.resolving.next_step import next_step
from assistant.resolving.results import CheckResult, LimitResult, ModelResult, NotApplicable, TableResult
from assistant.resolving.steering_order import resolve_order
from assistant.resolving.variants import variant_result
from assistant.understanding.matching import Match

_NO_ORDER = 1.5
"""Where nothing steers, that is said whatever quantity is asked for."""
_ORDERED = 1.15
"""What one control orders, where another is said to be left alone."""
_COUNT_LEFT = 1.1
_FEW = 4
"""Words at most of a question for a part of a control that gives no speed."""
_CONVERTED, _OF_ONE = 0.97, 0.8
"""Of one of a unit that is only named a statement is told first: "a knot in mph"."""
_LABEL = 1.0
_BARE = frozenset(("factor",))
"""Units that nobody says with a figure: "do I still need 1.6?"."""
_JUDGING = frozenset(("within", "inside", "exactly"))
"""Words by which an amount that is given wants to be judged."""


def by_figure(question: Question, know: Knowledge) -> Iterable[Candidate]:
    """A limit that depends on a state is meant when its very figure is named: "must I stick to 800 psi?"."""
    amounts = [a for a in question.reading.amounts if not reads_a_state(a, question)]
    for limit in know.limits_in_states if amounts else ():
        figure = limit.maximum or limit.minimum or (limit.value if limit.value and limit.value.unit in _BARE else None)
        for amount in amounts:
            unit = amount.unit or (figure.unit if figure and figure.unit in _BARE else None)
            if figure and unit == figure.unit and amount.value == figure.value:
                yield from _in_state(limit, question, know)


def _in_state(limit: Limit, question: Question, know: Knowledge) -> Iterable[Candidate]:
    holds = limit_rules.holds(limit, question, know)
    amount = amount_for(limit, question, know)
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


def specials(question: Question, know: Knowledge, ranked: list[Match]) -> Iterable[Candidate]:
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
    centred = leaves_centred(words)
    if not (names_side(words) or names_part(words) or centred) or any(m.is_outside for m in question.reading.mentions):
        return
    orders = deflections(question, know)
    part = any(order.part != 1.0 for order in orders)
    places = {order.place for order in orders}
    if part and all(a.start in places for a in question.reading.amounts) and len(words) > _FEW:
        return  # "pedals halfway down on the landing roll" may be of the brakes
    if not orders or not (len(orders) > 1 or orders[0].number > 1 or centred or part):
        return
    summed = _ORDERED if centred or part else 1.0
    for name in know.base.ids("models"):
        if know.base.records[name].function != "total_order":
            continue
        result = resolve_order(know.record(name, question.variant), question, know)
        if result is not None:
            both = len(orders) > 1 and all(order.side for order in orders)
            sure = summed if isinstance(result, ModelResult) else 0.68 + 0.25 * (part or both)
            sure = _NO_ORDER if isinstance(result, TableResult) else sure
            yield Candidate(sure, 6.0, result)
