"""Numbers given in the wrong sense: a bound turned round, a choice left open, a former value that never was."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from assistant.practice.marking.finding.equal import in_unit, says
from assistant.practice.marking.points import Figure, Need
from assistant.practice.marking.reading.said import Claim, Said, side_of
from assistant.practice.marking.reading.wording import DENIED, GREATER_OF, HEDGES, NEEDS, NEGATORS
from assistant.resolving.knowing import Knowledge
from assistant.understanding.words import stem

_UP = ("min", "higher")


_DOWN = ("max", "lower")


_FORBIDS = frozenset({"not", "cannot", "outside", "forbidden", "never", "no", "too", "unless", "beyond", "needs"})


_FADES = frozenset(map(stem, ("drop", "fade", "decrease", "reduce", "shrink", "taper", "diminish", "dwindle")))
"""What something does beyond the bound up to which it is whole."""


def reversed_bound(claim: Claim, figures: list[Figure], need: Need, said: Said) -> list[str]:
    """Return that a bound was turned round: "not below 800 psi" of a maximum, "yes, over 250" within it."""
    if claim.amount.raw.endswith(" min") and claim.sense == "min" and any(f.unit in ("s", "min", "h") for f in figures):
        return []  # minutes, and no minimum
    if len(figures) > 1 and any(claim.sense == f.sense or not f.sense for f in figures):
        return []  # of two cases that one number parts it is said of the one that it suits
    if need.within is None and figures and all(_forbids_the_right_side(claim, f, said) for f in figures):
        return [f"{claim.amount.raw} as the other bound"]
    for figure in figures:
        for one, other in ((_UP, _DOWN), (_DOWN, _UP)):
            if figure.sense not in one:
                continue
            weak = claim.sense in ("lower", "higher")
            if need.within is not None and weak and figure.sense in ("min", "max"):
                if _on_wrong_side(claim, one, need.within) and not _requires(claim, said):
                    return [f"{claim.amount.raw} on the other side"]
            elif claim.sense in other and not (weak and figure.sense in ("min", "max") and _ends_there(claim, said)):
                return [f"{claim.amount.raw} as the other bound"]
    return []


def misjudged(claim: Claim, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether a reading is said to be on the side of a number where it is not: "it's less than 10 % low"."""
    before = " ".join(said.reading.words[max(0, claim.amount.start - _BACK) : claim.amount.start])
    if not _STANDS.search(before) or claim.sense not in ("higher", "lower"):
        return False
    for figure in need.standing:
        value = in_unit(claim.amount, figure.unit, know.units)
        if value is not None and abs(value - figure.value) > _DUST:
            return (figure.value > value) is not (claim.sense == "higher")
    return False


def condition_turned(claim: Claim, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether what is forbidden for more than a time is said to be so for less: "not for less than 5 min"."""
    around = " ".join(said.reading.words[max(0, claim.amount.start - _BACK) : claim.amount.end + 3])
    least = _LEAST.search(around) is not None
    if need.within is None or not (least or claim.sense == "lower") or claim.amount.unit is None:
        return False
    full = know.phrase(need.expected)
    own = {f.value for p in need.points for f in p.figures}
    same = [a for a in full.amounts if a.unit == claim.amount.unit and a.value == claim.amount.value not in own]
    if not same or any(side_of(a, full) != "up" for a in same):
        return False
    return least or not said.beside([claim.amount.start]).isdisjoint(NEGATORS | {"limit", "limits"})


_LEAST = re.compile(r"\b(?:at least|not (?:for )?less than|no less than|or more)\b")
_BACK = 6
_DUST = 1e-6
_STANDS = re.compile(
    r"\b(?:is|are|was|it s|that s)(?: (?:still|only|well|just|now|already|a bit))* "
    r"(?:above|over|under|below|past|beyond|inside|(?:less|more|higher|lower) than)(?: the| a)?$"
)
"""Words that say of a reading where it is."""


def _forbids_the_right_side(claim: Claim, figure: Figure, said: Said) -> bool:
    """Return whether what is allowed is forbidden: "you mustn't be doing less than 230 knots" of a maximum."""
    before = _before_it(claim, said)
    turned = {"max": "lower", "min": "higher"}.get(figure.sense, "none")
    return claim.sense == turned and not _NOT.isdisjoint(before) and _SAVE.isdisjoint(before)


_NOT = frozenset(("not", "cannot", "never"))
_SAVE = frozenset(("unless", "until", "till", "if", "only", "but", "because", "it", "so"))


def _on_wrong_side(claim: Claim, bound: tuple[str, str], within: bool) -> bool:
    """Return whether a reading is said to stand on the side of its limit where it does not."""
    inside = "higher" if bound is _UP else "lower"
    stands = inside if within else {"higher": "lower", "lower": "higher"}[inside]
    return claim.sense != stands


def _requires(claim: Claim, said: Said) -> bool:
    """Return whether the words before a number say what is required: "it has to be below"."""
    return bool(NEEDS.intersection(said.reading.words[max(0, claim.amount.start - 6) : claim.amount.start]))


def _ends_there(claim: Claim, said: Said) -> bool:
    """Return whether what a bound allows is said to be forbidden beyond it, or to grow less: "it fades past thirty"."""
    fades = not _FADES.isdisjoint(map(stem, _before_it(claim, said)))
    return fades or not _FORBIDS.isdisjoint(said.beside([claim.amount.start]))


def _before_it(claim: Claim, said: Said) -> list[str]:
    """Return the words of a number's clause that stand before it."""
    clause = said.clauses[claim.amount.start]
    return [w for i, w in enumerate(said.reading.words[: claim.amount.start]) if said.clauses[i] == clause]


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


_BOUNDED = frozenset(("above", "below", "fewer", "less", "lower", "more", "over", "slower", "under"))
"""Words after an "or" that bounds a number: "800 or less, 6 applications"."""


def hedged(said: Said, fits: list[list[tuple[int, int]]], elsewhere: Sequence[int] = ()) -> list[str]:
    """Return the numbers between which an answer leaves the choice: "250 or maybe 280".

    elsewhere: which of the numbers are another variant's, and are said to be.
    """
    found = []
    words = said.reading.words
    for n in range(len(said.claims) - 1):
        a, b = said.claims[n].amount, said.claims[n + 1].amount
        between = words[a.end : b.start]
        joined = n + 1 not in elsewhere and "or" in between and len(between) <= 4 and _BOUNDED.isdisjoint(between)
        alike = a.unit is None or b.unit is None or a.unit == b.unit
        if (joined and alike and bool(fits[n]) != bool(fits[n + 1])) or (
            joined and alike and HEDGES.search(" ".join(words))
        ):
            found.append(f"{a.raw} or {b.raw}")
    return found
