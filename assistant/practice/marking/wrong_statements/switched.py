"""Another switch or thing than the one that is meant, and what is refused that is asked for: "STEER OFF", "no chocks".

The point says "ANTI-SKID OFF" and the question names the anti-skid, so that the "OFF" alone is looked for; what stands
before it in the answer must be no other thing.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.practice.marking.finding.found import Held, element_said
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said, plain
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import Mention

_POSITIONS = frozenset(("on", "off"))
_BETWEEN = frozenset(("switch", "to", "the", "is", "goes", "set", "turned", "put", "at", "in", "position"))
_REACH = 5
_TURNING = frozenset(("turn", "turned", "turns", "switch", "switches", "put", "take", "set"))
"""Words with which it is told that a thing is switched, and not which one."""
_REFUSING = frozenset(("no", "without"))
_SAYING_SO = frozenset(("yes", "yep", "yeah", "ok", "okay", "sure"))
_NEAR = 3


def put_otherwise(held: Sequence[Held], need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return what an answer switches, refuses, allows or lets last against what is asked for."""
    return [
        *switched(held, need, said, know),
        *refused(held, need, said),
        *allowed(held, need, said),
        *for_good(need, said),
        *not_as_said(held, said),
    ]


def not_as_said(held: Sequence[Held], said: Said) -> list[str]:
    """Return the things that are off where they must work, or put back where they stay pulled: "anti-skid off"."""
    found = []
    for point in (h.point for h in held if not (h.point.negated or h.point.state or h.point.verdict)):
        works, pulled = _WORKS.search(point.text), _PULLED.search(point.text)
        if not (works or pulled) or not point.elements:
            continue
        thing = max((e for e in point.elements if e.words), key=lambda e: e.weight, default=point.elements[0])
        named = [m for m in said.reading.mentions if m.concepts & thing.concepts and not m.weak]
        behind = [" ".join(said.reading.words[m.end : m.end + _BEHIND]) for m in named]
        found += [f"not so: {point.text}" for text in behind if (_OFF if works else _BACK).match(text)]
        before = {said.reading.words[m.start - 1] for m in named if m.start}
        found += [f"not so: {point.text}"] if works and before & _FAILED else []
    return found


_WORKS = re.compile(r"\b(?:working|works|available|healthy)$")
_PULLED = re.compile(r"\bpulled$")
_BEHIND = 4
_FAILED = frozenset(("failed", "inoperative", "inop", "disabled", "lost"))
_AND_IS = r"(?:(?:is|are|has|have|been|being|switched|selected|turned|put|to|set|goes|go|must|be) )*"
_OFF = re.compile(rf"{_AND_IS}(?:off|lost|gone|failed|inoperative|inop|dead|unavailable|disabled|out)\b")
_BACK = re.compile(rf"{_AND_IS}(?:back|in|stowed|home|released)\b")


def switched(held: Sequence[Held], need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the thing that is switched in place of the one asked for."""
    points = [h.point for h in held if _positions(h.point.text)]
    if not points:
        return []
    known = need.known | need.besides
    known_words = need.words | need.asked | {plain(w) for w in re.findall(r"[\w-]+", need.expected.lower())}
    found = []
    words = said.reading.words
    for place in (i for i, word in enumerate(words) if word in _POSITIONS):
        thing = _before(place, said)
        if thing is None or not any(words[place] in _positions(p.text) for p in points):
            continue
        if known_words.intersection(said.words[i] for i in thing.taken if words[i] not in _POSITIONS | {"switch"}):
            continue
        kinds = {know.lexicon.kinds.get(c, "thing") for c in thing.concepts if c[0] not in "~@="}
        if thing.concepts.isdisjoint(known) and "thing" in kinds:
            found.append(f"{thing.text} for what is switched")
    return found


def _positions(text: str) -> set[str]:
    """Return the positions that a point has in capitals: "ANTI-SKID OFF, then ON"."""
    return {word.lower() for word in re.findall(r"\b(?:ON|OFF)\b(?! (?:\()?[A-Z])", text)}


def _before(place: int, said: Said) -> Mention | None:
    """Return the thing that stands before a position, with nothing between but the switch and how it goes there."""
    own = next((m for m in said.content if place in m.taken and len(m.taken) > 1), None)
    if own and own.text.split()[0].lower() in _TURNING:
        return None
    if own and not {said.reading.words[i] for i in own.taken} <= _BETWEEN | _POSITIONS:
        return own
    start = place - 1
    while start >= max(0, place - _REACH) and said.reading.words[start] in _BETWEEN:
        if any(start in m.taken and len(m.taken) > 1 and m is not own for m in said.content):
            break
        start -= 1
    return next((m for m in said.content if start in m.taken and said.numbered.isdisjoint(m.taken)), None)


def refused(held: Sequence[Held], need: Need, said: Said) -> list[str]:
    """Return the things of a point that an answer does without, though nothing that is true does: "no chocks"."""
    full = need.expected.lower()
    words = said.reading.words
    found = []
    for point in (h.point for h in held if not (h.point.state or h.point.verdict or h.point.negated)):
        for element in (e for e in point.elements if e.given and not (e.denied or e.off)):
            spots = [i for i in element_said(element, said)[1] if i and said.words[i] in element.words]
            without = [i for i in spots if words[i - 1] in _REFUSING and not _is_said_behind(i - 1, said, need)]
            if without and len(without) == len(spots) and not re.search(rf"\b(?:no|without) {words[spots[0]]}", full):
                found.append(f"without: {point.text}")
    return found


def _is_said_behind(place: int, said: Said, need: Need) -> bool:
    """Return whether a "no" is a verdict, or said of the thing before it: "autobrake no bars amber"."""
    return need.polar if not place else any(m.end == place for m in said.content)


def allowed(held: Sequence[Held], need: Need, said: Said) -> list[str]:
    """Return the points that say that a thing cannot be, and an answer says yes to: "with landing flaps yes"."""
    if not need.polar or any(p.verdict for p in need.points):
        return []
    words = said.reading.words
    found = []
    for point in (h.point for h in held if h.point.negated and not h.point.state):
        spots = [i for e in point.elements if not e.off and not e.denied for i in element_said(e, said)[1]]
        near = [i for i in spots if _SAYING_SO.intersection(words[i + 1 : i + 1 + _NEAR])]
        found += [f"yes: {point.text}"] if near and not _denies(spots, words) else []
    return found


def _denies(spots: Sequence[int], words: Sequence[str]) -> bool:
    before = {w for i in spots for w in words[max(0, i - _NEAR) : i + _NEAR]}
    return not before.isdisjoint({"no", "not", "cannot", "never", "without"})


def for_good(need: Need, said: Said) -> list[str]:
    """Return what is said to last for good, though the full answer says until when."""
    found = _FOR_GOOD.search(" ".join(said.reading.words))
    return [found.group()] if found and "until" in need.expected and "not" not in said.words else []


_FOR_GOOD = re.compile(r"\b(?:for good|for ever|forever|permanently|indefinitely|for the rest of the flight)\b")
