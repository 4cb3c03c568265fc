"""Ways of putting forward what one holds to be so, before it is said: "is it true that …", "I seem to remember …".

What stands before the statement is no part of it, so that what is stated can be looked at alone: whether a figure is
said to be what is named, or a reading is given that wants a verdict.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

_FIRST = (
    r"(?:(?:so|but|and|ok|okay|well|um|er|wait|sorry|hm|hmm|please|just|hey|right|look|listen"
    r"|hang on|hold on) (?:, )?)*"
)
_RIGHT = r"(?:right|correct|true|wrong|mistaken|accurate|valid|fair|safe)"
_SAYING = (
    r"(?:thinking|think|saying|say|believing|believe|assuming|assume|remembering|remember|recalling|recall|understanding"
    r"|understand|stating|state|claiming|claim|supposing|suppose|reckoning|reckon)"
)
_WHO = (
    r"(?:i|we|you|he|she|they|somebody|someone|everybody|everyone|people"
    r"|(?:my|our|the|a|another|this|one of)(?: \w+){1,4})"
)
_BELIEVES = (
    r"(?:thought|think|thinks|believe|believed|believes|says|said|reckon|reckons|heard|read|was told|were told"
    r"|told me|told us|told|learned|learnt|remember|remembered|recall|was taught|were taught|taught me|taught us"
    r"|claims|claimed|insists|swears|am sure|is sure|are sure|guess|assume|assumed|understood|maintains|argues"
    r"|had it as|have it that|is adamant|am certain|is certain|is convinced|am convinced|seem to remember"
    r"|seem to recall|bet|would say|figure|keep hearing|keeps saying)"
)
_IS_IT = r"(?:is|was) it (?:not )?(?:really |still |also |indeed |actually )?"
_FRAMES = (
    rf"^{_FIRST}(?:"
    rf"{_IS_IT}(?:{_RIGHT}|a fact|the case|so)(?: to {_SAYING})?(?: that)?"
    rf"|(?:am|are|was) (?:i|we) (?:not )?{_RIGHT}(?: (?:in|to) {_SAYING})?(?: that)?"
    rf"|(?:would|will) (?:i|we|it|that) be {_RIGHT}(?: (?:in|to) {_SAYING})?(?: that)?"
    rf"|(?:true or false|fact or fiction|right or wrong|correct me if i am wrong)(?: ,)?(?: but)?"
    rf"|(?:do|would|can|could|will) you (?:agree|confirm)(?: that)?"
    rf"|(?:could|might|may) it be (?:{_RIGHT} )?that"
    r"|according to (?:my|our|the|his|her|their|some|a) \w+(?: \w+)??(?= ,| the| our| a)"
    rf"|(?:to )?(?:confirm|double check|check)(?: that)"
    rf"|{_WHO}(?: \w+ly)? (?:(?:have|had|always|still|once|also|do|did) )?{_BELIEVES}(?: that)?"
    r") (?::|,)? ?"
)


def statement_start(words: Sequence[str]) -> int:
    """Return the place of the first word of what is put forward; 0 where nothing says that something is."""
    found = re.match(_FRAMES, " ".join(words[:16]) + " ")
    return len(found[0].split()) if found else 0


def is_put_forward(words: Sequence[str]) -> bool:
    """Return whether a text says that something is held to be so, as "so … then?", "right, …?" and "… agreed?" do."""
    said = [word for word in words if word[0].isalnum()]
    ends = said[-1:] == ["then"] or words[-1:] in (("?",), ["?"])
    return statement_start(words) > 0 or said[-1:] == ["agreed"] or (said[:1] in (["so"], ["right"]) and ends)
