"""Which part of an answer speaks of which point: "white for NORMAL and amber for the other two".

Points that are alike but for a name (a mode, a leg, a case) are answered in one sentence. Each name takes the stretch
that begins with it, or the one that ends with it, as the answer puts its names first or last.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterable, Mapping

from assistant.frozen import NamedTuple
from assistant.practice.marking.finding.others_named import others_named
from assistant.practice.marking.points import Need, Point
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import JOINS, word_set
from assistant.resolving.knowing import Knowledge

_COMMON = {"mod", "brak", "gear", "leg", "wheel", "in", "to", "the", "of", "at", "lever", "light", "pressur"}
_PASSED = JOINS | {",", *word_set("in for on with when if it is are at one s a an of mode")}
_SMALL = word_set("get gets in of the to")
_TELLING = 0.7


class Label(NamedTuple):
    """What tells a point from those like it."""

    concepts: frozenset[str]
    words: frozenset[str]


class _Spot(NamedTuple):
    start: int
    end: int
    points: frozenset[int]


def labels_of(need: Need, indices: Iterable[int], know: Knowledge) -> dict[int, Label]:
    """Return what only one of some points is called."""
    chosen = list(indices)
    found = {}
    for i in chosen:
        units = {f.unit for f in need.points[i].figures}
        others = [
            q for j in chosen if j != i and (not (q := need.points[j]).figures or units & {f.unit for f in q.figures})
        ]
        concepts = _concepts(need.points[i]) - {c for q in others for c in _known(q, know)}
        words = _words(need.points[i]) - {w for q in others for w in _words(q) | _called(q)}
        told = _tellers(need.points[i]) - {w for q in others for w in _tellers(q)}
        called = _called(need.points[i]) - {w for q in others for w in _all_words(q)}
        cased = _cased(told) if _opposed(told, others) else set()
        found[i] = Label(frozenset(concepts), frozenset(words | called | cased))
    return found


def _cased(told: set[str]) -> set[str]:
    return told | {plain(alias) for w in told for alias in _CASES.get(w, ())}


_CALLED = (
    ("exten", ("down", "lower")),
    ("retract", ("up", "rais")),
    ("lower", ("down",)),
    ("rais", ("up",)),
    ("left", ("leav", "keep", "stay")),
    ("zero", ("non", "nothing", "nil", "go", "nought")),
    ("full", ("all", "whol", "entir", "everything", "start", "begin")),
)
"""What people say for a way to move, where a number stands beside it: "9 s down, 11 s up"; for all of it and for none,
and where it starts to fade.
"""


def _called(point: Point) -> set[str]:
    return {name for w in _all_words(point) for head, names in _CALLED if w.startswith(head) for name in names}


def _all_words(point: Point) -> set[str]:
    return {w for e in (*point.labels, *point.elements) for w in e.words}


_CASES = {"without": {"off"}, "with": {"on", "running"}}
"""What people say for a thing that runs or does not: "fans on", "fans off"."""
_PAIRS = ({"with", "without"}, {"before", "after"}, {"above", "below"}, {"inside", "outside"})


def _tellers(point: Point) -> set[str]:
    return {w for w in point.text.lower().replace("(", " ").split() if any(w in pair for pair in _PAIRS)}


def _opposed(told: set[str], others: list[Point]) -> bool:
    """Return whether small words tell points apart: "with fans" and "without fans"."""
    theirs = {w for q in others for w in _tellers(q)}
    return any(told & pair and theirs & (pair - told) for pair in _PAIRS)


def _concepts(point: Point) -> set[str]:
    return {c for e in (*point.labels, *point.elements) if e.weight > _TELLING for c in e.concepts}


def _known(point: Point, know: Knowledge) -> set[str]:
    own = _concepts(point)
    return own | {c for o in own for c in know.lexicon.implied.get(o, ())}


def _words(point: Point) -> set[str]:
    asked = {w for e in point.labels if e.weight > _TELLING for w in e.words}
    return asked - _PASSED - _SMALL | {w for e in point.elements if e.weight > _TELLING for w in e.words} - _COMMON


def stretches(labels: Mapping[int, Label], payload: Iterable[int], said: Said) -> dict[int, set[int]]:
    """Return the places of an answer that speak of each point; nothing where no name is said at all.

    A name speaks for its clause; where a clause holds several, each takes the stretch from it or up to it.
    """
    spots = _spots(labels, said)
    if not spots:
        return {}
    values = sorted(payload)
    found: dict[int, set[int]] = {}
    clauses = sentences(said)
    if not any(_both_in(c, spots, values) for c in clauses):
        clauses = [range(len(said.words))]
    for clause in clauses:
        inside = [s for s in spots if s.start in clause]
        here = [v for v in values if v in clause]
        for spot, places in _crossed(inside, here, clause, said) or _shared_out(
            _merged(inside, here, said), clause, here, len(labels), said
        ):
            for point in spot.points:
                found.setdefault(point, set()).update(places)
    return found


def _crossed(
    spots: list[_Spot], values: list[int], clause: range, said: Said
) -> list[tuple[_Spot, set[int]]]:
    """Return the two stretches of names that meet in the middle, "one ten full and zero at thirty", or end there:
    "full up to thirty and one ten for zero".
    """
    if len(spots) == 2 and spots[0].points != spots[1].points and len(values) > 1:
        first, second = spots
        told = said.reading.words[second.end : clause.stop]
        if first.end <= values[0] and values[-1] < second.start and _UNTOLD.isdisjoint(told):
            last = min(_range_of(values[-1], values, said))
            return [(first, set(range(clause.start, last))), (second, set(range(last, clause.stop)))]
    if (
        len(spots) != 2
        or spots[0].points == spots[1].points
        or len(values) < 2
        or not values[0] < spots[0].start
        or not spots[1].end <= values[-1]
    ):
        return []
    if any(spots[0].start < v < spots[1].start for v in values):
        return []
    first, second = spots
    return [(first, set(range(clause.start, first.end))), (second, set(range(second.start, clause.stop)))]


_UNTOLD = word_set("bit different higher less longer lower more other shorter smaller than")
"""Words behind a name that tell something of it in place of a number: "and the nose a bit more"."""


def sentences(said: Said) -> list[range]:
    """Return the clauses of an answer as stretches of places; a colon keeps a name with what is said of it."""
    words = (*said.reading.words, "")
    ends = [
        i for i, w in enumerate(words[:-1])
        if w in (",", ";", ".", "but", "whereas") or (w == "while" and not _is_when(words[i + 1]))
    ]  # fmt: skip
    edges = [0, *ends, len(said.words)]
    return [range(a, b) for a, b in itertools.pairwise(edges) if b > a]


def _is_when(word: str) -> bool:
    """Return whether "while" before a word tells when something is so, and sets nothing against it: "while moving"."""
    return word.endswith("ing") or word in ("it", "they", "in", "on")


def _both_in(clause: range, spots: list[_Spot], values: list[int]) -> bool:
    return any(s.start in clause for s in spots) and any(v in clause for v in values)


def _apart(value: int, spot: _Spot, said: Said) -> int:
    """Return how many words stand between a number, all of it, and a name."""
    end = value + 1
    while end in said.numbered and end < spot.start:
        end += 1
    leads = value > spot.start and set(said.reading.words[spot.end : value]) <= _LEADING and value > spot.end
    return -1 if leads else min(abs(spot.start - end), abs(value - spot.end))


def _joins_on(value: int, spot: _Spot, said: Said) -> bool:
    """Return whether an "and" stands between a number and a name: "at 185 and the plugs go at 350"."""
    return "and" in said.reading.words[min(value, spot.end) : max(value, spot.start)]


_LEADING = frozenset(("above", "at", "below", "by", "from", "over", "under"))
"""Words by which a name leads to the number behind it: "zero at 110"."""


def _shared_out(
    spots: list[_Spot], clause: range, values: list[int], known: int, said: Said
) -> Iterable[tuple[_Spot, set[int]]]:
    if not spots:
        return
    if len(spots) == 1 and len(values) > 1 and known > 1 and len(spots[0].points) == 1:
        # One name among several values: it goes with the nearest, and what the others go with is not said.
        near = min(
            values, key=lambda v: (
                _apart(v, spots[0], said), said.clauses[v] != said.clauses[spots[0].start],
                _joins_on(v, spots[0], said), v,
            )
        )
        yield spots[0], {*_range_of(near, values, said), *range(spots[0].start, spots[0].end)}
        return
    leads = spots[0].start < min(values, default=clause.stop)
    for n, spot in enumerate(spots):
        if leads:
            end = spots[n + 1].start if n + 1 < len(spots) else clause.stop
            yield spot, set(range(spot.start if n else clause.start, end))
        else:
            begin = spots[n - 1].end if n else clause.start
            yield spot, set(range(begin, spot.end if n + 1 < len(spots) else clause.stop))


def _range_of(value: int, values: list[int], said: Said) -> set[int]:
    """Return a number with the other end of its range: "60 to 110"."""
    found = {value}
    for one, two in itertools.pairwise(values):
        between = [w for i, w in enumerate(said.reading.words[one:two], one) if i not in said.numbered]
        if value in (one, two) and between in (["to"], ["-"], ["–"], ["through"]):
            found |= {one, two}
    return found


def _spots(labels: Mapping[int, Label], said: Said) -> list[_Spot]:
    found: list[_Spot] = []
    for i, here in enumerate(said.concepts):
        points = frozenset(
            p for p, label in labels.items() if not here.isdisjoint(label.concepts) or said.words[i] in label.words
        )
        taken_back = said.words[i] == "with" and plain("off") in said.words[i + 1 : i + 4]
        bound = taken_back or (said.words[i] == "up" and said.words[i + 1 : i + 2] == ("to",))
        bound = bound or (said.words[i] == "on" and i - 1 in said.numbered)  # "from 100 on"
        bound = bound or said.words[i] in _NO_NAMES
        bound = bound or _BEGINS.match(" ".join(said.reading.words[i : i + 2])) is not None  # "from zero to thirty"
        bound = bound or (said.words[i] in _BOUNDS and i + 1 in said.numbered)  # "above 100"
        if points and not bound and (i not in said.numbered or said.words[i] == "zero"):
            if found and found[-1].end == i and found[-1].points & points:
                found[-1] = found[-1]._replace(end=i + 1)
            else:
                found.append(_Spot(i, i + 1, points))
    named = frozenset(p for spot in found for p in spot.points)
    rest = frozenset(labels) - named
    if rest:
        taken = {i for spot in found for i in range(spot.start, spot.end)}
        found += [_Spot(i, i + 1, rest) for i in others_named(taken, len(rest), said)]
    return sorted([*found, *_counted_off(labels, said)])


def _counted_off(labels: Mapping[int, Label], said: Said) -> list[_Spot]:
    """Return the names that are counted off as they were asked for: "the first two", "the last one"."""
    points = sorted(labels)
    words = said.reading.words
    found = []
    for i in range(len(words) - 1) if len(points) > _PAIR else ():
        many = {"two": 2, "one": 1}.get(words[i + 1], 0)
        if many and words[i] in ("first", "last"):
            named = points[:many] if words[i] == "first" else points[-many:]
            found.append(_Spot(i, i + 2, frozenset(named)))
    return found


_PAIR = 2


_BOUNDS = frozenset(map(plain, ("above", "below")))
_NO_NAMES = frozenset((plain("use"), plain("flat")))
"""Words that name no case: "in normal use" pulls nothing, "flat at 8 degrees" is not empty."""
_BEGINS = re.compile(r"(?:zero|nothing|nought) to$")


def _merged(spots: list[_Spot], values: list[int], said: Said) -> list[_Spot]:
    """Join names that stand together, "ALTERNATE and EMERGENCY", and words of one name with no value between."""
    found: list[_Spot] = []
    for spot in spots:
        between = said.reading.words[found[-1].end : spot.start] if found else ("x",)
        apart = bool(found) and any(found[-1].end <= v < spot.start for v in values)
        same = bool(found) and found[-1].points == spot.points and not apart
        if same or (found and all(word in _PASSED for word in between)):
            found[-1] = _Spot(found[-1].start, spot.end, found[-1].points | spot.points)
        else:
            found.append(spot)
    return found
