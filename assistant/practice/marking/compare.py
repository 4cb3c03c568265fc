"""Hold what was said against what must be said: each point found or missing, and everything that contradicts.

A contradiction counts whatever else is right: a number that belongs to something else, a rival of what is asked (another
mode, colour, side), a thing said to be there that is not, the former value as the present one, steps out of order.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import NamedTuple

from assistant.practice.marking.numbers import Numbers, judge_numbers
from assistant.practice.marking.pairing import labels_of, sentences, stretches
from assistant.practice.marking.points import Element, Need, Point
from assistant.practice.marking.rivals import colours, opposed, others_said, persons, rivals
from assistant.practice.marking.said import Said, plain
from assistant.practice.marking.states import state_said
from assistant.practice.marking.wording import ALIKE, LOST, NEGATORS, NO, YES
from assistant.resolving.knowing import Knowledge

ENOUGH = 0.55
"""Share of a point's telling words that must be said."""
LITTLE = 0.25
_SURE = 0.85
"""Share from which words are taken for a step when the order of steps is judged."""
_HEAVY = 0.55
_NEARLY = 0.75
_NEIGHBOUR = 4
_SLIGHT = 1.3
"""Weight of words beside a figure that need not be said."""
_MUST = frozenset(map(plain, (
    "above", "below", "behind", "left", "right", "up", "down", "on", "off", "inboard", "rearward", "outboard", "forward",
    "front",
)))  # fmt: skip
"""Sides and ways without which a point is not said."""


class Held(NamedTuple):
    """How a point stands: how much of it was said (0 to 1), and where."""

    point: Point
    share: float
    places: tuple[int, ...]
    sure: float = 1.0
    """How much of its telling words was said, where it is found by its words."""


class Compared(NamedTuple):
    """The points as held, and everything that contradicts, in words."""

    held: tuple[Held, ...]
    wrong: tuple[str, ...]


def compare(need: Need, said: Said, know: Knowledge) -> Compared:
    """Return how an answer stands to what is needed."""
    numbers = judge_numbers(need, said, know)
    held = tuple(_held(i, need, said, numbers, know) for i in range(len(need.points)))
    held, exchanged = _paired(held, need, said, know)
    wrong = [
        *exchanged,
        *_crossed(need, said, numbers),
        *numbers.wrong,
        *_verdict_wrong(need, said),
        *_states_wrong(need, said, know),
        *rivals(need, said, know),
        *opposed([h.point for h in held], [h.places for h in held], need, said),
        *others_said(held_shares(held), need, said),
        *_elsewhere(held, need, said),
        *colours(held_shares(held), need, said, know),
        *persons(need, said),
        *_denied(held, said),
        *_beside_it(held, said),
    ]
    if need.ordered and not wrong:
        wrong += _out_of_order(held, numbers)
    return Compared(held, tuple(dict.fromkeys(wrong)))


def held_shares(held: Iterable[Held]) -> list[float]:
    """Return how much of each point was said."""
    return [h.share for h in held]


def _held(index: int, need: Need, said: Said, numbers: Numbers, know: Knowledge) -> Held:
    point = need.points[index]
    if point.verdict:
        return Held(point, float(verdict_said(need, said) == point.verdict), ())
    if point.state:
        return Held(point, float(state_said(point.state, need, said, know) is point.state.there), ())
    figures = numbers.found.get(index, ())
    places = tuple(place for place in figures if place is not None)
    words, spots = _words_said(point, said)
    if not point.figures:
        enough = words >= _enough(point) and _ways_said(point, said) and _all_groups(point, said)
        return Held(point, float(enough), spots if enough else (), words)
    got = len(places) / len(figures) if figures else 0.0
    if point.any_figure:
        got = float(bool(places))
    telling = [e for e in point.elements if not e.given and e.weight > 0.7]
    if point.figures_suffice or sum(e.weight for e in telling) < _SLIGHT:
        return Held(point, got, places)
    return Held(point, _both(got, words), places or spots if words >= LITTLE else places)


def _ways_said(point: Point, said: Said) -> bool:
    """Return whether the side or way of a point is said, where it is a word of its own."""
    whole = range(len(said.words))
    musts = [e for e in point.elements if not e.given and len(e.words) == 1 and e.words[0] in _MUST]
    others = [i for e in point.elements if e not in musts and e.weight > 0.5 for i in _element_said(e, said, whole)[1]]
    return all(_is_near(_element_said(e, said, whole)[1], others, said) for e in musts)


def _is_near(places: Sequence[int], others: Sequence[int], said: Said) -> bool:
    """Return whether a side or way is said of the thing: in its clause, or a few words away."""
    if not others:
        return bool(places)
    return any(said.clauses[i] == said.clauses[k] or abs(i - k) <= _NEIGHBOUR for i in places for k in others)


def _enough(point: Point) -> float:
    """Return the share of a point's words that must be said: more where none of them tells much."""
    return ENOUGH if any(e.weight >= _HEAVY for e in point.elements if not e.given) else _NEARLY


def _all_groups(point: Point, said: Said) -> bool:
    """Return whether something was said of each of the things that "and" joins in a point."""
    whole = range(len(said.words))
    groups: dict[int, list[Element]] = {}
    for element in point.elements:
        if not element.given and element.weight >= _HEAVY:
            groups.setdefault(element.group, []).append(element)
    return all(any(_element_said(e, said, whole)[0] for e in group) for group in groups.values())


def _both(got: float, words: float) -> float:
    """Return the share of a point with figures and words of its own: both must be said."""
    if got == 1.0:
        return 1.0 if words >= LITTLE else 0.6
    return min(0.6, 0.5 * got + (0.4 if words >= ENOUGH else 0.0))


def _words_said(point: Point, said: Said, window: Sequence[int] | None = None) -> tuple[float, tuple[int, ...]]:
    """Return how much of a point's telling words was said, and where the most telling ones stand."""
    elements = [e for e in point.elements if not e.given] or list(point.elements)
    whole = sum(e.weight for e in elements)
    credit, places = 0.0, []
    for element in elements:
        amount, spots = _element_said(element, said, range(len(said.words)) if window is None else window)
        credit += element.weight * amount
        if element.weight > 0.7:
            places += spots
    return (credit / whole if whole else 0.0), tuple(places)


def _element_said(element: Element, said: Said, window: Sequence[int]) -> tuple[float, list[int]]:
    """Return how far an element was said, and where: by its concept, by that of a word of a name, else by its words."""
    best: tuple[float, list[int]] = (0.0, [])
    for i in window:
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
    return bool((NEGATORS | LOST).intersection(before) or (NEGATORS | LOST).intersection(after))


def _alike_words(one: str, other: str) -> bool:
    """Return whether two words are one, or forms of one: "reapply" and "reapplication"."""
    return one == other or (len(one) > 6 < len(other) and one[:6] == other[:6] and abs(len(one) - len(other)) < 7) or (
        min(len(one), len(other)) >= 6 and one[:6] == other[:6] and one[:2] == "re"
    )


def _credit(element: Element, said: Said, place: int) -> float:
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
    share = sum(1 for word in element.words if any(_alike_words(n, word) for n in near)) / len(element.words)
    return share if share > 0.5 else 0.0


_WAYS = frozenset({"up", "down", "on", "off", "left", "right"})


# --- points that differ by a name


def _paired(held: tuple[Held, ...], need: Need, said: Said, know: Knowledge) -> tuple[tuple[Held, ...], list[str]]:
    """Hold each of the points that differ by a name against what is said of that name alone."""
    alike = _alike(need, know)
    if len(alike) < 2 or need.ordered:
        return held, []
    labels = {
        i: label for i, label in labels_of(need._replace(points=tuple(map(_label_alone, need.points))), alike, know).items()
    }
    payload = [h.places[0] for i, h in enumerate(held) if i in labels and h.places]
    places = stretches(labels, payload, said)
    if not places:
        return held, _listed_wrong(need, alike, held, said)
    made, wrong = list(held), []
    for i in alike:
        here = places[i] if i in places else _unnamed(places, said)
        share = _words_said(need.points[i], said, sorted(here))[0] if here else 0.0
        made[i] = held[i]._replace(share=1.0 if share >= ENOUGH else 0.0)
        others = [need.points[j] for j in alike if j != i and not _same_payload(need.points[i], need.points[j])]
        if i in places and here and share < ENOUGH and any(_words_said(other, said, sorted(here))[0] >= 0.9 for other in others):
            wrong.append(f"another's: {need.points[i].text}")
        elif i in places and share == 0 and _claims_there(need, sorted(here), said):
            wrong.append(f"something else: {need.points[i].text}")
    return tuple(made), wrong


def _listed_wrong(need: Need, alike: Sequence[int], held: Sequence[Held], said: Said) -> list[str]:
    """Return that a bare list is in another order, or that one thing is said of all: "white, white, amber", "all white"."""
    points = [need.points[i] for i in alike]
    each = frozenset(c for p in points for e in p.elements if not e.given for c in e.concepts)
    spots = [i for i in said.where(each) if i not in said.numbered]
    if len(spots) == len(points):
        right = all(_words_said(p, said, [i])[0] >= ENOUGH for p, i in zip(points, spots, strict=True))
        return [] if right else ["another order than asked"]
    same = len(spots) == 1 and any(not held[i].share for i in alike) and ALIKE.search(" ".join(said.reading.words))
    return ["one thing for all of them"] if same else []


def _crossed(need: Need, said: Said, numbers: Numbers) -> list[str]:
    """Return the figures with which another point's words are said: "5 %: replace. 10 %: re-inflate"."""
    told = {
        i: p for i, p in enumerate(need.points)
        if p.figures and not p.figures_suffice and not need.ordered and any(e.weight > 0.7 for e in p.elements)
    }  # fmt: skip
    found = []
    for clause in sentences(said) if len(told) > 1 else ():
        here = [i for i in numbers.found if any(place in clause for place in numbers.found[i] if place is not None)]
        if len(here) != 1 or here[0] not in told:
            continue
        own = _words_said(told[here[0]], said, clause)[0]
        others = [p for i, p in told.items() if i != here[0]]
        if own < LITTLE and any(_words_said(p, said, clause)[0] >= 0.9 for p in others):
            found.append(f"another's: {told[here[0]].text}")
    return found


def _claims_there(need: Need, places: Sequence[int], said: Said) -> bool:
    """Return whether a stretch of an answer holds a thing that neither the question nor any point names."""
    known = {c for p in need.points for e in (*p.elements, *p.labels) for c in e.concepts} | need.question.concepts
    told = [m for m in said.content if m.start in places]
    return any(m.concepts.isdisjoint(known) and not m.text.startswith("not ") for m in told)


def _unnamed(places: dict[int, set[int]], said: Said) -> set[int]:
    """Return the places that speak of no point by its name."""
    return set(range(len(said.words))) - {i for here in places.values() for i in here}


def _alike(need: Need, know: Knowledge) -> list[int]:
    """Return the points without figures that say the same sort of thing of differently named things."""
    points = {
        i: p for i, p in enumerate(need.points) if not (p.figures or p.verdict or p.state) and _named_by(p)
    }
    return [i for i, p in points.items() if any(_like(p, q, know) for j, q in points.items() if j != i)]


def _like(one: Point, other: Point, know: Knowledge) -> bool:
    families = know.lexicon.families
    mine, others = (
        {families.get(c) for e in p.elements if not e.given for c in e.concepts} & {"colour", "autobrake-setting"}
        for p in (one, other)
    )
    words, theirs = ({w for e in p.elements if not e.given for w in e.words} for p in (one, other))
    labelled = any(e.given for e in one.elements) and any(e.given for e in other.elements)
    return bool(mine & others) or (labelled and bool(words & theirs))


def _named_by(point: Point) -> bool:
    return bool(point.labels) or (any(e.given for e in point.elements) and any(not e.given for e in point.elements))


def _label_alone(point: Point) -> Point:
    return point._replace(elements=tuple(e for e in point.elements if e.given))


def _same_payload(one: Point, other: Point) -> bool:
    return {e.words for e in one.elements if not e.given} == {e.words for e in other.elements if not e.given}


# --- yes or no


def verdict_said(need: Need, said: Said) -> str:
    """Return the verdict that an answer begins with: "yes", "no" or ""."""
    words = list(said.reading.words)
    first = [w for w in words[:2] if w in ("yes", "no", "yep", "yeah", "nope", "negative", "affirmative", "affirm", "nah")]
    if first:
        return "yes" if first[0] in ("yes", "yep", "yeah", "affirmative", "affirm") else "no"
    text = " ".join(words)
    no, yes = NO.search(text), YES.search(text)
    if no and (not yes or no.start() <= yes.start() + 12):
        return "no"
    return "yes" if yes else ""


def _verdict_wrong(need: Need, said: Said) -> list[str]:
    wanted = next((p.verdict for p in need.points if p.verdict), "")
    given = verdict_said(need, said) if wanted else ""
    return [f"{given}: it is {wanted}"] if wanted and given and given != wanted else []


def _states_wrong(need: Need, said: Said, know: Knowledge) -> list[str]:
    found = []
    for point in need.points:
        if point.state:
            given = state_said(point.state, need, said, know)
            if given is not None and given is not point.state.there:
                found.append(f"the contrary of: {point.text}")
    return found


# --- denied, or on the wrong side of it


def _denied(held: Sequence[Held], said: Said) -> list[str]:
    """Return the points whose most telling word is said with a "no": "there is no sound"."""
    found = []
    for one in held:
        point = one.point
        if not one.share or not one.places or point.negated or point.state or point.verdict or point.figures:
            continue
        if NEGATORS.intersection(point.text.lower().replace("-", " ").split()):
            continue
        heaviest = max((e for e in one.point.elements if not e.given), key=lambda e: e.weight, default=None)
        spots = _element_said(heaviest, said, range(len(said.words)))[1] if heaviest else []
        if spots and all(_no_before(i, said) for i in spots):
            found.append(f"denied: {one.point.text}")
    return found


def _no_before(place: int, said: Said) -> bool:
    before = said.reading.words[max(0, place - 2) : place]
    return bool(before) and (before[-1] in ("no", "without") or before in (("no", "such"), ("not", "the"), ("not", "a")))


def _beside_it(held: Sequence[Held], said: Said) -> list[str]:
    """Return the points of which an answer names the thing on another side: "above idle" for near it."""
    found = []
    for point in (h.point for h in held):
        own = {plain(w) for w in point.text.lower().replace("-", " ").split()}
        for element in (e for e in point.elements if not e.given and e.weight > 0.7 and e.concepts):
            for i in _element_said(element, said, range(len(said.words)))[1]:
                before = said.words[i - 1] if i else ""
                if (before in _OVER and before not in own) or (before in _AT and own & _OVER and _is_over(point, element)):
                    found.append(f"{before} it: {point.text}")
    return found


_OVER = frozenset(map(plain, ("above", "below")))
_AT = frozenset(map(plain, ("at", "near")))


def _is_over(point: Point, element: Element) -> bool:
    """Return whether a point says of an element that something is above or below it."""
    words = [plain(w) for w in point.text.lower().replace("-", " ").split()]
    return any(a in _OVER and b in element.words for a, b in pairwise(words))


# --- another place


_PLACES = frozenset({"on", "in", "under", "behind", "above", "below", "beside", "inside", "near", "beneath"})


def _elsewhere(held: Sequence[Held], need: Need, said: Said) -> list[str]:
    """Return another place than the one asked for, where none of the place is right: "on the overhead panel"."""
    places = [h for h in held if _is_place(h.point)]
    if not need.question.has("where") or not places or any(h.share for h in places):
        return []
    known = {w for p in need.points for e in p.elements for w in e.words} | {plain(w) for w in need.question.words}
    words = said.reading.words
    for i, word in enumerate(words[:-1]):
        noun = i + 2 if words[i + 1] in ("the", "a", "an", "your", "its") else 0
        if word in _PLACES and noun and noun < len(words) and words[noun][0].isalpha() and said.words[noun] not in known:
            return [" ".join(words[i : noun + 2])]
    return []


def _is_place(point: Point) -> bool:
    first = point.text.split()[:1]
    return bool(first) and first[0].lower() in _PLACES | {"left", "right", "one"}


# --- order


def _out_of_order(held: Sequence[Held], numbers: Numbers) -> list[str]:
    placed = [(h.point, h.places) for h in held if h.places and h.share >= 0.5 and h.sure >= _SURE]
    found = []
    for (_, before), (point, after) in pairwise(placed):
        if max(after) < min(before):
            found.append(f"out of order: {point.text}")
    return found
