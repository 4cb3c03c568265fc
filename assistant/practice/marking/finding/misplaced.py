"""Contradictions of place: a thing denied, on another side, somewhere else, or a step out of its turn."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise

from assistant.practice.marking.finding.found import Held, element_said
from assistant.practice.marking.points import Element, Need, Point
from assistant.practice.marking.reading.said import Said, plain

_SURE = 0.85
"""Share from which words are taken for a step when the order of steps is judged."""


def beside_it(held: Sequence[Held], said: Said) -> list[str]:
    """Return the points of which an answer names the thing on another side: "above idle" for near it."""
    found = []
    for point in (h.point for h in held):
        own = [plain(w) for w in point.text.lower().replace("-", " ").split()]
        for element in (e for e in point.elements if not e.given and e.weight > 0.7 and e.concepts):
            for i in element_said(element, said)[1]:
                before = _side_before(i, element, said)
                over = before in _OVER and before not in own
                other = before in _SIDES and bool(_SIDES.intersection(own)) and before not in own
                if over or other or (before in _AT and _OVER.intersection(own) and _is_over(own, element)):
                    found.append(f"{before} it: {point.text}")
    return found


_TURNED = {"in": "out", "out": "in"}
_SAME_WAY = {"inserted": "in", "removed": "out"}
_AFTER = frozenset((".", ",", ";", ":", ")", "then", "and", "or", "but", ""))


def turned_out(held: Sequence[Held], said: Said) -> list[str]:
    """Return the things that are said to be out where they are in, off where on: "chocks out"."""
    found = []
    pairs = set(_ways_of(said.words, said.reading.words))
    for point in (h.point for h in held):
        texts = [_SAME_WAY.get(w, w) for w in re.findall(r"[\w-]+|[.,;:)]", point.text.lower())]
        own = set(_ways_of([plain(w) for w in texts], texts))
        found += [f"{way}: {point.text}" for thing, way in pairs if (thing, _TURNED[way]) in own - pairs]
    return found


def _ways_of(words: Sequence[str], raw: Sequence[str]) -> Iterator[tuple[str, str]]:
    """Yield the things with the way that stands alone behind them: ("chock", "in")."""
    for (thing, way), after in zip(pairwise(words), [*raw[2:], ""], strict=False):
        if way in _TURNED and after in _AFTER and thing.isalpha() and len(thing) > 2:
            yield thing, way


_ONE = re.compile(
    r"\b(?:(?:only )?(?:the |one )(?:captain|first officer|copilot|skipper|pilot(?! in))|(?:captain|first officer) "
    r"(?:only|alone))\b"
)


def one_of_both(held: Sequence[Held], said: Said) -> list[str]:
    """Return the one pilot that is named where both do it."""
    told = " ".join(said.reading.words)
    named = _ONE.search(told)
    if named is None or "both" in told or ("captain" in told and "first officer" in told):
        return []
    return [f"{named.group()}: {h.point.text}" for h in held if re.search(r"\bboth pilots\b", h.point.text.lower())]


def other_kind(held: Sequence[Held], said: Said) -> list[str]:
    """Return the things of another kind than the point's: "steel disc" for a carbon one."""
    unknown = {m.start: m.text for m in said.content if len(m.taken) == 1 and all(c[0] == "~" for c in m.concepts)}
    found = []
    for element in (e for h in held if h.share for e in h.point.elements if not e.given and len(e.words) == 2):
        kind, head = element.words
        if kind in said.words or kind in _SIDES | _OVER:
            continue
        found += [
            f"{unknown[i - 1]} {said.reading.words[i]}"
            for i, word in enumerate(said.words) if word == head and i - 1 in unknown
        ]  # fmt: skip
    return found


def _side_before(place: int, element: Element, said: Said) -> str:
    """Return the word of a side that stands before a thing, past its article and its other words."""
    i = place - 1
    while i >= 0 and (said.words[i] in element.words or said.reading.words[i] in ("the", "a", "an", "your", "its")):
        i -= 1
    bounds = i > 0 and (said.reading.words[i - 1] == "or" or {i - 1, i - 2} & said.numbered)
    return "" if i < 0 or bounds or said.reading.words[i] == "over" else said.words[i]


_SIDES = frozenset(map(plain, ("above", "below", "behind", "front", "beside", "inside")))
_OVER = frozenset(map(plain, ("above", "below")))
_AT = frozenset(map(plain, ("at", "near", "is", "are", "to", "into")))


def _is_over(own: Sequence[str], element: Element) -> bool:
    """Return whether a point says of an element that something is above or below it."""
    return any(a in _OVER and b in element.words for a, b in pairwise(own))


_PLACES = frozenset({"on", "in", "under", "behind", "above", "below", "beside", "inside", "near", "beneath"})


def elsewhere(held: Sequence[Held], need: Need, said: Said) -> list[str]:
    """Return another place than the one asked for, where none of the place is right: "on the overhead panel"."""
    places = [h for h in held if _is_place(h.point)]
    if not need.question.has("where") or not places:
        return []
    lacking = any(not h.share and h.point.text.split()[0] in _BY_IT for h in places)
    leading = _PLACES if not any(h.share for h in places) else _BY_IT if lacking else frozenset()
    known = need.words | need.asked
    words = said.reading.words
    for i, word in enumerate(words[:-1]):
        noun = i + 2 if words[i + 1] in ("the", "a", "an", "your", "its") else 0
        word = "beside" if words[i - 1 : i + 1] == ("next", "to") and i else word
        if (
            word in leading
            and noun
            and noun < len(words)
            and words[noun][0].isalpha()
            and (said.words[noun] not in known or _is_another(noun, word, held, said))
        ):
            return [" ".join(words[i : noun + 2])]
    return []


def _is_another(noun: int, preposition: str, held: Sequence[Held], said: Said) -> bool:
    """Return whether a place is a thing that the question names, and no point: "beside the gear lever"."""
    named = next((m for m in said.reading.mentions if noun in m.taken and not m.weak), None)
    own = frozenset(c for h in held for e in h.point.elements for c in e.concepts)
    return preposition in _BY_IT and named is not None and own.isdisjoint(named.concepts)


_BY_IT = frozenset(("beside", "behind", "near", "under", "beneath", "above", "below"))


def _is_place(point: Point) -> bool:
    first = point.text.split()[:1]
    return bool(first) and first[0].lower() in _PLACES | {"left", "right", "one"}


def of_the_first(first: Point, point: Point, said: Said) -> bool:
    """Return whether all that is said of a step are words of the step before it, which gives a number besides."""
    words = {w for e in first.elements for w in e.words}
    told = [e for e in point.elements if not e.given and element_said(e, said)[0]]
    once = all(said.words.count(w) <= 1 for e in told for w in e.words)
    own = bool(told) and all(words.issuperset(e.words) for e in told)
    return bool(first.figures) and not point.figures and own and once


def _its_own(one: Held, held: Sequence[Held], said: Said) -> tuple[int, ...]:
    """Return where a step is said, without the words of another thing's name: the lever of the free-fall lever."""
    own = frozenset(c for e in one.point.elements for c in e.concepts)
    theirs = frozenset(c for h in held if h is not one for e in h.point.elements for c in e.concepts) - own
    others = {i for m in said.content if len(m.taken) > 1 and m.concepts & theirs for i in m.taken}
    return tuple(i for i in one.places if i not in others) or one.places


def _meanwhile(first: Point, after: Sequence[int], before: Sequence[int], said: Said) -> bool:
    """Return whether a bound is told behind what is done within it: "lever down at 230 or below"."""
    between = said.reading.words[max(after) + 1 : min(before)]
    return bool(first.figures) and 0 < len(between) <= _SHORT and between[0] in _WITHIN and set(between) <= _BOUNDING


_SHORT = 4
_WITHIN = frozenset(("after", "at", "below", "under", "when", "not", "with"))
_BOUNDING = frozenset(
    ("a", "above", "after", "at", "below", "max", "maximum", "more", "most", "not", "of", "or", "than", "under", "with")
)


def expects(point: Point) -> bool:
    """Return whether a step tells only what will be so, which may be told at any place: "expect open doors"."""
    return point.text.split()[:1] == ["Expect"]


def out_of_order(held: Sequence[Held], said: Said) -> list[str]:
    """Return the steps that are said wholly before the step that they follow."""
    steps = [h for h in held if not expects(h.point)]
    placed = [(h.point, _its_own(h, held, said)) for h in steps if h.places and h.share >= 0.5 and h.sure >= _SURE]
    found = []
    for (first, before), (point, after) in pairwise(placed):
        if max(after) < min(before) and not (
            of_the_first(first, point, said) or _meanwhile(first, after, before, said)
        ):
            found.append(f"out of order: {point.text}")
    return found
