"""Numbers given in the wrong sense: a bound turned round, a choice left open, a former value that never was."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.practice.marking.equal import says
from assistant.practice.marking.points import Figure, Need
from assistant.practice.marking.said import Claim, Said
from assistant.practice.marking.wording import DENIED, GREATER_OF, HEDGES, NEEDS
from assistant.resolving.knowing import Knowledge

_UP = ("min", "higher")


_DOWN = ("max", "lower")


_FORBIDS = frozenset({"not", "cannot", "outside", "forbidden", "never", "no", "too", "unless", "beyond", "needs"})


def reversed_bound(claim: Claim, figures: list[Figure], need: Need, said: Said) -> list[str]:
    """Return that a bound was turned round: "not below 800 psi" of a maximum, "yes, over 250" within it."""
    if len(figures) > 1 and any(claim.sense == f.sense or not f.sense for f in figures):
        return []  # of two cases that one number parts it is said of the one that it suits
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
    return bool(_FORBIDS & said.beside([claim.amount.start]))


def greater_of(need: Need, said: Said) -> list[str]:
    """Return that the higher of two limits is said to apply, where the lower does."""
    two = any(len({f.unit for f in p.figures if f.sense == "max"}) > 1 for p in need.points)
    found = GREATER_OF.search(" ".join(said.reading.words)) if two else None
    return [found.group()] if found else []


def false_former(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the numbers that are said to have been so, and were not, on no variant either."""
    found = []
    for claim in said.claims:
        before = " ".join(said.reading.words[max(0, claim.amount.start - 5) : claim.amount.start])
        if not claim.former or DENIED.search(before):
            continue
        if not any(says(claim, figure, know) for figure in _pasts(need, know)):
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


def hedged(need: Need, said: Said, fits: list[list[tuple[int, int]]]) -> list[str]:
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
