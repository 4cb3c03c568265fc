"""What an answer takes back: "two thirty, no, two oh five", "lever down, scratch that, lever up"."""

from __future__ import annotations

import re
from collections.abc import Iterator

_NUMBER = (
    r"(?:\d|oh\b|zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|half|\w+teen|"
    r"(?:twen|thir|for|fif|six|seven|eigh|nine)ty|hundred|a hundred)"
)
_TAKES_BACK = "|".join((
    "correction", "scratch that", "strike that", "hang on", "i meant?", "make that", "rephrase that",
    "let me (?:start|try|say that|do that) again", "(?:that is|that's) (?:wrong|not right)", "my mistake", "my bad",
    "i take that back", "or rather", "oops", "whoops", "no,? wait", "wait,? no", "no,? sorry", "sorry,? no",
    rf"(?:sorry|actually)(?=,? (?:it's |it is )?{_NUMBER})",
))  # fmt: skip
_TAKEN_BACK = re.compile(
    rf"[\s.,;:…—–(-]*\b(?:(?:no|oh|er|um|sorry|wait|well|or)[,.]? )*(?:{_TAKES_BACK})\b[:,.;…)—–-]*"
    r"(?:\s+(?:no|it's|it is|that's|that is)\b(?=,? \w))?,?\s*",
    re.IGNORECASE,
)
"""Words that take back what stands before them. "Wait" alone does not: it is something to do."""
_UNIT = r"(?:k(?:no)?ts?|psi|p s i|degrees?|celsius|seconds?|feet|millimetres?|percent|metres?)"
_THREE = (
    r"(?:one|two|three|four|five|six|seven|eight|nine) "
    r"(?:oh|zero|hundred|thousand|one|two|three|four|five|six|seven|eight|nine|\w+teen|\w+ty)"
)
"""A number of three places, spoken."""
_NO_BETWEEN = re.compile(
    rf"(?:(?<=\d)|(?<=\bhundred)|(?<=\w\wteen)|(?<=\w\wty)|(?<=\b(?:one|two|six|ten))|(?<=\b(?:four|five|nine))|"
    rf"(?<=\b(?:three|seven|eight)))(?: {_UNIT})?,? no,? (?=(?!one\b(?! \w+(?:ty|teen)\b)){_NUMBER})",
    re.IGNORECASE,
)
"""A "no" between two numbers, by which the second takes the place of the first: "1,200 no 1,400 psi"."""
_JUDGING = (
    "not|too|over|above|under|below|past|more|less|within|inside|outside|right|fine|ok|hot|fast|high|low|heavy|slow|"
    "where|what|why|because"
)
"""Words by which a "no that's" judges what stands before it, and takes nothing back."""
_OF_ANOTHER = re.compile(
    rf"(?:(?<=\d)|(?<=\w\w))(?: {_UNIT})?[,.;…—–-]* (?:(?:uh|um|er|ah|oh|hang on|sorry)[,.]? )*no[,.]? "
    r"(?:that's|thats|that is|that was|it's|it is|this is) (?:"
    r"(?:for |from |on )?(?:the|my|an?) (?:\w+ )?one(?=[,.;]? (?:it's |it is )?(?:\d|" + _THREE + r")|[,.;])|"
    r"the \d+[a-z]?(?:'s)?(?=,)|(?:for |from |on )?(?:the |my |an? )?"
    rf"(?!(?:{_JUDGING}|{_NUMBER})\b)[a-z][\w-]+(?:'s)?"
    r"(?: speed| limit| figure| number| value| one)?)"
    rf"[,.;:…—–-]* (?:it's |it is |that's |should be )?(?={_NUMBER})",
    re.IGNORECASE,
)
"""Words by which a number before them is said to be of something else, before the one that is meant."""
_VERDICT = re.compile(r"(?:yes|yep|yeah|no|nope)\b", re.IGNORECASE)
"""The yes or no that takes the place of the first word: "no, wait, yes"."""
_SHORT = 4
_NUMBERS = re.compile(rf"{_NUMBER}[\w.,-]*(?:\s+(?:and (?={_NUMBER})|{_NUMBER}[\w.,-]*|point\b))*", re.IGNORECASE)
_COLOUR = r"(?:white|amber|red|green|blue|yellow|black|grey|orange|dark)"


def corrected(text: str) -> str:
    """Return a text without what is taken back: the piece before it, or as much as is said anew."""
    taken = (*_of_another(text), *_TAKEN_BACK.finditer(text), *_NO_BETWEEN.finditer(text))
    first = next((f for f in taken if not f.start() and _VERDICT.match(text[f.end() :])), None)
    if first:
        return corrected(text[first.end() :])
    found = next((f for f in taken if f.start() and text[f.end() :].strip()), None)
    if found is None:
        return text
    kept, last = text[: found.start()], text[found.end() :]
    return corrected(f"{_without_last(kept.strip(' ,'), last)} {last}".strip())


def _of_another(text: str) -> Iterator[re.Match[str]]:
    """Yield where a number is taken back as another thing's: "two thirty, no that's the other one, two oh five"."""
    for found in _OF_ANOTHER.finditer(text):
        before = re.search(r"[\w.,]+$", re.sub(rf" {_UNIT}$", "", text[: found.start()], flags=re.IGNORECASE))
        if before and (before.group()[0].isdigit() or re.fullmatch(_NUMBER, before.group(), re.IGNORECASE)):
            yield found


def _without_last(kept: str, last: str) -> str:
    """Return what was said without the end of it that is said anew."""
    pieces = re.split(r"(?<=[.;,])\s+", kept)
    before, piece = " ".join(pieces[:-1]), pieces[-1]
    spots = [found.start() for found in _NUMBERS.finditer(piece)] if re.match(_NUMBER, last, re.IGNORECASE) else []
    coloured = re.match(rf"{_COLOUR}\b", last, re.IGNORECASE)
    if coloured and re.search(rf"\b{_COLOUR}\b \w", piece, re.IGNORECASE):  # "green in NORMAL, no, sorry, white"
        anew = re.sub(rf"\b{_COLOUR}\b", coloured.group(), piece, flags=re.IGNORECASE)
        return f"{before} {anew},".strip()
    if not spots and len(piece.split()) <= _SHORT:
        return before
    again = re.match(r"[\w'-]+", last)
    word = again.group().lower() if again and not spots else ""
    at = spots[-1] if spots else piece.lower().rfind(f" {word} ") if word else -1
    left = piece[:at] if at >= 0 else piece.rsplit(" ", 1)[0]
    return f"{before} {left}".strip()
