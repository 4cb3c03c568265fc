"""What an answer has in the place of what it lacks: another thing done "if still amber", another reason given."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from assistant.practice.marking.finding.found import Held, element_said
from assistant.practice.marking.points import Element, Need, Point
from assistant.practice.marking.reading.confessing import confessed
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import STOPS, word_set

_CASE = re.compile(r"\bif ([^,;:]+)", re.IGNORECASE)
_TELLING = 0.7
_NO_ACTION = word_set(
    "a all also an and any are as at be but do done else get have if in is it its just not now of off on once only or "
    "otherwise s should so still than that the them then there they this to unless until we when with you your"
)  # fmt: skip


def other_action(held: Sequence[Held], need: Need, said: Said) -> list[str]:
    """Return what is done in a case of which the full answer has something else done."""
    if not need.ordered:
        return []
    found = []
    known = need.words
    for point in (h.point for h in held if h.share < _HALF):
        case, rest = _parted(point)
        at = [i for e in case for i in element_said(e, said)[1]]
        if not at or any(element_said(e, said)[0] for e in rest):
            continue
        passed = confessed(said) | said.numbered
        piece = [i for i in _piece(at[0], said) if i not in passed]
        told = [said.reading.words[i] for i in piece if said.words[i] not in known and _is_action(i, said)]
        found += [" ".join(told)] if told else []
    return found


_HALF = 0.5


def _parted(point: Point) -> tuple[list[Element], list[Element]]:
    """Return the telling words of the case of a step, and those of what is done then."""
    case = _CASE.search(point.text)
    words = {plain(w) for w in re.findall(r"[\w-]+", case.group(1).lower())} if case else set()
    telling = [e for e in point.elements if e.weight > _TELLING and not e.given]
    of_case = [e for e in telling if words.issuperset(e.words)]
    return of_case, [e for e in telling if e not in of_case]


def _piece(place: int, said: Said) -> Iterator[int]:
    """Yield the places of the case and of what follows it, to the second stop: "if still amber, land"."""
    words = said.reading.words
    start = max((i + 1 for i in range(place) if words[i] in STOPS or words[i] == "and"), default=0)
    stops = [i for i in range(place, len(words)) if words[i] in STOPS]
    yield from range(start, stops[1] if len(stops) > 1 else len(words))


def _is_action(place: int, said: Said) -> bool:
    word = said.reading.words[place]
    return word.isalpha() and len(word) > 1 and word not in _NO_ACTION


def other_end(held: Sequence[Held], need: Need, said: Said) -> list[str]:
    """Return where a step leads in an answer, in the place of its own end: "land at the destination"."""
    words = said.reading.words
    known = need.words | need.asked
    found = []
    for h in (h for h in held if need.ordered and h.share >= 1 and h.places and not h.point.figures):
        lacking = [e for e in h.point.elements if e.weight >= _HEAVY and not (e.given or element_said(e, said)[0])]
        here = {said.clauses[i] for i in h.places} if lacking else set()
        for i in (i for i, word in enumerate(words) if word in _LEADING and said.clauses[i] in here):
            noun = i + 2 if words[i + 1 : i + 2] in (("the",), ("a",), ("your",), ("our",)) else i + 1
            numbered = noun in said.numbered  # "slow to one ninety" leads to no place
            if noun >= len(words) or numbered or not words[noun].isalpha():
                continue
            if said.words[noun] not in known | _WEAK_ENDS:
                found.append(" ".join(words[i : noun + 1]))
    return found


_HEAVY = 2.9
_LEADING = frozenset(("at", "to", "for", "in"))
_WEAK_ENDS = word_set("all least most once nearest closest next suit land")


def other_reason(held: Sequence[Held], need: Need, said: Said) -> list[str]:
    """Return the reason that an answer gives in place of the one that it lacks: "because the runway is dry"."""
    if not need.question.has("why") or all(h.share >= 1 for h in held):
        return []
    if need.polar is False and not _lacks_reason(held, need):
        return []
    words = said.reading.words
    start = next((i for i, word in enumerate(words) if word in ("because", "since")), len(words))
    if any(place > start for h in held for place in h.places) or not confessed(said).isdisjoint(
        range(start, len(words))
    ):
        return []
    lacking = [e for h in _lacks_reason(held, need) for e in h.point.elements]
    if any(e.weight > _TELLING and element_said(e, said)[0] for e in lacking):
        return []
    told = [m for m in said.content if m.start > start]
    return [m.text for m in told if m.concepts.isdisjoint(need.said)]


def _lacks_reason(held: Sequence[Held], need: Need) -> list[Held]:
    """Return the reason that is asked for beside a figure, where that is said and the reason is not."""
    figures = [h for h in held if h.point.figures and h.point.figures_suffice]
    reasons = [h for h in held if not (h.point.figures or h.point.optional or h.point.verdict or h.point.state)]
    beside = need.question.has("why") and bool(figures) and all(h.share >= 1 for h in figures)
    return reasons if beside and not any(h.share for h in reasons) else []


def other_purpose(held: Sequence[Held], need: Need, said: Said) -> list[str]:
    """Return the purpose given for one part of a question in place of its reason: "to stop the legs falling out"."""
    reasons = [h for h in held if any(e.words == _WHY for e in h.point.labels) and not h.point.figures]
    reasons = reasons or _lacks_reason(held, need)
    words = said.reading.words
    starts = [i for i in range(len(words)) if _is_purpose(i, words)]
    if not reasons or not starts or any(h.share for h in reasons):
        return []
    piece = range(starts[0], next((i for i in range(starts[0] + 1, len(words)) if words[i] in STOPS), len(words)))
    if any(_in_words(e, said, piece) for h in reasons for e in h.point.elements if not e.given):
        return []
    told = [
        i for i in piece if said.words[i] not in _WEAK_ENDS and words[i] not in _NO_ACTION and i not in said.numbered
    ]
    return [" ".join(words[i] for i in piece)] if len(told) > _BARE else []


def _in_words(element: Element, said: Said, piece: range) -> bool:
    """Return whether a thing of a reason is said in a stretch, and not only a state that it may be in."""
    state = all(c[0] == "@" for c in element.concepts)
    spots = element_said(element, said, piece)[1]
    return any(said.words[i] in element.words for i in spots) if state else bool(spots)


def _is_purpose(place: int, words: Sequence[str]) -> bool:
    """Return whether a purpose begins at a place: "to stop", "so that", "in case"."""
    following = words[place + 1 : place + 2]
    if words[place] == "to":
        return bool(following) and following[0] in _PURPOSES
    return words[place] == "so" or (words[place] in ("in", "for") and following in (("case",), ("fear",)))


_WHY = (plain("why"),)
_BARE = 2
"""Words of a purpose that say nothing yet: "to keep it safe"."""
_PURPOSES = word_set(
    "allow avoid cool get give guard help hold keep let lighten limit lower make prevent protect reduce save slow stop "
    "warn"
)
