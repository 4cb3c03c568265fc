"""The words that steer a sitting, typed as they are spoken: those of radiotelephony, and the plain ones people use.

SAY AGAIN, STANDBY, UNABLE, CORRECTION and DISREGARD are phrases of ICAO Annex 10 Volume II, 5.2.1.5.8. A word steers
only where it is all that was said; within a sentence it belongs to the answer.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from assistant.frozen import NamedTuple
from assistant.practice.marking.reading.corrected import corrected as items_corrected
from assistant.practice.recall import MARKS, MISSED, PARTLY, RIGHT, WRONG

AGAIN, STANDBY, UNABLE, PASS, DISREGARD, HINT = "again", "standby", "unable", "pass", "disregard", "hint"
WHY, SOURCE, OVERRULE, HELP, STOP, GO = "why", "source", "overrule", "help", "stop", "go"
THEN, CORRECTION, DISPUTE, STANDING = "then", "correction", "dispute", "standing"
YES, NO = "yes", "no"

SAID: Mapping[str, tuple[str, ...]] = {
    AGAIN: ("say again", "again", "repeat", "say that again", "once more", "pardon", "come again", "repeat that",
            "read it again", "what was the question", "repeat the question", "say again the question"),
    STANDBY: ("standby", "stand by", "wait", "hang on", "hold on", "one moment", "wait a moment", "pause", "wait one"),
    UNABLE: ("unable",),
    PASS: ("pass", "don't know", "i don't know", "no idea", "skip", "skip it", "skip this", "i do not know", "dunno",
           "do not know", "no clue", "not a clue", "i pass", "give up", "i give up", "?", "dk", "idk", "next one",
           "next question", "i have no idea", "can't remember", "i can't remember", "forgotten", "i forgot"),
    DISREGARD: ("disregard", "never mind", "forget it", "forget that", "cancel that", "scratch that"),
    HINT: ("hint", "a hint", "clue", "a clue", "help me", "give me a hint", "prompt", "a little help", "tip"),
    WHY: ("why", "why is that", "why so", "explain", "explain that", "the reason", "reason", "how come", "why not"),
    SOURCE: ("where does it say that", "source", "says who", "which paragraph", "paragraph", "reference"),
    HELP: ("help", "what can i say", "commands", "h"),
    STOP: ("stop", "end", "finish", "finished", "quit", "exit", "bye", "goodbye", "good bye", "that is all",
           "that's all", "enough", "done", "stop now", "stop the sitting", "q", "out"),
    GO: ("", "next", "go on", "go ahead", "continue", "carry on", "ok", "okay", "proceed", "n", "ready", "resume"),
    THEN: ("and then", "then what", "what then", "and now", "what next", "and next", "what now", "and what then",
           "next", "go on", "and", "so"),
    DISPUTE: ("dispute", "dispute it", "dispute that", "dispute this", "i dispute that", "i dispute this",
              "i dispute it"),
    STANDING: ("how long have i got", "how many left", "how many are left", "how many more", "how many to go",
               "how many questions left", "how many questions are left", "how many more questions", "how much longer",
               "how much time", "how much time is left", "how much time have i got", "how long still", "how long to go",
               "how far", "how far am i", "how am i doing", "how did i do", "score", "my score",
               "what is my score", "what's my score", "am i nearly done", "how much is left", "progress"),
    CORRECTION: ("correction", "i correct", "correct that", "my mistake", "i mean", "no wait"),
    YES: ("yes", "y", "affirm", "affirmative", "yes please", "yeah", "yep", "sure"),
    NO: ("no", "n", "negative", "nope", "no thanks", "no thank you", "not now"),
}  # fmt: skip
"""Each control with what is said for it; the first is the one that is told."""
MARK_WORDS: Mapping[str, tuple[str, ...]] = {
    RIGHT: ("right", "r", "correct", "yes", "full", "all right", "i was right"),
    PARTLY: ("partly", "p", "part", "partial", "half", "partially", "partly right", "half right", "in part"),
    WRONG: ("wrong", "w", "incorrect", "not right", "i was wrong"),
    MISSED: ("missed", "m", "miss", "not known", "did not know", "didn't know"),
}
_LEAD = re.compile(r"^(?:(?:please|and|so|but|um+|er+|uh+|well|sorry|ah|oh)\s+)+")
_TAIL = re.compile(r"(?:\s+(?:please|thanks|thank you|now|then|sorry))+$")
_OVERRULE = re.compile(r"(?:i )?(?:overrule|over rule|overruled|i disagree|disagree|mark it|mark that|that was|it was)"
                       r"(?: (?:it|that|the mark))?(?: (?:as|to))?(?: (.+))?")  # fmt: skip
_CORRECTION = re.compile(r"\bcorrection\b[\s,:.;-]*", re.IGNORECASE)
_DROPPED = re.compile(r"[\s,;.]+(?:disregard|scratch that|cancel that)[\s.!]*$", re.IGNORECASE)


_LED_IN = r"(?:(?:and|but|so|ok|okay|wait|sorry|hm+|er+),? )*"
_ASKS = re.compile(
    rf"{_LED_IN}(?:what|which|when|where|who|why|how|do|does|is|are|can|may|must)\b.* .*\?\s*$", re.IGNORECASE
)
_NOT_YET = re.compile(
    r"(?:(?:u+h+|u+m+|e+r+m?|h+m+|ah+|let me (?:think|see)|give me a (?:second|sec|moment|minute))\b[\s.,…!?-]*+"
    r"|[.…-]++\s*+)*+"
    r"(?:(?:and |but )?i (?:think|believe|guess)\b[\s.,…]*+)?(?:(?:it|that)'s|the answer is)?[\s.,…]*",
    re.IGNORECASE,
)
"""No answer yet. "It is" alone is one: it says yes."""
_GOES_ON = re.compile(r"(?:so )?(?:and|but) (?:now|then|if)(?: \S+){3,}\?\s*$", re.IGNORECASE)
"""One more failure put to the examiner: "and now System 1 goes?"."""
_BEING = r"(?:is|are|was|were|do|does|did|has|have|can|may|must|would|'s)"
_ASKS_BARELY = re.compile(
    rf"{_LED_IN}(?:what(?:'s| {_BEING}| happens| about| if)|who(?:'s| {_BEING})|where(?:'s| {_BEING})|why {_BEING}"
    rf"|how (?:do|does|did|can|is|are)|how (?:long|many|much|fast|far|high|hot) (?:\w+ ){{0,2}}{_BEING}"
    r"|when (?:do|does|did|can|may|must)"
    rf"|which (?:\w+ ){{1,3}}{_BEING}|(?:can|may|must|do|should|could|would) (?:i|you|we)"
    r"|(?:tell|remind|explain to|show) me|i (?:do not|don't) understand)\b.*\w",
    re.IGNORECASE,
)
"""What opens as a question and could begin no answer, so that it needs no sign of one at its end."""


class Control(NamedTuple):
    """What steers: one of the controls, and what was said with it ("right" of "overrule right")."""

    name: str
    rest: str = ""


def plain(text: str) -> str:
    """Return a text as it is compared: small letters, single spaces, no punctuation but apostrophes and "?" alone."""
    if text.strip() == "?":
        return "?"
    kept = re.sub(r"[^\w' ]", " ", text.lower().replace("’", "'").replace("-", " "))
    return " ".join(kept.split())


def control_of(text: str, among: tuple[str, ...] = (), said: Mapping[str, tuple[str, ...]] = SAID) -> Control | None:
    """Return the control that a text is as a whole, or None: then it is an answer.

    among: the controls that have a meaning now, the first ones win where two are said alike; by default all.
    """
    words = plain(text)
    bare = _TAIL.sub("", _LEAD.sub("", words))
    wanted = among or (*said, OVERRULE)
    if OVERRULE in wanted and (found := _OVERRULE.fullmatch(words)):
        rest = found[1] or ""
        if mark_named(rest) or (not rest and words.startswith(("overrule", "over rule", "i overrule", "disagree",
                                                               "i disagree"))):  # fmt: skip
            return Control(OVERRULE, rest)
    for name in wanted:
        if words in said.get(name, ()) or (bare and bare in said.get(name, ())):
            return Control(name)
    return None


def mark_named(text: str) -> str:
    """Return the mark that a text names as a whole: right, partly, wrong or missed; else nothing."""
    words = plain(text)
    return next((mark for mark in MARKS if words in MARK_WORDS[mark]), "")


def corrected(text: str) -> str:
    """Return what counts of an answer: after CORRECTION only what follows, as on the radio.

    In the middle of a list it takes back its last item alone, and what was listed before it stands.
    """
    found = list(_CORRECTION.finditer(text))
    if found and _is_listed(text[: found[0].start()]):
        return items_corrected(text).strip()
    after = text[found[-1].end() :].strip() if found else ""
    return after or text.strip()


def _is_listed(before: str) -> bool:
    """Return whether a text is items of a list, told without an end: what is corrected is the last of them."""
    items = [item for item in _ITEMS.split(before) if len(item.split()) >= _WORDED]
    return len(items) >= _WORDED and not before.rstrip().endswith((".", "!", "?"))


_ITEMS = re.compile(r"[,;\n]|\bthen\b", re.IGNORECASE)
_WORDED = 2


def corrects(text: str) -> bool:
    """Whether a text corrects what was said before it."""
    return bool(_CORRECTION.search(text))


def dropped(text: str) -> bool:
    """Whether an answer ends in DISREGARD, so that nothing of it counts."""
    return bool(_DROPPED.search(text))


def asks_back(text: str) -> bool:
    """Whether what was typed is a question of its own: it opens as one, and ends in its sign or opens no answer."""
    bare = text.strip().replace("’", "'")
    return any(each.match(bare) for each in (_ASKS, _ASKS_BARELY, _GOES_ON))


def only_thinks(text: str) -> bool:
    """Whether nothing was said yet: sounds of thinking alone, or the words that an answer is begun with."""
    bare = text.strip().replace("’", "'")
    return bool(bare) and _NOT_YET.fullmatch(bare) is not None


def breaks_off(text: str) -> bool:
    """Whether a text ends in CORRECTION, so that what is to stand instead is still to come."""
    found = list(_CORRECTION.finditer(text))
    return bool(found) and not text[found[-1].end() :].strip() and bool(text[: found[-1].start()].strip())
