"""One order that is said once of several controls: "tiller and pedals both full right", "everything hard left".

Right is positive. Two tillers are two orders; pedals are one movement for both pilots.
"""

from __future__ import annotations

from itertools import pairwise

from assistant.frozen import NamedTuple
from assistant.resolving.controls_named import ARTICLES, CONTROLS, Named
from assistant.resolving.knowing import Question

SIDES = {
    "r": 1,
    "l": -1,
    "right": 1,
    "left": -1,
    "rightward": 1,
    "leftward": -1,
    "starboard": 1,
    "port": -1,
    "rt": 1,
    "lt": -1,
}
FULL = frozenset(("full", "fully", "hard", "max", "maximum", "all", "stop", "stops"))
OPPOSITE = frozenset(("opposite", "opposing", "opposed"))
_JOINING = frozenset({"and", ","})
_ALL_OF_THEM = frozenset(("both", "everything"))
_PAIRING = frozenset(("and", "&", "+", "plus"))
_LIKEWISE = frozenset(("so", "too", "also", "likewise", "same", "well"))
_SO_IS = frozenset((("is",), ("are",), ("does",), ("do",), ("has",), ("with",)))
"""Words after a "so" that says the same of another thing, and does not lead on: "so how many degrees"."""


class Deflection(NamedTuple):
    """What one control orders: "tiller" or "pedals", degrees or None for full, side or 0, how many of it.

    part: the part of full, for "half right pedal".
    """

    control: str
    degrees: float | None
    side: int
    number: int
    place: int
    part: float = 1.0


def joined(found: list[Deflection], words: tuple[str, ...]) -> list[Deflection]:
    """ "Tillers 20 and 15 right": the side that is said of the second order is that of the first too."""
    if "tillers" not in words:
        return found
    by_place = {d.place: d for d in found if d.control == "tiller" and d.side}
    pairs = ((d, by_place.get(d.place + 2)) for d in found)
    return [
        d._replace(side=other.side) if other and not d.side and words[d.place + 1] in _JOINING else d
        for d, other in pairs
    ]


def shared(
    found: list[Deflection], controls: list[tuple[Named, str]], words: tuple[str, ...]
) -> list[Deflection]:
    """ "Tiller and pedals both full right", "everything hard left, tiller and pedals": one order, or one side, that is
    said once of all the controls before it, or of all that are named.
    """
    found = _of_the_pair(found, controls, words)
    at = next((k for k, word in enumerate(words) if word in _ALL_OF_THEM or says_all(k, words)), -1)
    if at < 0:
        return found
    if words[at] != "both":
        return _of_everything(found, controls, at)
    sides = {SIDES[w] for w in words[at:] if w in SIDES}
    if len(sides) == 1:
        found = [d if d.side else d._replace(side=next(iter(sides))) for d in found]
    named = {d.control for d in found}
    if len(found) == 1 and found[0].place > at:
        before = {control: mention.start for mention, control in controls if mention.end <= at}
        before.update((CONTROLS[w], k) for k, w in enumerate(words[:at]) if w in CONTROLS)
        found += [found[0]._replace(control=c, place=k) for c, k in before.items() if c not in named]
    return found


def _of_everything(
    found: list[Deflection], controls: list[tuple[Named, str]], at: int
) -> list[Deflection]:
    """Return the one order that stands behind "everything" as that of each control that is named."""
    if len(found) != 1 or found[0].place < at:
        return found  # an order before it is of what it stands beside
    rest = {control: mention.start for mention, control in controls if control != found[0].control}
    return [*found, *(found[0]._replace(control=c, place=k, number=1) for c, k in rest.items())]


def _of_the_pair(
    found: list[Deflection], controls: list[tuple[Named, str]], words: tuple[str, ...]
) -> list[Deflection]:
    """ "Tillers and pedals full left": the order behind two controls that "and" joins is that of both."""
    if len(found) != 1:
        return found
    for (one, first), (other, second) in pairwise(controls):
        joined = {word for word in words[one.end : other.start] if word not in ARTICLES}
        if first != second and joined and joined <= _PAIRING and other.end <= found[0].place:
            bare, at = (first, one.start) if found[0].control == second else (second, other.start)
            return [found[0]._replace(control=bare, place=at, number=1), *found]
    return found


def says_all(at: int, words: tuple[str, ...]) -> bool:
    """Return whether "all" tells how all controls are turned: "tillers and pedals | all | full left"."""
    return words[at] == "all" and not FULL.isdisjoint(words[at + 1 : at + 2])


def likewise(
    found: list[Deflection], controls: list[tuple[Named, str]], words: tuple[str, ...]
) -> list[Deflection]:
    """ "The tiller is hard right and so is the pedal": a control without an order of its own has the last one's."""
    ordered = {d.control for d in found}
    bare = {c: m.start for m, c in controls if c not in ordered}
    told = any(w in _LIKEWISE and (w != "so" or words[i + 1 : i + 2] in _SO_IS) for i, w in enumerate(words))
    if not found or not bare or not told:
        return found
    return [*found, *(found[-1]._replace(control=c, place=k, number=1) for c, k in bare.items() if k > found[-1].place)]


def distinct(found: list[Deflection]) -> list[Deflection]:
    """Pedals count once, however many pilots press them the same way."""
    kept: list[Deflection] = []
    for item in sorted(found, key=lambda d: d.place):
        if item.control == "pedals":
            item = item._replace(number=1)
            if any(k.control == "pedals" and item.side in (0, k.side) and k.degrees == item.degrees for k in kept):
                continue  # "I push it fully as well" is the same side
        kept.append(item)
    return kept


def opposed(found: list[Deflection], question: Question) -> list[Deflection]:
    """ "One full left, the other the same right": an order said of two controls with opposite sides is two."""
    words = question.reading.words
    tillers = [d for d in found if d.control == "tiller"]
    if len(tillers) == 1 and not tillers[0].side and not OPPOSITE.isdisjoint(words):
        return [
            *[d for d in found if d.control != "tiller"],
            tillers[0]._replace(side=1, number=1),
            tillers[0]._replace(side=-1, number=1),
        ]
    if len(tillers) == 2:
        return [d._replace(number=1) if d.control == "tiller" else d for d in found]
    return found


def same_way(words: tuple[str, ...]) -> bool:
    """Return whether controls are said to be turned to one side, though not which."""
    if "same" not in words:
        return False
    return any(one == "same" and other in ("way", "side", "direction") for one, other in pairwise(words))
