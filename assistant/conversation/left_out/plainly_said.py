"""A turn without what is no word of it: the number of a pasted list, a pause that is written out, sounds of thinking.

"3. um, what is the, er, tiller limit" asks for the tiller limit. Sounds of thinking would stand between words that are
one name, and the number of a list would be an amount.
"""

from __future__ import annotations

import re

from assistant.conversation.context import Context

# Texts, that a first question without any of it starts before they are compiled.
_SOUNDS = r"(?<![\w'-])(?:[Uu]+m+|[Uu]+h+|[Ee]rm?|[Ee]hm|[Uu]hm|[Hh]m+|[Mm]mm+)(?![\w'-])(?!\s*[=:])[,.]*\s*"
_TALK = (
    r"(?:(?<=\s)|^)(?:you know|(?:let's|lets|let me) see|(?:sort|kind) of)\b"
    r"(?! (?:what|where|how|who|why|when|which|if)\b)\W?\s*"
)
"""What is said while one thinks."""
_MEANT = frozenset({
    "a", "any", "as", "did", "do", "each", "every", "first", "one", "other", "same", "second", "some", "that", "the",
    "third", "this", "three", "two", "what", "which",
})  # fmt: skip
"""Words before it with which it asks or names: "which kind of hydroplaning", "do you know the limit"."""
_PAUSE = r"(?<=\s)(?:\.{3,}|…)\s+"
_NUMBER = r"^\s*(?:\(?\d{1,2}[.):]|[-*•]|[Qq](?:uestion)?\s?\d{0,2}\s?[:.)])\s+(?=[^\W\d]\S*\s+\S+\s+\S)"
"""The number of a list, before three words at least."""
_LISTING = "(0123456789-*qQ"
"""Signs that it may begin with."""
_WHAT_IF = (
    r"^(\s*(?:and |so |ok |okay |but )?)what if\b(?=.*\S[,.;]?\s(?:what|how|which|who|whom|when|where|why|can|could|"
    r"may|might|should|would|will|is|are|do|does)\s+(?:\w+\s+)+)"
)
"""A case before a question that stands behind it: its "what" asks nothing."""
_UP_AT = (
    r"(\b(?:about|are|am|we're|i'm|then|if|way|be)|,|^(?:and|so)) (?:up|down) (?:here |there )?"
    r"(?=at (?:about |around )?(?:fl ?\d|[\d,.]+k? ?(?:ft|feet|foot|thousand)|(?:[a-z]+[ -]){1,4}(?:thousand|feet)))"
)
"""Where somebody is, which moves nothing: "what about | up | at 21,000 feet"."""
_TAG = (
    r",?\s{1,3}(?:won'?t|don'?t|doesn'?t|didn'?t|can'?t|couldn'?t|wouldn'?t|shouldn'?t|haven'?t|hasn'?t|aren'?t|weren'?t|"
    r"wasn'?t|will not|do not|does not|can not|cannot) (?:it|they|we|you|i|he|she|that)\s{0,3}\?{0,3}\s{0,3}$"
)
"""What wants to be agreed with, however it is put: "that will do, | won't it? |"."""
_MAY_HOLD = (
    r"n.?t (?:it|they|we|you|i|he|she|that)\W*$|(?:up|down) at |"
    r"^\W|^\s*\d|[.…]{3}|…|m\b|h\b|r\b|^\s*[Qq]|\bknow\b|\bsee\b|\bof\b|what if"
)


def plainly_said(text: str, context: Context) -> str:
    """Return the words of a turn that are words; a number that may be a choice stays."""
    may, whole = _Pieces(text), text
    if not may.known and not re.search(_MAY_HOLD, text, re.IGNORECASE):
        return text
    if may.hold("what if"):
        text = re.sub(_WHAT_IF, r"\1if", text, flags=re.IGNORECASE | re.DOTALL)
    text = text.replace("’", "'")
    if may.hold("n't ", "nt ", "not "):
        text = re.sub(_TAG, ", isn't it?", text, flags=re.IGNORECASE)
    if may.hold("up ", "down ") and re.search(_MAY_HOLD, whole, re.IGNORECASE):
        text = re.sub(_UP_AT, r"\1 ", text, flags=re.IGNORECASE)
    said = re.sub(_SOUNDS, "", text) if may.hold("um", "uh", "er", "eh", "hm", "mm") else text
    said = re.sub(_PAUSE, "", said) if "..." in said or "…" in said else said
    said = _without_talk(said)
    if (context.answer is None or not context.answer.choices) and _may_be_listed(said):
        said = re.sub(_NUMBER, "", said)
    return said if any(map(str.isalnum, said)) else text


class _Pieces:
    """Tells which pieces a text may hold, so that no pattern is tried that needs others: most turns hold none."""

    def __init__(self, text: str) -> None:
        self.known = text.isascii()
        """Whether it is known what the text holds: outside ASCII, signs are alike that differ in lower case too."""
        self._lower = text.lower()

    def hold(self, *pieces: str) -> bool:
        """Return whether there may be any of some pieces."""
        return not self.known or any(piece in self._lower for piece in pieces)


def _may_be_listed(text: str) -> bool:
    """Return whether a text may begin with the number of a list."""
    return not text.isascii() or text.lstrip()[:1] in _LISTING


def _without_talk(text: str) -> str:
    """Return a text without what is said while one thinks: "what is, you know, the sort of limit"."""
    if not _Pieces(text).hold("you know", " see", "sort of", "kind of"):
        return text
    kept, last = "", 0
    for found in re.finditer(_TALK, text, re.IGNORECASE):
        before = text[: found.start()].lower().split()[-1:]
        if not _MEANT.intersection(before):
            kept, last = kept + text[last : found.start()], found.end()
    return kept + text[last:]
