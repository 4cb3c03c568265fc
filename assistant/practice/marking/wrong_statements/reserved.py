"""What the full answer holds back beside a yes: "it holds for now, and is not to be relied on: use chocks".

Who only says yes is right, and who says so too; who says the contrary takes the reserve away, and is in danger.
"""

from __future__ import annotations

import re
from itertools import pairwise

from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import NEGATORS

_HELD_BACK = r"\bnot to be (\w+)"
_CALLED_FOR = r"[:;,] use (\w+)"
_RELYING = frozenset(map(plain, ("rely", "relied", "reliable", "trust", "depend")))
_COUNTED_ON = (("count", "on"), ("counts", "on"), ("counted", "on"), ("bank", "on"))
_PARTED = r"(\s*(?:[,;.]|\bbut\b|\band\b)\s*)"
_DENYING = NEGATORS | {"no", "not", "without", "don", "dont", "cannot", "needless", "unnecessary", "forget", "skip"}


def without_reserve(answer: str, need: Need) -> str:
    """Return an answer without what it rightly holds back, if it says anything else: "yes, but do not rely on it"."""
    if not _is_verdict(need) or not re.search(_HELD_BACK, need.expected):
        return answer
    pieces = re.split(_PARTED, answer, flags=re.IGNORECASE)
    kept = [p for p in pieces if not (_relies(words := _words(p)) and _DENYING.intersection(words))]
    left = "".join(kept).strip(" ,;.")
    return re.sub(r"(?:[,;\s]|\bbut\b|\band\b)+$", "", left) or answer if len(kept) < len(pieces) else answer


def _is_verdict(need: Need) -> bool:
    asked_for = any(p.state and p.state.judged for p in need.points)  # "may you rely on it" asks just that
    return not asked_for and all(p.state or p.verdict or p.optional for p in need.points)


def _words(text: str) -> list[str]:
    return re.findall(r"[a-z]+", text.lower().replace("n't", " not"))


def _relies(words: list[str]) -> bool:
    pairs = set(pairwise(words))
    return not _RELYING.isdisjoint(map(plain, words)) or not pairs.isdisjoint(_COUNTED_ON)


def reserve_denied(need: Need, said: Said) -> list[str]:
    """Return what the full answer holds back or calls for, where the answer says the contrary."""
    if not need.polar or not _is_verdict(need):
        return []
    found = []
    for clause in dict.fromkeys(said.clauses):
        words = [w for w, c in zip(said.reading.words, said.clauses, strict=True) if c == clause]
        denied = bool(_DENYING.intersection(words))
        back = re.search(_HELD_BACK, need.expected)
        if back and plain(back.group(1)) in _RELYING and _relies(words) and not denied:
            found.append(back.group())
        called = {plain(w) for w in re.findall(_CALLED_FOR, need.expected)}
        if denied and called.intersection(map(plain, words)):
            found.append(" ".join(words))
    return found
