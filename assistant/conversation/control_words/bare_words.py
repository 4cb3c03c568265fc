"""A short turn without the courtesies around it, and with slips of the finger in it mended: what steers is left.

"hey mate, soruce for that pls" is "source for that". Only what may steer is read so; a question keeps its words.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.understanding.words import expand

_LONGEST = 80
_MOST_WORDS = 9
_BEFORE = (
    r"^\W*(?:(?:and|so|but|ok|okay|right|fine|good|great|lovely|cool|nice|perfect|super|sure|yeah|yes|yep|alright"
    r"|all right|hey|hi|oh|ah|um+|er+m?|uh+|h+m+|well|listen|look|mate|captain|cap|skipper|buddy|sir|boss|chief"
    r"|thanks|thank you|thx|ta|cheers|roger|copied|got it|understood|noted|sorry|apologies|please|pls|plz|now|then"
    r"|just|actually|really|quickly|quick one|hang on|hold on|wait|one sec|btw|by the way|out of interest|i see"
    r"|fair enough|no worries|no problem|makes sense|soz|sry|interesting"
    r"|no(?=,|\W+(?:wait|hang|hold|sorry|disregard|forget|scrub|cancel|ignore|never)))\b[\s,.!:;-]*)+"
)
_AFTER = (
    r"(?:[\s,.]+(?:please|pls|plz|then|mate|captain|cap|skipper|buddy|sir|boss|now|though|tho|exactly|so|thanks"
    r"|thank you|thx|ta|cheers|btw|by the way|out of interest|sorry|anyway|(?<!start )over|if you (?:know|can|would)"
    r"|if you please|do you know|for me|actually|really|precisely|quickly|(?:will|would|could|can) you|huh|eh"
    r"|too|right|sry|soz))+[\s?.!]*$"
)
_LAST = (
    "please", "pls", "plz", "then", "mate", "captain", "cap", "skipper", "buddy", "sir", "boss", "now", "though", "tho",
    "exactly", "so", "thanks", "you", "thx", "ta", "cheers", "btw", "way", "interest", "sorry", "anyway", "over",
    "know", "can", "would", "me", "actually", "really", "precisely", "quickly", "huh", "eh", "too", "right", "sry",
    "soz",
)  # fmt: skip
"""What any of these courtesies ends in: most turns end otherwise, which is sooner seen than by the pattern."""
_AT_THE_END = "?.! \t\n\r\f\v\x1c\x1d\x1e\x1f"
_STEERING = (
    "source", "reference", "paragraph", "chapter", "section", "manual", "written", "where", "again",
    "repeat", "pardon",
    "missed", "reason", "explain", "disregard", "forget", "ignore", "cancel", "since", "before", "previously",
    "changed", "formerly", "revision", "document", "dispute", "whose", "rule", "limit", "laid", "read",
    "figure", "page",
    "sorry", "come", "more", "says",
)  # fmt: skip
_BY_LETTER = {letter: tuple(w for w in _STEERING if w[0] == letter) for letter in {w[0] for w in _STEERING}}
"""Words that steer by their first letter, which a slip leaves alone."""
_LEAST_LETTERS = 4
_OTHERS = frozenset(
    {
        "were",
        "change",
        "changes",
        "charged",
        "disputes",
        "disputed",
        "sine",
        "suction",
        "those",
        "whole",
        "rules",
        "role",
        "rude",
        "ruled",
        "limits",
        "lid",
        "lead",
        "land",
        "road",
        "ready",
        "real",
        "reads",
        "rear",
        "pages",
        "pace",
        "core",
        "cone",
        "move",
        "mode",
        "some",
        "same",
        "seys",
        "figures",
        "comes",
        "coma",
        "lad",
        "said",
        "rad",
    }
)
"""Words of their own, one letter off a word that steers."""
_SHORTHAND = {
    "sry": "sorry", "soz": "sorry", "srry": "sorry", "pls": "please", "plz": "please", "rpt": "repeat",
    "u": "you", "ur": "your", "agn": "again",
    "para": "paragraph", "didn": "did", "couldn": "could",
}  # fmt: skip


def as_steering(text: str) -> Iterator[str]:
    """Yield a turn as it is, then as what is left without courtesies, then with the slips in that mended."""
    yield text
    if len(text) > _LONGEST:
        return
    bare = text
    if len(text.split()) > 1:  # one word has no courtesies around it
        opened = re.match(_BEFORE, text, re.IGNORECASE)
        bare = text[opened.end() :] if opened else text
        if not bare.isascii() or bare.rstrip(_AT_THE_END).lower().endswith(_LAST):
            bare = re.sub(_AFTER, "", bare, flags=re.IGNORECASE)
    if bare and bare != text and not bare.isspace():
        yield bare
    words = bare.split()
    if words and len(words) <= _MOST_WORDS and bare.isascii():
        mended = " ".join(map(_mended, words))
        if mended != " ".join(words):
            yield mended


def words_said(text: str) -> list[str]:
    """Return the words of a turn with contractions opened and shorthand written out: "wheres", "whos",
    "sry"."""
    found: list[str] = []
    for word in re.findall(r"[^\W\d_]+(?:['\u2019][^\W\d_]+)?", text.lower()):
        for part in expand(word.replace("\u2019", "'")):
            found.append(_SHORTHAND.get(part, part))
    return found


def _mended(word: str) -> str:
    """Return a word, or the one that steers of which it is a slip: a letter more, less, another, or two exchanged."""
    letters = word.strip("?.!,").lower()
    if letters in _SHORTHAND:
        return _SHORTHAND[letters]
    if len(letters) < _LEAST_LETTERS or letters.rstrip("s") in _STEERING or letters in _OTHERS:
        return word
    return next((meant for meant in _BY_LETTER.get(letters[0], ()) if _is_slip(letters, meant)), word)


def _is_slip(letters: str, meant: str) -> bool:
    """Return whether two different words are one slip apart."""
    if abs(len(letters) - len(meant)) > 1 or "'" in letters:
        return False
    shorter = min(len(letters), len(meant))
    at = next((k for k in range(shorter) if letters[k] != meant[k]), shorter)
    left, right = letters[at:], meant[at:]
    exchanged = left[:2] == right[1::-1] and left[2:] == right[2:]
    return exchanged or left[1:] == right[1:] or left[1:] == right or left == right[1:]
