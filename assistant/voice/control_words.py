"""The words that steer a conversation by ear: those of radiotelephony, and the plain ones that people use.

SAY AGAIN, SPEAK SLOWER, WORDS TWICE, STANDBY, DISREGARD, CONFIRM, AFFIRM, NEGATIVE and READ BACK are phrases of ICAO
Annex 10 Volume II, 5.2.1.5.8. CORRECTION goes on with what is meant instead, so it is a turn of its own.
"""

from __future__ import annotations

import re

AGAIN, SLOWER, TWICE, STANDBY, DISREGARD = "again", "slower", "twice", "standby", "disregard"
CONFIRM, AFFIRM, NEGATIVE, READ_BACK, PASS, STOP = "confirm", "affirm", "negative", "read back", "pass", "stop"

SAID = {
    AGAIN: ("say again", "again", "repeat", "say that again", "once more", "pardon", "come again"),
    SLOWER: ("speak slower", "slower", "slow down", "too fast"),
    TWICE: ("words twice", "say words twice", "say it twice"),
    STANDBY: ("standby", "stand by", "wait", "hang on", "hold on", "one moment", "wait a moment"),
    DISREGARD: ("disregard", "never mind", "forget it", "forget that", "cancel that"),
    CONFIRM: ("confirm", "are you sure", "confirm that"),
    AFFIRM: ("affirm", "affirmative", "yes", "yes please", "correct", "yeah", "yep", "that is right", "that's right"),
    NEGATIVE: ("negative", "no", "nope", "no that is wrong", "wrong", "not that"),
    READ_BACK: ("read back", "what did you hear", "what did i say", "read that back"),
    PASS: ("pass", "don't know", "i don't know", "no idea", "skip", "next", "skip it", "i do not know", "dunno"),
    STOP: ("stop", "stop now", "end", "finish", "goodbye", "good bye", "that is all", "that's all", "enough", "quit"),
}
"""Each control with what is said for it; the first is the one that is told."""
_LEAD = re.compile(r"^(?:ok(?:ay)?|please|and|so|um+|er+|uh+|well|right)\s+")
_TAIL = re.compile(r"\s+(?:please|thanks|thank you|now|then)$")
_BY_PHRASE = {phrase: control for control, phrases in SAID.items() for phrase in phrases}


def control_word(text: str) -> str:
    """Return the control that a text is as a whole, or ""."""
    plain = " ".join(re.sub(r"[^\w' ]", " ", text.lower().replace("’", "'").replace("-", " ")).split())
    bare = _TAIL.sub("", _LEAD.sub("", plain))
    return _BY_PHRASE.get(plain) or _BY_PHRASE.get(bare, "")


def phrases(*controls: str) -> tuple[str, ...]:
    """Return all that may be said for some controls, or for every one."""
    return tuple(phrase for control in controls or SAID for phrase in SAID[control])
