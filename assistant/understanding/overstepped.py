"""By how much a limit was passed: "we went | 8 knots over | VLE" gives no reading to be judged, but says that it was
passed.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.quantities.amounts import Amount
from assistant.understanding.mentions import Mention

EXCEEDED = "limit_exceeded"
_BEYOND = frozenset({"over", "above", "beyond", "past"})
_TOO = frozenset({"fast", "hot", "heavy", "high"})
_DONE = frozenset({"went", "flew", "crept", "ran", "taxied"})
_BEING = frozenset({"were", "was", "been", "got", "landed", "towed", "departed"})
"""What may as well compare two readings: only beyond a limit is it one that was passed."""
_LIMIT = frozenset({"limit", "limits", "limitation", "maximum", "max", "vle", "vlo", "mlw", "mtow"})
_OVERDONE = frozenset({
    "overdid", "busted", "bust", "broke", "overshot", "overstepped", "exceeded", "overran", "oversped", "overdone",
})  # fmt: skip
_GOING = frozenset(("go", "went", "gone", "goes", "going"))
_PASSED = frozenset(("speed", "speeds", "mass", "weight"))
_CREEPING = frozenset({
    "creep", "crept", "creeping", "get", "got", "slip", "slipped", "drift", "drifted", "stray", "strayed", "wander",
    "wandered", "sneak", "sneaked", "edge", "edged", "run", "ran", "sail", "sailed", "blow", "blew", "push", "pushed",
    "nudge", "nudged", "poke", "poked", "slide", "slid", "go", "gone", "shot", "nosed",
})  # fmt: skip
_ASKING_LEAVE = frozenset({
    "can", "may", "could", "should", "will", "would", "might", "to", "not", "never", "if", "must",
})  # fmt: skip
_OVERDOING = frozenset(("flown", "flew", "went", "gone", "landed", "taxied"))
_TOO_MUCH = frozenset(("fast", "heavy", "quick", "quickly"))
_SHORTLY, _LONG = 4, 8
"""Words between what was done and by how much."""


def overstepped(amounts: Sequence[Amount], words: Sequence[str]) -> tuple[list[Amount], Mention | None]:
    """Return the amounts without that by which something is said to have been passed, and the name of its being so."""
    for amount in amounts:
        taken = _taken(amount, amounts, words) if amount.unit else ()
        if taken:
            text = " ".join(words[k] for k in taken)
            mention = Mention(taken[0], taken[-1] + 1, taken, frozenset((EXCEEDED,)), frozenset(), False, text)
            return [a for a in amounts if a is not amount], mention
    return list(amounts), None


def gone_over(amounts: Sequence[Amount], words: Sequence[str]) -> tuple[list[Amount], Mention | None]:
    """Return the amounts without a bare one by which a kind of speed or mass is said to have been passed, and the name
    of its being so: "went over gear speed by 10", "if I go over tyre speed".
    """
    for at in range(len(words) - 2):
        going = words[at] in _GOING and words[at + 1] in _BEYOND
        if going and not _PASSED.isdisjoint(words[at + 2 : at + 2 + _SHORTLY]):
            if any(at < a.start <= at + _SHORTLY for a in amounts):
                continue  # a reading, to be judged
            text = " ".join(words[at : at + 2])
            passed = Mention(at, at + 2, (at, at + 1), frozenset((EXCEEDED,)), frozenset(), False, text)
            return [a for a in amounts if words[a.start - 1] != "by"], passed
    return list(amounts), None


def crept_past(words: Sequence[str]) -> Mention | None:
    """Return where a limit is said to have been passed without a figure: "we let it creep | past | VLE"."""
    for k, word in enumerate(words):
        if word not in _BEYOND or _LIMIT.isdisjoint(words[k + 1 : k + 1 + _SHORTLY]):
            continue
        verb = next((v for v in range(max(0, k - 2), k) if words[v] in _CREEPING), None)
        if verb is not None and _ASKING_LEAVE.isdisjoint(words[max(0, verb - 2) : verb]):
            taken = tuple(range(verb, k + 1))
            text = " ".join(words[verb : k + 1])
            return Mention(verb, k + 1, taken, frozenset((EXCEEDED,)), frozenset(), False, text)
    return None


def was_too_much(words: Sequence[str]) -> Mention | None:
    """Return where something is said to have been done too fast or with too much: "I have | flown too fast |"."""
    for k in range(1, len(words) - 2):
        done = words[k] in _OVERDOING and words[k + 1] == "too" and words[k + 2] in _TOO_MUCH
        if done and _ASKING_LEAVE.isdisjoint(words[max(0, k - 3) : k]):
            text = " ".join(words[k : k + 3])
            return Mention(k, k + 3, (k, k + 1, k + 2), frozenset((EXCEEDED,)), frozenset(), False, text)
    return None


def _taken(amount: Amount, amounts: Sequence[Amount], words: Sequence[str]) -> tuple[int, ...]:
    """Return the places of the words that say so beside an amount, if any."""
    end, before = amount.end, words[max(0, amount.start - _SHORTLY) : amount.start]
    if "by" in before[-1:]:
        return _last_of(_OVERDONE, words, amount.start, _LONG)
    limit = not _LIMIT.isdisjoint(words[end + 1 : end + 1 + _SHORTLY])
    if _DONE.isdisjoint(before) and not (limit and _came_to_be(before, words[: amount.start])):
        return ()
    following = words[end : end + 2]
    if following[:1] and following[0] in _BEYOND:
        crept = _last_of(_CREEPING, words, amount.start, _SHORTLY)
        return () if any(a.start == end + 1 for a in amounts) else (*crept, end)
    return (end, end + 1) if len(following) > 1 and following[0] == "too" and following[1] in _TOO else ()


def _last_of(verbs: frozenset[str], words: Sequence[str], at: int, within: int) -> tuple[int, ...]:
    """Return the place of the last of some verbs within so many words before a place, if any: it says no more than that
    a limit was passed.
    """
    return tuple(k for k in range(max(0, at - within), at) if words[k] in verbs)[-1:]


def _came_to_be(before: Sequence[str], so_far: Sequence[str]) -> bool:
    """Return whether the words before an amount tell what became of something: "let the speed | run | eight knots"."""
    if not _BEING.isdisjoint(before):
        return True
    return not _CREEPING.isdisjoint(before) and _ASKING_LEAVE.isdisjoint(so_far)
