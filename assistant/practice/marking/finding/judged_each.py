"""What an answer says of one of several things that are judged: "no on the short one, the long one is fine"."""

from __future__ import annotations

import re

from assistant.practice.marking.finding.verdict_said import verdict_said
from assistant.practice.marking.points import Need, State
from assistant.practice.marking.reading import wording
from assistant.practice.marking.reading.said import Said

_OUTSIDE = re.compile(
    r"\b(?:beyond|exceed\w*|past|out|outside|above|over|below|under|illegal|too \w+|"
    r"(?:can|may|must|do|does|is|are|will) not|"
    r"cannot|never|unsafe)\b"
)
_INSIDE = re.compile(
    r"\b(?:counts?|in|inside|good|still brakes?|works?|you can|it can|allowed|may|can)\b|"
    r"\b(?:can|may|does|do|is|are|would|will)$"
)


def judged_said(state: State, need: Need, said: Said) -> bool | None:
    """Return whether an answer says that one of the things judged is as it should be; None where it says nothing."""
    states = [p.state for p in need.points if p.state and p.state.judged]
    of_all = _of_all(said)
    if of_all is not None:
        return of_all
    places = sorted((i, n) for n, each in enumerate(states) for i in said.where(each.subject))
    own = states.index(state)
    only = [n for i, n in places if _ONLY.intersection(said.reading.words[max(0, i - _NEAR) : i])]
    if only and own not in only:
        return _verdict(range(len(said.words)), said) is False
    told = [_verdict(here, said) for here in _stretches(places, own, said)]
    return next((each for each in told if each is not None), None)


_ONLY = frozenset(("only", "just"))
_NEAR = 4


def _of_all(said: Said) -> bool | None:
    """Return what is said of all the things at once: "both may", "neither of them"."""
    words = said.reading.words
    if "neither" in words or ("none" in words and len(words) <= _NEAR):
        return False
    all_ = next((i for i, word in enumerate(words) if word in ("both", "either")), None)
    return None if all_ is None else _verdict(range(all_, len(words)), said)


def _stretches(places: list[tuple[int, int]], own: int, said: Said) -> list[range]:
    """Return the words that speak of one thing: from the clause that names it to that which names another."""
    found = []
    for k, (place, name) in enumerate(places):
        if name != own:
            continue
        before = next((i for i, n in reversed(places[:k]) if n != own), -1)
        behind = next((i for i, n in places[k + 1 :] if n != own), len(said.words))
        found.append(range(_opening(place, before, said), _ending(behind, place, said)))
    return found


def _opening(place: int, before: int, said: Said) -> int:
    """Return where what is said of a thing begins: behind the last stop or joint before it."""
    words = said.reading.words
    return next((i + 1 for i in range(place - 1, before, -1) if words[i] in _JOINTS), before + 1)


def _ending(behind: int, place: int, said: Said) -> int:
    """Return where it ends: at the last stop or joint before the next thing."""
    words = said.reading.words
    if behind == len(words):
        return behind
    return next((i for i in range(behind - 1, place, -1) if words[i] in _JOINTS), behind)


_JOINTS = frozenset((*wording.STOPS, ",", "and", "but", "while", "whereas"))


def _verdict(here: range, said: Said) -> bool | None:
    words = tuple(said.reading.words[i] for i in here)
    given = verdict_said(said._replace(reading=said.reading._replace(words=words)))
    if given:
        return given == "yes"
    text = " ".join(words)
    return False if _OUTSIDE.search(text) else True if _INSIDE.search(text) else None
