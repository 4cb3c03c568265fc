"""Whether words ask what brings something about: "what has to fail before …", "how could I end up …"."""

from __future__ import annotations

from collections.abc import Sequence, Set
from itertools import pairwise

FAILING = frozenset({
    "wrong", "fail", "fails", "failed", "failing", "go", "gone", "break", "breaks", "broken", "broke", "happen",
    "happened", "quit", "die", "pack", "packed", "lost", "lose", "up", "did", "done",
})  # fmt: skip
"""Words by which what leads there is asked for: "what has to | go wrong | before …"."""
_NAMED = frozenset({
    "failure", "failures", "fault", "faults", "cause", "causes", "combination", "combinations", "reason", "reasons",
})  # fmt: skip
_SPEAKERS = frozenset(("i", "we", "you"))
_COMING_TO = frozenset({
    "lose", "end", "finish", "wind", "land", "come", "be", "have", "possibly", "ever", "actually", "really", "got",
})  # fmt: skip
_WHY = frozenset({
    "no", "not", "neither", "both", "would", "could", "might", "may", "have", "has", "is", "are", "am", "does", "do",
    "can", "?", ".",
})  # fmt: skip
_ASKING = frozenset(("what", "whats", "which", "how", "when", "why"))
_MAY = frozenset(("could", "can", "might", "would"))
_OUGHT = frozenset(("should", "must", "shall", "ought"))
_SOME = frozenset(("anything", "something"))
_HAS = frozenset(("has", "have"))
_POSSIBLE = frozenset({
    ("possible", "to", "lose"), ("can", "i", "lose"), ("could", "i", "lose"), ("can", "we", "lose"),
    ("could", "we", "lose"),
})  # fmt: skip
_DOING_IT = (("away",), ("that",), ("this",), ("it",))
_HAPPEN = frozenset(("happen", "happened"))


def may_ask(words: Sequence[str]) -> bool:
    """Return whether any word is there by which what leads to something may be asked for."""
    return not (_ASKING.isdisjoint(words) and _NAMED.isdisjoint(words)) or _asks_anything(words)


def _asks_anything(words: Sequence[str]) -> bool:
    """Return whether it is asked if something may do it: "could anything take …", "is it possible to lose …"."""
    may = any(one in _MAY and other in _SOME for one, other in pairwise(words))
    return may or any(words[i : i + 3] in _POSSIBLE for i in range(len(words) - 2))


def asks_what_leads(words: Sequence[str], named: Set[int]) -> bool:
    """Return whether words ask what brings something about, and not what is so or to be done then.

    named: the places of what is lost or kept: "which | brakes | do I have" asks for them.
    """
    if any(w in _HAPPEN and not {"to", "must", "has"} & set(words[max(0, i - 1) : i]) for i, w in enumerate(words)):
        return False
    asks = [_leads(words, i, named) for i, word in enumerate(words) if word in _ASKING]
    return all(asks) and (bool(asks) or not _NAMED.isdisjoint(words) or _asks_anything(words))


def _leads(words: Sequence[str], at: int, named: Set[int]) -> bool:
    """Return whether the asking word at a place asks what leads to something."""
    word, after = words[at], words[at + 1 : at + 4]
    speaks = next((k for k, w in enumerate(after) if w in _SPEAKERS), None)
    if word == "why":
        owns = not after or (after[0] in _HAS and not named.isdisjoint((at + 2, at + 3)))
        return not after or (not owns and after[0] in _WHY) or at + 1 in named
    if word in ("how", "when"):
        if speaks is not None and not _OUGHT.isdisjoint(after[:speaks]):
            return False  # "how should I use the pedals"
        beyond = words[at + 2 + speaks : at + 3 + speaks] if speaks is not None else ()
        return not _COMING_TO.isdisjoint(beyond)
    if after[1:2] in (("do",), ("does",)) and after[2:3] not in _DOING_IT:
        return False  # "what sequence do the brakes go in"
    if after and after[0] in _NAMED:
        return True  # "under what failures would I have …"
    if not after or at + 1 in named or speaks is not None:
        return False
    if after[0] in ("is", "are", "do", "did"):
        return after[:2] in (("is", "got"), ("is", "needed"), ("did", "it"), ("did", "that"))
    return after[0] not in _HAS or bool(FAILING.union(("to",)).intersection(after[1:2]))
