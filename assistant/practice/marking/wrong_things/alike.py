"""Points that differ by a name: what is said of each name, and what is said of the wrong one."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from itertools import combinations

from assistant.practice.marking.finding.elements import DIRECTIONS, SIDES
from assistant.practice.marking.finding.found import ENOUGH, LITTLE, Held, element_said, words_said
from assistant.practice.marking.finding.pairing import Label, labels_of, sentences, stretches
from assistant.practice.marking.points import Need, Point
from assistant.practice.marking.reading.contraries import OTHER
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import ALIKE
from assistant.practice.marking.wrong_figures.numbers import Numbers
from assistant.resolving.knowing import Knowledge


def paired(held: tuple[Held, ...], need: Need, said: Said, know: Knowledge) -> tuple[tuple[Held, ...], list[str]]:
    """Hold each of the points that differ by a name against what is said of that name alone."""
    alike = _alike(need, know)
    if len(alike) < 2 or need.ordered:
        return held, []
    said = _repeated(said, need, alike)
    labels = _without_common(labels_of(need._replace(points=tuple(map(_label_alone, need.points))), alike, know), need)
    payload = [h.places[0] for i, h in enumerate(held) if i in labels and h.places]
    places = stretches(labels, payload, said)
    if not places:
        return held, _listed_wrong(need, alike, held, said)
    made, wrong = list(held), []
    for i in alike:
        here = places[i] if i in places else _unnamed(places, said)
        share = words_said(need.points[i], said, sorted(here))[0] if here else 0.0
        turned = _other_way(need.points[i], here, said) if i in places and need.points[i].labels else False
        wrong += [f"the other way: {need.points[i].text}"] if turned else []
        share = 0.0 if turned or _lacks_way(need.points[i], here, said) else share
        made[i] = held[i]._replace(share=1.0 if share >= ENOUGH else 0.0)
        others = [need.points[j] for j in alike if j != i and not _same_payload(need.points[i], need.points[j])]
        if (
            i in places
            and here
            and share < ENOUGH
            and not _only_shared(i, alike, here, need, said)
            and any(words_said(other, said, sorted(here))[0] >= 0.9 for other in others)
        ):
            wrong.append(f"another's: {need.points[i].text}")
        elif i in places and share == 0 and _claims_there(need, sorted(here), said):
            wrong.append(f"something else: {need.points[i].text}")
    return tuple(made), wrong


def _without_common(labels: dict[int, Label], need: Need) -> dict[int, Label]:
    """Return the names of points without words that every point itself says: "which system …: System 1, System 2"."""
    said = [{plain(w) for w in re.findall(r"[a-z]+", need.points[i].text.lower())} for i in labels]
    common = frozenset.intersection(*map(frozenset, said)) if said else frozenset()
    return {i: label._replace(words=label.words - common) for i, label in labels.items()}


def _other_way(point: Point, here: Iterable[int], said: Said) -> bool:
    """Return whether where a point's thing is named the other way is said, and not its own: "up" of down and locked."""
    told = _clause_words(here, said)
    own = _ways(point)
    return bool(own) and own.isdisjoint(told) and bool({w for way in own for w in OTHER.get(way, ())} & told & _UP_DOWN)


def _lacks_way(point: Point, here: Iterable[int], said: Said) -> bool:
    """Return whether the way of a point is not said where its thing is spoken of."""
    own = _ways(point)
    return bool(point.labels) and bool(own) and own.isdisjoint(_clause_words(here, said))


def _ways(point: Point) -> set[str]:
    return {w for e in point.elements if not e.given for w in e.words if w in _UP_DOWN}


def _clause_words(here: Iterable[int], said: Said) -> set[str]:
    clauses = {said.clauses[i] for i in here}
    return {word for word, clause in zip(said.words, said.clauses, strict=True) if clause in clauses}


_UP_DOWN = frozenset((plain("up"), plain("down")))


def _only_shared(point: int, alike: Sequence[int], here: Iterable[int], need: Need, said: Said) -> bool:
    """Return whether a case that is not asked for is named only by words that it shares with others: "locked"."""
    if not need.points[point].optional:
        return False
    words = {i: {plain(w) for w in re.findall(r"[a-z]+", need.points[i].text.lower())} for i in alike}
    own = words[point] - {w for i in alike if i != point for w in words[i]}
    return own.isdisjoint(said.words[i] for i in here)


_AGAIN = frozenset(("same", "ditto", "likewise"))
_NO_MORE = frozenset((".", ",", ";", ""))


def _repeated(said: Said, need: Need, alike: Sequence[int]) -> Said:
    """Return an answer with what "same" stands for, where it follows a name: "ALTERNATE: amber. EMERGENCY: same."."""
    told = frozenset(c for i in alike for e in need.points[i].elements if not e.given for c in e.concepts)
    concepts = list(said.concepts)
    for i, word in enumerate(said.reading.words):
        after = said.reading.words[i + 1] if i + 1 < len(said.words) else ""
        if word in _AGAIN and after in _NO_MORE:
            concepts[i] = next((concepts[k] & told for k in range(i - 1, -1, -1) if concepts[k] & told), concepts[i])
    return said._replace(concepts=tuple(concepts))


def _listed_wrong(need: Need, alike: Sequence[int], held: Sequence[Held], said: Said) -> list[str]:
    """Return that a bare list is in another order, or that one thing is said of all: "all white"."""
    points = [need.points[i] for i in alike]
    each = frozenset(c for p in points for e in p.elements if not e.given for c in e.concepts)
    spots = [i for i in said.where(each) if i not in said.numbered]
    if len(spots) == len(points):
        right = all(words_said(p, said, [i])[0] >= ENOUGH for p, i in zip(points, spots, strict=True))
        return [] if right else ["another order than asked"]
    if len(points) == len(need.points) and _other_list(points, said):
        return ["another in the list"]
    same = len(spots) == 1 and any(not held[i].share for i in alike) and _for_all(" ".join(said.reading.words))
    return ["one thing for all of them"] if same else []


def _for_all(text: str) -> bool:
    return ALIKE.search(text) is not None or _IN_ALL.search(text) is not None


_IN_ALL = re.compile(r"\b(?:in|for|with|on) all (?:three|two|four|modes|cases)\b|\ball (?:three|four)$")


def _other_list(points: Sequence[Point], said: Said) -> bool:
    """Return whether a bare list, of as many as are asked for, has something else in a place: "white, amber, blank"."""
    items = said.pieces(_LISTING)
    if len(items) != len(points) or said.claims or any(len(item) > _ITEM for item in items):
        return False
    held = [words_said(p, said, item)[0] >= ENOUGH for p, item in zip(points, items, strict=True)]
    return any(held) and not all(held)


_LISTING = frozenset((",", ";", ".", "/", "and", "then"))
_ITEM = 2


def crossed(need: Need, said: Said, numbers: Numbers) -> list[str]:
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
        own = words_said(told[here[0]], said, clause)[0]
        others = [p for i, p in told.items() if i != here[0]]
        if own < LITTLE and any(words_said(p, said, clause)[0] >= 0.9 for p in others):
            found.append(f"another's: {told[here[0]].text}")
    return found


def parts_exchanged(held: Sequence[Held], said: Said) -> list[str]:
    """Return the answers to two parts that are each given with the other part's own word: shown to, stowed behind."""
    named = []
    for h in (h for h in held if h.share and not h.point.figures):
        at = sorted({i for e in h.point.labels if e.weight > _ASKED for i in element_said(e, said)[1]})
        heaviest = max((e.weight for e in h.point.elements if not e.given), default=0.0)
        heavy = [i for e in h.point.elements if e.weight == heaviest for i in element_said(e, said)[1]]
        if at and heavy:
            named.append((at[0], heavy, h.point))
    named.sort(key=lambda each: each[0])
    found = []
    for (a, mine, one), (b, theirs, _) in combinations(named, 2):
        if a < b < min(mine) and a < min(theirs) and max(theirs) < b:
            found.append(f"another's: {one.text}")
    return [*found, *_of_one_not_asked(held, said)]


def _of_one_not_asked(held: Sequence[Held], said: Said) -> list[str]:
    """Return what belongs to a case that is not asked for, said of one that is: amber of the leg that is down."""
    spare = [h.point.elements for h in held if h.point.optional and len(h.point.elements) > 1]
    lacking = [h.point for h in held if not (h.share or h.point.optional or h.point.figures)]
    found = []
    for first, *rest in (each for each in spare if lacking and not each[-1].given):
        here = {said.clauses[i] for i in element_said(first, said)[1]}
        here -= {said.clauses[i] for e in rest for i in element_said(e, said)[1]}
        for point in lacking:
            named = [e for e in point.elements if e.given and e.weight > _NAME]
            own = {said.clauses[i] for e in named for i in element_said(e, said)[1]}
            found += [f"another's: {point.text}"] if here & own else []
    return found


_ASKED = 0.35
"""Weight of the words of a part of a question beyond "what" and "where"."""


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
    plainly = {i: p for i, p in enumerate(need.points) if not (p.figures or p.verdict or p.state) and _named_by(p)}
    points = {i: p for i, p in plainly.items() if not (p.labels and p.optional)}
    if len(points) >= _LIST and all(_is_labelled(p) for p in points.values()):
        return list(points)
    if len(points) == _PAIR and _names_both(list(points.values()), need):
        return list(points)
    sided = {i: p for i, p in points.items() if not _WAY_ASKED.isdisjoint(need.question.words) and _is_sided(p)}
    if len({p.labels for p in sided.values()}) > 1:
        return list(sided)
    return [i for i, p in points.items() if any(_like(p, q, know) for j, q in points.items() if j != i)]


def _names_both(points: Sequence[Point], need: Need) -> bool:
    """Return whether each of two points begins with a name of its own that the question has: VLO and VLE."""
    if not all(p.elements for p in points):
        return False
    firsts = [p.elements[0] for p in points]
    named = all(e.given and e.weight > _HEAVY and need.asked.issuperset(e.words) for e in firsts)
    return named and all(map(_is_labelled, points)) and firsts[0].words != firsts[1].words


_HEAVY = 2.0
_WAY_ASKED = frozenset(("way", "direction"))


def _is_sided(point: Point) -> bool:
    """Return whether a point of a part of a question says a side or way: "rearward" of the nose leg."""
    return bool(point.labels) and any(not e.given and DIRECTIONS.issuperset(e.words) for e in point.elements)


_LIST = 3
"""Points of one form from which they are a list of names and what is said of each."""


def _is_labelled(point: Point) -> bool:
    """Return whether a point is a name of the question and what is said of it."""
    own = [e for e in point.elements if not e.given]
    return not point.labels and any(e.given and e.weight > _NAME for e in point.elements) and bool(own)


_NAME = 0.7
_TOLD_APART = {"colour", "autobrake-setting", "hydraulic-system"}


def _like(one: Point, other: Point, know: Knowledge) -> bool:
    families = know.lexicon.families
    mine, others = (
        {families.get(c) for e in p.elements if not e.given for c in e.concepts} & _TOLD_APART for p in (one, other)
    )
    words, theirs = ({w for e in p.elements if not e.given for w in e.words} for p in (one, other))
    labelled = any(e.given for e in one.elements) and any(e.given for e in other.elements)
    if labelled and _named_alike(one, other):
        return True
    labelled = labelled or bool(one.labels and other.labels and _but_one(one.text) & _but_one(other.text))
    return bool(mine & others) or (labelled and bool(words & theirs))


def _but_one(text: str) -> set[tuple[str, ...]]:
    """Return the words of a point without the last, and without the first: "up and locked", "down and locked"."""
    words = tuple(text.split())
    return {words[:-1], words[1:]} if len(words) > _PAIR else {words[:-1]}


def _named_alike(one: Point, other: Point) -> bool:
    """Return whether two points say one thing each of names that have a word in common: under- and over-inflation."""
    names = [{w for e in p.elements if e.given for w in e.words} for p in (one, other)]
    return len(one.elements) == len(other.elements) == _PAIR and bool(names[0] & names[1]) and names[0] != names[1]


_PAIR = 2


def _named_by(point: Point) -> bool:
    if point.labels and all(e.words in SIDES for e in point.labels):
        return False  # a case by its side of a number alone
    return bool(point.labels) or (any(e.given for e in point.elements) and any(not e.given for e in point.elements))


def _label_alone(point: Point) -> Point:
    return point._replace(elements=tuple(e for e in point.elements if e.given))


def _same_payload(one: Point, other: Point) -> bool:
    return {e.words for e in one.elements if not e.given} == {e.words for e in other.elements if not e.given}
