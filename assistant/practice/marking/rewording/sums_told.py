"""How a sum comes about, told in words: "the left one takes 25 off the 40", "subtract the smaller one".

Such words name the sides of the orders and not that of their sum; what is left is no side either.
"""

from __future__ import annotations

import re

from assistant.practice.marking.points import Need

_UNITS = "one|two|three|four|five|six|seven|eight|nine"
_NUMBER = rf"(?:the |a |your )?(?:other(?: one)?(?:['’]s)?|[\w.-]+(?:[ -](?:{_UNITS}))?)"
_UNIT = r"(?: ?(?:°|deg(?:rees)?\b))?(?: (?:to (?:the )?)?(?:left|right|port|starboard))?"
_TAKES_OFF = (
    rf"\b(?:the |that |his |her |your )?(?:\w+ )?(?:one|tiller|order|side|pilot|captain|left|right|it)? ?"
    rf"(?:takes?|took|knocks?|subtracts?|cancels?) {_NUMBER}{_UNIT} (?:off|out of|from|away from|of) {_NUMBER}{_UNIT}"
    r"(?=\s*[,;.:]|\s+(?:so|and|leaving|which|that)\b)"
)
_PUTS_ON = (
    r"\b(?:the )?(?:one|first|left|right)(?: one| tiller)? takes (?:off|away|out) what the other(?: one)? "
    r"(?:puts|adds) (?:on|in)"
)
_SUBTRACTED = (
    r"\b(?:you |we |just |so )*subtract(?:ing|ed)? the (?:smaller|lesser|other|second|left|right)(?: one| order)?"
    r"(?: from the (?:bigger|larger|other|first|left|right)(?: one| order)?)?"
)
_NO_ANGLE = (
    r"\b(?:zero|nil|nothing(?: is|['’]s)? left(?: over)?|nothing|none|straight ahead|straight|"
    r"(?:they |both |which )?cancels?(?: out)?(?: each other(?: out)?| one another)?)\b(?: degrees)?"
)
_NOTHING_LEFT = r"\b(?:nothing|none|zero)(?: is|['’]s)? left(?: over)?\b"


def without_sum(answer: str, need: Need) -> str:
    """Return an answer without the words that tell how its sum comes about, where a side or an angle is asked for."""
    if not any(f.unit == "deg" and f.tolerance for p in need.points for f in p.figures):
        return answer
    nothing = any(f.unit == "deg" and not f.value for p in need.points for f in p.figures)
    if nothing and not re.search(r"\b0\b", answer):
        answer = re.sub(_NO_ANGLE, "0 degrees", answer, count=1, flags=re.IGNORECASE)
    answer = re.sub(_NOTHING_LEFT, "zero", answer, flags=re.IGNORECASE)
    for pattern in (_PUTS_ON, _TAKES_OFF, _SUBTRACTED):
        found = re.search(pattern, answer, re.IGNORECASE)
        if found and not _comes_out(found.group(), need):
            return answer
        told = re.sub(pattern, "", answer, flags=re.IGNORECASE).strip(" ,;:.")
        answer = told or answer
    return re.sub(r"^(?:so|and|which|that)\b[ ,]*", "", answer, flags=re.IGNORECASE)


def _comes_out(clause: str, need: Need) -> bool:
    """Return whether two numbers that one is taken off the other leave the sum, as far as they are in figures."""
    numbers = [float(n) for n in re.findall(r"\d+(?:\.\d+)?", clause)]
    results = [f.value for p in need.points for f in p.figures if f.unit == "deg"]
    return len(numbers) != _TWO or any(abs(abs(numbers[0] - numbers[1]) - r) < 1 for r in results)


_TWO = 2
