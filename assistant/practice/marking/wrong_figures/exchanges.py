"""Figures given to one another's things, and the order of those that are given without a name."""

from __future__ import annotations

import re

from assistant.practice.marking.finding.pairing import Label
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import ALIKE


def swapped(
    need: Need, said: Said, fits: list[list[tuple[int, int]]], labels: dict[int, Label], named: dict[int, set[int]]
) -> list[str]:
    """Return the figures that were given to one another's things: "main 90 to 160, nose 60 to 110"."""
    if len(labels) < 2:
        return []
    if _one_for_all(need, said, fits):
        return ["one figure for all of them"]
    found = []
    for claim, spots in zip(said.claims, fits, strict=True) if named else ():
        here = {p for p, places in named.items() if claim.amount.start in places}
        if spots and here and here.isdisjoint(i for i, _ in spots) and all(i in labels for i, _ in spots):
            found.append(f"{claim.amount.raw} belongs to something else")
    if named:
        return found
    rank = _ranks(need, labels)
    order = [rank[spots[0][0]] for spots in fits if spots and spots[0][0] in labels and len(spots) == 1]
    return ["the figures are exchanged"] if order != sorted(order) else []


def _ranks(need: Need, labels: dict[int, Label]) -> dict[int, int]:
    """Return the order in which a question names the points, else the one that they have."""
    if any(need.points[p].labels for p in labels):
        return {p: p for p in labels}  # the parts of a question stand in its order already
    words = [plain(w) for w in need.question.words]
    concepts = {i: m.concepts for m in need.question.mentions for i in m.taken}
    places = {
        p: next((i for i, w in enumerate(words) if w in label.words or concepts.get(i, _NONE) & label.concepts), -1)
        for p, label in labels.items()
    }
    normal = next((i for i, w in enumerate(words) if w in (plain("normally"), plain("ordinarily"))), -1)
    if normal >= 0 and list(places.values()).count(-1) == 1:
        places = {p: normal if place == -1 else place for p, place in places.items()}
    found = set(places.values())
    return places if len(found) == len(places) and -1 not in found else {p: p for p in labels}


_NONE: frozenset[str] = frozenset()


def _one_for_all(need: Need, said: Said, fits: list[list[tuple[int, int]]]) -> bool:
    """Return whether one figure is given for cases that have each their own: "15 s in both cases"."""
    points = {i for spots in fits for i, _ in spots}
    text = " ".join(said.reading.words)
    if len(points) != 1 or not all(fits) or not (ALIKE.search(text) or _APIECE.search(text)):
        return False
    (only,) = points
    return not any(_OF_TWO.match(c) for e in need.points[only].elements for c in e.concepts)


_APIECE = re.compile(r"\b(?:each|apiece|every one)(?: of them| one)?\W*$")
_OF_TWO = re.compile(r"both_")
"""Begins what two things are called together, of which one figure holds."""


def alike_points(need: Need) -> list[int]:
    """Return the points whose figures are of one unit with those of another."""
    units = {i: {f.unit for f in p.figures} for i, p in enumerate(need.points) if p.figures}
    return [i for i in units if any(units[i] & units[j] for j in units if j != i)]
