"""The yes or no that an answer gives, in whatever words."""

from __future__ import annotations

import re

from assistant.practice.marking.finding.found import ENOUGH, words_said
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import NO, YES

_AGREED = frozenset({"yes", "yse", "yep", "yeah", "affirmative", "affirm"})
_REFUSED = frozenset({"no", "nope", "negative", "nah"})


def verdict_said(said: Said) -> str:
    """Return the verdict that an answer begins with: "yes", "no" or ""."""
    words = _DOUBLY.sub("yes", " ".join(said.reading.words)).split()
    opening = [] if _BOUNDED.match(" ".join(words)) else words[:2]
    first = next((w for w in opening if w in _AGREED or w in _REFUSED), "")
    if first:
        return "yes" if first in _AGREED else "no"
    text = " ".join(words)
    called = _CALLED.search(text) or _CONCLUDED.search(text)
    if called:
        return "yes" if called[1] in _AGREED else "no"
    met = _MET.search(text)
    if met:
        return "no" if met.group("no") else "yes"
    short = _ELLIPTIC.search(text)
    if short:
        return "no" if short.group("no") else "yes"
    text = _PERMITTED.sub("bound", text)
    if _PAST_IT.search(text):
        return "no"
    text = _BOUNDED.sub("bound", text)
    no, yes = NO.search(text), YES.search(text)
    if no and (not yes or no.start() <= yes.start() + 12):
        return "no"
    return "yes" if yes else _settled(text)


def _settled(text: str) -> str:
    """Return the verdict that lies in what is done or left: "ten in hand, take-off may begin", "it has to wait"."""
    if _HELD_BACK.search(text):
        return "no"
    return "yes" if _GOES_ON.search(text) else ""


_HELD_BACK = re.compile(
    r"\b(?:has|have) to wait\b|\b(?:it|that|this|they|take off|tow|push|departure) waits?\b|"
    r"\bstay (?:where you are|put)\b|\bso (?:it is|they are|that is|it s) out\b(?! of)"
)
_GOES_ON = re.compile(
    r"\b(?:in hand|to spare)\b|\b(?:so|is|are|was|rule|limit) (?:met|respected|kept|satisfied)\b|"
    r"\b(?:may|can) (?:begin|proceed|start|go ahead)\b"
)


_DOUBLY = re.compile(
    r"\b(?:it is |it s |is |are |they are )?(?:not|never) (?:inoperative|inop|unavailable|disabled|forbidden|"
    r"prohibited|impossible|unacceptable|unable)\b"
)
"""A denial of a denial: "it's not inoperative"."""


_ELLIPTIC = re.compile(
    r"(?:^|(?:so|thus|hence|therefore|means) )(?:it|that|this|they|you|we|i|one) "
    r"(?:does|do|is|are|can|could|may|must|will|would|has|have)(?P<no> not)?(?= [.,;!]|$)"
)
"""A verdict that leaves out what the question has said: "so it doesn't"."""
_CALLED = re.compile(
    r"\b(?:so|that|it|this|thus|hence)(?: it| that| this)?(?: is| s)? an? (?:clear |definite )?(yes|no)\b(?! [a-z])"
)
"""A verdict that is called one at the end: "so that's a no"."""
_CONCLUDED = re.compile(
    r"\b(?:so|thus|hence|therefore) (yes|no)(?= (?:it|that|this|they|you|we|i|not)\b| [.,;!]|$)"
)
"""A verdict that a working comes to: "so it's under that, so no it's not"."""
_MET = re.compile(
    r"\b(?:so|thus|hence|therefore)(?: it| that| this| the rule)?(?: is| s)?(?P<no> not)? met\b(?= [.,;!]|$)"
)
"""A conclusion on a rule: "so not met"."""
_BOUNDED = re.compile(
    r"\b(?:no|not) (?:(?:be |go |to |of )?(?:more|less|higher|lower|greater|further|faster|slower|hotter|wider|bigger|"
    r"larger|longer|later|over \d|exceed|exceeding))\b(?! of\b)"
)
"""A bound, which denies nothing: "no more than 120"."""
_PAST_IT = re.compile(
    r"(?<!not )(?<!never )\b(?:(?:more|higher|greater|hotter|wider|bigger|larger|faster|longer) than|exceeds|exceeding|"
    r"over|above|beyond) (?:the |its |their )?(?:\d\S* (?:\S+ )?)?(?:bound|limit|maximum|max)\b"
)
"""What is past its limit, told as such: "more than the 120 allowed"."""
_PERMITTED = re.compile(
    r"(?<=\d)(?: \S+)? (?:is |are )?(?:allowed|permitted|acceptable)\b|"
    r"\b(?:the|than|maximum|max) (?:allowed|permitted|acceptable)(?: \w+)?(?: is| of)?(?= \d)"
)
"""A limit told by its number, which allows nothing that is asked for: "120 permitted"."""


def verdict_of(need: Need, said: Said) -> str:
    """Return the verdict of an answer; to be below is to be within only a maximum: "it's below the 126 psi limit"."""
    given = verdict_said(said)
    if given and said.reading.words[0] not in _OUTRIGHT and _is_implied(need, said):
        return ""  # "normal is gone, but alternate works" says no to another thing
    below = _IS_BELOW.match(" ".join(said.reading.words))
    most = any(f.sense == "max" for p in need.points for f in p.figures)
    if given == "no" and _NOT_PAST["max" if most else "min"].match(" ".join(said.reading.words)):
        return "yes"
    return "" if given == "yes" and below and need.within is False and not most else given


_OUTRIGHT = _AGREED | frozenset(("no", "nope", "nah", "negative", "none", "not", "never", "there"))


def _is_implied(need: Need, said: Said) -> bool:
    """Return whether what implies the yes or no is said, without one that leads it."""
    implying = [p for p in need.points if p.either and p.optional and p.elements and not p.figures]
    return any(words_said(p, said)[0] >= ENOUGH for p in implying)


_NOT_PAST = {
    "max": re.compile(r"(?:it|that|this|they) (?:is|are|does|do) not (?:over|above|more|beyond|past|hotter|exceed)\b"),
    "min": re.compile(r"(?:it|that|this|they) (?:is|are) not (?:under|below|less)\b"),
}
"""What is not past its limit: "it's not over 250"."""
_IS_BELOW = re.compile(r"(?:it|that|this) is (?:still |well |just )?(?:below|under)\b")


def verdict_wrong(need: Need, said: Said) -> list[str]:
    """Return the yes or no that an answer gives where the other is asked for."""
    wanted = next((p.verdict for p in need.points if p.verdict), "")
    given = verdict_of(need, said) if wanted else ""
    if wanted == "no" and given == "yes" and under_its_condition(need, said):
        return []
    return [f"{given}: it is {wanted}"] if wanted and given and given != wanted else []


def under_its_condition(need: Need, said: Said) -> bool:
    """Return whether a yes is given under the condition on which the full answer allows it: "with it disconnected"."""
    needed = _NEEDS_IT.search(need.expected)
    words = said.reading.words
    if needed is None or needed[1] not in words:
        return False
    place = words.index(needed[1])
    before = words[max(0, place - _NEAR) : place]
    return not {"not", "no", "without", "never"}.intersection(before) and bool(_ON_IT.intersection(before))


_NEEDS_IT = re.compile(r"\bneeds (?:the |a )?(?:[\w-]+ ){1,3}?(\w+ed)\b")
_ON_IT = frozenset(("with", "if", "when", "once", "after", "provided", "but", "only"))
_NEAR = 6
"""Words before a condition among which it is named as one."""
