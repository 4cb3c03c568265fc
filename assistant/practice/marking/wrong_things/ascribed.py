"""Right figures that an answer gives to something else: to one leg alone, or as the limit of another thing.

"190 for the nose leg, 230 for the mains" splits what is one figure; "350 °C is the minimum for take-off" says of the
figure asked for that it bounds what another figure bounds.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.knowledge.records import Limit
from assistant.practice.marking.finding.equal import equals, same_kind
from assistant.practice.marking.points import Figure, Need
from assistant.practice.marking.reading.said import Claim, Said
from assistant.resolving.knowing import Knowledge

_FAMILY = "position"
"""Family of the parts of the gear that a figure may be of."""
_LEADS = frozenset(("at", "for", "in", "of", "on", "per", "the", "with"))
_NEAR = 4


def ascribed(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return what a figure is said to be of, where it is not."""
    figures = [f for p in need.points for f in p.figures]
    claims = [c for c in said.claims if any(same_kind(c.amount, f, know.units) for f in figures)]
    if not claims or need.ordered:
        return []
    measured = [_with_unit(c, figures, know) for c in claims]
    return [*_split(claims, need, said, know), *_bounding(measured, need, said, know)]


def _with_unit(claim: Claim, figures: list[Figure], know: Knowledge) -> Claim:
    """Return a bare number with the unit of the figure that it says."""
    unit = claim.amount.unit or next((f.unit for f in figures if equals(claim.amount, f, know.units)), None)
    return claim._replace(amount=claim.amount._replace(unit=unit))


def _split(claims: list[Claim], need: Need, said: Said, know: Knowledge) -> Iterator[str]:
    """Yield the leg of which a number is told, where neither the question nor its full answer parts them."""
    families = know.lexicon.families
    if any(families.get(c) == _FAMILY for c in need.known):
        return
    words = (*said.reading.words, "")
    for claim in claims:
        i = claim.amount.end
        while i - claim.amount.end < _NEAR and words[i] in _LEADS:
            i += 1
        if i > claim.amount.end and words[i] and any(families.get(c) == _FAMILY for c in said.concepts[i]):
            yield " ".join(words[claim.amount.start : i + 1])


_BOUND = re.compile(
    r"^(?:is |being |, |\( ?|as )*(?:the |a |its |our )?(?P<bound>minimum|min|maximum|max|limit|lowest|highest)"
    r"(?: \w+)? (?:for|to|before|of|at) (?P<thing>[^.,;]+)"
)


def _bounding(claims: list[Claim], need: Need, said: Said, know: Knowledge) -> Iterator[str]:
    """Yield the numbers that are called the limit of a thing whose limit is another, or is one the other way about."""
    words = said.reading.words
    for claim in claims:
        found = _BOUND.match(" ".join(words[claim.amount.end :]))
        named = _things(found["thing"], know) - need.known if found else frozenset()
        if found is None or not named:
            continue
        stated = [limit for limit in map(know.base.records.__getitem__, know.base.ids("limits"))
                  if named & know.phrase(limit.of).concepts and _is_alike(limit, claim, know)]  # fmt: skip
        if stated and not any(_holds(limit, claim, found["bound"], know) for limit in stated):
            yield f"{claim.amount.raw}: {found.group().strip()}"


def _things(text: str, know: Knowledge) -> frozenset[str]:
    kinds = know.lexicon.kinds
    return frozenset(c for c in know.phrase(text).concepts if c[0] not in "~@=#" and kinds.get(c, "thing") == "thing")


def _is_alike(limit: Limit, claim: Claim, know: Knowledge) -> bool:
    value = limit.maximum or limit.minimum or limit.value
    return value is not None and claim.amount.unit is not None and same_kind(
        claim.amount, Figure(value.value, value.unit), know.units
    )  # fmt: skip


def _holds(limit: Limit, claim: Claim, bound: str, know: Knowledge) -> bool:
    """Return whether a number is the bound that it is called of a limit."""
    sides = {"min": limit.minimum, "low": limit.minimum, "max": limit.maximum, "hig": limit.maximum}
    own = (sides[bound[:3]],) if bound[:3] in sides else (limit.minimum, limit.maximum)
    values = [v for v in (*own, limit.value) if v]
    return any(equals(claim.amount, Figure(v.value, v.unit), know.units) for v in values)
