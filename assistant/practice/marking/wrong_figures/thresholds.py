"""The side of a figure from which a thing shows or comes on: "350 and below" of what shows at 350."""

from __future__ import annotations

import re

from assistant.practice.marking.finding.equal import says
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said
from assistant.resolving.knowing import Knowledge

_AT = re.compile(r"\b(?:at|reaches|of) (?:about )?(?=[\d.])")
_FALLING = re.compile(
    r"\b(?:below|under|less|lower|down to|falls?|drops?|slow\w*|within|before|until|not)\b", re.IGNORECASE
)
_DOWN = ("max", "lower")


def below_it(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the figures at which something comes about, said as what it comes about below."""
    if need.polar or need.ordered or not need.question.has("when", "when_word"):
        return []
    figures = [
        f for p in need.points for f in p.figures if not f.sense and _AT.search(p.text) and not _FALLING.search(p.text)
    ]
    return [
        f"{claim.amount.raw} as the other bound" for claim in said.claims
        if claim.sense in _DOWN and any(says(claim, f, know) for f in figures)
    ]  # fmt: skip
