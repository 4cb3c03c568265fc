"""Answers that leave nothing, or nothing out: "never", "nothing", "any time", "they are the same"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.practice.marking.finding.found import Held
from assistant.practice.marking.finding.polarity import denied
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import STOPS, word_set
from assistant.resolving.knowing import Knowledge

_ABSOLUTE = word_set(
    "always anybody anyone anything anytime anywhere both either everything never nobody none nothing nowhere same"
)
_BESIDE = word_set("""
    a all any are at be can do does in is it left of on remaining remains s that the them there they time times
    whatever you
""")


def absolute(need: Need, said: Said) -> list[str]:
    """Return an answer that is no more than an absolute, where something certain is asked for."""
    if need.follows and need.follows.good and need.follows.nothing:
        return []  # "nothing" follows
    words = [w for w in said.reading.words if w.isalpha()]
    time = "any" in words and "time" in words
    asked = set(need.question.words)
    if not words or not (time or _ABSOLUTE.intersection(words)) or not set(words) <= _ABSOLUTE | _BESIDE | asked:
        return []
    if any(p.verdict or p.state for p in need.points) and not need.loss:
        return []
    if {c.amount.value for c in said.claims} & {f.value for p in need.points for f in p.figures}:
        return []  # "nothing at 110, all of it up to 30"
    own = set(need.expected.lower().replace(",", " ").replace(".", " ").replace(":", " ").split())
    return [] if own & _ABSOLUTE.intersection(words) or own & {"no", "not"} & set(words) else [said.text.strip()]


_LIMITLESS = re.compile(
    r"\b(?:no|without(?: a| any)?) (?:such )?(?:limit|limits|limitation|maximum|minimum|restriction|restrictions)\b|"
    r"\bas \w+ as (?:you|we|they|i) (?:like|want|please|can|wish)\b|\bunlimited\b|"
    r"\bany (?:speed|pressure|height|temperature|angle|time|length|delay|amount)\b"
)


def limitless(need: Need, said: Said) -> bool:
    """Return whether an answer says that there is no limit, where the full answer has one."""
    found = _LIMITLESS.search(" ".join(said.reading.words))
    return found is not None and any(p.figures for p in need.points) and not _LIMITLESS.search(need.expected.lower())


def too_soon(held: Sequence[Held], need: Need, said: Said) -> list[str]:
    """Return that something is done at once which has to wait for a time that is not said."""
    soon = plain("immediately")
    text = " ".join(said.reading.words)
    true = re.search(r"\b(?:at once|immediately|straight away)\b", need.expected.lower())
    if soon not in said.words or true or _NOT_SOON.search(text):
        return []
    waits = any(h.share < 1 and any(f.unit in _TIMES for f in h.point.figures) for h in held)
    return ["at once"] if waits and soon not in need.asked else []


_TIMES = ("s", "min", "h")
_NOT_SOON = re.compile(r"\bnot (?:\w+ )?(?:at once|immediately|instantly|straight away|right away)\b")


def nothing_does(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return that nothing does what something does: "nothing steers" where the tillers do."""
    words = said.words
    for i, word in enumerate(said.reading.words[:-1]):
        verb = said.reading.words[i + 1]
        if word in ("nothing", "nobody") and verb.isalpha() and verb.endswith("s") and len(verb) > _SHORT:
            full = know.phrase(need.expected)
            turned = denied(full.words, full)
            if any(plain(w) == words[i + 1] and k not in turned for k, w in enumerate(full.words)):
                return [" ".join(said.reading.words[i : i + 2])]
    return []


def whatever(need: Need, said: Said) -> list[str]:
    """Return the thing that an answer says not to matter, where the full answer has it matter: "whatever the speed"."""
    words = said.reading.words
    full = need.expected.lower().split()
    if not _ANY.isdisjoint(full):
        return []
    ends = [
        i + n for i in range(len(words)) for n, p in ((2, words[i : i + 2]), (1, words[i : i + 1])) if p in _NO_MATTER
    ]
    spots = {i for end in ends for i in range(end, min(end + _NEAR, len(words)))}
    own = {plain(word.strip(".,;:")) for word in full} - need.asked
    told = [
        m for m in said.content
        if m.start in spots and (m.concepts & (need.said - need.question.concepts) or said.words[m.start] in own)
    ]  # fmt: skip
    after = (*words, ".")
    return [m.text for m in told if after[m.end] in STOPS]  # "whatever it holds" matters


_ANY = frozenset(("any", "whatever", "whichever", "regardless"))
_NO_MATTER = (("whatever",), ("regardless", "of"), ("irrespective", "of"), ("whatever", "the"))
_NEAR = 3
_SHORT = 3
_MANNERS = ("hydraulic", "electr", "pneumatic", "magnet")


def other_manner(need: Need, said: Said) -> list[str]:
    """Return a way of working that the full answer does not have: "hydraulically"."""
    known = f"{need.expected} {' '.join(need.question.words)}".lower()
    adverbs = (w for w in said.reading.words if w.endswith("ally"))
    return [w for w in adverbs if any(w.startswith(m) and m not in known for m in _MANNERS)]


_UNCHANGED = re.compile(
    r"\b(?:nothing|no figure|no number|neither|none of (?:it|them)) (?:\w+ )?(?:changes|changed|differs|different)\b|"
    r"\b(?:unchanged|identical)\b|\bno (?:change|difference|different)\b"
)
"""What says, without a number, that a figure is another one's too."""


def same_as_other(need: Need, said: Said) -> list[str]:
    """Return that a figure is said to be the same on another variant, where it is not."""
    text = " ".join(said.reading.words)
    if "same" not in said.reading.words and (said.claims or not _UNCHANGED.search(text)):
        return []
    known = {f.value for p in need.points for f in p.figures}
    named = {c for here in said.concepts for c in here}
    return ["the same"] if any(c in named and f.value not in known for c, f in need.elsewhere) else []
