"""Numbers that give no figure: "well under a minute", "a few hundred degrees", "one of them".

They are left out of what an answer claims as long as they are not false: whoever says "over an hour" of seconds, or
"a few thousand" of hundreds, claims something.
"""

from __future__ import annotations

from assistant.practice.marking.finding.equal import in_unit
from assistant.practice.marking.points import Figure, Need
from assistant.practice.marking.reading.said import Claim, Said
from assistant.practice.marking.reading.wording import word_set
from assistant.quantities.amounts import Amount
from assistant.resolving.knowing import Knowledge

_ARTICLES = ("a ", "an ", "half a ", "half an ")
_WITHIN = word_set("inside less under within")
_FEW = word_set("couple few several some")
_BARS = 4
"""So many bars may be drawn on a display, and are no pressure where none is asked for."""
_LEAST, _MOST = 1.5, 10
"""How many of a thing a few are."""
_MEMBERS = word_set("them those these the")


def without_vague(said: Said, need: Need, know: Knowledge) -> Said:
    """Return an answer without the numbers of its that give no figure."""
    figures = [f for p in need.points for f in p.figures]
    kept = tuple(c for c in said.claims if not _is_vague(c, figures, said, know))
    return said if len(kept) == len(said.claims) else said._replace(claims=kept)


def _is_vague(claim: Claim, figures: list[Figure], said: Said, know: Knowledge) -> bool:
    words = said.reading.words
    before = words[max(0, claim.amount.start - _NEAR) : claim.amount.start]
    raw = claim.amount.raw.lower()
    if raw == "one":
        after = (*words[claim.amount.end : claim.amount.end + 2], "", "")
        return after[0] == "of" and after[1] in _MEMBERS and not any(f.unit in ("", "count") for f in figures)
    if claim.amount.unit == "bar" and claim.amount.spoken and claim.amount.value <= _BARS:
        return not any(f.unit in ("psi", "bar", "kPa") for f in figures)
    own = [v for f in figures if (v := _in_own_unit(claim, f, know)) is not None]
    if raw.startswith(_ARTICLES) and not _WITHIN.isdisjoint(before):
        return bool(own) and all(v <= claim.amount.value for v in own) and claim.amount.value not in own
    few = not _FEW.isdisjoint(before[-2:]) and claim.amount.value in (10.0, 100.0, 1000.0)
    return few and bool(own) and all(_LEAST * claim.amount.value <= v <= _MOST * claim.amount.value for v in own)


_NEAR = 3


def _in_own_unit(claim: Claim, figure: Figure, know: Knowledge) -> float | None:
    """Return a figure in the unit of a claim, None where they measure different things."""
    unit = claim.amount.unit
    if unit is None or (unit == "deg" and figure.unit in ("degC", "K")):
        return figure.value
    if figure.unit in _UNMEASURED or unit in _UNMEASURED:
        return None
    return in_unit(Amount(0, 0, figure.value, figure.unit, "", False, False), unit, know.units)


_UNMEASURED = ("", "count", "factor", "percent")
