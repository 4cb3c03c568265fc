"""Numbers of a sum that lead up to a computed result: "R outer 8.4 m, R nose 14.2 m, plus 6: 28.7 m".

A sum may halve and double, and go by hundredths; how many there are of a thing stands in the full working, for it is
known of the aeroplane alone. They count as working only where the right result stands behind them, as the last number
of its kind, and each of them is reckoned from what stands before it: the question, the full answer's figures, the
other numbers said. Spoken ones without a unit are rounded as people speak, and need no proof.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import combinations

from assistant.practice.marking.finding.equal import in_unit, same_kind, says
from assistant.practice.marking.points import Figure, Need
from assistant.practice.marking.reading.said import Claim, Said
from assistant.practice.marking.reading.wording import word_set
from assistant.quantities.amounts import Amount
from assistant.resolving.knowing import Knowledge

_CLOSE = 0.012
_EXACT = 0.001
"""How near a number of the working must come to what it is reckoned from; nearer where it could be the result."""
_MADE = 0.004
"""How near to what is made of two known ones: of many numbers, two soon make any other."""
_CLOSENESS = 0.003
"""How near to the result a sum of numbers that are said must come."""
_MOST = 5
_LEAST = 2
_KELVIN = 273.15
_LEFT_OPEN = word_set("or either maybe perhaps between")


def in_sum(claim: Claim, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether a number is one of the working of a result that is rightly said behind it."""
    computed = [f for p in need.points for f in p.figures if f.tolerance]
    if len(need.points) != 1 or not computed or not _LEFT_OPEN.isdisjoint(said.reading.words):
        return False
    result = computed[0]
    alike = [c for c in said.claims if same_kind(c.amount, result, know.units)]
    alike = [c for c in alike if not _left_out(c, need, said)] or alike
    if not alike or alike[-1] is claim or not says(alike[-1], result, know):
        return False
    if _left_out(claim, need, said) and _short_of(claim.amount, result, need):
        return True
    if claim.amount.start > alike[-1].amount.start:
        return False
    if claim.amount.unit is None and claim.amount.spoken:
        return True
    own = said.claims[: said.claims.index(claim)]
    leading = [c.amount.value for c in said.claims if c.amount.start < alike[-1].amount.start]
    if _adds_up(claim.amount.value, leading, result.value) or _short_of(claim.amount, result, need):
        return True
    close = _EXACT if claim.amount.unit == result.unit else _CLOSE
    known = {*_given(need, know), *(v for c in own for v in _scales(c.amount, know))}
    said_of = claim.amount
    alike_unit = said_of.unit in (None, result.unit) and said_of.value <= result.value
    return any(_reckoned(value, known, close, alike_unit) for value in _scales(claim.amount, know))


def _left_out(claim: Claim, need: Need, said: Said) -> bool:
    """Return whether a number is said to be without something that a question includes: "22.7 m without it"."""
    behind = said.reading.words[claim.amount.end : claim.amount.end + 1]
    return behind == ("without",) and "without" not in need.question.words


def _short_of(amount: Amount, result: Figure, need: Need) -> bool:
    """Return whether a number lacks nothing of the result but what the question gives, once or on both sides."""
    given = [each.value for each in need.allowed if each.unit == result.unit and each.value]
    apart = result.value - amount.value
    near = _CLOSE * result.value
    return amount.unit in (None, result.unit) and any(abs(apart - k * g) <= near for g in given for k in (1, 2))


def _adds_up(value: float, leading: list[float], result: float) -> bool:
    """Return whether a number is one of some that together make the result."""
    sums = (each for n in range(_LEAST, min(_MOST, len(leading)) + 1) for each in combinations(leading, n))
    return any(value in each and abs(sum(each) - result) <= _CLOSENESS * abs(result) for each in sums)


def _given(need: Need, know: Knowledge) -> Iterator[float]:
    """Yield the numbers that a sum may start from, with those of the question in basic units as well."""
    yield from _OF_ANY_SUM
    yield from (f.value for f in need.extra)
    for amount in need.allowed:
        yield amount.value
        yield from (v for unit in ("m/s", "m", "degC") if (v := in_unit(amount, unit, know.units)) is not None)
        if amount.unit == "degC":
            yield amount.value + _KELVIN
    yield from (f.value + _KELVIN for f in need.extra if f.unit == "degC")


_OF_ANY_SUM = (2.0, 100.0)


def _scales(amount: Amount, know: Knowledge) -> Iterator[float]:
    """Yield a number of a sum as it is said, and in joules: 62.4 kJ for a degree is 48 kg × 1,300."""
    yield amount.value
    joules = in_unit(amount, "J", know.units)
    if joules is not None and amount.unit != "J":
        yield joules


def _reckoned(value: float, known: Iterable[float], close: float, alike: bool) -> bool:
    """Return whether a number comes from one or two known ones; alike: whether it may be a part of the result, which
    is known itself, or halved or doubled.
    """
    numbers = [k for k in dict.fromkeys(known) if k]
    if any(_is(value, k, close) for k in numbers):
        return True
    if alike:
        return any(_is(value, each, close) for a in numbers for each in (a * 2, a / 2))
    made = (r for a, b in combinations(numbers, 2) for r in (a + b, abs(a - b), a * b, a / b, b / a))
    return any(_is(value, each, min(close, _MADE)) for each in made)


def _is(value: float, other: float, close: float) -> bool:
    return abs(value - other) <= close * max(abs(other), 1e-9)

