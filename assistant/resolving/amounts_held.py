"""Which amount of a question is held against which limit, and which only says where another limit holds."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from assistant.knowledge.records import Limit, Value
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import bound_value, is_span, may_be_difference, said_of
from assistant.resolving.record_words import named_outright
from assistant.resolving.results import Check
from assistant.understanding.mentions import Mention
from assistant.understanding.weather import OUTSIDE_AIR, of_the_air

_SUFFICING = frozenset({"enough", "ok", "okay", "fine", "sufficient", "alright", "plenty", "can"})
_PLACES = (("the", "ground"), ("the", "threshold"), ("the", "runway"))
_LISTING = frozenset({"and", ",", "&", "/", "plus", "the", "other", "others"})
_ROUTE = frozenset(("mile", "NM", "km"))
"""Units of the way ahead, and of no height."""
_THROUGH_AIR = ("ias", "cas", "tas")
_BEING = frozenset({"is", "are", "was", "were", "reads", "read", "shows", "show", "sits", "stands", "sit", "stand"})
_LINKING = _BEING | {"at", "now", "still", "about", "around", "just", "up", "reading", "showing", "sitting", "all"}
"""Words between a thing and what is read of it: "the brakes are still showing 420"."""
_CIRCUMSTANCE = frozenset(("at", "on", "in", "during", "after", "before"))
"""Words before a thing that only says when or where: "our groundspeed at | touchdown | was 196"."""
_LARGEST_SHARE = 150.0
_TONNE = 1000.0
_HEAVIEST = 1.5
"""How many times a limit a bare number of tonnes may be: "is 231 too hot" is no mass."""


def amount_for(limit: Limit, question: Question, know: Knowledge) -> Amount | None:
    """Return the amount of a question that a limit is about: one with its unit before a bare number."""
    figure = bound_value(limit)
    if figure is None or not question.reading.amounts:
        return None
    amounts = own_amounts(limit.id, question, know)
    applied = applied_to(limit, amounts, know, question.reading.words)
    # "Ten knots over", "by 8 kt": a difference, and no reading to hold against the limit.
    rest = [a for a in amounts if a not in applied and not _is_difference(a, question)]
    rest = [a for a in rest if not _other_basis(limit, a)]
    rest = [a for a in rest if not reads_a_state(a, question) or _names_thing(limit, a, question, know)]
    measured = [a for a in rest if a.unit is not None and fits(a, figure.unit, know.units) is not None]
    bare = [a for a in rest if a.unit is None and _plausible(a.value, figure)]
    bare = [a for a in bare if not _read_of_another(limit, a, question, know)]
    bare = [] if _is_wanted(figure, question, know) else bare
    found = measured or bare or _in_tonnes(rest, figure)
    if figure.unit == "K":
        if len(found) > 1:
            return None  # two readings are for the bands, which take their difference
        found = [a for a in found if may_be_difference(a, question)]
    if len(found) > 1 and _listed(found, question.reading.words):
        # Several readings of one thing: the one nearest to the limit, or farthest beyond it, decides.
        return (max if limit.maximum else min)(found, key=lambda a: a.value)
    return found[-1] if found else None


def _is_wanted(figure: Value, question: Question, know: Knowledge) -> bool:
    """Return whether a time is asked for, so that a bare number is no reading of it: "how long, fans on, 15 out"."""
    asked = "duration" in question.reading.asked and _SUFFICING.isdisjoint(question.reading.words)
    return asked and know.units.get(figure.unit).dimension == "time"


def _in_tonnes(amounts: list[Amount], figure: Value) -> list[Amount]:
    """Return bare numbers that are a mass in tonnes: "landing weight 49.2, ok?"."""
    if figure.unit != "kg":
        return []
    most = _HEAVIEST * figure.value
    return [a._replace(unit="t") for a in amounts if a.unit is None and a.value * _TONNE <= most]


def own_amounts(record: str, question: Question, know: Knowledge) -> list[Amount]:
    """Return the amounts that are not said of another thing than a record is about: "main 185 and nose 130"."""
    amounts = _of_things(record, question, know)
    if len(amounts) < 2:
        return amounts
    explained = know.matcher.vocabulary(record)
    said: list[bool | None] = []
    end = 0
    for amount in amounts:
        named = [m for m in question.reading.mentions if end <= m.start and m.end <= amount.start and not m.weak]
        named = [m for m in named if not know.matcher.is_soft(m)]
        said.append(all(not explained.isdisjoint(m.concepts) for m in named) if named else None)
        end = amount.end
    if True not in said:
        return amounts
    return [a for a, mine in zip(amounts, said, strict=True) if mine is not False]


def _of_things(record: str, question: Question, know: Knowledge) -> list[Amount]:
    """Return the amounts that a record of a thing may take: not the temperature of the air."""
    amounts = question.reading.amounts
    air = of_the_air(question.reading)
    if not air:
        return list(amounts)
    about = know.phrase(know.base.records[record].of).mentions
    if about and OUTSIDE_AIR in about[0].concepts:
        return list(amounts)
    return [a for a in amounts if a.start not in air]


def _listed(amounts: list[Amount], words: tuple[str, ...]) -> bool:
    """Return whether amounts follow one another as in a list: "240, 250 and 260"."""
    return all(
        one.end < other.start and _LISTING.issuperset(words[one.end : other.start]) for one, other in pairwise(amounts)
    )


def reads_a_state(amount: Amount, question: Question) -> bool:
    """Return whether an amount is a reading of a thing, which says in which state that is."""
    return any(amount.start in c.where for c in question.conditions if not c.is_result)


def limits_a_reading(check: Check, question: Question, know: Knowledge) -> bool:
    """Return whether a check holds a reading of a thing against a limit, and not against where its state changes."""
    for amount in question.reading.amounts if check.limit.maximum or check.limit.minimum else ():
        read = [c.input for c in question.conditions if amount.start in c.where and not c.is_result]
        if not read or not _names_thing(check.limit, amount, question, know):
            continue
        return not any(check.bound == edge for name in read for edge in _edges(name, know))
    return False


def _edges(name: str, know: Knowledge) -> list[float]:
    """Return the readings of an input at which its state changes."""
    tests = know.states.numbers.get(name, ())
    return [one[1] for one, other in pairwise(tests) if one[3] != other[3]]


def _names_thing(limit: Limit, amount: Amount, question: Question, know: Knowledge) -> bool:
    """Return whether a limit is of the thing that an amount is a reading of."""
    read = [c for c in question.conditions if amount.start in c.where and c.input in know.base.inputs]
    figure = bound_value(limit)
    if figure and any(figure.value == edge for c in read for edge in _edges(c.input, know)):
        return True
    said = {k for c in read for k in c.where}
    named = frozenset(x for m in question.reading.mentions if said.intersection(m.taken) for x in m.concepts)
    # What a name only brings along is not what a limit is of, nor is "…, or what the accumulator holds if less".
    mentions = know.phrase(limit.of.partition(", or ")[0]).mentions
    about = frozenset().union(*(m.concepts for m in mentions if not m.names_result))
    return bool(about & named) or any(know.base.inputs[c.input].term in about for c in read)


def _read_of_another(limit: Limit, amount: Amount, question: Question, know: Knowledge) -> bool:
    """Return whether a bare number is said to be the reading of a thing that a limit is not of: "the brakes are at 420"
    is no pressure of the accumulator, as there are limits on their temperature.
    """
    words = question.reading.words
    start = amount.start
    while start and words[start - 1] in _LINKING:
        start -= 1
    if _BEING.isdisjoint(words[start : amount.start]):
        return False
    read = next((m for m in named_outright(question.reading.mentions, know) if m.end == start), None)
    if read is None or _is_of(limit, read, know):
        return False
    when = not _CIRCUMSTANCE.isdisjoint(words[max(0, read.start - 2) : read.start])
    return not when and any(_may_be_of(other, limit, amount, read, know) for other in know.base.ids("limits"))


def _may_be_of(other: str, limit: Limit, amount: Amount, thing: Mention, know: Knowledge) -> bool:
    """Return whether another limit is of a thing, in another unit than a limit, and a bare number may be held to it."""
    record = know.base.records[other]
    figure, own = bound_value(record), bound_value(limit)
    if figure is None or own is None or figure.unit == own.unit:
        return False
    return _plausible(amount.value, figure) and _is_of(record, thing, know)


def _is_of(limit: Limit, thing: Mention, know: Knowledge) -> bool:
    """Return whether a limit is of a thing that is named."""
    return any(not thing.concepts.isdisjoint(m.concepts) for m in know.phrase(limit.of).mentions)


def _is_difference(amount: Amount, question: Question) -> bool:
    words = question.reading.words
    after = words[amount.end : amount.end + 3]
    over = after[:1] == ("over",) and after[1:] not in _PLACES
    return over or bool(amount.start and words[amount.start - 1] == "by") or is_span(amount, question)


def _is_height(limit: Limit) -> bool:
    """Return whether a limit is of a height, which is said in feet."""
    figure = bound_value(limit)
    return figure is not None and figure.unit == "ft"


def _other_basis(limit: Limit, amount: Amount) -> bool:
    """Return whether an amount is of another kind than a limit: 155 kt IAS is no ground speed, four miles no height."""
    if amount.unit in _ROUTE and _is_height(limit):
        return True
    said = frozenset(amount.raw.lower().replace(",", " ").split())
    return "ground" in limit.basis and any(word.endswith(_THROUGH_AIR) for word in said)


def _plausible(value: float, figure: Value) -> bool:
    """A bare number is taken in the limit's unit only when it is of its order of magnitude; more than the whole of
    something is seldom said without "percent".
    """
    if figure.unit == "percent" and value > _LARGEST_SHARE:
        return False
    return figure.value == 0 or 0.1 <= abs(value / figure.value) <= 10 or value == 0


def applied_to(limit: Limit, amounts: Sequence[Amount], know: Knowledge, words: Sequence[str]) -> list[Amount]:
    """Return the amounts that decide whether a limit applies."""
    found = []
    for name, _, value, unit in limit.applies:
        fitting = [a for a in amounts if a.unit is not None and fits(a, unit, know.units) is not None]
        fitting = fitting or said_of(name, amounts, words)
        fitting = fitting or [a for a in amounts if a.unit is None and a.value == value]
        found.extend(fitting[:1])
    return found
