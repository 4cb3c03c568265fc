"""Words that steer the conversation rather than ask: say again, why, where it says so, correction, dispute.

The patterns are compiled when one is first tried, and tried only on a text that holds a word which all of its
alternatives need: a question asked from the command line compiles next to none of them.
"""

from __future__ import annotations

import re

from assistant.conversation.controls_by_words import control_by_words

_FLAGS = re.IGNORECASE | re.DOTALL
_LEAD = (
    r"^(?:ok(?:ay)?|right|fine|sorry|please|and|so|um+|er+|uh+|well|hang on|wait|no wait|hm+|but|yeah|yes|hold on)?"
    r"[\s,.]*"
)
_TAIL = (
    r"(?:\s+(?:please|then|mate|now|again|though|exactly|so|thanks|captain|is (?:that|it)|sorry))*"
    r"[\s?.!]*$"
)

_AGAIN = (
    r"(?:i )?say (?:that |it |all )?again(?: all| your last| that| the last one)?",
    r"repeat(?: that| it| your last| the last)?",
    r"come again",
    r"once more",
    r"one more time",
    r"again",
    r"(?:can|could|would|will) you (?:repeat|say)(?: that| it)?(?: again)?",
    r"what was that",
    r"pardon",
    r"what did you say",
    r"say that once more",
    r"i didn.?t (?:catch|get) that",
    r"missed that",
    r"i missed that",
    r"read (?:that )?back",
    r"words twice",
    r"speak slower",
)
_WHY = (
    r"why(?: is (?:that|it|this)| not| so| does it| does that happen| would (?:that|it) be| though|s that)?",
    r"how come",
    r"for what reason",
    r"what.?s the reason(?: for that)?",
    r"what is the reason(?: for that)?",
    r"reason",
    r"explain(?: that| why)?",
    r"how so",
    r"why (?:is|does|do|should) (?:it|that|this)(?: be)?(?: so| happen| the case| like that)?",
)
_SOURCE = (
    r"where(?: exactly)?(?:.?s| is| was| does| do| did)? ?(?:it|that|they|this|you)?(?: it)? ?"
    r"(?:say|says|written|from|come from|stated|said|get|published|find|found|get that from|come|you get)?"
    r"(?: all)?(?: that| this| it| from| so)*"
    r"(?: written| from| stated| said| in the (?:book|books|manual|manuals))?",
    r"says who",
    r"who says(?: so| that)?",
    r"(?:what.?s|what is|what was) (?:the|your) (?:source|reference|ref)(?: for that)?",
    r"source",
    r"reference",
    r"(?:which|what) (?:manual|document|book|paragraph|para|page|section|revision|reference)"
    r"(?: is (?:that|it)(?: in| from)?| says (?:so|that)"
    r"|(?: has| have| covers| tells| states| gives)(?: me)? (?:that|it|this)| and paragraph)?"
    r"(?: is that)?(?: in)?",
    r"according to (?:who|what|whom)",
    r"chapter and verse",
    r"paragraph",
    r"on whose authority",
    r"(?:give|show|quote|tell) me (?:the|your|a|that) (?:reference|source|paragraph|ref|para)",
    r"where can i (?:find|read|look up|check|verify) (?:that|it|this)",
    r"where ?(?:.?d| did| do) you (?:get|find|read|have) (?:that|it|this)(?: from)?",
    r"(?:have you |you have |you )?(?:got|any) (?:a |the )?(?:reference|ref|source|paragraph|page)"
    r"(?: for (?:that|it|this))?",
    r"whose (?:rule|limit|policy|number|figure|idea|word) (?:is|was) (?:it|that|this)",
    r"where (?:is|was|are) (?:that|this|the|those) (?:rule|limit|figure|number|value|policy|item|bit|one)s?"
    r"(?: written| from| stated)?",
    r"(?:from )?where (?:is|does|did|do) (?:that|it|this|they)(?: come)?(?: from)?",
    r"(?:(?:could|can|would|will) you )?(?:point|direct|take|send) me"
    r" to (?:the|its|that) (?:paragraph|page|source|reference|text)",
    r"(?:is )?(?:that|it|this) (?:is )?(?:from|in) (?:which|what) (?:manual|document|book|paragraph|page)",
    r"(?:is that|that.?s|is it) (?:actually |really )?(?:in the|from the|an?)"
    r" (?:book|manual|official|company)(?: rule| limit)?",
    r"what.?s (?:that|it) (?:based on|from)",
    r"(?:which|what) (?:paragraph|page|section|chapter) (?:would|should|do) (?:i|we)"
    r" (?:look|read|open)(?: in| at| up)?",
    r"cite(?: that| it)?",
    r"(?:which|what) (?:doc|document|manual) (?:says|is) (?:that|it|so)(?: from| in)?",
    r"how do you know(?: that)?",
    r"prove it",
    r"where (?:would|do|could|can) (?:i|you|we) (?:find|read|see) (?:that|it|this)(?: written)?",
)
_DISREGARD = (
    r"disregard(?: that| it| my last| the last| all)?",
    r"forget (?:that|it|i asked|about it)",
    r"never ?mind(?: that)?",
    r"cancel that",
    r"scrub that",
    r"ignore (?:that|my last)",
)
_UNDISPUTE = (
    r"(?:clear|withdraw|cancel|lift|drop|remove|undo) (?:the |that |this |my |all |every |of )*"
    r"(?:dispute[sd]?(?: records?)?)(?: (?:number |no\.? |on )?(?:\d+|that|it|this))?",
    r"dispute (?:cleared|withdrawn|resolved|over)",
    r"undispute",
)
_DISPUTES = (
    r"(?:(?:list|show|tell me|give me|read|my|the|all|any|open|of) )*"
    r"(?:disputes|disputed (?:records?|answers?|ones|limits?|facts?))",
)
_DISPUTING = (
    r"(?:i )?(?:want to |would like to |wish to |need to )?dispute(?:d)?"
    r"(?: (?:(?:that|this|the|your|the last) (?:answer|record|limit|figure|value|number|one)|that|it|this))?"
)
_DISPUTE = (rf"{_DISPUTING}(?:[:,\s].*)?",)
_THANKS = (
    r"thanks?(?: you| a lot| very much)?",
    r"cheers|ta|roger|wilco|copied|got it|understood|ok(?:ay)?|affirm(?:ative)?|noted|great|good|perfect|nice one",
    r"all copied",
)

_CONTROLS = (
    ("again", _AGAIN, (
        "again", "repeat", "once more", "one more", "say", "what was that", "pardon", "catch", "get that", "missed",
        "back", "twice", "slower",
    )),
    ("why", _WHY, ("why", "how come", "reason", "explain", "how so")),
    ("source", _SOURCE, (
        "where", "says", "source", "ref", "manual", "doc", "book", "para", "page", "section", "revision", "according",
        "chapter", "authority", "cite", "you know", "prove", "whose", "based", "from", "official", "company",
    )),
    ("disregard", _DISREGARD, ("disregard", "forget", "mind", "cancel", "scrub", "ignore")),
    ("undispute", _UNDISPUTE, ("dispute",)),
    ("disputes", _DISPUTES, ("dispute",)),
    ("dispute", _DISPUTE, ("dispute",)),
    ("thanks", _THANKS, (
        "thank", "cheers", "ta", "roger", "wilco", "copied", "got it", "understood", "ok", "affirm", "noted", "great",
        "good", "perfect", "nice one",
    )),
)  # fmt: skip
"""(control, alternatives, pieces): every text that an alternative fits holds a piece; the first that fits counts."""

_LONGEST = 300
"""Characters of a control; only what is said of a dispute may be longer."""

_CORRECTION = (
    r"^\s*(?:(?:disregard|ignore|forget|scrub)(?: that| it)?[,.;:\s]+(?=.*\d)(?:(?:i mean(?:t)?|make it|make that)\s+)?"
    r"|(?:no[,.\s]+|sorry[,.\s]+|wait[,.\s]+|ah[,.\s]+|oops[,.\s]+|actually[,.\s]+|hang on[,.\s]+|oh[,.\s]+)*"
    r"(?:correction|i mean(?:t)?(?: to say)?|make that|that should (?:be|have been|read)|i should have said|rather"
    r"|scratch that|not that|let me rephrase|should be)\b[\s,:.]*)"
)
_CORRECTING = (
    "correction", "i mean", "make that", "should", "rather", "scratch that", "not that", "rephrase", "disregard",
    "ignore", "forget", "scrub",
)  # fmt: skip
_FOLLOWS = (
    r"^\s*(?:ok(?:ay)?[,.\s]+|right[,.\s]+|so[,.\s]+|well[,.\s]+|alright[,.\s]+|hm+[,.\s]+|um+[,.\s]+|yes[,.\s]+)*"
    r"(?:and|what about|how about|what if|but|or|then|now|same|also|plus|with|without|instead|at|from|on|in|for|if"
    r"|still|suppose|say|assuming|only)\b"
)
_ABOUT = r"^\W*(?:\w+\W+)?(?:what|how) about\b"
_PLACE = r"^\W*(?:and |so |ok )*where(?:'?s| is| are) (?:it|they|those)(?: (?:located|found|fitted))?\W*$"
_WHEN = r"^\W*(?:and |so |ok )*when(?: is (?:that|this)| exactly| does (?:it|that|this) (?:happen|come about))?\W*$"
_CHOICE = (
    r"^\s*(?:(?:the|number|option|choice|no|pick|take|give me|go for|i mean|i want|show me|let.?s have)\.?\s+)*"
    r"(\d+|[a-z0-9]+)"
    r"(?:\s+(?:one|please|choice|option))*[\s.!]*$"
)
_YES = r"^\W*(?:yes|yeah|yep|affirm(?:ative)?|right|correct|that one|exactly|i do|ok(?:ay)?)(?: please| that)?\W*$"
_ORDINALS = {
    "one": 1, "first": 1, "1st": 1, "two": 2, "second": 2, "2nd": 2, "three": 3, "third": 3, "3rd": 3,
}  # fmt: skip


def control(text: str, told: frozenset[str] = frozenset()) -> str:
    """Return the control that a turn is, or ""; told: words for what was told last."""
    text = text.strip()
    if len(text) > _LONGEST:
        return "dispute" if re.match(rf"{_LEAD}{_DISPUTING}\b", text, _FLAGS) else ""
    for name, alternatives, pieces in _CONTROLS:
        if _may_hold(text, pieces) and re.match(f"{_LEAD}(?:{'|'.join(alternatives)}){_TAIL}", text, _FLAGS):
            return name
    return control_by_words(text, told)


def dispute_note(text: str) -> str:
    """Return what a turn says of what it disputes: all that follows the words by which it does so."""
    rest = re.sub(f"{_LEAD}{_DISPUTING}", "", text.strip(), count=1, flags=_FLAGS).strip(" ,.:;-\u2013\u2014\n\t")
    return "" if re.fullmatch(_TAIL, f" {rest}".rstrip(), _FLAGS) else rest


def _may_hold(text: str, pieces: tuple[str, ...]) -> bool:
    """Return whether a pattern that needs one of the pieces is worth trying.

    Outside ASCII, letters match without regard to case that differ in lower case too: there it always is.
    """
    lower = text.lower()
    return not text.isascii() or any(piece in lower for piece in pieces)


def corrected(text: str) -> str | None:
    """Return what follows the words by which a turn corrects the last ("no, I meant …"), or None without them."""
    found = re.match(_CORRECTION, text, re.IGNORECASE) if _may_hold(text, _CORRECTING) else None
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
    named = options if word == "last" else _ORDINALS.get(word, 0)
    number = int(word) if word.isdigit() and len(word) < 3 else named
    return number - 1 if 1 <= number <= options else None
