"""Words that steer the conversation rather than ask: say again, why, where it says so, correction, dispute.

The patterns are compiled when one is first tried, and tried only on a text that holds a word which all of its
alternatives need: a question asked from the command line compiles next to none of them.
"""

from __future__ import annotations

import re

from assistant.conversation.control_words.bare_words import as_steering
from assistant.conversation.control_words.control_phrases import CONTROLS, DISPUTING
from assistant.conversation.control_words.controls_by_words import control_by_words

_FLAGS = re.IGNORECASE | re.DOTALL
_LEAD = (
    r"^(?:ok(?:ay)?|right|fine|sorry|please|and|so|um+|er+|uh+|well|hang on|wait|no wait|hm+|but|yeah|yes|hold on)?"
    r"[\s,.]*"
)
_TAIL = (
    r"(?:\s+(?:please|then|mate|now|again|though|exactly|so|thanks|captain|is (?:that|it)|sorry))*"
    r"[\s?.!]*$"
)

_LONGEST = 300
"""Characters of a control; only what is said of a dispute may be longer."""

_NUMBER = (
    r"(?:\d|\b(?:two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen"
    r"|eighteen|nineteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred)\b)"
)
_CORRECTION = (
    r"^\s*(?:(?:no[,.\s]+|sorry[,.\s]+|wait[,.\s]+|ah[,.\s]+|oops[,.\s]+|actually[,.\s]+|oh[,.\s]+)*"
    r"(?:disregard|ignore|forget|scrub|scrap|cancel|never ?mind)(?: (?:that|it|my last))?"
    rf"(?:[,.;:\s]+(?=.*{_NUMBER})|[,.;:]+\s*(?=\S)|[,.;:\s]+(?=i mean|make (?:it|that)|say\b|use\b))"
    r"(?:(?:i mean(?:t)?|make it|make that)\s+)?"
    r"|(?:no[,.\s]+|sorry[,.\s]+|wait[,.\s]+|ah[,.\s]+|oops[,.\s]+|actually[,.\s]+|hang on[,.\s]+|oh[,.\s]+)*"
    r"(?:correction|i mean(?:t)?(?: to say)?|make that|that should (?:be|have been|read)|i should have said|rather"
    r"|scratch that|not that|let me rephrase|should be)\b[\s,:.]*)"
)
_CORRECTING = (
    "correction", "i mean", "make that", "should", "rather", "scratch that", "not that", "rephrase", "disregard",
    "ignore", "forget", "scrub", "scrap", "cancel", "mind",
)  # fmt: skip
_FOLLOWS = (
    r"^\s*(?:ok(?:ay)?[,.\s]+|right[,.\s]+|so[,.\s]+|well[,.\s]+|alright[,.\s]+|hm+[,.\s]+|um+[,.\s]+|yes[,.\s]+)*"
    r"(?:and|what about|how about|what if|but|or|then|now|same|also|plus|with|without|instead|at|from|on|in|for|if"
    r"|still|suppose|say|assuming|only)\b"
)
_ABOUT = r"^\W*(?:\w+\W+)?(?:what|how) about\b"
_PLACE = (
    r"^\W*(?:and |so |ok )*where(?:(?:'?s| is| are) (?:it|they|those)(?: (?:located|found|fitted))?"
    r"|(?: (?:do|can|would|will|should|could))? (?:i|you|we) (?:find|see|spot) (?:it|them|one|those))\W*$"
)
_WHEN = r"^\W*(?:and |so |ok )*when(?: is (?:that|this)| exactly| does (?:it|that|this) (?:happen|come about))?\W*$"
_CHOICE = (
    r"^\s*(?:(?:and|then|so|ok(?:ay)?|what(?:.s| is| was| about)?|how about|tell me|say)[,.]?\s+)*"
    r"(?:(?:the|number|option|choice|no|pick|take|give me|go for|i mean|i want|show me|let.?s have)\.?\s+)*"
    r"(\d+|[a-z0-9]+)"
    r"(?:\s+(?:one|please|choice|option|then))*[\s.!?]*$"
)
_YES = r"^\W*(?:yes|yeah|yep|affirm(?:ative)?|right|correct|that one|exactly|i do|ok(?:ay)?)(?: please| that)?\W*$"
_compiled: dict[str, re.Pattern[str]] = {}
"""The patterns of controls tried so far, by the names of these."""
_MOST_OFFERED = 3
"""Choices of which two are told by ear, and the other one only when it is asked for."""
_ORDINALS = {
    "one": 1, "first": 1, "1st": 1, "two": 2, "second": 2, "2nd": 2, "three": 3, "third": 3, "3rd": 3,
}  # fmt: skip


def control(text: str, told: frozenset[str] = frozenset()) -> str:
    """Return the control that a turn is, or ""; told: words for what was told last."""
    text = text.strip()
    if len(text) > _LONGEST:
        return "dispute" if re.match(rf"{_LEAD}{DISPUTING}\b", text, _FLAGS) else ""
    return next((name for said in as_steering(text) if (name := _control(said, told))), "")


def _control(text: str, told: frozenset[str]) -> str:
    lower = _lower(text)
    for name, alternatives, pieces in CONTROLS:
        if _may_hold(lower, pieces) and _pattern(name, alternatives).match(text):
            return name
    return control_by_words(text, told)


def _pattern(name: str, alternatives: tuple[str, ...]) -> re.Pattern[str]:
    """Return what the turns of a control fit; kept, as to write it anew takes longer than to try it."""
    found = _compiled.get(name)
    if found is None:
        found = _compiled[name] = re.compile(f"{_LEAD}(?:{'|'.join(alternatives)}){_TAIL}", _FLAGS)
    return found


def dispute_note(text: str) -> str:
    """Return what a turn says of what it disputes: all that follows the words by which it does so."""
    rest = re.sub(f"{_LEAD}{DISPUTING}", "", text.strip(), count=1, flags=_FLAGS).strip(" ,.:;-\u2013\u2014\n\t")
    return "" if re.fullmatch(_TAIL, f" {rest}".rstrip(), _FLAGS) else rest


def _lower(text: str) -> str | None:
    """Return a text as pieces of patterns are looked for in it, or None where the lack of them rules nothing out.

    Outside ASCII, letters match without regard to case that differ in lower case too.
    """
    return text.lower() if text.isascii() else None


def _may_hold(lower: str | None, pieces: tuple[str, ...]) -> bool:
    """Return whether a pattern that needs one of the pieces is worth trying on a text in lower case."""
    if lower is None:
        return True
    for piece in pieces:  # noqa: SIM110  for a dozen pieces of every turn, a generator takes twice as long
        if piece in lower:
            return True
    return False


def corrected(text: str) -> str | None:
    """Return what follows the words by which a turn corrects the last ("no, I meant …"), or None without them."""
    found = re.match(_CORRECTION, text, re.IGNORECASE) if _may_hold(_lower(text), _CORRECTING) else None
    return text[found.end() :] if found else None


def follows(text: str) -> bool:
    """Return whether a turn opens as a continuation of the last: "and at 90", "what about …"."""
    return bool(re.match(_FOLLOWS, text[:80], re.IGNORECASE))


def asks_about(text: str) -> bool:
    """Return whether a turn opens with "what about" or "how about"."""
    return bool(re.match(_ABOUT, text, re.IGNORECASE))


def asks_place(text: str) -> bool:
    """Return whether a turn asks where the thing spoken of is: "where is it?"."""
    return bool(re.match(_PLACE, text, re.IGNORECASE))


def asks_when(text: str) -> bool:
    """Return whether a turn asks no more than when what was told happens."""
    return bool(re.match(_WHEN, text[:80], re.IGNORECASE))


def choice(text: str, options: int) -> int | None:
    """Return the index of the offered choice that a turn names by its number, or None."""
    if options == 1 and re.match(_YES, text, re.IGNORECASE):
        return 0
    found = re.match(_CHOICE, text, re.IGNORECASE)
    if not found:
        return None
    word = found.group(1).lower()
    named = options if word == "last" or (word == "other" and options == _MOST_OFFERED) else _ORDINALS.get(word, 0)
    number = int(word) if word.isdigit() and len(word) < 3 else named
    return number - 1 if 1 <= number <= options else None
