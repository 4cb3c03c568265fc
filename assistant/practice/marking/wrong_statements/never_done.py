"""What the books never do, said to be done, and all of several things said for any one: "when all grooves are worn"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said, plain

_NEVER = re.compile(r"\bnever ((?:from|at|in|on|to|by|with|behind|ahead) (?:the |a )?)(\w+)", re.IGNORECASE)
_ANY = re.compile(r"\bany (?:one )?(?:of the )?(\w+)", re.IGNORECASE)
_DENYING = frozenset(("never", "not", "no", "without", "nor", "avoid", "clear", "neither"))
_ALL = frozenset(("all", "every", "both"))
_BEHIND = 4
"""Words before it in which something is denied."""
_ARTICLES = frozenset(("the", "of", "a", "their", "its"))


def done_though_never(need: Need, said: Said) -> list[str]:
    """Return what the full answer says is never done, and an answer does: "come in from the side"."""
    words = [w.lower() for w in said.reading.words]
    found = []
    for way, thing in _NEVER.findall(need.expected):
        lead = way.split()[0].lower()
        for i, word in enumerate(words):
            before = _leading(words, i)
            if plain(word) == plain(thing.lower()) and before[-1:] == [lead] and _DENYING.isdisjoint(before):
                found.append(f"never {way}{thing}")
    return found


def all_for_any(need: Need, said: Said) -> list[str]:
    """Return the things of which any one is enough, and an answer wants all: "once all the grooves are worn"."""
    words = [w.lower() for w in said.reading.words]
    things = {plain(thing.lower()) for thing in _ANY.findall(need.expected)}
    asked = {plain(w) for p in need.points for e in p.elements for w in e.words}
    found = []
    for i, word in enumerate(words):
        if plain(word) in things & asked and not _ALL.isdisjoint(_leading(words, i)[-1:]):
            found.append(f"all for any: {word}")
    return found


def _leading(words: Sequence[str], place: int) -> list[str]:
    """Return the few words before a place that tell of it, without its articles."""
    return [word for word in words[max(0, place - _BEHIND) : place] if word not in _ARTICLES]
