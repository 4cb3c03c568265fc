"""The words that steer a conversation by ear: those of radiotelephony, and the plain ones that people use.

SAY AGAIN, SPEAK SLOWER, WORDS TWICE, STANDBY, DISREGARD, CONFIRM, AFFIRM, NEGATIVE and READ BACK are phrases of ICAO
Annex 10 Volume II, 5.2.1.5.8. CORRECTION goes on with what is meant instead, so it is a turn of its own.
"""

from __future__ import annotations

import re

AGAIN, SLOWER, FASTER, TWICE, STANDBY, DISREGARD = "again", "slower", "faster", "twice", "standby", "disregard"
CONFIRM, AFFIRM, NEGATIVE, READ_BACK, PASS, STOP = "confirm", "affirm", "negative", "read back", "pass", "stop"
HELP, LOADED, LOUDNESS = "help", "loaded", "loudness"
ONWARD, USUAL_PACE, GREETING, REHEARSE = "onward", "usual pace", "greeting", "rehearse"

SAID = {
    AGAIN: ("say again", "again", "repeat", "say that again", "once more", "pardon", "come again"),
    SLOWER: ("speak slower", "slower", "slow down", "too fast"),
    FASTER: ("speak faster", "faster", "too slow", "quicker"),
    TWICE: ("words twice", "say words twice", "say it twice"),
    STANDBY: ("standby", "stand by", "wait", "hang on", "hold on", "one moment", "wait a moment", "let me think"),
    DISREGARD: ("disregard", "never mind", "forget it", "forget that", "cancel that"),
    CONFIRM: ("confirm", "are you sure", "confirm that"),
    AFFIRM: ("affirm", "affirmative", "yes", "yes please", "correct", "yeah", "yep", "that is right", "that's right"),
    NEGATIVE: ("negative", "no", "nope", "no that is wrong", "wrong", "not that"),
    READ_BACK: ("read back", "what did you hear", "what did i say", "read that back"),
    PASS: ("pass", "don't know", "i don't know", "no idea", "i have no idea", "skip", "skip it", "i do not know",
           "dunno", "i can't remember", "i give up"),
    HELP: (
        "help", "help me", "what can i say", "what can i ask", "what can you do", "which questions can i ask",
        "which words can i say",
    ),
    ONWARD: ("next", "next one", "continue", "carry on", "go on", "go ahead", "keep going"),
    USUAL_PACE: ("normal speed", "normal pace", "back to normal speed", "speak normally"),
    GREETING: (
        "hello", "hello there", "good morning", "good evening", "i have a question", "can you hear me",
        "are you there", "are you listening",
    ),
    REHEARSE: (
        "quiz me", "rehearse", "test me", "ask me a question", "ask me something", "ask me questions",
        "let us rehearse", "let's rehearse", "let me rehearse", "start a rehearsal", "i want to rehearse",
    ),
    LOADED: ("what is loaded", "what's loaded", "what do you have loaded"),
    LOUDNESS: ("louder", "speak louder", "speak up", "quieter", "too loud", "too quiet"),
    STOP: ("stop", "stop now", "end", "finish", "goodbye", "good bye", "that is all", "that's all", "enough", "quit"),
}  # fmt: skip
"""Each control with what is said for it; the first is the one that is told."""
TOLD = (AGAIN, SLOWER, FASTER, TWICE, STANDBY, DISREGARD, CONFIRM, READ_BACK, PASS, REHEARSE, STOP)
"""The controls that are told to somebody who asks what may be said."""

_EASY, _CAREFUL, _STRICT, _EXPECTED = (-6.0, -9.0), (-4.5, -7.5), (-4.0, -5.5), (-5.5, -8.5)
"""How well a phrase must fit: heard by one recogniser alone, and where a second heard the same."""
_LEAST = {
    STANDBY: _CAREFUL, DISREGARD: _CAREFUL, PASS: _CAREFUL, AFFIRM: _STRICT, NEGATIVE: _STRICT, STOP: _STRICT,
    REHEARSE: _CAREFUL, ONWARD: _CAREFUL, GREETING: _CAREFUL, USUAL_PACE: _CAREFUL, SLOWER: _CAREFUL, FASTER: _CAREFUL,
}  # fmt: skip
"""The controls that must fit better than those that only say something again, which are easy."""
_UNEXPECTED = 1.0
"""What a phrase that nothing leads to expect is worth less, as a natural logarithm."""

_NEVER_EXPECTED = frozenset({STOP, PASS, ONWARD, GREETING, REHEARSE})
"""Controls that nothing but what is said itself leads to expect."""

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


def least_fit(phrase: str, pending: bool, agreed: bool) -> float:
    """Return how well a phrase must fit a sound to be taken: the natural logarithm of its probability.

    What ends, affirms or drops something must fit better than what only says it again. pending: whether something is
    to be affirmed. agreed: whether a second recogniser heard the same phrase.
    """
    control = _BY_PHRASE.get(phrase, "")
    alone, with_another = _LEAST.get(control, _EASY)
    if pending and control in (AFFIRM, NEGATIVE):
        alone, with_another = _EXPECTED
    return with_another if agreed else alone


def surprise(phrase: str, pending: bool) -> float:
    """Return what a phrase is worth less than another that fits as well, because nothing leads to expect it."""
    control = _BY_PHRASE.get(phrase, "")
    return _UNEXPECTED if control in _NEVER_EXPECTED or (control in (AFFIRM, NEGATIVE) and not pending) else 0.0
