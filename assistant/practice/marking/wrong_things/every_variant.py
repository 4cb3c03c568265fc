"""What is said of every variant, or as much of before as of now, where it is true of one alone.

"Yes, up to 250, on the longer one too" is wrong where the longer one's limit is another.
"""

from __future__ import annotations

import re

from assistant.practice.marking.finding.equal import says
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import word_set
from assistant.resolving.knowing import Knowledge

_ALIKE = word_set("too also both either same likewise all any")
_KINDS = word_set("variants variant types versions version models aeroplanes bodies")
_EVERY = word_set("both all any either every each")
_UNCHANGED = (
    r"\b(?:before|then|formerly) and (?:now|since|today|after)\b|\bnow (?:and|as) (?:before|then)\b|\bunchanged\b"
)


def said_of_every(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return a figure that is given to another variant too, or a verdict that does not hold there."""
    words = said.reading.words
    told = {variant for variant, _ in need.elsewhere if _is_named(variant, said)}
    if not told or not (_ALIKE.intersection(words) or "as well" in " ".join(words)):
        return []
    found = []
    for variant, figure in need.elsewhere:
        if variant not in told or any(says(c, figure, know) for c in said.claims):
            continue
        own = [f for f in (*(f for p in need.points for f in p.figures), *need.extra) if f.unit == figure.unit]
        own = [f for f in own if f.value != figure.value]
        if any(says(c, f, know) for c in said.claims for f in own) or variant in need.differing:
            found.append(f"{variant.partition(':')[2]}: {figure.value:g}")
    return found


def _is_named(variant: str, said: Said) -> bool:
    words = said.reading.words
    kinds = any(w in _KINDS and _EVERY.intersection(words[max(0, i - 2) : i]) for i, w in enumerate(words))
    return kinds or any(variant in here for here in said.concepts)


def never_changed(need: Need, said: Said) -> list[str]:
    """Return that a figure is said to have been before what it is now, where a change of it is asked for."""
    if not need.change or not need.former or len({c.amount.value for c in said.claims}) != 1:
        return []  # two figures are said to differ: "200 before and now 205"
    found = re.search(_UNCHANGED, " ".join(said.reading.words))
    return [found.group()] if found else []
