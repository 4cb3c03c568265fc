"""What cannot be meant together with what is asked: another colour, mode or setting, the other side, the other way."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.practice.marking import wording
from assistant.practice.marking.points import Need, Point
from assistant.practice.marking.said import Said
from assistant.resolving.knowing import Knowledge

_SELECTED = ("colour", "braking-mode", "autobrake-setting", "hydraulic-system")
_OTHER: dict[str, set[str]] = {}
for _one, _two in wording.OPPOSITES:
    _OTHER.setdefault(_one, set()).add(_two)
    _OTHER.setdefault(_two, set()).add(_one)


def rivals(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the members of a family that an answer names in place of, or beside, the one asked for."""
    families = know.lexicon.families
    asked = frozenset(c for m in need.question.mentions for c in m.concepts)
    wanted = {c for p in need.points for e in p.elements for c in e.concepts}
    found = []
    for family in _SELECTED:
        members = {c for c in wanted if families.get(c) == family and not _only_given(c, need)}
        if not members:
            continue
        named = [(i, c) for i, here in enumerate(said.concepts) for c in here if families.get(c) == family]
        for place, concept in named:
            if concept in wanted or concept in asked or _is_put_off(place, said):
                continue
            if concept in need.said and any(c in members for _, c in named):
                continue
            if any(c in members for c in said.concepts[place]):
                continue
            found.append(" ".join(said.reading.words[place : place + 1]))
    return found


def _only_given(concept: str, need: Need) -> bool:
    return all(e.given for p in need.points for e in p.elements if concept in e.concepts)


def _is_put_off(place: int, said: Said) -> bool:
    """Return whether a name is said not to hold: "NORMAL is gone", "not red", "was white"."""
    before = set(said.reading.words[max(0, place - 3) : place])
    after = said.reading.words[place + 1 : place + 4]
    if before & {"not", "no", "without", "lose", "lost", "loses", "losing", "than", "was", "from", "never"}:
        return True
    return bool(wording.LOST.intersection(after))


def opposed(points: Sequence[Point], places: Sequence[tuple[int, ...]], need: Need, said: Said) -> list[str]:
    """Return the sides and ways that are the other of those asked: "ahead of the pedestal", "right of the display"."""
    found = []
    words = set(said.words)
    asked = set(need_words(need))
    for point, here in zip(points, places, strict=True):
        if point.figures and not here:
            continue
        for word in (w for e in point.elements if not e.given for w in e.words):
            for other in _OTHER.get(word, ()):
                if other in words and word not in words and other not in asked and _is_beside(other, point, said):
                    found.append(f"{other}: {point.text}")
    return found


def need_words(need: Need) -> Iterable[str]:
    """Return the plain words of the question and of all the points."""
    from assistant.practice.marking.said import plain

    yield from (plain(w) for w in need.question.words)
    for point in need.points:
        yield from (w for e in point.elements for w in e.words)


def _is_beside(other: str, point: Point, said: Said) -> bool:
    """Return whether a word stands in a clause that speaks of the point, and is not itself denied."""
    telling = frozenset(c for e in point.elements for c in e.concepts)
    for i, word in enumerate(said.words):
        if word != other or {"not", "no", "never", "than"} & set(said.reading.words[max(0, i - 3) : i]):
            continue
        clause = [k for k, c in enumerate(said.clauses) if c == said.clauses[i]]
        if len(point.elements) == 1 or any(not said.concepts[k].isdisjoint(telling) for k in clause):
            return True
    return False


def others_said(held: Sequence[float], need: Need, said: Said) -> list[str]:
    """Return what is said that would be right of another case: the action of another band, another mode."""
    own = {w for p in need.points for e in p.elements for w in e.words}
    mine = {c for p in need.points for e in p.elements for c in e.concepts}
    found = []
    for other in need.others:
        telling = [e for e in other.elements if not (set(e.words) & own or e.concepts & mine)]
        telling = [e for e in telling if e.weight > 0.7] or telling
        spots = [_spot(e.words, e.concepts, said) for e in telling]
        if telling and all(s is not None and not _is_put_off(s, said) for s in spots):
            found.append(other.text)
    return found


def _spot(words: tuple[str, ...], concepts: frozenset[str], said: Said) -> int | None:
    for i, here in enumerate(said.concepts):
        if not here.isdisjoint(concepts) or (said.words[i] == words[0] and all(w in said.words[i : i + len(words) + 1] for w in words)):
            return i
    return None
