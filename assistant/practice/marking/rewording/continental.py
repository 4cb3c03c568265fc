"""Numbers as the continent writes them: "1.400 psi" with a point for the thousands, "2,3 m/s²" with a comma.

They are written the other way about only where a figure that is asked for shows which is meant.
"""

from __future__ import annotations

import re

from assistant.practice.marking.points import Need

_THOUSAND = 1000
_THOUSANDS = r"(?<![\w.,])([1-9]\d{0,2})\.(\d{3})(?![\d]|[.,]\d)"
_DECIMALS = r"(?<![\w.,])(\d{1,3}),(\d{1,2})(?![\d]|[.,]\d)"


def continental(answer: str, need: Need) -> str:
    """Return an answer with its numbers written as the documents write theirs."""
    values = [abs(f.value) for p in need.points for f in p.figures]
    if any(v >= _THOUSAND for v in values):
        answer = re.sub(_THOUSANDS, r"\1,\2", answer)
    if any(v != round(v) for v in values):
        answer = re.sub(_DECIMALS, r"\1.\2", answer)
    return answer
