"""The sentences of a written answer as they are best heard, before its words and numbers are said.

By ear a bracket is an aside, a paragraph reference only delays the fact, and a long sentence is lost. What is
asked about may be a reference itself ("where does it say that"): a text that begins with one keeps it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.answering.parts import inside, upper
from assistant.rendering.asides import asides
from assistant.rendering.lists_by_ear import crowd_parted, labels_apart
from assistant.rendering.paragraphs_by_ear import (
    is_about_paragraphs,
    paragraphs_said,
    without_paragraphs,
    without_revisions,
)
from assistant.rendering.sayable import is_sayable
from assistant.rendering.steps_by_ear import steps_counted, steps_numbered
from assistant.rendering.twice import about_first, each_once, former_beside, kind_once, sentences_of

# The patterns are texts: each is compiled at its first use, which most questions never come to.
_AT_THE_LIMIT = r"(\bexactly at the limit), [^.(;]*?\d[^(;]*?(?= \(|[.;] |[.;]?$)"
"""An amount that is the limit itself, told a second time."""
_RULE = r"(?<=[.?!]) Rule: (?:[^.]|\.\d)*\."
_WHOLE_PROCEDURE = r"(That is step \d+ of: [^.;]*?): 1\. .*$"
_QUOTED_ASIDE = r"(“[^”]*)\?”(?= [a-z])|(“[^ ”]+(?: [^ ”]+){2,}”)(?= [a-z])"
"""A quoted question, or some words, that the sentence goes on after: a pause tells where they end."""
_UNSAYABLE = r"\b(?:[a-z]|[a-z]{3,}|[b-df-hj-np-tv-xz]{2})\b"
"""What may be an abbreviation among words that somebody gave; of two letters, what has no vowel."""
_MARGIN = r"\b(Within|Outside)( limits: (?:[^.;]|\.\d)*?\b)(above|below) the limit\b"
_BOUNDS = {
    ("Within", "below"): "maximum",
    ("Outside", "above"): "maximum",
    ("Within", "above"): "minimum",
    ("Outside", "below"): "minimum",
}
_FRACTIONS = {
    "2": "half", "3": "third", "4": "quarter", "5": "fifth", "6": "sixth", "7": "seventh", "8": "eighth",
    "9": "ninth", "10": "tenth", "12": "twelfth", "16": "sixteenth", "32": "thirty-second", "100": "hundredth",
}  # fmt: skip
_PARTS_OF_ONE = r"(?<![\d/.])(?:(?<!\S)([A-Z][a-z]+) )?(\d{1,2})/(\d{1,3})(?![\d/])( in(?:ch|ches)?\b)?"
_CODES = r"(?<![\d/])\d(?:/\d){2,}(?![\d/])"
_COUNTING = frozenset({"About", "At", "Above", "Below", "Over", "Under", "Only", "Up", "From", "To", "By"})
"""Words with a capital that a fraction may follow; other names are counted by what looks like one."""
_LEADS = ("Assumed", "Also needed", "Unchanged", "Known nearby", "That always goes with this")
"""What keeps its colon, whatever follows: the others of the sentence give way."""
_CLAUSE = r"with [^,;.]+, [^,;.]+(?:[;.]|$)|with [^;.]* (?:it|they) "
_LEANING = rf" *; (?=(?:with|by|and (?:at|with|by|in|on)) )(?!{_CLAUSE})"
"""What comes before a piece of a list that has no verb of its own."""
_NOTE = "from memory, check the source."
_NOTE_SAID = "from memory, not checked."
"""What a value rests on, which a listener is told too; nobody can look into a source by ear."""


def sentences_by_ear(text: str, signs: Iterable[str]) -> str:
    """Return the text as sentences to be heard: items and asides apart, without what only the eye needs.

    signs: how units are written behind a number, with their space if they have one.
    """
    text = _quoted_spelt(about_first(kind_once(_without_repeating(_joined_lines(text)))), signs)
    text = text.replace(_NOTE, _NOTE_SAID)
    text = steps_counted(text)
    about_paragraphs = is_about_paragraphs(text)
    text = without_revisions(text)
    text = paragraphs_said(text, signs) if about_paragraphs else without_paragraphs(text, signs)
    text = re.sub(_AT_THE_LIMIT, r"\1", text) if "exactly at" in text else text
    text = asides(text, dropped=about_paragraphs)
    text = _bounds_named(labels_apart(_fractions(text), signs))
    return former_beside(each_once(crowd_parted(_breaks_as_stops(steps_numbered(text)), signs)))


def _quoted_spelt(text: str, signs: Iterable[str]) -> str:
    """Words that somebody gave and that no voice can say as such are said letter by letter: "egt"."""
    if "“" not in text:
        return text
    units = {sign.strip() for sign in signs}
    text = re.sub(_QUOTED_ASIDE, lambda m: f"{m[1]}”," if m[1] else f"{m[2]},", text)

    def spelt(match: re.Match[str]) -> str:
        return match[0] if match[0] in units or is_sayable(match[0].upper()) else match[0].upper()

    return re.sub("“[^”]*”", lambda quoted: re.sub(_UNSAYABLE, spelt, quoted[0]), text)


def _joined_lines(text: str) -> str:
    """One line of sentences: the items of a list lose their marks and end with a stop each."""
    lines = [line.strip() for line in text.replace("\u00a0", " ").replace("\u202f", " ").splitlines()]
    lines = [line for line in lines if line]
    if len(lines) < 2:
        return " ".join(lines)
    numbered = all(any(line.startswith(f"{n}. ") for line in lines) for n in (1, 2))
    mark = re.compile(r"\d{1,2}\. " if numbered else r"[-*•–] +")
    return " ".join(_stopped(mark.sub("", line, count=1) if mark.match(line) else line) for line in lines)


def _without_repeating(text: str) -> str:
    """Leave what an eye may go back to: the whole rule behind a verdict, the whole procedure behind a step."""
    if " Rule: " in text:
        text = re.sub(_RULE, "", text)
    return re.sub(_WHOLE_PROCEDURE, r"\1.", text) if "That is step " in text else text


def _stopped(item: str) -> str:
    return item if item.endswith((".", "?", "!", ":")) else item.rstrip(",;") + "."


def _bounds_named(text: str) -> str:
    """A margin says which limit it is to: "above the limit" alone leaves the listener to work it out."""
    if " the limit" not in text:
        return text
    if re.search(r"The limit: [^.]* (?:above|below|at) which ", text):
        return text  # a threshold is no maximum
    return re.sub(_MARGIN, lambda m: f"{m[1]}{m[2]}{m[3]} the {_BOUNDS[m[1], m[3]]}", text)


def _fractions(text: str) -> str:
    """Say "1/8 in" as one eighth of an inch."""

    def said(match: re.Match[str]) -> str:
        name, above, below, inch = match.groups()
        before = f"{name} " if name else ""
        if name and name not in _COUNTING:  # "System 1/2": both
            return f"{before}{above} and {below}"
        part = _FRACTIONS.get(below, "")
        if not part or int(above) >= int(below):
            return match[0]
        words = f"{above} {part}{'' if above == '1' else 's'}"
        return before + words + (" of an inch" if inch else "")

    if "/" not in text:
        return text
    text = re.sub(_CODES, lambda match: match[0].replace("/", ", "), text)
    return re.sub(_PARTS_OF_ONE, said, text)


def _breaks_as_stops(text: str) -> str:
    """Turn semicolons and dashes into stops, and all colons of a sentence but its last; what needs the verb before it
    stays in one sentence with that."""
    text = re.sub(_LEANING, ", ", text) if ";" in text else text
    text = re.sub(r" *(?:;|…|—|–| - )[ ]*(\w?)", lambda match: f". {upper(match[1])}", text)
    pieces = sentences_of(text)
    return " ".join(_last_colon_kept(piece) for piece in pieces)


def _last_colon_kept(sentence: str) -> str:
    parts = sentence.split(": ")
    if len(parts) < 3:
        return sentence
    if parts[0] in _LEADS:
        return f"{parts[0]}: {', '.join(parts[1:])}"
    if parts[0].startswith("With "):
        return f"{parts[0]}, {_last_colon_kept(': '.join([inside(parts[1]), *parts[2:]]))}"
    return ". ".join([parts[0], *(upper(part) for part in parts[1:-1])]) + f": {parts[-1]}"
