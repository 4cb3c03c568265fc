"""A turn without what is no word of it: the number of a pasted list, a pause that is written out, sounds of thinking.

"3. um, what is the, er, tiller limit" asks for the tiller limit. Sounds of thinking would stand between words that are
one name, and the number of a list would be an amount.
"""

from __future__ import annotations

import re

from assistant.conversation.context import Context

_SOUNDS = re.compile(
    r"(?<![\w'-])(?:[Uu]+m+|[Uu]+h+|[Ee]rm?|[Ee]hm|[Uu]hm|[Hh]m+|[Mm]mm+)(?![\w'-])(?!\s*[=:])[,.]*\s*"
)
_TALK = re.compile(
    r"(?:(?<=\s)|^)(?:you know|(?:let's|lets|let me) see|(?:sort|kind) of)\b"
    r"(?! (?:what|where|how|who|why|when|which|if)\b)\W?\s*",
    re.IGNORECASE,
)
"""What is said while one thinks."""
_MEANT = frozenset({
    "a", "any", "as", "did", "do", "each", "every", "first", "one", "other", "same", "second", "some", "that", "the",
    "third", "this", "three", "two", "what", "which",
})  # fmt: skip
"""Words before it with which it asks or names: "which kind of hydroplaning", "do you know the limit"."""
_PAUSE = re.compile(r"(?<=\s)(?:\.{3,}|…)\s+")
_NUMBER = re.compile(
    r"^\s*(?:\(?\d{1,2}[.):]|[-*•]|[Qq](?:uestion)?\s?\d{0,2}\s?[:.)])\s+(?=[^\W\d]\S*\s+\S+\s+\S)"
)
"""The number of a list, before three words at least."""
_MAY_HOLD = re.compile(r"^\W|^\s*\d|[.…]{3}|…|m\b|h\b|r\b|^\s*[Qq]|\bknow\b|\bsee\b|\bof\b", re.IGNORECASE)


def plainly_said(text: str, context: Context) -> str:
    """Return the words of a turn that are words; a number that may be a choice stays."""
    if not _MAY_HOLD.search(text):
        return text
    said = _without_talk(_PAUSE.sub("", _SOUNDS.sub("", text)))
    if context.answer is None or not context.answer.choices:
        said = _NUMBER.sub("", said)
    return said if any(map(str.isalnum, said)) else text


def _without_talk(text: str) -> str:
    """Return a text without what is said while one thinks: "what is, you know, the sort of limit"."""
    kept, last = "", 0
    for found in _TALK.finditer(text):
        before = text[: found.start()].lower().split()[-1:]
        if not _MEANT.intersection(before):
            kept, last = kept + text[last : found.start()], found.end()
    return kept + text[last:]
