"""A result of two halves, of which the second denies something that the question may not speak of: "centred, and …"."""

from __future__ import annotations

import re

from assistant.practice.marking.points import Point
from assistant.resolving.knowing import Knowledge

_AND_NOT = re.compile(r" and (?:do|does|is|are|can) not ")


def of_what_is_named(made: Point, text: str, know: Knowledge) -> Point:
    """Return a result without the half of it that speaks of things which a question does not name: "centred" alone."""
    whole = next((e.group for e in made.elements if any(c[0] == "=" for c in e.concepts)), None)
    if whole is None or made.state or not _AND_NOT.search(made.text):
        return made
    asked = know.phrase(text).concepts
    others = [e for e in made.elements if e.group != whole]
    named = any(e.concepts & asked for e in others if not any(c[0] in "@=" for c in e.concepts))
    own = tuple(e for e in made.elements if e.group == whole)
    return made if named or not others else made._replace(elements=own)
