"""The yes or no that an answer gives, in whatever words."""

from __future__ import annotations

import re

from assistant.practice.marking.points import Need
from assistant.practice.marking.said import Said
from assistant.practice.marking.wording import NO, YES

_AGREED = frozenset({"yes", "yse", "yep", "yeah", "affirmative", "affirm"})
_REFUSED = frozenset({"no", "nope", "negative", "nah"})


def verdict_said(said: Said) -> str:
    """Return the verdict that an answer begins with: "yes", "no" or ""."""
    words = _DOUBLY.sub("yes", " ".join(said.reading.words)).split()
    first = next((w for w in words[:2] if w in _AGREED or w in _REFUSED), "")
    if first:
        return "yes" if first in _AGREED else "no"
    text = " ".join(words)
    no, yes = NO.search(text), YES.search(text)
    if no and (not yes or no.start() <= yes.start() + 12):
        return "no"
    return "yes" if yes else ""


_DOUBLY = re.compile(
    r"\b(?:it is |it s |is |are |they are )?(?:not|never) (?:inoperative|inop|unavailable|disabled|forbidden|"
    r"prohibited|impossible|unacceptable|unable)\b"
)
"""A denial of a denial: "it's not inoperative"."""


def verdict_of(need: Need, said: Said) -> str:
    """Return the verdict of an answer; to be below is to be within only a maximum: "it's below the 126 psi limit"."""
    given = verdict_said(said)
    below = _IS_BELOW.match(" ".join(said.reading.words))
    most = any(f.sense == "max" for p in need.points for f in p.figures)
    return "" if given == "yes" and below and need.within is False and not most else given


_IS_BELOW = re.compile(r"(?:it|that|this) is (?:still |well |just )?(?:below|under)\b")


def verdict_wrong(need: Need, said: Said) -> list[str]:
    """Return the yes or no that an answer gives where the other is asked for."""
    wanted = next((p.verdict for p in need.points if p.verdict), "")
    given = verdict_of(need, said) if wanted else ""
    return [f"{given}: it is {wanted}"] if wanted and given and given != wanted else []
