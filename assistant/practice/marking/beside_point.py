"""Answers that give no figure where nothing but figures is asked for, and claim nothing of them: beside the point.

"The lever is under a hatch" says nothing of the speed of a free fall. What speaks of the figure all the same ("as fast
as you like", "there is no limit", "an airspeed") claims something else, and is wrong.
"""

from __future__ import annotations

import re

from assistant.practice.marking.equal import same_kind
from assistant.practice.marking.points import Need, Point
from assistant.practice.marking.said import Said
from assistant.practice.marking.wording import word_set
from assistant.resolving.knowing import Knowledge

OF_AMOUNTS = word_set("""
    add all always any both bound bounds cancel double equal half higher infinite like limit limitation limited limits
    lower maximum minimum more less most much never no none nothing only same twice unlimited whole zero
""")
_SIDES = word_set("left right up down")


def beside_the_point(need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether an answer says nothing of the figures that alone are asked for."""
    asking = " ".join(need.question.words)
    if need.ordered or need.polar or _OTHERWISE.search(asking) or not all(map(_is_figure, need.points)):
        return False
    asked = need.question.concepts
    kinds = know.lexicon.kinds
    told = _FASTER.search(" ".join(said.reading.words)) is not None
    exact = [m for m in said.content if said.reading.words[m.start - 1 : m.start] not in _ROUGHLY or not m.start]
    measured = not told and any(kinds.get(c) == "quantity" for m in exact for c in m.concepts if c in asked)
    sides = _SIDES if any(p.text in _SIDES for p in need.points) else frozenset()
    words = set(said.reading.words)
    if COMPARES.search(" ".join(said.reading.words)) and len(need.points) == 1:
        return not numbered(need, said, know)
    sides = sides if not _SEATED.search(" ".join(said.reading.words)) else frozenset()
    if _REPROACHES.search(" ".join(said.reading.words)) or _SOMEWHERE.search(" ".join(said.reading.words)):
        return not numbered(need, said, know)
    return not measured and words.isdisjoint(OF_AMOUNTS | sides) and not numbered(need, said, know)


_FASTER = re.compile(
    r"\benough (?:for|to)\b|"
    r"\b(?:as|when|if|the more) (?:you|we|it|the aeroplane) (?:speeds? up|slows? down)\b|"
    r"\b(?:at (?:high|low) speeds?|at speed|(?:when|if|once|while) (?:you |we |it |the aeroplane )?(?:are |is )?"
    r"(?:(?:going|moving|running|rolling|doing|get|gets|go|goes) )?(?:too |very |really |that )*"
    r"(?:fast|slow)(?:er)?)\b|"
    r"^(?:fast|slow)(?:er)? (?:you|we|it)\b"
)
"""What tells of going faster, and gives no speed."""
COMPARES = re.compile(
    r"^(?:(?:it|that|they)(?: is| are)? )?(?:(?:a bit|a little|much|slightly|well|somewhat|always|just) )*"
    r"(?:lower|less|smaller|shorter|slower|lighter|higher|more|bigger|longer|faster|heavier|greater) than "
    r"(?:the|that) "
)
"""A figure set only against another one: "it's lower than the mains"."""
_SEATED = re.compile(r"\b(?:left|right) seat\b")
_SOMEWHERE = re.compile(
    r"\b(?:above|at|below|past|beyond|under|over|after) (?:some|a certain|certain|a given|a) (?:\w+ )?"
    r"(?:amount|height|pressure|speed|point|temperature|time|value)\b"
)
"""A figure that is spoken of and not given: "above some speed"."""
_ROUGHLY = tuple((w,) for w in word_set("enough fairly pretty quite rather really reasonably relatively too very"))
"""Words by which what follows is no measure: "fairly slow"."""
_REPROACHES = re.compile(r"\b(?:should|ought to|must) (?:not|never)(?: both| all| ever)? (?:be|have|do)\b")
"""What says how people ought to behave: "they shouldn't both be steering"."""
_OTHERWISE = re.compile(r"\bor\b|\bhow (?!many|much|long|far|fast|high|hot|deep|wide)")
"""What asks for something besides figures: one of two things, or how something is done."""


def _is_figure(point: Point) -> bool:
    side = len(point.elements) == 1 and point.text in _SIDES
    return (bool(point.figures) and not point.verdict) or side


def numbered(need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether an answer gives a number that may be one asked for: no "two pilots", no time for a speed."""
    after = (*said.reading.words, "")
    figures = [f for p in need.points for f in p.figures]
    return any(
        c.amount.unit == "percent" or any(same_kind(c.amount, f, know.units) for f in figures) if c.amount.unit
        else not _THINGS.fullmatch(after[c.amount.end])
        for c in said.claims
    )  # fmt: skip


_THINGS = re.compile(r"[a-z]{3,}s")
