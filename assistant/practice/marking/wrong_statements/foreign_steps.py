"""Steps that an answer has and the full one has not: actions of consequence, and steps turned round."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from assistant.practice.marking.finding.rivals import is_put_off
from assistant.practice.marking.points import Need, Point
from assistant.practice.marking.reading.contraries import OTHER
from assistant.practice.marking.reading.said import Said, plain
from assistant.resolving.knowing import Knowledge


def foreign_steps(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the actions of consequence that an answer puts among steps that have none of them."""
    if not need.ordered:
        return []
    known = need.known
    mentions = (m for m in said.content if m.concepts.isdisjoint(known) and not is_put_off(m.start, said, need))
    found = [m.text for m in mentions if any(c in know.lexicon.sets for c in m.concepts)]
    return found + _turned_steps(need, said)


def _turned_steps(need: Need, said: Said) -> list[str]:
    """Return the steps of which an answer has the other way too, where no step has it: "lever DN, then lever UP"."""
    own = {e.words for p in need.points for e in p.elements} | {w for p in need.points for w in _with_its_way(p)}
    found = []
    for words in (w for w in own if len(w) > 1):
        ways = ((k, o) for k, w in enumerate(words) for o in OTHER.get(w, ()))
        for k, other in (way for way in ways if (way[1],) not in own):  # "then up" is a step of its own
            turned = (*words[:k], other, *words[k + 1 :])
            spots = [i for i in range(len(said.words)) if said.words[i : i + len(turned)] == turned]
            if turned not in own and any(not is_put_off(i, said, need) for i in spots):
                found.append(" ".join(turned))
    return found


def _with_its_way(point: Point) -> Iterable[tuple[str, ...]]:
    """Yield the thing of a point with the way that stands behind it: ANTI-SKID OFF."""
    for one, other in pairwise(point.elements):
        if len(other.words) == 1 and other.words[0] in _SWITCHED and one.concepts and one.weight > _THING:
            yield (*one.words, *other.words)


_SWITCHED = frozenset(map(plain, ("on", "off", "up", "down")))


_THING = 0.7
