"""Answers put as the books put them, where whole turns of speech say what one word there does.

"A horn that never stops" is a continuous one, "amber everywhere except NORMAL, which has white" is white in NORMAL and
otherwise amber, and whoever is asked about the autobrake says "no auto".
"""

from __future__ import annotations

import re

from assistant.practice.marking.points import Need
from assistant.practice.marking.restricted import counts_none


def reworded(answer: str, need: Need) -> str:
    """Return an answer with its turns of speech put as the points of a question are."""
    texts = [p.text for p in need.points]
    if any("continuous" in text for text in texts):
        answer = _GOES_OFF.sub("intermittent", _UNENDING.sub("continuous", answer))
    if any(re.search(r"\w in \w", text) for text in texts):
        answer = _EXCEPT.sub(r"\3 in \2, otherwise \1", answer)
    if any("reappl" in text for text in texts):
        answer = _BACK_ON.sub("reapplies it", answer)
    if texts and counts_none(need):
        answer = _NONE.sub(texts[0], answer)
    if "autobrake" in need.question.words:
        answer = _AUTO.sub("autobrake", answer)
    return answer


_BACK_ON = re.compile(
    r"\b(?:puts?|brings?|lets?|sets?|comes?) (?:(?:the|it|its|that|a) )?(?:brakes? |pressure )?"
    r"back(?: on| in| again)?\b|"
    r"\b(?:puts?|brakes?|presses|applies) (?:it |the brake )?(?:on )?again\b",
    re.IGNORECASE,
)
"""A brake that is put on again."""
_NONE = re.compile(
    r"^\W*(?:none|zero|nil|0|not (?:a single )?(?:one|any)|no \w+)(?: at all| of them)?\W*$", re.IGNORECASE
)
"""A count of nothing, which says what the statement does."""
_SOUNDING = r"(?:stops?|stopping|let(?:s|ting)? up|quits?|ceases?|pauses?|breaks? off)"
_UNENDING = re.compile(
    rf"\b(?:(?:that|which|and it|it) )?(?:doesn['’]?t|does not|won['’]?t|will not|never|without|no) {_SOUNDING}\b|"
    r"\bwithout (?:a )?(?:break|pause|stop|interruption)s?\b",
    re.IGNORECASE,
)
_GOES_OFF = re.compile(
    rf"\b(?:that|which|and it|it) (?:then )?(?:{_SOUNDING}|comes and goes|goes on and off|starts and stops)\b"
    r"(?! (?:when|once|only|if|until)\b)",
    re.IGNORECASE,
)
_EXCEPT = re.compile(
    r"\b(\w+)(?: (?:bars|ones|lamps|lights))?(?: (?:everywhere|always|all over|in|for|on|with|all|them|of|both|every|"
    r"the|others|modes?|cases?))* (?:except|but|save|bar|apart from|other than)(?: for| in| on| with| the)* (\w+)"
    r"(?: mode)?\s*[,;:]?\s*(?:which|where|that|there|this one|that one|and there)\b(?: one)?"
    r"(?:['’]?s| is| are| has| have| shows?| they| it|['’]re| they['’]re| it['’]s| in)* (\w+)",
    re.IGNORECASE,
)
"""One for all but one, and the one's own: "amber in all but NORMAL, which is white"."""
_AUTO = re.compile(r"\bauto\b(?![- ]?(?:brak|land|pilot|thrust|throttle|matic))", re.IGNORECASE)
