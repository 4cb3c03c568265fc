"""Turns by which whatever had failed is well again: "all ok now", "that's fixed", "back to normal", "new flight".

They are known by the sorts of their words, in any order, and by there being no other word: what is well, that it is,
and words that only join them. Which thing is in a state is no matter of this; that is read elsewhere.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.understanding.mentions import Reading

_EVERYTHING = frozenset({
    "all", "everything", "everythings", "things", "both", "systems", "lot", "aircraft", "aeroplane", "airplane",
    "plane", "jet", "ship", "we", "failures", "faults", "problems", "snags", "issues", "defects", "losses",
    "failure", "fault", "problem", "snag", "issue", "defect", "they", "those", "these", "every", "whole",
})  # fmt: skip
_POINTING = frozenset({"it", "that", "this", "thats", "its"})
_MENDED = frozenset({
    "fixed", "repaired", "sorted", "resolved", "cleared", "restored", "recovered", "mended", "solved",
    "rectified", "healed", "cured",
})  # fmt: skip
_WELL = _MENDED | frozenset({
    "ok", "okay", "fine", "normal", "good", "healthy", "working", "works", "work", "serviceable", "alright",
    "well", "running", "order", "clear",
})  # fmt: skip
_PLAINLY_WELL = frozenset({"fine", "normal", "healthy", "working", "serviceable", "alright", "running", "order"})
_ANEW = frozenset({"again", "back"})
_LINKS = frozenset({
    "is", "s", "are", "re", "was", "were", "has", "have", "ve", "been", "got", "now", "again", "back", "to",
    "the", "of", "just", "a", "an", "as", "before", "up", "and", "by", "being", "our", "my", "let", "assume",
    "assuming", "suppose", "say", "with", "on", "in", "so", "then", "right", "ok", "okay", "oh", "ah", "well",
    "good", "news", "thanks", "great", "maintenance", "engineer", "engineers", "mechanic", "mechanics", "they",
    "completely", "totally", "fully", "once", "more", "went", "gone", "goes", "come", "came", "us", "me", "at",
    "last", "finally", "there", "i", "you", "go", "am", "m", "here", "be", "can", "that", "it", "everything",
    "all", "please", "yes", "for", "from", "onwards", "things", "since", "lets", "only", "drill", "exercise", "test",
    "practice", "simulated", "simulation", "training",
})  # fmt: skip
_BESIDES = frozenset({"else", "rest", "other", "otherwise"})
_NONE = frozenset({"no", "nothing", "none", "without", "zero"})
_FAULTS = frozenset({
    "failures", "failure", "faults", "fault", "problems", "problem", "snags", "snag", "issues", "issue",
    "defects", "failed", "failing", "broken", "wrong", "lost", "amiss", "inop", "unserviceable",
})  # fmt: skip
_LEFT = frozenset({"any", "anymore", "left", "longer", "else", "whatsoever", "all", "at", "trace"})
_NEW = frozenset({"new", "next", "another", "different", "fresh", "clean", "other"})
_SITUATIONS = frozenset({
    "flight", "scenario", "day", "sector", "aircraft", "aeroplane", "airplane", "plane", "jet", "situation",
    "case", "session", "sim", "exercise", "start", "slate", "question", "subject", "topic",
})  # fmt: skip
_DROPPING = frozenset({
    "forget", "clear", "drop", "reset", "wipe", "scrap", "cancel", "ignore", "scrub", "disregard", "undo",
    "remove", "start", "move", "over", "afresh", "restart", "begin",
})  # fmt: skip
_DROPPED = frozenset({
    "it", "that", "this", "all", "everything", "about", "them", "those", "these", "conditions", "states",
})  # fmt: skip
_WHOLE = frozenset({"all", "everything", "conditions", "states", "slate"})
_ASKING = frozenset({
    "is", "are", "was", "were", "has", "have", "can", "do", "does", "did", "will", "what", "if", "when",
})  # fmt: skip
_LONGEST = 9
_FAR = 120


def well_again(words: Sequence[str]) -> bool:
    """Return whether a whole turn says that all is well again, or that what was spoken of last is."""
    said = _said(words)
    if said is None:
        return False
    known = said <= _EVERYTHING | _POINTING | _WELL | _LINKS
    if known and said & _WELL:
        if said & _MENDED or (said & _ANEW and said & _PLAINLY_WELL):
            return True
        if said & _ANEW and said & (_POINTING | {"we", "they"}) and not said & {"say", "go"}:
            return True
        return bool(said & (_EVERYTHING - {"we", "they"}) and said & (_WELL - {"well"}))
    if said & _DROPPING and said & _FAULTS and said <= _DROPPING | _FAULTS | _DROPPED | _LINKS:
        return True
    return bool(said & _NONE and said & _FAULTS) and said <= _NONE | _FAULTS | _LEFT | _LINKS


def points_at_one(words: Sequence[str]) -> bool:
    """Return whether it is only the thing spoken of last that a turn says is well: "it's fixed"."""
    said = set(words)
    return not said & _EVERYTHING and not said & {"normal", *_NONE}


def situation_new(words: Sequence[str]) -> bool:
    """Return whether a whole turn begins anew: "okay, new flight", "forget it, next scenario", "clear everything"."""
    said = _said(words)
    if said is None or not said <= _NEW | _SITUATIONS | _DROPPING | _DROPPED | _LINKS:
        return False
    if said & _NEW and said & _SITUATIONS:
        return True
    if said & {"reset", "restart"} and not said & _SITUATIONS:
        return True
    return bool(said & (_DROPPING - {"move", "over"}) and said & _WHOLE)


def plain_words(text: str) -> list[str]:
    """Return the words of a text as they are written, with the mark that asks."""
    return re.findall(r"[a-z]+|\?", text[:_FAR].lower())


def _said(words: Sequence[str]) -> set[str] | None:
    """Return the words of a short turn that asks nothing."""
    said = [w for w in words if w[0].isalpha()]
    if not said or len(said) > _LONGEST or "?" in words:
        return None
    first = next((w for w in said if w not in ("so", "ok", "okay", "right", "and", "well", "oh", "ah")), said[0])
    return None if first in _ASKING else set(said)


def says_all_normal(reading: Reading) -> bool:
    """Return whether a text says that everything is normal, and not only everything else."""
    named = (m for m in reading.mentions if m.holds("all_normal"))
    return well_again(reading.words) or any(_BESIDES.isdisjoint(m.text.split()) for m in named)
