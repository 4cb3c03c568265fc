"""Orders of tillers and pedals as people say them: "20 left on one, half the other, pedals full right".

Right is positive. Two tillers are two orders; pedals are one movement for both pilots. "Full" and parts of it have no
degrees until the limit at a speed is known.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from assistant.frozen import NamedTuple
from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.mentions import Mention

_SIDES = {
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
_RESULTING = frozenset(("make", "makes", "reach", "reaches", "equal", "equals", "become", "becomes"))
_FULL = frozenset(("full", "fully", "hard", "max", "maximum", "all", "stop", "stops"))
_NOUNS = frozenset(
    ("tiller", "tillers", "seat", "pedal", "pedals", "hand", "pilot", "wheel", "side", "one", "handwheel")
)
_OPPOSITE = frozenset(("opposite", "opposing", "opposed"))
_JOINING = frozenset({"and", ","})
_WORDS = {"tiller": "tiller", "tillers": "tiller", "pedal": "pedals", "pedals": "pedals"}
_CENTRED = frozenset(("centred", "centered", "neutral", "released", "untouched", "free", "straight", "alone"))
_LET_GO = frozenset({
    ("hands", "off"), ("feet", "off"), ("nobody", "touching"), ("not", "touching"), ("nobody", "on"),
    ("no", "one", "touching"), ("nobody", "is", "touching"),
})  # fmt: skip
"""Words by which a control is said to be left alone: "hands off the tillers"."""
_SEATED = _NOUNS - {"pedal", "pedals"}
"""Things of one side of the cockpit each: "the left tiller" is the captain's, turned either way. Pedals have none."""
_BOTH_OF_US = ("both", "of", "us")
_EACH_SEAT = frozenset(("side", "seat", "hand"))
_NOT_OF_EACH = frozenset(("way", "direction", "pedal", "time", "other", "turn"))
_BETWEEN = frozenset(("of", "on", "the", "a", "with", "my", "his", "her"))
_PARTING = frozenset((",", ";", ".", "and", "plus", "with", "then", "while", "+", "&"))
_LIKEWISE = frozenset(("so", "too", "also", "likewise", "same", "well"))
_SO_IS = frozenset((("is",), ("are",), ("does",), ("do",), ("has",), ("with",)))
"""Words after a "so" that says the same of another thing, and does not lead on: "so how many degrees"."""
_PARTS = {"half": 0.5, "halfway": 0.5, "quarter": 0.25, "quarters": 0.25, "third": 1 / 3, "thirds": 1 / 3}
_MANY = {"two": 2, "three": 3, "2": 2, "3": 3, "four": 4, "4": 4}
_PART_WORDS = frozenset(_PARTS)
_ADDING = frozenset(("plus", "and", "with", "add", "adding", "added", "minus"))
_ANOTHER = frozenset(("other", "his", "hers", "mine", "yours", "theirs"))
_NOT_ALONE = (_NOUNS - {"one"}) | _NOT_OF_EACH | _EACH_SEAT | {"pedals", "tillers"}
"""Words that say themselves what the other one is, or that another side is meant."""


class _Named(NamedTuple):
    """Where a control is named."""

    start: int
    end: int
    text: str


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


def leaves_centred(words: tuple[str, ...]) -> bool:
    """Return whether a control is said to be left alone, so that what the others order together is asked."""
    runs = (words[i : i + n] for n in (2, 3) for i in range(len(words)))
    return not _CENTRED.isdisjoint(words) or not _LET_GO.isdisjoint(runs)


def names_side(words: tuple[str, ...]) -> bool:
    """Return whether left or right is said at all, so that looking for orders is worth it."""
    return not _SIDES.keys().isdisjoint(words) or not _OPPOSITE.isdisjoint(words) or same_way(words)


def names_part(words: tuple[str, ...]) -> bool:
    """Return whether a part of something is said, so that looking for "half tiller" is worth it."""
    return not _PART_WORDS.isdisjoint(words)


def _parts(question: Question) -> Iterator[tuple[int, int, float]]:
    """Yield where a part of full is said that is no amount, with it: "three quarters", "halfway"."""
    words = question.reading.words
    for i, word in enumerate(words):
        part = _PARTS.get(word)
        if part is None or any(a.start <= i < a.end for a in question.reading.amounts):
            continue
        many = _MANY.get(words[i - 1], 1) if i and word.startswith(("quarter", "third")) else 1
        yield i, i + 1, min(1.0, part * many)


def deflections(question: Question, know: Knowledge) -> list[Deflection]:
    """Return the orders of the controls that a question names."""
    found: list[Deflection] = []
    words = question.reading.words
    controls = _controls(question)
    orders = _first_order(question) < min((m.start for m, _ in controls), default=0)
    for amount in question.reading.amounts:
        if amount.start and words[amount.start - 1] in _RESULTING:
            continue  # "does that make 80 degrees?" believes a result
        if (amount.unit is None or fits(amount, "deg", know.units) is not None) and not _is_speed(amount, question):
            control = _following(controls, orders, amount.end, words) or _nearest(controls, amount.start, words)
            side = _side_near(words, amount.start, amount.end)
            part = amount.value if amount.spoken and 0 < amount.value < 1 else None  # "half right pedal"
            told = part or amount.unit is not None or side or same_way(words) or _is_order(amount, question)
            if control and told:
                degrees = abs(amount.value) if part is None else None
                found.append(Deflection(control[0], degrees, side, control[1], amount.start, part or 1.0))
    for start, end, part in _parts(question) if controls else ():
        control = _following(controls, orders, end, words) or _nearest(controls, start, words)
        if control and part < 1:
            found.append(Deflection(control[0], None, _side_near(words, start, end), control[1], start, part))
    related = "both" in words or not names_side(words) or same_way(words) or not _OPPOSITE.isdisjoint(words)
    for i, word in enumerate(words):
        if word in _FULL and not any(a.start <= i < a.end for a in question.reading.amounts):
            side = _side_near(words, i, i + 1)
            control = _following(controls, orders, i + 1, words) or _nearest(controls, i, words)
            if control and (side or control[0] == "pedals" or len(controls) == 1 or related):
                found.append(Deflection(control[0], None, side, control[1], i))
    return _distinct(_likewise(_shared(_joined(found, words), controls, words), controls, words))


def _first_order(question: Question) -> int:
    """Return where the first order stands: "full" or degrees."""
    words = question.reading.words
    full = [k for k, word in enumerate(words) if word in _FULL]
    degrees = [a.start for a in question.reading.amounts if a.unit == "deg" or (a.unit is None and not _at(a, words))]
    return min(full + degrees, default=len(words))


def _at(amount: Amount, words: tuple[str, ...]) -> bool:
    """Return whether a bare number is said to be a speed."""
    return bool(amount.start) and words[amount.start - 1] in ("at", "speed", "doing")


def _is_order(amount: Amount, question: Question) -> bool:
    """Return whether a bare number right behind a control is its order, as another amount is the speed."""
    words, others = question.reading.words, [a for a in question.reading.amounts if a is not amount]
    behind = bool(amount.start) and words[amount.start - 1] in _WORDS
    return behind and any(_at(a, words) or a.unit == "kt" for a in others)


def _following(
    controls: list[tuple[_Named, str]], orders: bool, end: int, words: tuple[str, ...]
) -> tuple[str, int] | None:
    """Return the control right behind an order, where orders stand before their controls: "full left tiller"."""
    if not orders:
        return None
    while end < len(words) and (words[end] in _SIDES or words[end] in _BETWEEN):
        end += 1
    found = next(((m, c) for m, c in controls if m.start <= end < m.end), None)
    return (found[1], 2 if _both(found[0], words) else 1) if found else None


def _controls(question: Question) -> list[tuple[_Named, str]]:
    """Return the controls that are named, and what stands for one; those left centred take no order."""
    words = question.reading.words
    named = [(_Named(m.start, m.end, m.text), c) for m in question.reading.mentions if (c := _control(m))]
    named = sorted([*named, *_within_sums(question)], key=lambda pair: pair[0].start)
    turned = [pair for pair in named if not _CENTRED.intersection(words[pair[0].end : pair[0].end + 3])] or named
    return [*turned, *_others(turned, words)]


def _others(turned: list[tuple[_Named, str]], words: tuple[str, ...]) -> Iterator[tuple[_Named, str]]:
    """Yield the other one of the controls that are named: "one tiller 40 right, the other 25 left".

    Beside pedals it is the other tiller only where a tiller was named last, and nothing else is called "other".
    """
    kinds = {c for _, c in turned}
    for k, word in enumerate(words):
        before = [c for m, c in turned if m.end < k] if word in _ANOTHER else []
        if before and len(kinds) == 1:
            yield _Named(k, k + 1, word), before[0]
        elif before and before[-1] == "tiller" and not _NOT_ALONE.intersection(words[k + 1 : k + 2]):
            yield _Named(k, k + 1, word), "tiller"


def _within_sums(question: Question) -> list[tuple[_Named, str]]:
    """Return the controls that the name of a sum holds, where it tells what is added: "plus | pedal 12 left"."""
    words = question.reading.words
    sums = (m for m in question.reading.mentions if m.holds("total_order") and not _control(m))
    places = (k for m in sums if not _ADDING.isdisjoint(m.text.split()) for k in m.taken)
    return [(_Named(k, k + 1, words[k]), _WORDS[words[k]]) for k in places if words[k] in _WORDS]


def _joined(found: list[Deflection], words: tuple[str, ...]) -> list[Deflection]:
    """ "Tillers 20 and 15 right": the side that is said of the second order is that of the first too."""
    if "tillers" not in words:
        return found
    by_place = {d.place: d for d in found if d.control == "tiller" and d.side}
    joined = ((d, by_place.get(d.place + 2)) for d in found)
    return [
        d._replace(side=other.side) if other and not d.side and words[d.place + 1] in _JOINING else d
        for d, other in joined
    ]


def _shared(
    found: list[Deflection], controls: list[tuple[_Named, str]], words: tuple[str, ...]
) -> list[Deflection]:
    """ "Tiller and pedals both full right": one order, or one side, said once of all the controls before it."""
    if "both" not in words:
        return found
    at = words.index("both")
    sides = {_SIDES[w] for w in words[at:] if w in _SIDES}
    if len(sides) == 1:
        found = [d if d.side else d._replace(side=next(iter(sides))) for d in found]
    named = {d.control for d in found}
    if len(found) == 1 and found[0].place > at:
        before = {control: mention.start for mention, control in controls if mention.end <= at}
        before.update((_WORDS[w], k) for k, w in enumerate(words[:at]) if w in _WORDS)
        found += [found[0]._replace(control=c, place=k) for c, k in before.items() if c not in named]
    return found


def _likewise(
    found: list[Deflection], controls: list[tuple[_Named, str]], words: tuple[str, ...]
) -> list[Deflection]:
    """ "The tiller is hard right and so is the pedal": a control without an order of its own has the last one's."""
    ordered = {d.control for d in found}
    bare = {c: m.start for m, c in controls if c not in ordered}
    told = any(w in _LIKEWISE and (w != "so" or words[i + 1 : i + 2] in _SO_IS) for i, w in enumerate(words))
    if not found or not bare or not told:
        return found
    return [*found, *(found[-1]._replace(control=c, place=k, number=1) for c, k in bare.items() if k > found[-1].place)]


def _distinct(found: list[Deflection]) -> list[Deflection]:
    """Pedals count once, however many pilots press them the same way."""
    kept: list[Deflection] = []
    for item in sorted(found, key=lambda d: d.place):
        if item.control == "pedals":
            item = item._replace(number=1)
            if any(k.control == "pedals" and k.side == item.side and k.degrees == item.degrees for k in kept):
                continue
        kept.append(item)
    return kept


def _control(mention: Mention) -> str:
    if mention.holds("tiller") or mention.holds("captain") or mention.holds("first_officer"):
        return "tiller"
    return "pedals" if mention.holds("pedal") or mention.holds("pedal_steering") else ""


def _is_speed(amount: Amount, question: Question) -> bool:
    words = question.reading.words
    said = amount.unit is None and _at(amount, words) and not _SIDES.keys() & set(words[amount.end : amount.end + 1])
    return said or amount.unit not in (None, "deg", "rad")


def _nearest(controls: list[tuple[_Named, str]], at: int, words: tuple[str, ...]) -> tuple[str, int] | None:
    best: tuple[float, str, int] | None = None
    for mention, control in controls:
        distance = at - mention.end if mention.end <= at else mention.start - at + 0.6
        between = words[mention.end : at] if mention.end <= at else words[at : mention.start]
        if not _PARTING.isdisjoint(between):
            distance += 3 if mention.end <= at else 4
        count = 2 if _both(mention, words) or (control == "tiller" and _both_pilots(words)) else 1
        if best is None or distance < best[0]:
            best = (distance, control, count)
    return (best[1], best[2]) if best and best[0] < 14 else None


def _both(mention: _Named, words: tuple[str, ...]) -> bool:
    before = words[max(0, mention.start - 2) : mention.start]
    return (
        "both" in before
        or "two" in before
        or "each" in before
        or ("both" in words and mention.text.startswith("tillers"))
        or _on_each(mention, words)
    )


def _on_each(mention: _Named, words: tuple[str, ...]) -> bool:
    """Return whether an order is said to be that of each tiller: "the tillers, 45 right on each", "each side"."""
    after = {following for word, following in pairwise((*words, "")) if word == "each"}
    if mention.text.startswith("tillers"):
        return bool(after - _NOT_OF_EACH)
    return mention.text.startswith("tiller") and not after.isdisjoint(_EACH_SEAT)


def _both_pilots(words: tuple[str, ...]) -> bool:
    """Return whether both pilots are said to do something, and not with the pedals alone: "both pilots wind on 30"."""
    return any(
        one in ("both", "each", "two") and other in ("pilots", "pilot", "crew") and "pedals" not in words[k + 2 : k + 4]
        for k, (one, other) in enumerate(pairwise(words))
    ) or any(words[k : k + 3] == _BOTH_OF_US for k in range(len(words)))


def _side_near(words: tuple[str, ...], start: int, end: int) -> int:
    if words[end : end + 1] == ("of",) and words[end + 1 : end + 2] and words[end + 1] in _SIDES:
        return _SIDES[words[end + 1]]  # "4° of right tiller" is an order, and no seat
    for k in range(end, min(len(words), end + 4)):
        if words[k] in _SIDES and not (k + 1 < len(words) and words[k + 1] in _SEATED and k > end):
            return _SIDES[words[k]]
        if words[k] in (",", ";", "and", "with", "."):
            break
    for k in range(start - 1, max(-1, start - 3), -1):
        if words[k] in _SIDES and not (k + 1 < len(words) and words[k + 1] in _SEATED):
            return _SIDES[words[k]]
        if words[k] in (",", ";", "and", "."):
            break
    return 0


def left_out(found: list[Deflection], question: Question) -> bool:
    """Return whether a control is named with a side, and no order is found for it."""
    words, ordered = question.reading.words, {d.control for d in found}
    return any(
        control not in ordered and named.start and words[named.start - 1] in _SIDES
        for named, control in _controls(question)
    )


def opposed(found: list[Deflection], question: Question) -> list[Deflection]:
    """ "One full left, the other the same right": an order said of two controls with opposite sides is two."""
    words = question.reading.words
    tillers = [d for d in found if d.control == "tiller"]
    if len(tillers) == 1 and not tillers[0].side and not _OPPOSITE.isdisjoint(words):
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
    return any(one == "same" and other in ("way", "side", "direction") for one, other in pairwise(words))
