"""The side of a figure that has one, as the sum of steering orders has: "7.7° left", "minus 7.7", never "7.7° right".

A side is told beside the number, or by its sign (right is positive). Where all that is given points to one side it need
not be said again; said falsely, it is wrong.
"""

from __future__ import annotations

import re

from assistant.practice.marking.finding.equal import equals
from assistant.practice.marking.finding.found import Held
from assistant.practice.marking.points import Figure, Need, Point
from assistant.practice.marking.reading.said import Said
from assistant.resolving.knowing import Knowledge

SIDES = ("left", "right")
_NUMBER = r"\s*(?=[\d.]|\w+ point\b|(?:one|two|three|four|five|six|seven|eight|nine|ten|\w+teen|\w+ty)\b)"
_MINUS = r"(?<![\w.])(?:minus |negative |[-−–])" + _NUMBER
_PLUS = r"(?<![\w.])(?:plus |positive |\+)" + _NUMBER
_SUM = re.compile(
    r"(?:\d|°|\bdeg(?:rees)?|\b(?:one|two|three|four|five|six|seven|eight|nine|ten)|teen|ty)\s*"
    r"(?:minus|plus|take away|[-−–+])\s*(?:\d|one|two|three|four|five|six|seven|eight|nine|ten|\w+teen|\w+ty\b)",
    re.IGNORECASE,
)
"""A sign between two numbers, which is of a sum: "40 - 25"."""
_BARE = (
    r"\s*(?:(left|right),?\s+)?(\d+(?:\.\d+)?|\w+ point \w+|(?!left|right)\w+)(?:,?\s+(?:to the )?(left|right))?[\s.]*"
)
"""A number with a side and no unit: "7.7 left", "right seven point seven"."""
_LETTER = re.compile(r"(\d(?: ?(?:°|deg(?:rees)?))?) ?([RLrl])\b(?![\'’])")
_LETTERS = {"r": "right", "l": "left"}
"""A side by its letter behind a number: "15° R"."""
_AFTER = 5
_BEFORE = 4
_UNSIDED = 0.6
"""Share of a figure that is said without its side."""


def with_side(answer: str, need: Need) -> str:
    """Return an answer with a side for a sign, and with the unit of a bare number that stands beside a side."""
    if not any(p.side for p in need.points):
        return answer
    answer = _LETTER.sub(lambda m: f"{m[1]} {_LETTERS[m[2].lower()]}", answer)
    for sign, side in ((_MINUS, "left"), (_PLUS, "right")):
        if len(re.findall(sign, answer, re.IGNORECASE)) == 1 and not _told(answer) and not _SUM.search(answer):
            answer = f"{re.sub(sign, '', answer, count=1, flags=re.IGNORECASE)} {side}"
    bare = re.fullmatch(_BARE, answer, re.IGNORECASE)
    if not bare:
        return answer
    side = str(bare.group(1) or bare.group(3) or "")
    return f"{bare.group(2)} degrees {side}".strip() if side or bare.group(2)[0].isdigit() else answer


def _told(text: str) -> bool:
    return re.search(r"\b(?:left|right)\b", text, re.IGNORECASE) is not None


def side_held(held: Held, need: Need, said: Said, know: Knowledge) -> Held:
    """Return a figure as held, in part alone where its side is to be said and is not."""
    if not held.point.side or not held.share or _side(held.point, said, know) or not _both_given(need):
        return held
    return held._replace(share=min(held.share, _UNSIDED))


def _both_given(need: Need) -> bool:
    """Return whether a question gives orders to both sides and leaves it to the answer which of them is the greater."""
    words = need.question.words
    turned = {w for i, w in enumerate(words) if w in SIDES and (i + 1 == len(words) or words[i + 1] not in _CONTROLS)}
    return len(turned) > 1 and not any(p.text in SIDES for p in need.points)


_CONTROLS = frozenset(("tiller", "tillers", "pedal", "pedals", "seat", "side", "pilot", "rudder", "handwheel"))
"""What "left" and "right" before them only name."""


def side_wrong(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the side that a figure is said to be to, where it is to the other."""
    told = ((p, _side(p, said, know)) for p in need.points if p.side)
    return [f"{side}: it is {p.side}" for p, side in told if side and side != p.side]


def _side(point: Point, said: Said, know: Knowledge) -> str:
    """Return the side said beside a figure, or the only one that an answer names."""
    words = said.reading.words
    for claim in said.claims:
        if not any(equals(claim.amount, Figure(*f), know.units) for f in point.figures):
            continue
        start, end = claim.amount.start, claim.amount.end
        behind = [w for w in _clause(words[end : end + _AFTER]) if w in SIDES]
        before = [w for w in _clause(words[max(0, start - _BEFORE) : start][::-1]) if w in SIDES]
        if behind or before:
            return (behind or before)[0]
    named = {w for i, w in enumerate(words) if w in SIDES and words[i + 1 : i + 2] not in [(c,) for c in _CONTROLS]}
    return named.pop() if len(named) == 1 else ""


def _clause(words: tuple[str, ...]) -> tuple[str, ...]:
    """Return words up to a full stop or the next number."""
    end = next((i for i, w in enumerate(words) if w in (".", ";") or w[0].isdigit()), len(words))
    return words[:end]
