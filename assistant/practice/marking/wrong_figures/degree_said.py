"""How far off a reading is said to be, where it is not: "over 20 % low", of a tyre that is 11 % low.

What is to be done may be said rightly and the wrong band given with it. Whoever tells the rule with all its bands says
one that is true of the reading, and is let be; so is what is required, and the edge of the reading's own band.
"""

from __future__ import annotations

from itertools import pairwise

from assistant.practice.marking.finding.equal import equals, in_unit
from assistant.practice.marking.points import Figure, Need
from assistant.practice.marking.reading.said import Claim, Said
from assistant.practice.marking.reading.wording import word_set
from assistant.resolving.knowing import Knowledge

_CASED = word_set("if when whenever only ok okay fine until till must should needs requires required rule limit")
_RANGES = (("between", ("and",)), ("from", ("to",)))
_LEAD = 6
_DUST = 1e-6


def degree_wrong(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the numbers past which a reading that is held against bands is said to be, where it is past none."""
    if not need.edges or not need.standing:
        return []
    ranges = [(a, b) for a, b in pairwise(said.claims) if _is_range(a, b, said)]
    taken = {id(c) for pair in ranges for c in pair}
    judged = [(a, _all(_on_side(a, "up", need, know), _on_side(b, "down", need, know))) for a, b in ranges]
    judged += [(c, _true(c, need, said, know)) for c in said.claims if id(c) not in taken]
    told = [(c, true) for c, true in judged if true is not None]
    return [c.amount.raw for c, _ in told] if told and not any(true for _, true in told) else []


def _all(one: bool | None, other: bool | None) -> bool | None:
    return None if one is None or other is None else one and other


def _is_range(one: Claim, other: Claim, said: Said) -> bool:
    words = said.reading.words
    lead = words[max(0, one.amount.start - 1) : one.amount.start]
    return bool(lead) and (lead[0], words[one.amount.end : other.amount.start]) in _RANGES


def _true(claim: Claim, need: Need, said: Said, know: Knowledge) -> bool | None:
    """Return whether a reading is on the side of a number on which it is said to be; None where nothing is said so."""
    words = said.reading.words
    clause = said.clauses[claim.amount.start - 1] if claim.amount.start else -1
    lead = range(max(0, claim.amount.start - _LEAD), claim.amount.start)
    before = [words[i] for i in lead if said.clauses[i] == clause]
    if claim.former or not _CASED.isdisjoint(before) or any(equals(claim.amount, f, know.units) for f in need.edges):
        return None
    if claim.amount.unit == "percent" and words[claim.amount.start - 1 : claim.amount.start] == ("below",):
        return None  # "below 10 %" may be by 10 %
    return _on_side(claim, _SIDES.get(claim.sense, ""), need, know)


_SIDES = {"higher": "up", "lower": "down", "min": "up", "max": "down"}


def _on_side(claim: Claim, side: str, need: Need, know: Knowledge) -> bool | None:
    """Return whether a reading stands above ("up") or below a number, None where they cannot be held together."""
    shares = any(f.unit == "percent" for f in need.standing)
    for figure in need.standing if side else ():
        value = _measured(claim, figure, shares, know)
        if value is not None:
            return figure.value >= value - _DUST if side == "up" else figure.value <= value + _DUST
    return None


def _measured(claim: Claim, figure: Figure, shares: bool, know: Knowledge) -> float | None:
    """Return a number in the unit of where the reading stands; a bare one is a share where it is far below it."""
    amount = claim.amount
    if amount.unit is None:
        share = shares and amount.value < min(figure.value / _FAR, 100.0) and figure.unit != "percent"
        return None if share else amount.value
    return amount.value if amount.unit == figure.unit else in_unit(amount, figure.unit, know.units)


_FAR = 3
