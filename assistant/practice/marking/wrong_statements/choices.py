"""A choice that an answer leaves with an "or": something else beside what is asked for, or what is true besides."""

from __future__ import annotations

from collections.abc import Collection

from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.contraries import OTHER
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import AT_LEAST, AT_MOST
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import Mention


def left_open(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return what an answer offers with an "or" that nothing asked for names: "or on the overhead panel"."""
    known = {c for p in need.points for e in (*p.elements, *p.labels) for c in e.concepts}
    known |= need.question.concepts | need.said
    told = need.asked | need.words
    # "System 1 or 2" is a name of its own: it says neither of them.
    found = [
        m.text for m in said.content
        if "or" in m.text.split()[1:-1] and m.concepts.isdisjoint(known) and said.numbered.isdisjoint(m.taken)
    ]  # fmt: skip
    found += _between_opposites(need, said)
    listed = len(need.points) >= _SEVERAL
    for i, word in enumerate(said.reading.words):
        if word != "or" or i < 1 or _is_bound(i, said) or (listed and _opens_case(i, said)):
            continue
        after = [m for m in said.reading.mentions if i < m.start <= i + 4 and not (m.weak or m.passing)]
        first = after[0] if after and after[0].text not in ("time", "times") else None
        first = None if first and _holds_known(first, known, said) else first
        words = [plain(w) for w in first.text.split()] if first else []
        if first and first.concepts.isdisjoint(known) and not all(_is_told(w, told) for w in words):
            true = _stated_together(i, first.concepts, need, said, know) or _both_besides(i, first, need, said, know)
            found += [] if true else [f"or {first.text}"]
    return found


def _opens_case(place: int, said: Said) -> bool:
    """Return whether another item of a list follows, told by how it comes about: "or when something is lost"."""
    return said.reading.words[place + 1 : place + 2] in (("when",), ("if",), ("whenever",), ("once",))


_SEVERAL = 3


def _both_besides(place: int, after: Mention, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether both that an "or" joins are of one kind that nothing asked for is of: they are told of a case."""
    families = know.lexicon.families
    kinds = {families.get(c) for c in after.concepts} - {None}
    before = next((m for m in reversed(said.content) if m.end == place), None)
    alike = before is not None and bool(kinds & {families.get(c) for c in before.concepts})
    return alike and not kinds & {families.get(c) for p in need.points for e in p.elements for c in e.concepts}


def _holds_known(mention: Mention, known: Collection[str], said: Said) -> bool:
    """Return whether a verb in two halves has what is asked for between them: "or you've put landing flap out"."""
    inner = [m for m in said.content if mention.start < m.start and m.end < mention.end]
    return any(not m.concepts.isdisjoint(known) for m in inner)


def _between_opposites(need: Need, said: Said) -> list[str]:
    """Return choices between what is asked for and its contrary: "inboard or outboard"; none where both are told."""
    own = {w for p in need.points for e in p.elements if not e.given for w in e.words}
    words = said.reading.words
    pairs = (
        (said.words[i - 1], said.words[i + 1]) for i, w in enumerate(said.words[:-1])
        if w == "or" and i and not (said.words[i - 1] in _MOVED and _MOVING.intersection(words[max(0, i - _NEAR) : i]))
    )  # fmt: skip
    return [
        f"{one} or {two}" for one, two in pairs if two in OTHER.get(one, ()) and len(own.intersection((one, two))) == 1
    ]


_MOVED = frozenset(map(plain, ("up", "down", "in", "out")))
_MOVING = frozenset(("move", "moves", "moving", "go", "goes", "going", "travel", "travelling", "put", "putting"))
"""Verbs with which "up or down" leaves nothing open: the one for moving the gear up or down."""


def _stated_together(place: int, concepts: frozenset[str], need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether the paragraph that answers tells of both things that an "or" joins: it is true besides."""
    before = [m for m in said.content if place - _NEAR <= m.start < place]
    left = frozenset(c for m in before for c in m.concepts if c[0] not in "~@") - need.question.concepts
    families = {know.lexicon.families.get(c) for c in concepts} - {None}
    if families & {know.lexicon.families.get(c) for c in left}:
        return False
    cited = {(s.document, s.paragraph) for s in need.sources}
    facts = map(know.base.records.__getitem__, know.base.ids("facts") if left else ())
    here = (know.phrase(f.says).concepts for f in facts if {(s.document, s.paragraph) for s in f.sources} & cited)
    return any(told & left and told & concepts for told in here)


_NEAR = 5


def _is_told(word: str, told: Collection[str]) -> bool:
    """Return whether a word, or a form of it, is among some: "losing" for the loss."""
    return word in told or (
        len(word) > 2 and any(each[:3] == word[:3] and abs(len(each) - len(word)) < 2 for each in told)
    )


def _is_bound(place: int, said: Said) -> bool:
    """Return whether an "or" belongs to a number: "or less"."""
    return AT_MOST.match(_from(place, said)) is not None or AT_LEAST.match(_from(place, said)) is not None


def _from(place: int, said: Said) -> str:
    return " ".join(said.reading.words[place : place + 3])
