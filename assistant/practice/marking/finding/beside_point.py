"""Answers that give no figure where nothing but figures is asked for, and claim nothing of them: beside the point.

"The lever is under a hatch" says nothing of the speed of a free fall. What speaks of the figure all the same ("as fast
as you like", "there is no limit", "an airspeed") claims something else, and is wrong.
"""

from __future__ import annotations

import re

from assistant.practice.marking.finding.equal import same_kind
from assistant.practice.marking.points import Need, Point
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import word_set
from assistant.resolving.knowing import Knowledge

OF_AMOUNTS = word_set("""
    add all always any both bound bounds cancel double equal half higher infinite like limit limitation limited limits
    lower maximum minimum more less most much never no none nothing only same twice unlimited whole zero
""")
_SIDES = word_set("left right up down")


def beside_the_point(need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether an answer says nothing of the figures that alone are asked for."""
    asking = " ".join(need.question.words)
    if need.question.has("why") and _BECAUSE.search(" ".join(said.reading.words)):
        return False
    if need.ordered or need.polar or _OTHERWISE.search(asking) or not all(map(_is_figure, need.points)):
        return False
    if numbered(need, said, know):
        return False
    text = " ".join(said.reading.words)
    sided = any(p.text in _SIDES for p in need.points) and not _SEATED.search(text)
    return not _IN_ITS_PLACE.search(text) and not (sided and not _SIDES.isdisjoint(said.reading.words))


_BECAUSE = re.compile(r"^(?:well )?(?:because|cause|cos|since|due to)\b(?! (?:of )?(?:the|that|it|that is what) \w*$)")
"""What gives a reason, where one is asked for."""
_IN_ITS_PLACE = re.compile(
    r"\b(?:no|not any|never any|without(?: any)?|isn't any|there is not an?y?|hasn't|has not) (?:\w+ )?"
    r"(?:limit|limits|limitation|restriction|maximum|minimum|figure for|bound)\b|"
    r"\bunlimited\b|\binfinite\b|"
    r"\bas (?:\w+ )?(?:\w+) as (?:you|we|they|one) (?:like|want|wish|please|care|can|need)\b|"
    r"\b(?:it|they|that|you|we|this|the \w+) (?:\w+ )?never\b|\bnever (?:does|do|is|goes|comes|happens)\b|"
    r"\bsame (?:as|for|in|figure|speed|value|one|for both)\b|\bthe same\b|\bno (?:difference|change)\b|"
    r"\bcancel|\b(?:zero|nil|nought|none|nothing)\b(?! (?:to do|to say|comes|that comes|i|springs))|"
    r"\bany (?:\w+ )?(?:speed|height|altitude|pressure|temperature|time|angle|amount|weight|value)\b|"
    r"\b(?:at )?all (?:\w+ )?(?:speeds|heights|altitudes|of it|the time)\b|\balways\b|"
    r"\bwhatever (?:you|the|it)\b|\b(?:twice|half|double|equal to)\b"
)
"""What is put in the place of a figure: that there is none, that all are right, or that it is another one."""
COMPARES = re.compile(
    r"^(?:(?:it|that|they)(?: is| are)? )?(?:(?:a bit|a little|much|slightly|well|somewhat|always|just) )*"
    r"(?:lower|less|smaller|shorter|slower|lighter|higher|more|bigger|longer|faster|heavier|greater) than "
    r"(?:the|that) "
)
"""A figure set only against another one: "it's lower than the mains"."""
_SEATED = re.compile(r"\b(?:left|right) seat\b")
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
