"""Another thing of the same kind in a place: "by the flap lever" for a button that is by the gear lever.

The word of the kind alone says the place; with words of another thing's name before it, it says another one.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from assistant.practice.marking.finding.elements import DIRECTIONS
from assistant.practice.marking.finding.found import Held, element_said
from assistant.practice.marking.points import Element, Need
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import CONTRASTS, STOPS, word_set
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import Mention

_LEADING = word_set("a an the your its his her our this that each every one two both either")
_BREAKS = STOPS | CONTRASTS | word_set("and or is are it s to of for in on at by from with")
_PLACING = word_set("""
    above alongside behind below beneath beside between close front inside near next outside over under underneath
""")
_SLIGHT = word_set("actual big black floor gear hand landing leg little main normal round same side single small very")
_MOST = 3
"""Words before the word of a kind among which a name is looked for."""
_TELLING = 0.35


def other_heads(held: Sequence[Held], need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the things of which an answer names the kind alone rightly: the flap lever for the gear lever."""
    if any(h.point.state for h in held):
        return []
    placed = need.question.has("where") and not any(h.point.figures for h in held)
    full = frozenset(map(plain, know.phrase(need.expected).words)) | need.words | need.asked
    elements = [e for h in held for e in h.point.elements if e.weight > _TELLING and not (e.given and placed)]
    places = [(element, place) for element in elements for place in element_said(element, said)[1]]
    found = _named_otherwise if placed else _named_outright
    return [
        *(" ".join(said.reading.words[first : place + 1]) for element, place in places
          for first in found(place, element, full, need, said)),
        *(f"on it: {h.point.text}" for h in held for e in h.point.elements if placed and _is_on(h.point.text, e, said)),
    ]  # fmt: skip


def _named_outright(place: int, element: Element, full: frozenset[str], need: Need, said: Said) -> Iterator[int]:
    """Yield where the name of another thing begins, of which a place is the last word: "the flap lever"."""
    if said.words[place] not in element.words or said.words[place] not in _HEADS:
        return
    whole = next((m for m in said.reading.mentions if place in m.taken and not m.weak), None)
    if whole and len(whole.taken) > 1 and whole.concepts.isdisjoint(element.concepts | need.known):
        others = [i for i in whole.taken if said.words[i] not in full]
        if others and place == max(whole.taken) and all(c[0] not in "~@=" for c in whole.concepts):
            yield whole.start
        return
    before = next((m for m in said.reading.mentions if place - 1 in m.taken and not m.weak), None)
    if before and said.words[place - 1] not in full and before.concepts.isdisjoint(need.known) and _is_thing(before):
        yield place - 1


_HEADS = frozenset(
    map(
        plain,
        word_set("bay button console display door gauge handle hatch lamp lever panel pedestal pin seat switch window"),
    )
)
"""Words for a sort of thing, which another word before them tells apart."""


def _is_thing(mention: Mention) -> bool:
    return any(c[0] == "!" for c in mention.concepts) and not mention.text.endswith(("ing", "ed"))


_OFF_IT = re.compile(r"(?:under|beneath|below|behind|by|beside|near) (?:the |a )?")


def _is_on(text: str, element: Element, said: Said) -> bool:
    """Return whether a thing is said to be on the very thing that it is under, behind or beside."""
    placed = _OFF_IT.match(text.lower())
    if (
        not placed
        or element.given
        or not element.words
        or plain(text[placed.end() :].split()[0].lower()) not in element.words
    ):
        return False
    for place in element_said(element, said)[1]:
        before = [w for w in said.reading.words[max(0, place - _MOST) : place] if w not in _LEADING | _SLIGHT]
        before = before[:-1] if before[-1:] == ["gear"] else before
        if before[-1:] == ["on"] or before[-2:] in (["top", "of"], ["in", "front"]):
            return True
    return False


def _named_otherwise(place: int, element: Element, full: frozenset[str], need: Need, said: Said) -> Iterator[int]:
    """Yield where the words before a place begin, if they make another thing of it."""
    if said.words[place] not in element.words:
        return
    whole = next((m for m in said.reading.mentions if place in m.taken and not m.weak), None)
    if whole and len(whole.taken) > 1 and whole.concepts.isdisjoint(element.concepts | need.said):
        yield whole.start
        return
    known = set(whole.taken) if whole and whole.concepts & element.concepts else set()
    words = said.reading.words
    strange = None
    for i in range(place - 1, max(-1, place - 1 - _MOST), -1):
        if words[i] in _LEADING | _BREAKS | _PLACING:
            break
        if i not in known and said.words[i] not in full | DIRECTIONS and words[i] not in _SLIGHT and words[i].isalpha():
            strange = i
    if strange is not None:
        yield strange
