"""How much of a point an answer says, and where: by the concepts of its words, else by the words themselves."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.frozen import NamedTuple
from assistant.practice.marking.points import Element, Point
from assistant.practice.marking.reading.said import NO_FELLOWS, Said, plain
from assistant.practice.marking.reading.wording import LOST, NEGATORS, word_set

ENOUGH = 0.55
"""Share of a point's telling words that must be said."""
LITTLE = 0.25
_HEAVY = 0.55
_NEARLY = 0.75
_NEIGHBOUR = 4
_MUST_WORDS = "above below behind left right up down on off inboard rearward outboard forward front"
_MUST = frozenset(map(plain, _MUST_WORDS.split()))
"""Sides and ways without which a point is not said."""


class Held(NamedTuple):
    """How a point stands: how much of it was said (0 to 1), and where."""

    point: Point
    share: float
    places: tuple[int, ...]
    sure: float = 1.0
    """How much of its telling words was said, where it is found by its words."""


def ways_said(point: Point, said: Said) -> bool:
    """Return whether the side or way of a point is said, where it is a word of its own."""
    first = plain(point.text.split()[0].lower())  # "under a hatch": the hatch tells enough
    must = _MUST - ({first} - _SIDES)
    musts = [e for e in point.elements if not e.given and len(e.words) == 1 and e.words[0] in must]
    others = [i for e in point.elements if e not in musts and e.weight > 0.5 for i in element_said(e, said)[1]]
    return all(_is_near(element_said(e, said)[1], others, said) for e in musts)


def lacks_side(point: Point, said: Said) -> bool:
    """Return whether a place is told without the side that the point begins with: "by the engine display"."""
    return plain(point.text.split()[0].lower()) in _SIDES and _SIDES.isdisjoint(said.words)


_SIDES = frozenset((plain("left"), plain("right")))


def _is_near(places: Sequence[int], others: Sequence[int], said: Said) -> bool:
    """Return whether a side or way is said of the thing: in its clause, or a few words away."""
    if not others:
        return bool(places)
    return any(said.clauses[i] == said.clauses[k] or abs(i - k) <= _NEIGHBOUR for i in places for k in others)


def enough_of(point: Point) -> float:
    """Return the share of a point's words that must be said: more where none of them tells much."""
    return ENOUGH if any(e.weight >= _HEAVY for e in point.elements if not e.given) else _NEARLY


def all_groups(point: Point, said: Said) -> bool:
    """Return whether something was said of each of the things that "and" joins in a point."""
    return all(any(element_said(e, said)[0] for e in group) for group in _groups(point))


def one_group(point: Point, said: Said) -> bool:
    """Return whether the whole of one of several things that "and" joins in a point was said."""
    groups = _groups(point)
    if " or " in point.text and any(element_said(e, said)[0] for group in groups for e in group):
        return True
    return len(groups) > 1 and any(all(element_said(e, said)[0] for e in group) for group in groups)


def _groups(point: Point) -> list[list[Element]]:
    """Return the telling words of each of the things that "and" joins in a point."""
    groups: dict[int, list[Element]] = {}
    for element in point.elements:
        if not element.given and element.weight >= _HEAVY:
            groups.setdefault(element.group, []).append(element)
    return list(groups.values())


def words_said(point: Point, said: Said, window: Sequence[int] | None = None) -> tuple[float, tuple[int, ...]]:
    """Return how much of a point's telling words was said, and where the most telling ones stand."""
    elements = [e for e in point.elements if not e.given] or list(point.elements)
    whole = sum(e.weight for e in elements)
    credit, places = 0.0, []
    for element in elements:
        amount, spots = element_said(element, said, window)
        credit += element.weight * amount
        if element.weight > 0.7:
            places += spots
    return (credit / whole if whole else 0.0), tuple(places)


def element_said(element: Element, said: Said, window: Sequence[int] | None = None) -> tuple[float, list[int]]:
    """Return how far an element was said, and where: by its concept, by that of a word of a name, else by its words."""
    best: tuple[float, list[int]] = (0.0, [])
    for i in range(len(said.words)) if window is None else window:
        if i in said.numbered and said.words[i] != "zero":
            continue
        credit = _credit(element, said, i)
        if credit > best[0]:
            best = credit, [i]
        elif credit and credit == best[0]:
            best[1].append(i)
    return best


def _lacks_near(place: int, said: Said) -> bool:
    """Return whether the words about a place say that the thing there is lacking."""
    words = said.reading.words
    before = [w for i, w in enumerate(words) if place - 6 <= i < place and said.clauses[i] == said.clauses[place]]
    after = [w for i, w in enumerate(words) if place < i <= place + 5 and said.clauses[i] == said.clauses[place]]
    lacking = NEGATORS | LOST | {"unless"}
    return bool(lacking.intersection(before) or lacking.intersection(after))


def _alike_words(one: str, other: str) -> bool:
    """Return whether two words are one, or forms of one: "reapply" and "reapplication"."""
    return (
        one == other
        or (len(one) > 6 < len(other) and one[:6] == other[:6] and abs(len(one) - len(other)) < 7)
        or (min(len(one), len(other)) >= 6 and one[:6] == other[:6] and one[:2] == "re")
    )


def _credit(element: Element, said: Said, place: int) -> float:
    return _own_credit(element, said, place) or _fellow_credit(element, said, place)


def _fellow_credit(element: Element, said: Said, place: int) -> float:
    """Return how far an everyday word says an element in place of its own: "solid" for filled."""
    words, concepts = said.fellows.get(place, NO_FELLOWS)
    if element.denied or not (concepts & element.concepts or (len(element.words) == 1 and element.words[0] in words)):
        return 0.0
    return _FELLOW


_FELLOW = 0.85
"""How far a fellow of a word says what the word would."""


def _own_credit(element: Element, said: Said, place: int) -> float:
    ways = _WAYS.intersection(element.words)
    near = said.words[max(0, place - _NEIGHBOUR) : place + _NEIGHBOUR + 1]
    if ways and len(element.words) > 1 and ways.isdisjoint(near) and not _WAYS.isdisjoint(near):
        return 0.0  # another way is said: "lever down" of "lever UP"
    if not said.concepts[place].isdisjoint(element.concepts):
        return 1.0
    if element.denied and not _lacks_near(place, said):
        return 0.0
    if not said.inner[place].isdisjoint(element.concepts):
        return 0.9
    if not any(_alike_words(said.words[place], w) for w in element.words) or (
        ways and len(element.words) > 1 and ways.isdisjoint(near)
    ):
        return 0.0
    if len(element.words) == 2 and element.words[1] in _GENERIC and said.words[place] == element.words[0]:
        return 0.7  # "the override" for the override button
    if len(element.words) == 2 and element.words[1] in _GENERIC and said.words[place] == element.words[1]:
        return 0.3
    share = sum(1 for word in element.words if any(_alike_words(n, word) for n in near)) / len(element.words)
    return share if share > 0.5 else 0.0


_GENERIC_WORDS = "box button console handle lever memo panel pin plan setting switch"
_GENERIC = frozenset(map(plain, word_set(_GENERIC_WORDS)))
"""Words for the sort of thing, which people leave out of a name."""
_WAYS = frozenset({"up", "down", "on", "off", "left", "right"})


def lacking(held: Held) -> str:
    """Return what is missing of a point: of one whose words are said the figure alone, with the words that bound it."""
    found = _FIGURED.search(held.point.text) if held.share == WITHOUT_FIGURE and len(held.point.figures) == 1 else None
    return found.group().strip() if found and found.group().strip()[0].isalpha() else held.point.text


WITHOUT_FIGURE = 0.4
"""Share of a point of which the words are said and the figure is not."""
_FIGURED = re.compile(
    r"\b(?:(?:at|for|to|below|above|less|more|than|from|within|up|no|over|under|past|about|wait) )+\d[\d,.]*"
    r"(?: ?(?:°C|°|%|[A-Za-z/²]+))?(?: or (?:less|more|below|above))?"
)
