"""What is to be done once, and is said to be done again and again: "cycle it until it clears", "keep trying"."""

from __future__ import annotations

import re

from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said

_ONCE = re.compile(r"\bonce(?: only| more)?(?=[,.;:]|$| at\b)|\bonly once\b")
_AGAIN = re.compile(
    r"\b(?:again and again|over and over|repeatedly|twice|"
    r"(?:two|three|four|several|many|a few|a couple of)(?: or (?:two|three|four|five))? (?:more )?"
    r"(?:times|tries|goes|attempts|shots)|more than once|as (?:many times|often) as|(?:do not|never) give up|"
    r"(?:keep|keep on|go on|continue) (?:trying|cycling|pressing|resetting|switching|selecting|pushing|at it)|"
    r"(?:until|till) (?:it|they|that|the (?:\w+ ){1,2}?(?:light|caption|message|memo|lever|warning)|\w+ lost) "
    r"(?:clears?|works?|goes|comes|resets?|moves?|is (?:gone|out|clear)))\b"
)


def again_and_again(need: Need, said: Said) -> list[str]:
    """Return the words that have something done repeatedly which is to be done once."""
    if not any(_ONCE.search(p.text.lower()) for p in need.points if not p.optional):
        return []
    text = " ".join(said.reading.words)
    found = _AGAIN.search(text)
    if found is None or _AGAIN.search(need.expected.lower()):
        return []
    before = text[: found.start()].split()[-3:]
    return [] if {"not", "never", "no"}.intersection(before) else [found.group()]
