"""Orders of tillers and pedals as people say them: "20 left on one, half the other, pedals full right".

Right is positive. Two tillers are two orders; pedals are one movement for both pilots. "Full" and parts of it have no
degrees until the limit at a speed is known.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.controls_named import (
    CONTROLS,
    EACH_SEAT,
    NOT_OF_EACH,
    NOUNS,
    PARTING,
    Named,
    controls_in,
    is_left_as_it_is,
)
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.orders_shared import (
    FULL,
    OPPOSITE,
    SIDES,
    Deflection,
    distinct,
    joined,
    likewise,
    same_way,
    says_all,
    shared,
)
from assistant.understanding.clauses import asking

_RESULTING = frozenset(("make", "makes", "reach", "reaches", "equal", "equals", "become", "becomes"))
_GETTING = frozenset((("i", "get"), ("we", "get"), ("you", "get"), ("that", "give"), ("that", "gives"), ("it", "give")))
_SURELY = frozenset(("really", "actually", "then", "a", "the", "full"))
_STOPS = frozenset(("stop", "stops"))
_SEATED = NOUNS - {"pedal", "pedals"}
"""Things of one side of the cockpit each: "the left tiller" is the captain's, turned either way. Pedals have none."""
_BOTH_OF_US = ("both", "of", "us")
_BETWEEN = frozenset(("of", "on", "the", "a", "with", "my", "his", "her"))
_PARTS = {"half": 0.5, "halfway": 0.5, "quarter": 0.25, "quarters": 0.25, "third": 1 / 3, "thirds": 1 / 3}
_MANY = {"two": 2, "three": 3, "2": 2, "3": 3, "four": 4, "4": 4}
_PART_WORDS = frozenset(_PARTS)


def names_side(words: tuple[str, ...]) -> bool:
    """Return whether left or right is said at all, so that looking for orders is worth it."""
    return not SIDES.keys().isdisjoint(words) or not OPPOSITE.isdisjoint(words) or same_way(words)


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
    controls = controls_in(question)
    orders = _first_order(question) < min((m.start for m, _ in controls), default=0)
    for amount in question.reading.amounts:
        if _is_believed(amount, words):
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
    related = "both" in words or not names_side(words) or same_way(words) or not OPPOSITE.isdisjoint(words)
    for i, word in enumerate(words):
        taken = says_all(i, words) or any(a.start <= i < a.end for a in question.reading.amounts)
        if word in FULL and not taken:
            side = _side_near(words, i, i + 1)
            control = _following(controls, orders, i + 1, words) or _nearest(controls, i, words)
            if control and (side or control[0] == "pedals" or len(controls) == 1 or related):
                found.append(Deflection(control[0], None, side, control[1], i))
    return distinct(likewise(shared(joined(found, words), controls, words), controls, words))


def _is_believed(amount: Amount, words: tuple[str, ...]) -> bool:
    """Return whether an amount is what somebody takes the sum to be: "does that make | 80 degrees", "do I get 16"."""
    before = [word for word in words[max(0, amount.start - 3) : amount.start] if word not in _SURELY]
    if before[-1:] and before[-1] in _RESULTING:
        return True
    return tuple(before[-2:]) in _GETTING and amount.start in asking(words)


def _first_order(question: Question) -> int:
    """Return where the first order stands: "full" or degrees."""
    words = question.reading.words
    full = [k for k, word in enumerate(words) if word in FULL]
    degrees = [a.start for a in question.reading.amounts if a.unit == "deg" or (a.unit is None and not _at(a, words))]
    return min(full + degrees, default=len(words))


def _at(amount: Amount, words: tuple[str, ...]) -> bool:
    """Return whether a bare number is said to be a speed."""
    return bool(amount.start) and words[amount.start - 1] in ("at", "speed", "doing")


def _is_order(amount: Amount, question: Question) -> bool:
    """Return whether a bare number right behind a control is its order, as another amount is the speed."""
    words, others = question.reading.words, [a for a in question.reading.amounts if a is not amount]
    behind = bool(amount.start) and words[amount.start - 1] in CONTROLS
    return behind and any(_at(a, words) or a.unit == "kt" for a in others)


def _following(
    controls: list[tuple[Named, str]], orders: bool, end: int, words: tuple[str, ...]
) -> tuple[str, int] | None:
    """Return the control right behind an order, where orders stand before their controls: "full left tiller"."""
    if not orders:
        return None
    while end < len(words) and (words[end] in SIDES or words[end] in _BETWEEN):
        end += 1
    found = next(((m, c) for m, c in controls if m.start <= end < m.end), None)
    return (found[1], 2 if _both(found[0], words) else 1) if found else None


def _is_speed(amount: Amount, question: Question) -> bool:
    words = question.reading.words
    said = amount.unit is None and _at(amount, words) and not SIDES.keys() & set(words[amount.end : amount.end + 1])
    return said or amount.unit not in (None, "deg", "rad")


def _nearest(controls: list[tuple[Named, str]], at: int, words: tuple[str, ...]) -> tuple[str, int] | None:
    best: tuple[float, str, int] | None = None
    for mention, control in controls:
        distance = at - mention.end if mention.end <= at else mention.start - at + 0.6
        between = words[mention.end : at] if mention.end <= at else words[at : mention.start]
        if not PARTING.isdisjoint(between):
            distance += 3 if mention.end <= at else 4
        count = 2 if _both(mention, words) or (control == "tiller" and _both_pilots(words)) else 1
        if best is None or distance < best[0]:
            best = (distance, control, count)
    return (best[1], best[2]) if best and best[0] < 14 else None


def _both(mention: Named, words: tuple[str, ...]) -> bool:
    before = words[max(0, mention.start - 2) : mention.start]
    return (
        "both" in before
        or "two" in before
        or "each" in before
        or ("both" in words and mention.text.startswith("tillers"))
        or _on_each(mention, words)
    )


def _on_each(mention: Named, words: tuple[str, ...]) -> bool:
    """Return whether an order is said to be that of each tiller: "the tillers, 45 right on each", "each side"."""
    after = {following for word, following in pairwise((*words, "")) if word == "each"}
    if mention.text.startswith("tillers"):
        return bool(after - NOT_OF_EACH)
    return mention.text.startswith("tiller") and not after.isdisjoint(EACH_SEAT)


def _both_pilots(words: tuple[str, ...]) -> bool:
    """Return whether both pilots are said to do something, and not with the pedals alone: "both pilots wind on 30"."""
    return any(
        one in ("both", "each", "two") and other in ("pilots", "pilot", "crew") and "pedals" not in words[k + 2 : k + 4]
        for k, (one, other) in enumerate(pairwise(words))
    ) or any(words[k : k + 3] == _BOTH_OF_US for k in range(len(words)))


def _side_near(words: tuple[str, ...], start: int, end: int) -> int:
    if words[end : end + 1] == ("of",) and words[end + 1 : end + 2] and words[end + 1] in SIDES:
        return SIDES[words[end + 1]]  # "4° of right tiller" is an order, and no seat
    for k in range(end, min(len(words), end + 4)):
        if is_left_as_it_is(k, words):
            break
        if words[k] in SIDES and not (k + 1 < len(words) and words[k + 1] in _SEATED and k > end):
            return SIDES[words[k]]
        if words[k] in (",", ";", "and", "with", "."):
            break
    before = 5 if words[start] in _STOPS else 3  # "right to the stop"
    for k in range(start - 1, max(-1, start - before), -1):
        if words[k] in SIDES and not (k + 1 < len(words) and words[k + 1] in _SEATED):
            return SIDES[words[k]]
        if words[k] in (",", ";", "and", "."):
            break
    return 0


def left_out(found: list[Deflection], question: Question) -> bool:
    """Return whether a control is named with a side, and no order is found for it."""
    words, ordered = question.reading.words, {d.control for d in found}
    return any(
        control not in ordered and named.start and words[named.start - 1] in SIDES
        for named, control in controls_in(question)
    )


