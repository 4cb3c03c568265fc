"""What an answer says alone to do something, and what it says to be out of it: "only the pedals steer"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from assistant.practice.marking.finding.found import Held, element_said
from assistant.practice.marking.points import Element
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import CONTRASTS, LOST, STOPS, word_set

_ONLY = word_set("just only solely")
_NOT = word_set("cannot never neither no none nor not without")
_ARTICLES = word_set("a an the your")
_BETWEEN = word_set("all both completely cut get gets locked now switched taken then totally turned")
_BE = word_set("are be get gets is")
_TELLING = 0.7
_LET_OUT = word_set("flap gear leg spoiler wheel")
"""What is there when it is out, as plain words."""
_GONE = (LOST - {"lose", "loses", "unaffected", "unchanged", "goes"}) | {"ignored", "released"}


_WITH_ITS = r"\bwith its (?:\w+ )?\w+"
_BY_ITSELF = (
    r"(?<!not )(?<!n't )\b(?:alone|on its own|by itself|(?:only|just) (?:this|that|the)(?: one)?"
    r"(?: tyre| wheel| brake)?(?: needs?| is| has| goes|$| [.,;]))"
)


def by_itself(held: Sequence[Held], said: Said) -> list[str]:
    """Return the points by which a thing is taken with another, where an answer says that it is taken alone."""
    alone_said = re.search(_BY_ITSELF, " ".join(said.reading.words))
    together = [h.point for h in held if re.search(_WITH_ITS, h.point.text)]
    return [f"by itself: {p.text}" for p in together] if alone_said else []


def alone(held: Sequence[Held], said: Said) -> list[str]:
    """Return the points of which an answer has what does not do it do it alone, or what does it out of it."""
    found = []
    for point in (h.point for h in held if not h.point.figures):
        for element in (e for e in point.elements if e.weight > _TELLING and not e.denied):
            spots = element_said(element, said)[1]
            if element.off and any(_is_alone(i, said) for i in spots):
                found.append(f"only it: {point.text}")
            if not element.off and not element.given and spots and all(_is_out(i, element, said) for i in spots):
                found.append(f"out: {point.text}")
    return found


def _is_alone(place: int, said: Said) -> bool:
    """Return whether a thing is said to do something alone, and not that it alone is out of it."""
    words = said.reading.words
    before = [w for w in words[max(0, place - 3) : place] if w not in _ARTICLES]
    if not before or before[-1] not in _ONLY or "not" in before:
        return False
    return (LOST | _NOT | {"disconnect", "disconnects"}).isdisjoint(_to_next_thing(place, said))


def _to_next_thing(place: int, said: Said) -> Iterator[str]:
    """Yield the words behind a thing, to the next thing or stop."""
    starts = {m.start for m in said.content if m.start > place + 1}
    for i in range(place + 1, len(said.words)):
        word = said.reading.words[i]
        if word in STOPS or word in CONTRASTS or word == "and" or said.reading.words[i - 1] in _ARTICLES:
            return
        if i in starts and word not in LOST:
            continue
        yield word


def _is_out(place: int, element: Element, said: Said) -> bool:
    """Return whether a thing is said outright to be out of it: "the tillers are cut out"."""
    words = said.reading.words
    i = place + 1
    while i < len(words) and said.words[i] in element.words:
        i += 1
    if i >= len(words) or words[i] not in _BE:
        return False
    i += 1
    while i < len(words) and words[i] in _BETWEEN:
        i += 1
    return i < len(words) and words[i] in _GONE and not (words[i] == "out" and not _LET_OUT.isdisjoint(element.words))
