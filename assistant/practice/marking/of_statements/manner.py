"""Where it is asked how, the noun tells little: "hatched" for a hatched bar."""

from __future__ import annotations

import re

from assistant.practice.marking.points import Point

_TWO = 2


def of_its_manner(made: Point) -> Point:
    """Return a point of which the noun tells little, where it is asked how: "hatched" for a hatched bar."""
    if len(made.elements) != _TWO or len(made.text.split()) != _TWO or made.figures:
        return made
    first, noun = made.elements
    return made._replace(elements=(first, noun._replace(weight=min(noun.weight, _NOUN))))


_NOUN = 0.4
ASKS_HOW = re.compile(r"\bhow\b(?! (?:much|many|long|far|fast|high|hot|deep|wide|heavy|often|soon)\b)", re.IGNORECASE)
"""What asks for a manner."""
