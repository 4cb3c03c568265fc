"""Words that steer the conversation rather than ask: say again, why, where it says so, correction, dispute."""

from __future__ import annotations

import re

_LEAD = r"^(?:ok(?:ay)?|right|fine|sorry|please|and|so|um+|er+|uh+|well|hang on|wait|no wait|hm+|but|yeah|yes|hold on)?[\s,.]*"
_TAIL = r"(?:\s+(?:please|then|mate|now|again|though|exactly|so|thanks|captain|is (?:that|it)|sorry))*[\s?.!]*$"

_PATTERNS = {
    "again": r"(?:(?:i )?say (?:that |it |all )?again(?: all| your last| that| the last one)?|repeat(?: that| it| your last| the last)?|come again|once more|one more time|again|"
    r"(?:can|could|would|will) you (?:repeat|say)(?: that| it)?(?: again)?|what was that|pardon|what did you say|"
    r"say that once more|i didn.?t (?:catch|get) that|missed that|i missed that|read (?:that )?back|words twice|speak slower)",
    "why": r"(?:why(?: is (?:that|it|this)| not| so| does it| does that happen| would (?:that|it) be| though|s that)?|how come|for what reason|"
    r"what.?s the reason(?: for that)?|what is the reason(?: for that)?|reason|explain(?: that| why)?|how so|"
    r"why (?:is|does|do|should) (?:it|that|this)(?: be)?(?: so| happen| the case| like that)?)",
    "source": r"(?:where(?: exactly)?(?:.?s| is| was| does| do| did)? ?(?:it|that|they|this|you)?(?: it)? ?(?:say|says|written|from|come from|stated|said|get|"
    r"published|find|found|get that from|come|you get)?(?: that| this| it| from| so)*(?: written| from| stated| said| in the (?:book|books|manual|manuals))?|"
    r"says who|who says(?: so| that)?|(?:what.?s|what is|what was) (?:the|your) (?:source|reference|ref)(?: for that)?|source|reference|"
    r"(?:which|what) (?:manual|document|book|paragraph|para|page|section|revision|reference)(?: is (?:that|it)(?: in| from)?| says (?:so|that)|(?: has| have| covers| tells| states| gives)(?: me)? (?:that|it|this)| and paragraph)?(?: is that)?(?: in)?|"
    r"according to (?:who|what|whom)|chapter and verse|paragraph|on whose authority|"
    r"(?:give|show|quote|tell) me (?:the|your|a|that) (?:reference|source|paragraph|ref|para)|where can i (?:find|read|look up|check|verify) (?:that|it|this)|"
    r"where did you (?:get|find|read) (?:that|it|this)(?: from)?|cite(?: that| it)?|(?:which|what) (?:doc|document|manual) (?:says|is) (?:that|it|so)(?: from| in)?|"
    r"how do you know(?: that)?|prove it|"
    r"where (?:would|do|could|can) (?:i|you|we) (?:find|read|see) (?:that|it|this)(?: written)?)",
    "disregard": r"(?:disregard(?: that| it| my last| the last| all)?|forget (?:that|it|i asked|about it)|never ?mind(?: that)?|cancel that|scrub that|ignore (?:that|my last))",
    "undispute": r"(?:clear|withdraw|cancel|lift|drop|remove|undo) (?:the |that |my |all )?dispute[sd]?|dispute (?:cleared|withdrawn|resolved|over)|undispute",
    "dispute": r"(?:i )?(?:want to |would like to |wish to |need to )?dispute(?:d)?(?: (?:that|it|this|the answer|your answer|that answer|this answer|that one|the last answer|the record))?(?:[:,\s].*)?",
    "thanks": r"(?:thanks?(?: you| a lot| very much)?|cheers|ta|roger|wilco|copied|got it|understood|ok(?:ay)?|affirm(?:ative)?|noted|great|good|perfect|nice one|all copied)",
}  # fmt: skip
_COMPILED = {
    name: re.compile(_LEAD + "(?:" + pattern + ")" + _TAIL, re.IGNORECASE | re.DOTALL)
    for name, pattern in _PATTERNS.items()
}

CORRECTION = re.compile(
    r"^\s*(?:no[,.\s]+|sorry[,.\s]+|wait[,.\s]+|ah[,.\s]+|oops[,.\s]+|actually[,.\s]+|hang on[,.\s]+|oh[,.\s]+)*"
    r"(?:correction|i mean(?:t)?(?: to say)?|make that|that should (?:be|have been|read)|i should have said|rather|scratch that|not that|"
    r"let me rephrase|should be)\b[\s,:.]*",
    re.IGNORECASE,
)
_FOLLOWS = re.compile(
    r"^\s*(?:ok(?:ay)?[,.\s]+|right[,.\s]+|so[,.\s]+|well[,.\s]+|alright[,.\s]+|hm+[,.\s]+|um+[,.\s]+|yes[,.\s]+)*"
    r"(?:and|what about|how about|what if|but|or|then|now|same|also|plus|with|without|instead|at|from|on|in|for|if|still|suppose|say|assuming|only)\b",
    re.IGNORECASE,
)


BELIEF = re.compile(
    r"\b(?:(?:i|we) (?:was|were|had|have|'ve|ve)? ?(?:always |once )?(?:learn(?:ed|t)|taught|thought|told|remember(?:ed)?|believed?|"
    r"heard|read|been told|been taught|assumed|understood|recall(?:ed)?|say|said|know)|my (?:notes?|book|instructor|captain|card|old notes?) "
    r"(?:says?|said|has|have)|used to be|isn.?t (?:it|that)|wasn.?t (?:it|that)|surely|someone (?:said|told)|the old (?:book|manual) (?:says|said))\b",
    re.IGNORECASE,
)
"""Opens what somebody believes a figure to be: "I learned 280"."""


def control(text: str) -> str:
    """Return the control that a turn is, or ""."""
    text = text.strip()
    if len(text) > 300:
        return ""
    for name, pattern in _COMPILED.items():
        if pattern.match(text):
            return name
    return ""


def follows(text: str) -> bool:
    """Return whether a turn opens as a continuation of the last: "and at 90", "what about …"."""
    return bool(_FOLLOWS.match(text[:80]))


def choice(text: str, options: int) -> int | None:
    """Return the index of the offered choice that a turn names by its number, or None."""
    words = {
        "one": 1,
        "first": 1,
        "two": 2,
        "second": 2,
        "three": 3,
        "third": 3,
        "1st": 1,
        "2nd": 2,
        "3rd": 3,
        "last": options,
    }
    pattern = r"^\s*(?:(?:the|number|option|choice|no|pick|take|give me|go for|i mean|i want|show me|let.?s have)\.?\s+)*(\d+|[a-z0-9]+)(?:\s+(?:one|please|choice|option))*[\s.!]*$"
    found = re.match(pattern, text, re.IGNORECASE)
    if not found:
        return None
    word = found.group(1).lower()
    number = int(word) if word.isdigit() and len(word) < 3 else words.get(word, 0)
    return number - 1 if 1 <= number <= options else None
