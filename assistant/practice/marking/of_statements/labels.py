"""The label of a light or memo, where a question asks which one shows: "which memo shows with the pin in?"."""

from __future__ import annotations

from assistant.knowledge.records import Fact
from assistant.practice.marking.finding.elements import named_elements, point
from assistant.practice.marking.points import Point
from assistant.practice.marking.questions.parts import parts_of
from assistant.practice.marking.questions.phrased import asks_label, label_in, tells_more
from assistant.resolving.knowing import Knowledge


def label_asked(fact: Fact, text: str, know: Knowledge) -> list[Point]:
    """Return the label that a question asks for, and what the statement tells of it where that is asked too."""
    label = label_in(fact.says) if asks_label(text) and not label_in(text) else ""
    if not label or _is_other_part(fact):
        return []
    named = Point(label, (), named_elements(label, know)[:1], kept=True)
    more = any(tells_more(part, text) for part in parts_of(text))
    return [named, *(point(p, know) for p in fact.points if more)]


def _is_other_part(fact: Fact) -> bool:
    """Return whether a statement is of the colour of a label: it answers what is asked besides."""
    return " is the colour of " in fact.says
