"""What belongs to something else than the point it stands in: another measure, an exception, a thing of other books."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.practice.marking.finding.found import Held, element_said
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading import wording
from assistant.practice.marking.reading.said import Said
from assistant.resolving.knowing import Knowledge

_NO_MEASURES = wording.MORE | wording.LESS | {"time", "times"}


def other_measure(held: Sequence[Held], need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the measure that a figure is given of in place of its own: "speed has got to 85 percent"."""
    kinds = know.lexicon.kinds
    found = []
    for h in (each for each in held if each.share and each.point.figures):
        point = h.point
        own = {c for e in point.elements if not e.given for c in e.concepts if kinds.get(c) == "quantity"}
        near = {said.clauses[i] for i in h.places}
        named = {
            (c, i) for i, here in enumerate(said.concepts) if said.clauses[i] in near
            for c in here if kinds.get(c) == "quantity"
        }  # fmt: skip
        known = own | need.question.concepts | need.said
        other = [
            i for c, i in named
            if c not in known and i not in said.numbered and said.reading.words[i] not in _NO_MEASURES
        ]  # fmt: skip
        if own and other and own.isdisjoint(c for c, _ in named):
            found.append(said.reading.words[min(other)])
    return found


def only_other(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return what an answer makes an exception of though nothing is one: "no, only STEADY"."""
    known = need.known
    words = said.reading.words
    return [
        f"only {words[i]}" for i, here in enumerate(said.concepts)
        if need.polar and i and words[i - 1] in ("only", "except") and here and here.isdisjoint(known)
        and not any(c[0] in "~@!=" for c in here)
        and any(know.lexicon.families.get(c) or know.lexicon.kinds.get(c, "thing") == "thing" for c in here)
    ]  # fmt: skip


def foreign(held: Sequence[Held], said: Said) -> list[str]:
    """Return the subjects of other books that stand in place of a word of a point: "to prevent a brake fire"."""
    found = []
    for held_one in (h for h in held if h.share and h.places and not h.point.figures):
        lacks = any(
            e.weight >= _MISSED and not e.given and not element_said(e, said)[0] for e in held_one.point.elements
        )
        near = {said.clauses[i] for i in held_one.places}
        found += [
            m.text for m in said.content
            if lacks and said.clauses[m.start] in near and any(c[0] == "!" for c in m.concepts)
            and m.start not in said.fellows
        ]  # fmt: skip
    return found


_MISSED = 1.0
"""Weight of a word that a point is not whole without."""
