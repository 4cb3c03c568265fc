"""Numbers of an answer that are no figure of the aeroplane's: where it stands in a book, years, what is only compared.

"It's in section three" and "less than at thirty" give no number that is asked for, and "thirty years of that" is no
time of anything on an aeroplane. Each is beside the point, and none is a wrong figure.
"""

from __future__ import annotations

import re

from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Claim, Said
from assistant.practice.marking.reading.wording import word_set

_PLACES = word_set("chapter section page paragraph part slide table lesson module volume")
_LONG = frozenset(("year", "decade", "month"))
_COMPARED = re.compile(r"\b(?:less|more|lower|higher|smaller|bigger|greater|longer|shorter) than (?:at|on|for|with)$")


def without_no_figures(said: Said, need: Need) -> Said:
    """Return an answer without the numbers that claim nothing of what is asked for."""
    kept = tuple(claim for claim in said.claims if not _is_none(claim, said, need))
    return said if len(kept) == len(said.claims) else said._replace(claims=kept)


def _is_none(claim: Claim, said: Said, need: Need) -> bool:
    amount, words = claim.amount, said.reading.words
    if amount.unit in _LONG:
        return not any(f.unit in _LONG for p in need.points for f in p.figures)
    before = words[max(0, amount.start - 3) : amount.start]
    if not amount.unit and before and before[-1] in _PLACES:
        return True
    return len(said.claims) == 1 and _COMPARED.search(" ".join(before)) is not None
