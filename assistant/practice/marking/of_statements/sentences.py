"""The points of a statement that lists none: the clauses of its first sentence, or the colour that it begins with."""

from __future__ import annotations

import re

from assistant.practice.marking.finding.elements import point, told_concepts
from assistant.practice.marking.points import Point
from assistant.practice.marking.reading.said import plain
from assistant.resolving.knowing import Knowledge


def from_sentence(says: str, text: str, know: Knowledge) -> list[Point]:
    """Return the points of a statement that lists none: the clauses of its first sentence."""
    lead = _COLOUR_LEAD.match(says)
    if lead and know.reader.read(text).has("color") and _is_colour(lead.group(1), know):
        return [point(lead.group(1), know, kept=True)]
    colour = _COLOUR.match(says)
    if colour:
        return [_head_alone(point(says.rstrip("."), know), colour.group(1))]
    body = re.sub(r"^(?:No|Yes)[:,]\s*", "", says)
    first = re.split(r"(?<=[a-z0-9)])\.\s+(?=[A-Z])", body)[0].rstrip(".")
    reading = know.reader.read(text)
    supplied = reading.has("supply")
    given = frozenset(c for m in reading.mentions for c in m.concepts) if supplied else reading.concepts
    title = _TITLED.match(first)
    if title and reading.has("meaning") and given & told_concepts(know.phrase(title.group(1))):
        first = first[title.end() :]
    clauses = [
        c.strip() for c in re.split(r"[;:]\s+|,\s+(?:and |or )?|\s+(?:and|so that|because)\s+", first) if c.strip()
    ]
    found = [_of_its_head(point(c, know)) if title else point(c, know) for c in clauses]
    told = [p for p in found if p.figures or any(given.isdisjoint(e.concepts) for e in p.elements if e.weight > 0.5)]
    return told or [point(first, know)]


def _of_its_head(made: Point) -> Point:
    """Return what a sign means, of which the thing that it is said of tells little: "the leg is locked up"."""
    head = _HEAD_OF.match(made.text)
    words = {plain(w) for w in head.group(1).lower().split()} if head else set()
    light = (e._replace(weight=min(e.weight, _LIGHT)) if words.issuperset(e.words) else e for e in made.elements)
    return made._replace(elements=tuple(light)) if head else made


_HEAD_OF = re.compile(r"(?:the|a|an) ([\w ]+?) (?:is|are) ")
_LIGHT = 0.4
_TITLED = re.compile(r"((?:[\w“”\"-]+ ){0,3}[\w“”\"-]+): ")
"""The name of what is explained, before it: "Hatched bar: the leg is moving"."""
_COLOUR = re.compile(r"(\w+) is the colour of ")


_COLOUR_LEAD = re.compile(r"(\w+): ")


def _is_colour(word: str, know: Knowledge) -> bool:
    return any(know.lexicon.families.get(c) == "colour" for c in know.phrase(word).concepts)


def _head_alone(made: Point, head: str) -> Point:
    """Return the point of a colour, of which the name of the thing that has it says nothing."""
    return made._replace(elements=tuple(e._replace(given=plain(head.lower()) not in e.words) for e in made.elements))
