"""The numbers of an answer against the figures it needs: which is which, and which belongs to nothing here."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import combinations
from typing import NamedTuple

from assistant.practice.marking.pairing import Label, labels_of, stretches
from assistant.practice.marking.points import Figure, Need, Point
from assistant.practice.marking.said import Claim, Said, plain
from assistant.practice.marking.wording import ALIKE, DENIED, GREATER_OF, HEDGES, NEEDS
from assistant.quantities.amounts import Amount
from assistant.quantities.units import Units
from assistant.resolving.knowing import Knowledge

_ROUNDED = 0.006
_PERCENT = 0.6
"""Percentage points by which a percentage that follows from others may be rounded."""
_MOSTLY = 0.75
"""Share of the things in a figure's name that must be named with a number that is taken for it."""
_TIMES = {"double": 2.0, "doubled": 2.0, "twice": 2.0, "triple": 3.0, "treble": 3.0, "halve": 0.5, "halved": 0.5}
_UP, _DOWN = ("min", "higher"), ("max", "lower")
_RATIOS = ("percent", "factor", "")
_FORBIDS = frozenset({"not", "cannot", "outside", "forbidden", "never", "no", "too", "unless", "beyond", "needs"})


class Numbers(NamedTuple):
    """For each point the place of each of its figures (None: not said), and what was wrong."""

    found: dict[int, tuple[int | None, ...]]
    wrong: tuple[str, ...]


def judge_numbers(need: Need, said: Said, know: Knowledge) -> Numbers:
    """Return which figures an answer holds, and which of its numbers contradict."""
    wanted = [(i, k, f) for i, p in enumerate(need.points) for k, f in enumerate(p.figures)]
    fits = [[(i, k) for i, k, f in wanted if _suits(claim, f, need, said, know)] for claim in said.claims]
    found: dict[tuple[int, int], int] = {}
    labels = {} if need.ordered or need.change else labels_of(need, _alike(need), know)
    named = stretches(labels, (c.amount.start for c in said.claims), said) if len(labels) > 1 else {}
    wrong = [*_swapped(need, said, fits, labels, named)]
    for claim, spots in zip(said.claims, fits, strict=True):
        for spot in _taken(spots, claim, found, need, named):
            found[spot] = claim.amount.start
    missing = [f for i, k, f in wanted if (i, k) not in found and not _covered(need.points[i], i, found)]
    for claim, spots in zip(said.claims, fits, strict=True):
        if spots:
            wrong += _reversed(claim, [need.points[i].figures[k] for i, k in spots], need, said)
        elif _counts_now(claim, need, know) and not _is_known(claim, need, missing, said, know):
            wrong.append(f"{claim.amount.raw}")
    wrong += [word for word in said.reading.words if word in _TIMES and any(f.unit in ("factor", "") for f in missing)]
    wrong += _hedged(need, said, fits)
    wrong += _greater_of(need, said)
    wrong += _false_former(need, said, know)
    places = {
        i: tuple(found.get((i, k)) for k in range(len(p.figures))) for i, p in enumerate(need.points) if p.figures
    }
    return Numbers(places, tuple(dict.fromkeys(wrong)))


def _covered(point: Point, index: int, found: dict[tuple[int, int], int]) -> bool:
    return point.any_figure and any(i == index for i, _ in found)


def _taken(
    spots: list[tuple[int, int]],
    claim: Claim,
    found: dict[tuple[int, int], int],
    need: Need,
    named: dict[int, set[int]],
) -> list[tuple[int, int]]:
    """Return which figures a number says: of steps the next one, else all that are alike, or those it is said of."""
    free = [spot for spot in spots if spot not in found]
    if need.ordered:
        return free[:1]
    here = {p for p, places in named.items() if claim.amount.start in places}
    return [spot for spot in free if spot[0] in here or not here or spot[0] not in named]


def _suits(claim: Claim, figure: Figure, need: Need, said: Said, know: Knowledge) -> bool:
    if need.change:
        return (claim.former or _leads_on(claim, said)) is (figure.value in {f.value for f in need.former}) and _says(
            claim, figure, know
        )
    if claim.former:
        return False
    return _says(claim, figure, know)


def _leads_on(claim: Claim, said: Said) -> bool:
    """Return whether a number is the first of two of a change: "1,800 to 2,000", "280, now 250"."""
    after = said.reading.words[claim.amount.end : claim.amount.end + 3]
    following = [c for c in said.claims if c.amount.start >= claim.amount.end]
    arrow = after[:1] in (("to",), ("->",), ("→",)) or after[:2] == ("-", ">")
    return bool(following) and (arrow or "now" in after or "before" in after)


def _says(claim: Claim, figure: Figure, know: Knowledge) -> bool:
    """Return whether a number says a figure, in its own unit or, where that is the next number's, without one."""
    if equals(claim.amount, figure, know.units):
        return True
    if claim.amount.unit == "min" and figure.unit in ("s", "h", "min"):
        return False  # minutes, and no minimum
    return claim.bare and equals(claim.amount._replace(unit=None), figure, know.units)


def equals(amount: Amount, figure: Figure, units: Units) -> bool:
    """Return whether an amount says a figure: exactly, within its tolerance, or converted and rounded."""
    unit = amount.unit
    if unit in (None, figure.unit, "count") or figure.unit in ("", "count"):
        if _ratio(amount, figure):
            return True
        bare = (
            unit is None or figure.unit == "" or unit == figure.unit or {unit, figure.unit} <= {"count", "factor", ""}
        )
        return bare and _near(amount.value, figure.value, figure.tolerance)
    if unit == "lb" and figure.unit == "psi":
        return _near(amount.value, figure.value, figure.tolerance)  # pounds on the gauge
    if unit in _RATIOS and figure.unit in _RATIOS:
        return _ratio(amount, figure)
    value = _converted(amount.value, str(unit), figure.unit, units)
    if value is None:
        return False
    exact = unit == figure.unit or {unit, figure.unit} <= {"deg", "degC", "K"}
    return _near(value, figure.value, max(figure.tolerance, 0.0 if exact else _ROUNDED))


def _ratio(amount: Amount, figure: Figure) -> bool:
    """Return whether a share is said in percent or as a factor: 0.85 is 85 percent, 60 % more is 1.6."""
    if amount.unit == "percent" and figure.unit in ("factor", ""):
        return any(_near(v, figure.value, figure.tolerance) for v in (amount.value / 100, 1 + amount.value / 100))
    if figure.unit == "percent" and amount.unit in ("factor", None) and amount.value < 1:
        return _near(amount.value * 100, figure.value, figure.tolerance)
    return False


def _near(value: float, wanted: float, tolerance: float) -> bool:
    return abs(value - wanted) <= max(tolerance * abs(wanted), 1e-9)


def _converted(value: float, unit: str, target: str, units: Units) -> float | None:
    if unit == "deg" and target in ("degC", "K"):
        return value
    if target == "K":
        return value if unit in ("degC", "K") else value * 5 / 9 if unit == "degF" else None
    if unit == "K":
        unit = "degC"
    if units.get(unit).dimension != units.get(target).dimension:
        return None
    return units.convert(value, unit, target)


# --- numbers that are no figure asked for


def _is_known(claim: Claim, need: Need, missing: list[Figure], said: Said, know: Knowledge) -> bool:
    """Return whether a number is one of the question, follows from it, or belongs to the full answer."""
    amount = claim.amount
    if any(equals(amount, Figure(a.value, a.unit or "", 0.0), know.units) for a in need.allowed):
        return not _in_place_of(amount, missing, need)
    if _in_working(claim, said):
        return True
    judged = any(p.verdict for p in need.points) and claim.sense not in ("max", "min")
    amiss = any(_same_kind(amount, figure, know.units) for figure in missing)
    if (judged or not amiss) and any(_derived(amount, f, know.units) for f in _differences(need)):
        return True
    unitless = any(f.unit in ("", "count") for f in missing)
    if not unitless and (_counts(amount, need) or _tells_how_many(claim, said)):
        return True
    if amiss:
        return False
    if _is_supported(amount, need, said, know):
        return True
    return any(
        _derived(amount, f, know.units) if f.unit == "percent" else _rounded(amount, f, know.units) for f in need.extra
    )


def _in_working(claim: Claim, said: Said) -> bool:
    """Return whether a number stands before the equals sign of a sum."""
    words = said.reading.words
    return "=" in words[claim.amount.end :] or (
        claim.amount.end < len(words) and "=" in said.text[said.text.find(claim.amount.raw) :]
    )


def _is_supported(amount: Amount, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether a number that nobody asked for is a stated figure of what the answer names with it."""
    named = need.question.concepts | frozenset(c for here in said.concepts for c in here)
    for name in know.base.ids("limits"):
        limit = know.base.records[name]
        figures = [v for v in (limit.value, limit.maximum, limit.minimum) if v]
        if any(equals(amount, Figure(v.value, v.unit), know.units) for v in figures):
            things = [m for m in know.phrase(limit.of).mentions if not know.matcher.is_soft(m)]
            held = sum(1 for m in things if not m.concepts.isdisjoint(named))
            if held and held >= _MOSTLY * len(things):
                return True
    return False


def _in_place_of(amount: Amount, missing: list[Figure], need: Need) -> bool:
    """Return whether a number of the question is given as its answer: "forty degrees, the bigger one"."""
    wanted = [f for p in need.points for f in p.figures]
    judged = any(p.verdict for p in need.points)
    return not judged and len(missing) == len(wanted) and any(amount.unit == f.unit for f in missing)


def _rounded(amount: Amount, figure: Figure, units: Units) -> bool:
    return equals(amount, figure._replace(tolerance=max(figure.tolerance, _ROUNDED)), units)


def _derived(amount: Amount, figure: Figure, units: Units) -> bool:
    if amount.unit == figure.unit == "percent" and abs(amount.value - figure.value) < _PERCENT:
        return True
    return equals(amount, figure._replace(tolerance=0.03), units)


def _differences(need: Need) -> Iterable[Figure]:
    """Return the differences of the question's amounts from each other and from the figures, and their shares."""
    given = [(a.value, a.unit or "") for a in need.allowed]
    stated = [(f.value, f.unit) for p in need.points for f in p.figures]
    more = [(f.value, f.unit) for f in need.extra]
    apart = {round(abs(x - y), 6) for x, _ in given for y, _ in (*stated, *more)}
    figures = stated + [(x, u) for x, u in more if round(x, 6) not in apart]
    for (x, u), (y, v) in [*combinations(given, 2), *((g, f) for g in given for f in figures)]:
        if (u == v or "" in (u, v)) and x != y:
            unit = u or v
            yield Figure(abs(x - y), "K" if unit == "degC" else unit)
            low, high = sorted((abs(x), abs(y)))
            yield Figure(100 * low / high, "percent")
            yield Figure(100 * (high - low) / high, "percent")


def _tells_how_many(claim: Claim, said: Said) -> bool:
    """Return whether a small number in words only counts things beside other numbers: "the four may be 120 apart"."""
    small = claim.amount.unit in (None, "count") and claim.amount.value in (2, 3, 4, 6)
    return small and claim.amount.spoken and len(said.claims) > 1


def _counts(amount: Amount, need: Need) -> bool:
    """Return whether a number only counts things: "both of the two cases"."""
    small = amount.unit in (None, "count") and amount.value in (1, 2, 3, 4)
    return small and any(p.elements and not p.figures for p in need.points)


def _same_kind(amount: Amount, figure: Figure, units: Units) -> bool:
    if amount.unit is None:
        return True
    return (
        figure.unit not in ("", "count", "factor")
        and _converted(amount.value, amount.unit, figure.unit, units) is not None
    )


def _counts_now(claim: Claim, need: Need, know: Knowledge) -> bool:
    """Return whether a number is given as what holds, or a change is asked for, where the former one counts too."""
    return not claim.former or need.change or _is_present_former(claim, need, know)


def _is_present_former(claim: Claim, need: Need, know: Knowledge) -> bool:
    """Return whether a former value is given as the present one: "now 280"."""
    return claim.now and any(equals(claim.amount, f, know.units) for f in need.former)


# --- bounds, hedges and exchanges


def _reversed(claim: Claim, figures: list[Figure], need: Need, said: Said) -> list[str]:
    """Return that a bound was turned round: "not below 800 psi" of a maximum, "yes, over 250" within it."""
    for figure in figures:
        for one, other in ((_UP, _DOWN), (_DOWN, _UP)):
            if figure.sense not in one:
                continue
            weak = claim.sense in ("lower", "higher")
            if need.within is not None and weak and figure.sense in ("min", "max"):
                if _on_wrong_side(claim, one, need.within) and not _requires(claim, said):
                    return [f"{claim.amount.raw} on the other side"]
            elif claim.sense in other and not (weak and figure.sense in ("min", "max") and _forbids(claim, said)):
                return [f"{claim.amount.raw} as the other bound"]
    return []


def _on_wrong_side(claim: Claim, bound: tuple[str, str], within: bool) -> bool:
    """Return whether a reading is said to stand on the side of its limit where it does not."""
    inside = "higher" if bound is _UP else "lower"
    stands = inside if within else {"higher": "lower", "lower": "higher"}[inside]
    return claim.sense != stands


def _requires(claim: Claim, said: Said) -> bool:
    """Return whether the words before a number say what is required: "it has to be below"."""
    return bool(NEEDS.intersection(said.reading.words[max(0, claim.amount.start - 6) : claim.amount.start]))


def _forbids(claim: Claim, said: Said) -> bool:
    clause = said.clauses[claim.amount.start]
    words = {w for w, c in zip(said.reading.words, said.clauses, strict=True) if c == clause}
    return bool(_FORBIDS & words)


def _greater_of(need: Need, said: Said) -> list[str]:
    """Return that the higher of two limits is said to apply, where the lower does."""
    two = any(len({f.unit for f in p.figures if f.sense == "max"}) > 1 for p in need.points)
    found = GREATER_OF.search(" ".join(said.reading.words)) if two else None
    return [found.group()] if found else []


def _false_former(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the numbers that are said to have been so, and were not, on no variant either."""
    found = []
    for claim in said.claims:
        before = " ".join(said.reading.words[max(0, claim.amount.start - 5) : claim.amount.start])
        if not claim.former or DENIED.search(before):
            continue
        if not any(_says(claim, figure, know) for figure in _pasts(need, know)):
            found.append(claim.amount.raw)
    return found


def _pasts(need: Need, know: Knowledge) -> Iterable[Figure]:
    """Yield every figure that something may have been: former ones, those of the question and those of any variant."""
    yield from need.former
    yield from (Figure(a.value, a.unit or "") for a in need.allowed)
    yield from (f for p in need.points for f in p.figures)
    for name in know.base.changes:
        for amount in know.phrase(know.base.changes[name].formerly).amounts:
            yield Figure(amount.value, amount.unit or "")
    for override in know.base.overrides:
        for record in (know.base.records[override.record], know.base.record(override.record, override.variant)):
            for value in (getattr(record, field, None) for field in ("value", "maximum", "minimum")):
                if value:
                    yield Figure(value.value, value.unit)


def _hedged(need: Need, said: Said, fits: list[list[tuple[int, int]]]) -> list[str]:
    """Return the numbers between which an answer leaves the choice: "250 or maybe 280"."""
    found = []
    words = said.reading.words
    for n in range(len(said.claims) - 1):
        a, b = said.claims[n].amount, said.claims[n + 1].amount
        between = words[a.end : b.start]
        joined = "or" in between and len(between) <= 4
        alike = a.unit is None or b.unit is None or a.unit == b.unit
        if (joined and alike and bool(fits[n]) != bool(fits[n + 1])) or (
            joined and alike and HEDGES.search(" ".join(words))
        ):
            found.append(f"{a.raw} or {b.raw}")
    return found


def _swapped(
    need: Need, said: Said, fits: list[list[tuple[int, int]]], labels: dict[int, Label], named: dict[int, set[int]]
) -> list[str]:
    """Return the figures that were given to one another's things: "main 90 to 160, nose 60 to 110"."""
    if len(labels) < 2:
        return []
    if _one_for_all(said, fits):
        return ["one figure for all of them"]
    found = []
    for claim, spots in zip(said.claims, fits, strict=True) if named else ():
        here = {p for p, places in named.items() if claim.amount.start in places}
        if spots and here and here.isdisjoint(i for i, _ in spots) and all(i in labels for i, _ in spots):
            found.append(f"{claim.amount.raw} belongs to something else")
    if named:
        return found
    rank = _ranks(need, labels)
    order = [rank[spots[0][0]] for spots in fits if spots and spots[0][0] in labels and len(spots) == 1]
    return ["the figures are exchanged"] if order != sorted(order) else []


def _ranks(need: Need, labels: dict[int, Label]) -> dict[int, int]:
    """Return the order in which a question names the points, else the one that they have."""
    if any(need.points[p].labels for p in labels):
        return {p: p for p in labels}  # the parts of a question stand in its order already
    words = [plain(w) for w in need.question.words]
    concepts = {i: m.concepts for m in need.question.mentions for i in m.taken}
    places = {
        p: next((i for i, w in enumerate(words) if w in label.words or concepts.get(i, _NONE) & label.concepts), -1)
        for p, label in labels.items()
    }
    found = set(places.values())
    return places if len(found) == len(places) and -1 not in found else {p: p for p in labels}


_NONE: frozenset[str] = frozenset()


def _one_for_all(said: Said, fits: list[list[tuple[int, int]]]) -> bool:
    """Return whether one figure is given for cases that have each their own: "15 s in both cases"."""
    points = {i for spots in fits for i, _ in spots}
    return len(points) == 1 and all(fits) and bool(ALIKE.search(" ".join(said.reading.words)))


def _alike(need: Need) -> list[int]:
    """Return the points whose figures are of one unit with those of another."""
    units = {i: {f.unit for f in p.figures} for i, p in enumerate(need.points) if p.figures}
    return [i for i in units if any(units[i] & units[j] for j in units if j != i)]
