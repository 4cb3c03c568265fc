"""Give each amount of a question its part: which input of a calculation it is.

Units decide first, then the words beside the amount ("down to 200", "20 degrees outside"); the cheapest way of
giving all amounts their parts wins, so that a number is never left over where it could have been meant.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise

from assistant.frozen import NamedTuple
from assistant.quantities.amounts import Amount
from assistant.quantities.units import Units
from assistant.understanding.clauses import STOPS
from assistant.understanding.words import stem

_WINDOW = 5
_NO_CUE = 2.0
_LEFT_OVER = 7.0
_MISSING = 3.0
_BARE = 0.4
_BARE_SELDOM = 6.0
_DISORDER = 4.0
"""Two inputs that stand the wrong way about, such as a target hotter than the start."""
_BESIDE = 0.4
"""A word of an input this near to an amount says which it is."""
_NAMED_OTHERWISE = 2.5
"""What a part costs more that no word names, where the word after an amount names another."""
_SHORT = 4
"""Letters of words that tie an amount to anything: "from"."""
_WAITING = frozenset(("until", "till"))
_TYING = frozenset(("from", "with", "then", "down", "over"))
"""Words as long that tie an amount to anything as well."""
_UNASKED = 2.0
"""An input that may be left out is seldom given without a word that names it."""
_BASES = frozenset(stem(word) for word in ("ias", "kias", "cas", "kcas", "tas", "ktas"))
"""Words in a unit of speed that say which speed it is."""
_AS_RESULT = 0.5
"""Where inputs are alike, what is calculated is seldom given: its name leads what it is calculated from as well."""
_LARGE, _LIKE = 100.0, 3.0
"""A bare number from which on, and how many times at most another may be as much, it shares that one's unit."""
_SENSIBLE = {
    "kt": 400.0, "degC": 1000.0, "deg": 360.0, "psi": 10_000.0, "percent": 200.0, "count": 20.0, "m/s2": 20.0,
    "ft": 70_000.0, "min": 1000.0,
}  # fmt: skip
"""The greatest bare number that may be meant in a unit."""
_NO_MASS = (200.0, 2000.0)
"""Bare numbers between these are no mass: too many tonnes, and too few kilograms."""
_SHARES = frozenset(("factor", "percent", "count", "h", "min", "m/s2", "Mach"))
_OFTEN_BARE = frozenset(("degC", "kt", "deg", "psi", "kg", "ft", "K", "factor"))
"""Units that people leave out; a bare number is seldom a time, a length or a count."""


class Part(NamedTuple):
    """An input that an amount may be: its unit, the words beside it, whether it may be left out."""

    id: str
    unit: str
    cues: frozenset[str]
    optional: bool
    measured: bool = False
    """Only an amount with its unit may be it: words have settled it otherwise."""
    result: bool = False
    """It is what is calculated, which may be given without a word that names it."""


def fits(amount: Amount, unit: str, units: Units) -> float | None:
    """Return an amount's value in a unit, or None when it measures something else."""
    if amount.unit is None:
        return amount.value
    if amount.unit == unit:
        return amount.value
    wanted, given = units.get(unit).dimension, units.get(amount.unit).dimension
    if amount.unit == "deg" and wanted in ("temperature", "temperature_difference"):
        return amount.value
    if wanted == "temperature_difference" and given == "temperature":
        return amount.value * (5 / 9 if amount.unit == "degF" else 1.0)
    if wanted != given or (wanted == "temperature" and amount.unit == "K" and unit != "K"):
        return None
    return units.convert(amount.value, amount.unit, unit)


@lru_cache(maxsize=1024)
def part(name: str, unit: str, cues: str, optional: bool) -> Part:
    """Return a part with its cue words as stems."""
    return Part(name, unit, frozenset(stem(w.lower()) for w in cues.replace(",", " ").split()), optional)


def assign(
    amounts: Sequence[Amount], parts: Sequence[Part], words: Sequence[str], units: Units,
    descending: Sequence[str] = (),
) -> tuple[dict[str, tuple[float, Amount]], list[Amount], float]:  # fmt: skip
    """Return the amounts by part, in the part's unit, the amounts that fit nothing, and how forced it is.

    descending: parts of which the greater value comes first, where nothing beside the amounts says otherwise.
    """
    amounts = list(amounts)[:6]
    stems = [stem(w) for w in words]
    costs = [[_cost(a, p, amounts, stems, units) for p in parts] for a in amounts]
    costs = [_by_its_word(each, a, parts, amounts, stems) for each, a in zip(costs, amounts, strict=True)]
    costs = [
        _by_waiting(each, parts) if _is_awaited(a, amounts, stems) else _by_its_verb(each, a, parts, stems)
        for each, a in zip(costs, amounts, strict=True)
    ]
    said = [[_cue_cost(a, p, amounts, stems) < _BESIDE for p in parts] for a in amounts] if descending else []
    best: tuple[float, tuple[int, ...]] = (float("inf"), ())

    def search(index: int, used: frozenset[int], cost: float, chosen: tuple[int, ...]) -> None:
        nonlocal best
        if cost >= best[0]:
            return
        if index == len(amounts):
            cost += sum(_MISSING for k, p in enumerate(parts) if k not in used and not p.optional)
            cost += _DISORDER * _disorder(chosen, amounts, parts, units, descending, said)
            cost += _LEFT_OVER * _ousted(chosen, amounts, costs)
            if cost < best[0]:
                best = (cost, chosen)
            return
        for k in range(len(parts)):
            each = costs[index][k]
            if k not in used and each is not None:
                search(index + 1, used | {k}, cost + each, (*chosen, k))
        search(index + 1, used, cost + _LEFT_OVER, (*chosen, -1))

    search(0, frozenset(), 0.0, ())
    given: dict[str, tuple[float, Amount]] = {}
    left: list[Amount] = []
    for amount, k in zip(amounts, best[1], strict=False):
        value = fits(amount, parts[k].unit, units) if k >= 0 else None
        if value is None:
            left.append(amount)
        else:
            given[parts[k].id] = (value, amount)
    return given, left, best[0] if amounts else 0.0


def _ousted(chosen: Sequence[int], amounts: Sequence[Amount], costs: Sequence[Sequence[float | None]]) -> int:
    """Return how many bare numbers are a part for which an amount that has its unit is left over: "all four brakes
    from 80 °C".
    """
    left = [k for k, (part_of, a) in enumerate(zip(chosen, amounts, strict=True)) if part_of < 0 and a.unit]
    bare = [part_of for part_of, a in zip(chosen, amounts, strict=True) if part_of >= 0 and a.unit is None]
    return sum(any(costs[k][part_of] is not None for k in left) for part_of in bare) if left else 0


def is_of_all(amount: Amount, words: Sequence[str]) -> bool:
    """Return whether a bare number tells how many there are: "all four brakes"."""
    return amount.unit is None and amount.start > 0 and words[amount.start - 1] == "all"


def cued(amounts: Sequence[Amount], parts: Sequence[Part], words: Sequence[str], units: Units) -> dict[str, int]:
    """Return the parts that words beside an amount name, with where the amount begins."""
    stems = [stem(w) for w in words]
    found: dict[str, int] = {}
    for amount in amounts:
        ranked = sorted(
            (_cue_cost(amount, p, amounts, stems), not _named_near(amount, p, stems), p.id)
            for p in parts
            if fits(amount, p.unit, units) is not None
        )
        if ranked and ranked[0][0] < _NO_CUE and (len(ranked) == 1 or ranked[1][:2] > ranked[0][:2]):
            found.setdefault(ranked[0][2], amount.start)
    return found


def _named_near(amount: Amount, wanted: Part, stems: Sequence[str]) -> bool:
    """Return whether a word that is more than "at" or "from" names a part beside an amount: "starting at 120"."""
    near = stems[max(0, amount.start - _WINDOW) : amount.end + _WINDOW]
    return any(len(word) > _SHORT and word in wanted.cues for word in near)


def _disorder(
    chosen: Sequence[int], amounts: Sequence[Amount], parts: Sequence[Part], units: Units, descending: Sequence[str],
    said: Sequence[Sequence[bool]],
) -> int:  # fmt: skip
    """Return how many neighbours in the order have the lesser value first, though no words beside both say so."""
    if not descending:
        return 0
    values = {
        parts[k].id: (fits(a, parts[k].unit, units), said[index][k])
        for index, (a, k) in enumerate(zip(amounts, chosen, strict=True))
        if k >= 0
    }
    ordered = [(v, sure) for v, sure in (values.get(name, (None, False)) for name in descending) if v is not None]
    return sum(one < other and not (a and b) for (one, a), (other, b) in pairwise(ordered))


def _cost(amount: Amount, wanted: Part, amounts: Sequence[Amount], stems: Sequence[str], units: Units) -> float | None:
    if fits(amount, wanted.unit, units) is None:
        return None
    cost = 0.0
    if amount.unit is None:
        if amount.spoken and 0 < abs(amount.value) < 1 and wanted.unit not in _SHARES:
            return None  # "half" of something is no pressure
        if wanted.unit != "count" and is_of_all(amount, stems):
            return None
        if wanted.measured or abs(amount.value) > _SENSIBLE.get(wanted.unit, float("inf")):
            return None
        if wanted.unit == "kg" and _NO_MASS[0] < amount.value < _NO_MASS[1]:
            return None
        often = wanted.unit in _OFTEN_BARE or _said_before(amount, wanted.unit, amounts)
        often = often or (wanted.unit == "count" and _cue_cost(amount, wanted, amounts, stems) < _BESIDE)
        cost = _BARE if often else _BARE_SELDOM
    if wanted.optional:
        cost += 1.0
    if wanted.result and wanted.cues:
        cost += _AS_RESULT
    cue = _cue_cost(amount, wanted, amounts, stems)
    if wanted.optional and wanted.cues and cue >= _NO_CUE and not wanted.result:
        cost += _UNASKED
    return cost + cue


def _by_its_word(
    costs: list[float | None], amount: Amount, parts: Sequence[Part], amounts: Sequence[Amount], stems: Sequence[str]
) -> list[float | None]:
    """Return the costs of an amount's parts with those raised that no word names, where the word after it names one:
    "5 kt tailwind" is no airspeed.
    """
    after = stems[amount.end] if amount.end < len(stems) else ""
    if len(after) <= _SHORT or not any(c is not None and after in p.cues for c, p in zip(costs, parts, strict=True)):
        return costs
    bare = [_cue_cost(amount, p, amounts, stems) >= _NO_CUE for p in parts]
    return [c + _NAMED_OTHERWISE if c is not None and none else c for c, none in zip(costs, bare, strict=True)]


def _by_its_verb(
    costs: list[float | None], amount: Amount, parts: Sequence[Part], stems: Sequence[str]
) -> list[float | None]:
    """Return the costs of an amount's parts with those raised that the word before "at" or "from" does not name:
    "starting at 60" is no speed.
    """
    if amount.start < 2 or len(stems[amount.start - 1]) > _SHORT:
        return costs
    verb, tie = stems[amount.start - 2], stems[amount.start - 1]
    if len(verb) < _SHORT or verb in _TYING:
        return costs
    own = [verb in p.cues and tie in p.cues for p in parts]
    if not any(c is not None and named for c, named in zip(costs, own, strict=True)):
        return costs
    return [c + _NAMED_OTHERWISE if c is not None and not named else c for c, named in zip(costs, own, strict=True)]


def _is_awaited(amount: Amount, amounts: Sequence[Amount], stems: Sequence[str]) -> bool:
    """Return whether an amount is the last of what is waited for, where another stands before it there: "until a brake
    at 310 reads | 150 |".
    """
    start = next((k for k in range(amount.start - 1, -1, -1) if stems[k] in _WAITING), None)
    if start is None or not any(start < a.start < amount.start for a in amounts):
        return False
    ends = stems[amount.end : amount.end + 1]
    return not STOPS.isdisjoint(ends) or not any(a.start > amount.start for a in amounts)


def _by_waiting(costs: list[float | None], parts: Sequence[Part]) -> list[float | None]:
    """Return the costs of what is waited for, with those raised that are not: whatever "reads" names otherwise."""
    awaited = [not _WAITING.isdisjoint(p.cues) for p in parts]
    if not any(c is not None and named for c, named in zip(costs, awaited, strict=True)):
        return costs
    return [c + _NAMED_OTHERWISE if c is not None and not named else c for c, named in zip(costs, awaited, strict=True)]


def _said_before(amount: Amount, unit: str, amounts: Sequence[Amount]) -> bool:
    """Return whether an amount of the like size has the unit that a bare number leaves out: "1,100 m of 1,700"."""
    if abs(amount.value) < _LARGE:
        return False
    return any(a.unit == unit and a.value and 1 / _LIKE <= amount.value / a.value <= _LIKE for a in amounts)


def _leads_on(stems: Sequence[str], at: int) -> bool:
    """Return whether a word after an amount leads on to another one: "20 °C falls to", "from 300 to"."""
    return stems[at] == "to" or list(stems[at + 1 : at + 2]) == ["to"]


def _cue_cost(amount: Amount, wanted: Part, amounts: Sequence[Amount], stems: Sequence[str]) -> float:
    if not wanted.cues.isdisjoint(_BASES.intersection(stems[amount.start + 1 : amount.end])):
        return 0.0  # "190 KIAS": its own unit says which it is
    nearest = _NO_CUE
    for k in range(max(0, amount.start - _WINDOW), min(len(stems), amount.end + _WINDOW)):
        if amount.start <= k < amount.end or stems[k] not in wanted.cues:
            continue
        before = k < amount.start
        if not before and "to" in wanted.cues and _leads_on(stems, k):
            continue
        distance = amount.start - k - 1 if before else k - amount.end
        between = range(k + 1, amount.start) if before else range(amount.end, k)
        crossed = any(other is not amount and other.start in between for other in amounts)
        cost = 0.28 * distance + (0.0 if before else 0.12) + (1.3 if crossed else 0.0)
        nearest = min(nearest, cost)
    return nearest
