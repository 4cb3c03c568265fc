"""Another thing that is named only behind the figure asked for, with a figure of its own."""

from __future__ import annotations

from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said


def only_aside(other: str, need: Need, said: Said) -> bool:
    """Return whether another thing is named only with a figure of its own, behind the one asked for: "205 … 230 is the
    one for extending".
    """
    wanted = {f.value for p in need.points for f in p.figures}
    own = [c.amount for c in said.claims if c.amount.value in wanted]
    others = [c.amount for c in said.claims if c.amount.value not in wanted]
    if not own or not others or not own[0].start < others[0].start:
        return False
    places = [i for i, word in enumerate(said.words) if word == other]
    return all(i > others[0].start for i in places)
