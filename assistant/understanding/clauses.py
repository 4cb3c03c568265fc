"""The parts of a text that ask, apart from those that tell: "System 1 is gone, | do I have steering | with …".

A thing that the asking part names is asked about; one that the telling part names is in a state.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise

STOPS = frozenset((".", "?", "!", ";", ",", ":", "(", ")", "-"))
"""Marks at which what is told of a thing ends."""
_SENTENCE = frozenset((".", "?", "!"))
_TELLING = frozenset({
    "if", "with", "given", "after", "since", "because", "while", "assuming", "suppose", "supposing", "once", "having",
    "following", "without", "though", "although", "when", "whenever", "despite", "until", "say", "imagine",
})  # fmt: skip
"""Words that begin what is told, in the middle of a question as well."""
_HELPING = frozenset({
    "do", "does", "did", "is", "are", "am", "was", "were", "can", "could", "will", "would", "shall", "should", "may",
    "might", "must", "has", "have",
})  # fmt: skip
_QUESTION = frozenset(("what", "which", "how", "why", "where", "who", "whose", "whats", "any"))
_NOT_YET = frozenset({"and", "but", "so", "then", "ok", "okay", "now", "well", "please", "hi", "hey", "or"})
_SPEAKERS = frozenset(("i", "we", "you", "there"))
_SUBJECTS = _SPEAKERS | {"it", "they", "the", "my", "our", "this", "that"}
_PREDICATES = frozenset({"working", "available", "usable", "ok", "okay", "functional", "serviceable", "alive", "there"})
"""Last words of a question that no mark parts from what is told before it: "hyd 1 gone | is the tiller working"."""
_ONLY = frozenset(("only", "one", "last", "same", "thing"))
_STRONG = frozenset(("do", "does", "did", "can", "could", "will", "would", "may", "should", "shall"))

_CLAIMING = frozenset({
    "says", "said", "reckons", "claims", "claimed", "insists", "swears", "thinks", "believes", "argues", "maintains",
})  # fmt: skip
_SHOWING = frozenset(("display", "memo", "screen", "panel", "message", "label", "light", "indication", "caption", "it"))
_NAMED = frozenset(("the", "my", "our", "any"))
_LONGEST_LAST = 5
_DENIED = frozenset(("not", "never", "no", "still", "dark", "without"))
TAGS = frozenset(("right", "correct", "true", "yes", "no", "innit", "surely"))
"""Last words that want to be agreed with."""
_COURTESY = frozenset(("thanks", "thank", "cheers", "please", "ta"))
_FOLLOWING = frozenset({
    "means", "mean", "meaning", "gives", "give", "puts", "put", "leads", "lead", "makes", "make", "causes", "cause",
    "costs", "cost", "leaves", "leave", "brings", "bring", "takes", "becomes", "become",
})  # fmt: skip
"""Words before what is said to follow from something."""


def asking(words: Sequence[str], marks: bool = True) -> frozenset[int]:
    """Return the indices of the words that ask; marks: those that only a question mark makes a question as well."""
    return _asking(tuple(words), marks)


@lru_cache(maxsize=32)
def _asking(words: Sequence[str], marks: bool) -> frozenset[int]:
    """The words of one question are looked at by many who ask of it."""
    found: set[int] = set()
    asks, begins, start, asked_here, told = False, True, 0, False, 0
    for i, word in enumerate(words):
        following = words[i + 1] if i + 1 < len(words) else ""
        if word in STOPS:
            if word == "?" and not asked_here and marks:
                # "hyd 1 gone, autobrake?", "autobrake | with hyd 1 gone?": only the mark says that it is asked
                found.update(range(start, told or i))
            asked_here = asked_here and word not in _SENTENCE
            asks, begins, start, told = False, True, i + 1, 0
            continue
        if (_asks(word, following, begins) or _asks_last(words, i)) and not _likewise(words, i):
            asks = asked_here = True
        elif word in _TELLING and not (word == "when" and begins and following in _HELPING):
            asks, start, told = False, start if i > start else i + 1, told or (i if i > start else 0)
        begins = begins and word in _NOT_YET
        if asks:
            found.add(i)
    return frozenset(found)


def parted(words: Sequence[str], ends: frozenset[str]) -> list[range]:
    """Return the places of the pieces of a text, each with the mark that ends it."""
    starts = [0, *(i + 1 for i, word in enumerate(words) if word in ends), len(words)]
    return [range(start, end) for start, end in pairwise(starts) if start < end]


def _likewise(words: Sequence[str], at: int) -> bool:
    """Return whether a verb only says that something else is so too: "so is System 2"."""
    if at == 0 or words[at - 1] not in ("so", "nor") or words[at] not in _HELPING:
        return False
    return next((w for w in words[at:] if w in _SENTENCE), ".") != "?"


def _asks_last(words: Sequence[str], at: int) -> bool:
    """Return whether a text ends in a question that begins here: "… on the display | is the anti-skid working"."""
    if words[at] not in ("is", "are") or not at or at + 1 >= len(words) or words[at + 1] not in _NAMED:
        return False
    rest = [w for w in words[at + 2 :] if w not in ("?", ".", "still")]
    said = rest[-1:] != [] and rest[-1] in _PREDICATES and len(rest) <= _LONGEST_LAST
    return said and _ONLY.isdisjoint(rest) and _HELPING.isdisjoint(rest) and STOPS.isdisjoint(rest)


def _asks(word: str, following: str, begins: bool) -> bool:
    if word in _QUESTION and (begins or word != "any"):
        return True
    if begins and (word in _HELPING or (word == "when" and following in _HELPING)):
        return word not in ("have", "has") or following in _SPEAKERS or following in _NAMED
    if word in _STRONG:
        return following in _SUBJECTS
    return word in ("is", "are", "have", "has") and following in (_SPEAKERS | ({"it"} if word == "is" else set()))


def believed(words: Sequence[str]) -> bool:
    """Return whether a text ends in a tag that wants to be agreed with: "…, right?"."""
    said = [w for w in words if w[0].isalnum()]
    while said and said[-1] in _COURTESY:
        said.pop()
    tag = bool(said) and said[-1] in TAGS and said[-2:] not in (["all", "right"], ["to", "right"])
    return len(said) > 3 and (tag or said[-2:] == ["not", "it"])


def doubted(words: Sequence[str], at: int, asks: frozenset[int]) -> bool:
    """Return whether what stands at a place is asked with yes or no, or is said to follow from something else."""
    if at not in asks:
        return bool(_FOLLOWING.intersection(words[max(0, at - 3) : at]))
    begin = at
    while begin - 1 in asks:
        begin -= 1
    return words[begin] not in _QUESTION and words[max(0, at - 1)] not in ("on", "with")


def said_by_somebody(words: Sequence[str], at: int) -> bool:
    """Return whether what stands at a place is only what somebody says: "my colleague reckons | we are on …"."""
    begin = next((k + 1 for k in range(at - 1, -1, -1) if words[k] in _SENTENCE), 0)
    said = next((k for k in range(begin, at) if words[k] in _CLAIMING), None)
    return said is not None and _SHOWING.isdisjoint(words[begin:said])


def asks_whether(words: Sequence[str]) -> bool:
    """Return whether a text asks for yes or no and denies nothing: "… 20 s ago. Should the caution be on?"."""
    told = asking(words)
    opens = [i for i in told if i - 1 not in told]
    if not opens:
        return False
    asked = [word for word in words[max(opens) :] if word not in _NOT_YET]
    return asked[:1] != [] and asked[0] in _HELPING and _DENIED.isdisjoint(asked)
