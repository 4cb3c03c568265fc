"""What is named, and is not so: one of two ways that a question offers, and what somebody has not done yet."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from assistant.understanding.condition import Condition
from assistant.understanding.mentions import Mention

_LEADING = frozenset({
    "the", "a", "by", "to", "do", "i", "we", "it", "on", "use", "must", "should", "just", "go", "for", "straight",
    "need",
})  # fmt: skip
"""Words between "or" and the second of two ways."""
_INTENDING = frozenset({
    "wants", "want", "wanted", "about", "thinking", "intend", "intends", "intending", "planning", "plans", "tempted",
    "keen", "like", "ready", "proposes", "suggests", "considering", "going", "hoping",
})  # fmt: skip
_DOER = frozenset(("i", "we", "you", "he", "she", "they", "anyone", "anybody", "captain", "fo"))
_INTENDED_WITHIN, _DONE_WITHIN = 5, 4
_THAT = frozenset(("that", "this", "it"))
_AT_PRESENT = frozenset(("yet", "beforehand", "meanwhile", "still", "currently"))
_MOMENT = (("at", "this", "moment"), ("at", "the", "moment"), ("right", "now"), ("until", "then"), ("for", "now"))


def is_offered(mention: Mention, words: Sequence[str]) -> bool:
    """Return whether a name is one of two ways that are asked about: "do I extend normally or | free fall | it?"."""
    if words[mention.end : mention.end + 1] == ("or",):
        return True
    at = mention.start
    while at > 0 and words[at - 1] in _LEADING:
        at -= 1
    return at > 0 and words[at - 1] == "or"


def is_not_yet(condition: Condition, words: Sequence[str], failures: Collection[str]) -> bool:
    """Return whether a thing is only about to be put so: "before I pull the lever", "wants to pull it: before that"."""
    if condition.is_result or condition.input in failures or not condition.where:
        return False
    at = min(condition.where)
    before = words[max(0, at - _DONE_WITHIN) : at]
    last = max((k for k, word in enumerate(before) if word == "before"), default=-1)
    if last >= 0 and (before[last + 1 :] == () or not _DOER.isdisjoint(before[last + 1 : last + 3])):
        return True
    intended = not _INTENDING.isdisjoint(words[max(0, at - _INTENDED_WITHIN) : at])
    return intended and _asks_before(words[max(condition.where) + 1 :])


def _asks_before(words: Sequence[str]) -> bool:
    """Return whether what is so until then is asked for: "what comes before that", "does it work at this moment"."""
    if not _AT_PRESENT.isdisjoint(words):
        return True
    triples = [tuple(words[i : i + 3]) for i in range(len(words))]
    return any(t[0] == "before" and not _THAT.isdisjoint(t[1:2]) for t in triples) or any(
        t[: len(said)] == said for t in triples for said in _MOMENT
    )
