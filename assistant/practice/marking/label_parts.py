"""Whether a label shows in a state, where a question asks that besides what the state tables give."""

from __future__ import annotations

import re

from assistant.practice.marking.asked import Asked, ask
from assistant.practice.marking.parts import head_of, parts_of
from assistant.practice.marking.points import Point, State
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge

_SHOWS = re.compile(
    r"(?:and )?(?:does|will|would|do|is) (?:the )?(?P<label>[A-Z][A-Z -]+[A-Z])\b(?: \w+)? "
    r"(?:show|come|appear|light|lit|shown|displayed|illuminate)"
)
_NOT = re.compile(r"\b(?:does|is|will) not\b|\bnever\b")


def labels_shown(found: tuple[Asked, ...], text: str, know: Knowledge) -> list[Point]:
    """Return for each label asked about whether it shows, as far as a statement tells it of the state given."""
    if len(found) != 1 or not isinstance(found[0].result, r.TableResult):
        return []
    parts = parts_of(text)
    made = []
    for part in parts:
        asked = _SHOWS.match(part)
        told = ask(f"{head_of(text, parts)}. {part.removeprefix('and ')}", know) if asked else None
        if asked is None or told is None or not isinstance(told[1].result, r.FactResult):
            continue
        says = told[1].result.fact.says
        subject = know.phrase(asked["label"]).concepts
        if subject & know.phrase(says).concepts:
            there = _NOT.search(says.split(",")[0]) is None
            made.append(Point(f"{asked['label']} {'shows' if there else 'does not show'}", state=State(subject, there)))
    return made
