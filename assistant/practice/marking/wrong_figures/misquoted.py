"""A figure that the full answer gives besides, said as another one: "disagrees with the lever for more than 30 s".

Nobody asked for it, but whoever gives it is held to it where it is said of the very same thing.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.practice.marking.finding.equal import equals, same_kind
from assistant.practice.marking.points import Figure, Need
from assistant.practice.marking.reading.amounts import amounts_of
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.wrong_figures.working import in_sum
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import Mention

_NEAR = 7


def misquoted(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the numbers that stand behind the thing for which the full answer gives another one of their kind."""
    if need.change or not said.claims or any(p.verdict for p in need.points):
        return []
    full = know.phrase(need.expected)
    true = [(a, Figure(a.value, a.unit or "")) for a in amounts_of(full, know) if a.unit]
    asked = [Figure(a.value, a.unit or "") for a in need.allowed]
    own = {f[:2] for p in need.points for f in p.figures}
    known = [*need.extra, *(f for _, f in true), *(f for _, f in need.elsewhere), *need.former, *asked]
    found = []
    for claim in (c for c in said.claims if c.amount.unit and not c.former):
        bare = claim.amount._replace(unit=None)  # "eight degrees up to thirty" is of another unit
        if any(equals(claim.amount, f, know.units) or equals(bare, f, know.units) for f in known):
            continue
        if in_sum(claim, need, said, know):
            continue
        behind = _behind(said.reading.mentions, claim.amount.start)
        for amount, figure in true:
            if figure[:2] in own or not same_kind(claim.amount, figure, know.units):
                continue
            if behind and behind & _behind(full.mentions, amount.start):
                found.append(claim.amount.raw)
    return found


def _behind(mentions: Sequence[Mention], place: int) -> frozenset[str]:
    """Return the thing named last before a number, close to it."""
    near = [m for m in mentions if not (m.weak or m.passing) and place - _NEAR <= m.end - 1 < place]
    last = max(near, key=lambda m: m.start, default=None)
    return frozenset(c for c in last.concepts if c[0] not in "~@#") if last else frozenset()
