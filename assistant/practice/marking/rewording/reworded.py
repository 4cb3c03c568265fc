"""Answers put as the books put them, where whole turns of speech say what one word there does.

"A horn that never stops" is a continuous one, "amber everywhere except NORMAL, which has white" is white in NORMAL and
otherwise amber, and whoever is asked about the autobrake says "no auto".
"""

from __future__ import annotations

import re

from assistant.practice.marking.points import Need
from assistant.practice.marking.wrong_statements.restricted import counts_none


def reworded(answer: str, need: Need) -> str:
    """Return an answer with its turns of speech put as the points of a question are."""
    texts = [p.text for p in need.points]
    answer = _YELLOW.sub("amber", _AGREEING.sub("yes", answer) if need.polar else answer)
    if any("continuous" in text for text in texts):
        answer = _GOES_OFF.sub("intermittent", _UNENDING.sub("continuous", answer))
    if any(re.search(r"\w in \w", text) for text in texts):
        answer = _EXCEPT.sub(r"\3 in \2, otherwise \1", answer)
    if any("NORMAL" in text for text in texts):
        answer = _ORDINARY.sub("normal mode", answer)
        others = [text.partition(" in ")[2] for text in texts if " in " in text and "NORMAL" not in text]
        answer = _UNLESS.sub(rf"\1 in {' and '.join(others)}", answer) if others else answer
        answer = _apart(answer, [text.partition(" in ")[2] for text in texts if " in " in text])
    if any(re.search(r"\bdrag\b", text) for text in texts):
        answer = _AIR.sub("drag", answer)
    if any("rearward" in text for text in texts):
        answer = _TO_THE_BACK.sub("rearward", answer)
    if any("inboard" in text for text in texts):
        answer = _INWARD.sub(r"\1 inboard", answer)
    if any(p.text in ("left", "right") for p in need.points):
        answer = _LEFT_OVER.sub("there is", answer)
    if any("reappl" in text for text in texts):
        answer = _BACK_ON.sub("reapplies it", answer)
    answer = _bounds_put(_none_put(answer, need), need, texts)
    if "autobrake" in need.question.words:
        answer = _AUTO.sub("autobrake", answer)
    return _in_their_order(answer, need)


def _in_their_order(answer: str, need: Need) -> str:
    """Return an answer with a stop behind its verdict, and with what comes last behind what is told to go before it."""
    if any(p.verdict for p in need.points):
        answer = _JUDGED.sub(r"\1,", answer)
    return _LAST_FIRST.sub(r"\2. \1", answer) if need.ordered else answer


_AGREEING = re.compile(
    r"^(?:ya|yah|yea|yess?|sure(?: (?:do|does|can|is|are|will|has|have))?|absolutely|indeed|definitely|you bet)"
    r"(?=\s*(?:[.,;!:]|$))",
    re.IGNORECASE,
)
"""How people agree at the beginning of what they say."""
_YELLOW = re.compile(r"\b(?:yellow ?/ ?amber|amber ?/ ?yellow|yellow or amber|amber or yellow)\b", re.IGNORECASE)
"""One colour by both of its names."""
_JUDGED = re.compile(
    r"\b(not (?:acceptable|allowed|permitted|okay|ok|fine)|unacceptable)(?= (?:that|the|this) \w+ \w+)",
    re.IGNORECASE,
)
"""A verdict spoken without a stop before what is done: "not acceptable that tyre comes off"."""
_LAST_FIRST = re.compile(
    r"^([^.;:]+?)[.;,]\s*(?:but |and )?before (?:that|it|this)(?:,? in (?:this|that) order)?\s*[,:]?\s+"
    r"([^.;]+)[.]?\s*$",
    re.IGNORECASE,
)
"""What comes last, told before what goes before it."""


def _bounds_put(answer: str, need: Need, texts: list[str]) -> str:
    """Return an answer with what something is above put as its statement does: "out of idle", "from a hundred on"."""
    if any("above idle" in text for text in texts):
        answer = _OUT_OF_IDLE.sub("above idle", answer)
    return _FROM_ON.sub(r"at \1 or above", answer) if "or above" in need.expected else answer


def _apart(answer: str, labels: list[str]) -> str:
    """Return an answer with a stop between two modes that are said without: "white in normal in alternate amber"."""
    one = "|".join(re.escape(label) for label in labels if label.isalpha())
    if not one:
        return answer
    return re.sub(rf"\b((?:{one})(?: mode)?)(?= (?:(?:in|with|on) )?(?:{one})\b)", r"\1,", answer, flags=re.IGNORECASE)


_AIR = re.compile(
    r"\b(?:the )?(?:wind resistance|air(?: (?:resistance|friction|itself|too))?)\b(?![- ](?:brakes?|speed|field|port))",
    re.IGNORECASE,
)
"""What slows whatever moves through it."""
_ORDINARY = re.compile(r"\b(?:the )?(?:ordinary|usual|standard|everyday) (?:mode|one|brakes?|braking)\b", re.IGNORECASE)
_UNLESS = re.compile(
    r"\b(\w+) (?:unless|as soon as|once|when|whenever|if) "
    r"(?:it(?:['’]s| is) in|it(?:['’]s| is)|(?:you|we)(?:['’]re| are) in|"
    r"(?:you|we)(?:['’]re| are| have|['’]ve)? (?:lose|lost|not in|out of)|you leave) normal(?: mode)?\b",
    re.IGNORECASE,
)
"""One for all that is not NORMAL: "amber unless it's normal", "amber as soon as you lose normal"."""
_TO_THE_BACK = re.compile(
    r"\b(?:to|towards?) the (?:rear|back|tail)\b(?! of)|(?<=folds )back\b|(?<=fold )back\b|(?<=goes )back\b|"
    r"(?<=swings )back\b|(?<=swing )back\b",
    re.IGNORECASE,
)
_INWARD = re.compile(r"\b(fold|folds|swing|swings|go|goes|tuck|tucks) in(?: ?to the belly)?\b(?! to\b)", re.IGNORECASE)
_LEFT_OVER = re.compile(r"\b(?:is )?what(?:['’]s| is) left(?: over)?\b|\bis left over\b", re.IGNORECASE)
"""What remains, and no side."""
_FROM_ON = re.compile(
    r"\bfrom ((?:(?:a|one) )?[\w.,]*\w(?: hundred)?(?: (?:kt|kts|knots))?)"
    r"(?: (?:on(?:wards?)?|upwards?|up)\b|(?= (?:you|i|we|it)\b))",
    re.IGNORECASE,
)
"""A bound from which something holds: "from a hundred on"."""
_BACK_ON = re.compile(
    r"\b(?:puts?|brings?|lets?|sets?|comes?) (?:(?:the|it|its|that|a) )?(?:brakes? |pressure )?"
    r"back(?: on| in| again)?\b|"
    r"\b(?:puts?|brakes?|presses|applies) (?:it |the brake )?(?:on )?again\b",
    re.IGNORECASE,
)
"""A brake that is put on again."""
_OUT_OF_IDLE = re.compile(r"\b(?:out of|off|past|more than|clear of) (?:the )?idle\b", re.IGNORECASE)
_NONE = re.compile(
    r"^\W*(?:none|zero|nil|0|not (?:a single )?(?:one|any)|no \w+)(?: at all| of them)?\W*$", re.IGNORECASE
)
"""A count of nothing, which says what the statement does."""


def _none_put(answer: str, need: Need) -> str:
    """Return an answer that there is none as the statement puts it, where it is asked how many or which."""
    text = need.points[0].text if need.points else ""
    if text and counts_none(need):
        answer = _NONE.sub(text, answer)
    denying = text.startswith("No ") and not any(p.state for p in need.points)
    return _NONE_LEFT.sub(text, answer) if denying and _WHICH.search(need.question.text) else answer


_WHICH = re.compile(r"\b(?:which|what)\b", re.IGNORECASE)
_NONE_LEFT = re.compile(r"^\W*(?:none|nothing|nil)(?: (?:at all|left|remaining|remains|is left|available))*\b", re.I)
_SOUNDING = r"(?:stops?|stopping|let(?:s|ting)? up|quits?|ceases?|pauses?|breaks? off)"
_UNENDING = re.compile(
    rf"\b(?:(?:that|which|and it|it) )?(?:doesn['’]?t|does not|won['’]?t|will not|never|without|no) {_SOUNDING}\b|"
    r"\bwithout (?:a )?(?:break|pause|stop|interruption)s?\b|"
    r"\b(?:uninterrupted|unbroken|non[- ]?stop|ceaseless|unceasing|never[- ]ending)\b",
    re.IGNORECASE,
)
_GOES_OFF = re.compile(
    rf"\b(?:that|which|and it|it) (?:then )?(?:{_SOUNDING}|comes and goes|goes on and off|starts and stops)\b"
    r"(?! (?:when|once|only|if|until)\b)|\b(?:interrupted|broken|on[- ]and[- ]off)(?= (?:horn|tone|sound|noise)\b)",
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
