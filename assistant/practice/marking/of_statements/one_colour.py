"""The points of the one colour that a question names: "the white bars" of white, amber and blank ones."""

from __future__ import annotations

import re

from assistant.practice.marking.points import Point
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import Reading


def of_one_colour(points: list[Point], reading: Reading, know: Knowledge) -> list[Point]:
    """Return the points of the colour that a question names, where all differ by theirs: "the white bars"."""
    shown = [_SHOWN.match(p.text) for p in points]
    leads = [found[1] if found else "" for found in shown]
    concepts = [c for lead in leads for c in know.phrase(lead).concepts]
    if not all(leads) or not any(know.lexicon.families.get(c) == "colour" for c in concepts):
        return []
    own = [p for p, lead in zip(points, leads, strict=True) if lead in reading.words]
    return own if len({x for x in leads if x in reading.words}) == 1 and len(own) < len(points) else []


_SHOWN = re.compile(r"(\w+) (?:in|with) ")
