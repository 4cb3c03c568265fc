"""What one case has, told of another: "FIRM on a contaminated runway", "white in EMERGENCY", "green up".

Each point, or each of the things that "and" joins in one, that names a colour, a mode, a setting or a system beside a
word of its own is held against the clause in which that word is said.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from assistant.practice.marking.finding.elements import DIRECTIONS
from assistant.practice.marking.finding.found import Held, element_said
from assistant.practice.marking.finding.rivals import families_of
from assistant.practice.marking.points import Element, Need
from assistant.practice.marking.reading.contraries import OTHER
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import CONTRASTS, STOPS
from assistant.resolving.knowing import Knowledge

_FAMILIES = frozenset(("colour", "braking-mode", "autobrake-setting", "hydraulic-system"))
_TELLING = 0.7
_CUTS = (STOPS | CONTRASTS) - {"(", ")"}


def told_of_another(held: Sequence[Held], need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return what is said with the word of one case and is another's, and what is denied of a case that has it."""
    if need.ordered or need.cause:
        return []
    parts = list(_parts(held))
    families = families_of(know)
    return [
        word
        for clause in (said.pieces(_CUTS) if len(parts) > 1 else ())
        for part in parts if len(part) > 1
        for word in (*_rivals(part, parts, clause, said, families), *_otherwise(part, parts, clause, said))
    ]  # fmt: skip


def _parts(held: Sequence[Held]) -> Iterator[list[Element]]:
    """Yield the telling words of each point, or of each of the things that "and" joins in one."""
    for h in held:
        if h.point.verdict or h.point.state or h.point.negated:
            continue
        groups: dict[int, list[Element]] = {}
        for element in h.point.elements:
            if element.weight > _TELLING:
                groups.setdefault(element.group if len(held) == 1 else 0, []).append(element)
        yield from groups.values()


def _anchors(part: list[Element], parts: Sequence[list[Element]], clause: Sequence[int], said: Said) -> list[Element]:
    """Return the words of a part that no other part has, and that a clause holds, undenied."""
    others = [e for each in parts if each is not part for e in each]
    return [
        e for e in part
        if not DIRECTIONS.issuperset(e.words)
        and not any(e.words == o.words or e.concepts & o.concepts for o in others)
        and element_said(e, said, clause)[0] >= 1
        and not any(said.reading.words[i - 1 : i] == ("not",) for i in element_said(e, said, clause)[1])
    ]  # fmt: skip


def _rivals(
    part: list[Element], parts: Sequence[list[Element]], clause: Sequence[int], said: Said, families: Mapping[str, str]
) -> Iterator[str]:
    """Yield the colours, modes and the like in a clause that are another part's, where its own word stands."""
    own = {c for e in part for c in e.concepts}
    anchors = _anchors(part, parts, clause, said)
    for element in part:
        mine = {families.get(c) for c in element.concepts} & _FAMILIES
        by = [e for e in anchors if e is not element and not {families.get(c) for c in e.concepts} & mine]
        if not mine or not by or _is_said(element, clause, said):
            continue
        for i in clause:
            other = {c for c in said.concepts[i] | said.inner[i] if families.get(c) in mine} - own
            before = said.reading.words[max(0, i - 3) : i]
            if not other or (said.concepts[i] | said.inner[i]) & own or _PUT_OFF.intersection(before):
                continue
            theirs = [
                e for each in parts if any(other & e.concepts for e in each) for e in each if not other & e.concepts
            ]
            if not any(_is_said(e, clause, said) for e in theirs if e not in by):
                yield f"{said.reading.words[i]} of another"


def _is_said(element: Element, clause: Sequence[int], said: Said) -> bool:
    """Return whether a clause holds a name, be it by its first word alone: "normal"; a system by its number only."""
    if any(word.isdigit() for word in element.words):
        return element_said(element, said, clause)[0] >= 1
    return element_said(element, said, clause)[0] > 0 or any(said.words[i] == element.words[0] for i in clause)


def _otherwise(part: list[Element], parts: Sequence[list[Element]], clause: Sequence[int], said: Said) -> Iterator[str]:
    """Yield what a clause denies that its part has, or has the other way: "green up", "green down and not locked"."""
    anchors = _anchors(part, parts, clause, said)
    words = {said.words[i] for i in clause if not _goes_on(i, said)}
    for element in (e for e in part if e.words not in _NO_WAYS) if anchors else ():
        ways = {w for word in element.words if word in DIRECTIONS for w in OTHER.get(word, ()) if w in DIRECTIONS}
        if element.given and element.weight < _SURELY:
            continue  # where it is asked of, and what the answer need not tell
        if len(element.words) > 1 and element not in anchors and ways & words and words.isdisjoint(element.words):
            yield f"the other way: {' '.join(element.words)}"
        for i in clause:
            denied = said.reading.words[i - 1 : i] == ("not",) and not (element.off or element.denied)
            if denied and said.words[i] in element.words:
                yield f"not {said.reading.words[i]}"


_SURELY = 2.0
_NO_WAYS = ((plain("take"), "off"),)
"""Names with a way in them that is none: take-off."""


def _goes_on(place: int, said: Said) -> bool:
    """Return whether an "on" only says that something goes on: "carry on", "from 100 on"."""
    before = said.reading.words[place - 1] if place else ""
    return said.reading.words[place] == "on" and (before in _CARRYING or place - 1 in said.numbered)


_CARRYING = frozenset(("carry", "carries", "carrying", "go", "goes", "keep", "keeps", "press", "push", "continue"))


def of_another_case(held: Sequence[Held], need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the mode or system that an answer speaks of in place of the one that the question names."""
    families = know.lexicon.families
    for family in ("braking-mode", "hydraulic-system"):
        mentions = [m for m in need.question.mentions if any(families.get(c) == family for c in m.concepts)]
        asked = {c for m in mentions for c in m.concepts}
        full = {c for c in need.said | need.besides if families.get(c) == family}
        points = {
            c for h in held for e in h.point.elements if not e.given for c in e.concepts if families.get(c) == family
        }
        if len(mentions) != 1 or points or said.where(frozenset(asked | full)):
            continue
        told = [
            said.reading.words[i] for i, here in enumerate(said.concepts)
            if (any(families.get(c) == family for c in here) or _in_mode(i, family, said, families))
            and not _PUT_OFF.intersection(said.reading.words[max(0, i - 2) : i])
        ]  # fmt: skip
        if told and any(h.share for h in held):
            return told[:1]
    return []


def _in_mode(place: int, family: str, said: Said, families: Mapping[str, str]) -> bool:
    """Return whether a word is the bare name of a mode behind "in": "in normal"."""
    word = said.reading.words[place]
    return said.reading.words[place - 1 : place] == ("in",) and families.get(f"{word}_mode") == family


_PUT_OFF = frozenset(("not", "no", "only", "unlike", "than", "but", "except", "from", "was"))
