"""The sentences of a written answer as they are best heard, before its words and numbers are said.

By ear a bracket is an aside, a paragraph reference only delays the fact, and a long sentence is lost. What is
asked about may be a reference itself ("where does it say that"): a text that begins with one keeps it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.answering.answer import Answer
from assistant.quantities.show import number_words

# The patterns are texts: each is compiled at its first use, which most questions never come to.
_DOCUMENT = r"[A-Z][A-Z0-9]+"
_PARAGRAPH = rf"{_DOCUMENT} (?:[A-Z]\.\d+|\d+(?:\.\d+)+)"
_ABOUT_PARAGRAPHS = rf"{_PARAGRAPH}, revision "
_VERDICT = rf"\b(Within|Outside) {_PARAGRAPH}"
_TRAILING = rf"(?<=\w) (?:of|per|see|by) {_PARAGRAPH}(?= *(?:[.,;:(]|$))"
_HELD = rf"\b(within|outside) {_PARAGRAPH}, (?=[\d−])"
"""A figure that a result is held to, behind its paragraph: "that is outside LIM 3.1, 195 kt"."""
_UP_TO = rf"\b(for|to|of) {_PARAGRAPH}, (?=[\d−])"
_AT_THE_LIMIT = r"(\bexactly at the limit), [^.(;]*?\d[^(;]*?(?= \(|[.;] |[.;]?$)"
"""An amount that is the limit itself, told a second time."""
_RULE = r"(?<=[.?!]) Rule: .*?(?= Also needed: |$)"
_WHOLE_PROCEDURE = r"(That is step \d+ of: [^.;]*?): 1\. .*$"
_REVISION = rf"(?:; | ?\()changed with {_DOCUMENT} \w+\)?"
_INNER_BRACKET = r"( *)[(\[{]([^()\[\]{}]*)[)\]}]"
_ONLY_PARAGRAPHS = rf"{_PARAGRAPH}(?: M\d+)?(?:[,;] {_PARAGRAPH})*"
_FOR_THE_EYE = r"[=+×√]|^\W*$|^\w$"
"""Brackets that say nothing by ear: a formula, a sign, the letter of a paragraph."""
_QUALIFIER = r"(?!or\b)[a-z][a-z-]*(?: [a-z][a-z-]*)?"
"""One or two plain words in brackets belong to what stands before: "VLO (extension)"."""
_MESSAGE = r"[A-Z]{2,}[ -][A-Z-]{2,}$"
"""The name of a message, of capital words, which its colour is said after."""
_MESSAGES = r"\)(?:,| and|, and) (?=[A-Z]{2,}[ -][A-Z-]{2,})"
"""Between messages of a list, each with its colour in brackets: they are heard apart."""
_STEP = r"(?:(?<=^)|(?<=[:;,.?!]) )(\d{1,2})\. (?=\S)"
_MARGIN = r"\b(Within|Outside)( limits: (?:[^.;]|\.\d)*?\b)(above|below) the limit\b"
_WHICH_LIMIT = r"\b(?:Within|Outside) limits: [^;]*\b(?:above|below|at) the limit[^;]*$"
_BOUNDS = {
    ("Within", "below"): "maximum",
    ("Outside", "above"): "maximum",
    ("Within", "above"): "minimum",
    ("Outside", "below"): "minimum",
}
_LABELLED = r"([A-Za-z][\w’' -]*) (?=\d[\d,.]*( ?[^\s\d.;,]+)(?:[.;]|$))"
_LONGEST_LABEL = 7
"""Words of a name that is said apart from its amount; more are a sentence."""
_JOINING = frozenset({
    "a", "about", "above", "all", "an", "and", "are", "as", "at", "below", "between", "by", "code", "exactly", "for",
    "from", "has", "hold", "holds", "in", "is", "lasts", "least", "minus", "most", "need", "needs", "no", "of", "off",
    "on", "only", "or", "over", "reads", "revision", "row", "shows", "so", "step", "take", "takes", "than", "the", "to",
    "under", "until", "wait", "was", "when", "with", "within",
})  # fmt: skip
"""Words after which an amount follows without a pause."""
_AMOUNT = r"(?:Mach )?[−-]?\d[\d,]*(?:\.\d+)?(?:/\d+)? ?[^\s\d(),;:]*"
_ASIDE_ENDS = (",", ".", ";", ":", "?", "!", ")")
_FRACTIONS = {
    "2": "half", "3": "third", "4": "quarter", "5": "fifth", "6": "sixth", "7": "seventh", "8": "eighth",
    "9": "ninth", "10": "tenth", "12": "twelfth", "16": "sixteenth", "32": "thirty-second", "100": "hundredth",
}  # fmt: skip
_PARTS_OF_ONE = r"(?<![\d/.])(?:(?<!\S)([A-Z][a-z]+) )?(\d{1,2})/(\d{1,3})(?![\d/])( in(?:ch|ches)?\b)?"
_CODES = r"(?<![\d/])\d(?:/\d){2,}(?![\d/])"
_MEMORY = r"(\d{1,2}\. )\(memory\) "
_MOST_COUNTED = 10
"""Steps that a listener is told the number of."""
_COUNTING = frozenset({"About", "At", "Above", "Below", "Over", "Under", "Only", "Up", "From", "To", "By"})
"""Words with a capital that a fraction may follow; other names are counted by what looks like one."""
_LEADS = ("Assumed", "Also needed", "Unchanged", "Known nearby")
"""What keeps its colon, whatever follows: the others of the sentence give way."""
_LEANING = r" *; (?=(?:with|by|and (?:at|with|by|in|on)) )"
"""What comes before a piece of a list that has no verb of its own."""
_NOTE = r" ?(?:Value|[A-Z][^.]*? (?:is|are)) from memory, check the source\."
"""A note from one who writes to those who check; a listener would take it for a doubt of his own."""
_EXPLAINS = r"^(?!or |\d).*(?: or |,.*,)"
"""What stands in brackets for a word of a list, and itself lists what is meant by it."""
_LONG_ASIDE = 6
"""Words from which an aside that ends a sentence is a sentence of its own."""
_NO_ITEM = "which|then|with|so|if|and|or|at|in|when|where|whichever|whatever|is|are|was|by|from|to|that|below|above"
_ITEM = rf", (?:and |or )?(?=[^\W\d][^,.;:]*\d)(?!(?:{_NO_ITEM}) )"
_CROWDED, _ITEMS = 14, 3
"""Words of a sentence, and amounts listed in it, from which each is said apart."""


def text_by_ear(answer: Answer) -> str:
    """Return the text of an answer with what it says in other words for a listener, still as it is written."""
    text = answer.text
    for written, heard in answer.aloud:
        text = text.replace(written, heard, 1)
    return text


def sentences_by_ear(text: str, signs: Iterable[str]) -> str:
    """Return the text as sentences to be heard: items and asides apart, without what only the eye needs.

    signs: how units are written behind a number, with their space if they have one.
    """
    text = _without_repeating(_joined_lines(text))
    text = re.sub(_NOTE, "", text) if "from memory" in text else text
    text = _memory_counted(text)
    text = re.sub(_MESSAGES, "); ", text) if ")" in text else text
    about_paragraphs = re.match(_ABOUT_PARAGRAPHS, text) is not None
    text = re.sub(_REVISION, "", text) if "changed with" in text else text
    text = _paragraphs_said(text) if about_paragraphs else _without_paragraphs(text)
    text = re.sub(_AT_THE_LIMIT, r"\1", text) if "exactly at" in text else text
    text = _asides(text, dropped=about_paragraphs)
    text = _bounds_named(_labels_apart(_fractions(text), signs))
    return _each_once(_crowd_parted(_breaks_as_stops(_steps_numbered(text)), signs))


def _sentences(text: str) -> list[str]:
    return re.split(r"(?<=[.?!]) +", text)


def _memory_counted(text: str) -> str:
    """Say once how many steps are from memory, where all are; else of each that it is."""
    if "(memory)" not in text:
        return text
    steps, memory = len(re.findall(r"(?:^|[:;,] )\d{1,2}\. (?=\S)", text)), len(re.findall(_MEMORY, text))
    if memory < 2 or steps != memory or memory > _MOST_COUNTED:
        return re.sub(_MEMORY, r"\1from memory, ", text)
    text = re.sub(_MEMORY, r"\1", text)
    return text.replace(": 1. ", f": {number_words(memory)} memory items: 1. ", 1)


def _crowd_parted(text: str, signs: Iterable[str]) -> str:
    """The amounts that a long sentence lists become sentences, so that each can be taken in."""

    def parted(sentence: str) -> str:
        if len(sentence.split()) < _CROWDED or len(re.findall(_ITEM, sentence)) < _ITEMS - 1:
            return sentence
        pieces = re.split(_ITEM, sentence)
        amounts = [piece for piece in pieces if re.search(rf"\d ?(?:{units})(?!\w)", piece)]
        return ". ".join(_upper(piece) for piece in pieces) if len(amounts) >= _ITEMS else sentence

    if text.count(",") < _ITEMS - 1:
        return text
    units = "|".join(re.escape(sign.strip()) for sign in signs)
    return " ".join(parted(sentence) for sentence in _sentences(text))


def _each_once(text: str) -> str:
    """A sentence that was said is not said again, nor is what to use that was told to be all there is."""
    found: list[str] = []
    for sentence in dict.fromkeys(_sentences(text)):
        use = sentence[4:].rstrip(".") if sentence.startswith("Use ") else ""
        if not use.endswith(" only") or not any(use in earlier for earlier in found):
            found.append(sentence)
    return " ".join(found)


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


def _without_paragraphs(text: str) -> str:
    """Drop paragraphs where the sentence stands without them; say the others, which it is about."""
    if "." not in text:
        return text
    text = re.sub(rf" ?[(\[{{](?:{_ONLY_PARAGRAPHS})[)\]}}]", "", text)
    text = re.sub(_VERDICT, r"\1 limits", text)
    text = re.sub(_UP_TO, r"\1 ", re.sub(_HELD, r"\1 the limit, ", text))
    text = re.sub(_TRAILING, "", text)
    return _paragraphs_said(text)


def _paragraphs_said(text: str) -> str:
    """The parts of a paragraph are numbers of their own, "32.13" being "thirty-two point thirteen"."""
    text = re.sub(rf"{_PARAGRAPH}(?=\W|$)", lambda match: _parts_said(match[0]), text)
    return re.sub(r"\b([A-LN-Z])\.(?=\d)", r"\1 point ", text)  # "M.60" is a Mach number


def _parts_said(paragraph: str) -> str:
    document, _, number = paragraph.partition(" ")
    parts = [f"0 {part[1:]}" if len(part) == 2 and part[0] == "0" else part for part in number.split(".")]
    return f"{document} {' point '.join(parts)}"


def _asides(text: str, dropped: bool) -> str:
    """Brackets become asides, from the innermost; those for the eye alone, or all of them, are dropped."""

    def said(match: re.Match[str]) -> str:
        inner = match[2].strip(" ,;.")
        if dropped or re.search(_FOR_THE_EYE, inner):
            return ""
        return _aside(inner, match.string[: match.start()], match.string[match.end() :].lstrip())

    while any(sign in text for sign in "([{"):
        text, count = re.subn(_INNER_BRACKET, said, text)
        if not count:
            break
    return text.lstrip(" ,")


def _aside(inner: str, before: str, after: str) -> str:
    """What stood in brackets, joined to what stands before and after it."""
    if re.search(r"(?:^|\s)\d{1,2}\. *$", before):
        return f" {inner},"
    if before.count("(") == before.count(")") and re.search(_WHICH_LIMIT, before):
        return f". The limit: {inner}"
    if re.fullmatch(_QUALIFIER, inner) and not re.search(_MESSAGE, before):
        return f" {inner}"
    if after[:1] in ("", ".", ";") and len(inner.split()) >= _LONG_ASIDE:
        return f". {_upper(inner)}"
    if re.fullmatch(_AMOUNT, inner) and re.search(rf"{_AMOUNT}$", before):
        inner = f"or {inner}"
    elif after[:1] == "," and re.search(_EXPLAINS, inner):
        inner = f"that is {inner}"
    return f", {inner}" + ("" if not after or after[0] in _ASIDE_ENDS else ",")


def _bounds_named(text: str) -> str:
    """A margin says which limit it is to: "above the limit" alone leaves the listener to work it out."""
    if " the limit" not in text:
        return text
    if re.search(r"The limit: [^.]* (?:above|below|at) which ", text):
        return text  # a threshold is no maximum
    return re.sub(_MARGIN, lambda m: f"{m[1]}{m[2]}{m[3]} the {_BOUNDS[m[1], m[3]]}", text)


def _labels_apart(text: str, signs: Iterable[str]) -> str:
    """A name and its amount, alone between stops, are heard apart: "Nose wheels, 22 m"."""

    units = frozenset(signs)

    def said(match: re.Match[str]) -> str:
        words = match[1].split()
        begins = match.start() == 0 or match.string[match.start() - 2 : match.start()] in (". ", "; ", ": ", ", ")
        apart = begins and match[2] in units and 1 < len(words) <= _LONGEST_LABEL
        return f"{match[1]}, " if apart and words[-1].lower() not in _JOINING else f"{match[1]} "

    return re.sub(_LABELLED, said, text) if ";" in text else text


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


def _steps_numbered(text: str) -> str:
    """The number of a step or a choice is said before it, with a pause: "One, parking brake set. Two, …"."""
    if not re.search(r"(?:^|\W)1\. ", text):
        return text
    if not re.search(r"\W2\. ", text):
        return re.sub(r"(^|[:;,.?!] )1\. ", r"\1", text)
    text = re.sub(_STEP, lambda match: f" {match[1]}, ", text)
    return text.replace(": 1, ", ". 1, ").strip()


def _breaks_as_stops(text: str) -> str:
    """Turn semicolons and dashes into stops, and all colons of a sentence but its last; what needs the verb before it
    stays in one sentence with that."""
    text = re.sub(_LEANING, ", ", text) if ";" in text else text
    text = re.sub(r" *(?:;|…|—|–| - )[ ]*(\w?)", lambda match: f". {_upper(match[1])}", text)
    pieces = _sentences(text)
    return " ".join(_last_colon_kept(piece) for piece in pieces)


def _last_colon_kept(sentence: str) -> str:
    parts = sentence.split(": ")
    if len(parts) < 3:
        return sentence
    if parts[0] in _LEADS:
        return f"{parts[0]}: {', '.join(parts[1:])}"
    return ". ".join([parts[0], *(_upper(part) for part in parts[1:-1])]) + f": {parts[-1]}"


def _upper(text: str) -> str:
    return text[:1].upper() + text[1:]
