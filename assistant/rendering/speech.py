"""The written answer for the ear: signs, units and abbreviations in words, nothing for the eye alone.

What stands in brackets, paragraph references above all, is for a reader who may look it up; by ear it only
delays the fact. How a word of the trade or of one type is said is data, so it is handed in as a lexicon.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import NamedTuple

from assistant.quantities.show import number_words
from assistant.quantities.show import spoken as spoken_amount
from assistant.quantities.units import Units

_REFERENCE = r"[A-Z][A-Z0-9]+ (?:[A-Z]\.\d+|\d+(?:\.\d+)+)"
_VERDICT = rf"\b(Within|Outside) {_REFERENCE}"
_TRAILING = rf"(?<=\w) (?:of|per|see|by) {_REFERENCE}(?= *(?:[.,;:]|$))"
_BRACKETED = r" *[(\[{][^()\[\]{}]*[)\]}]"
_DATE = r"\b(\d{4})-(\d\d)-(\d\d)\b"
_HYPHENED = r"(\d)-(\d[\d,.]*)( ?[^\s\d,;:!?]+)?"
# The rarer patterns above are texts: each is compiled at its first use, which most questions never come to.
_PIECE = re.compile(
    r"(?:(?<![^\W_])(?P<mach>M(?:ach)? ?))?"
    r"(?P<number>(?:(?<![\w°%)])[\u2212-])?(?:\d{1,3}(?:,\d{3})+(?!\d)|\d+)(?:\.\d+)*|(?<!\w)\.\d+|(?<=M)\.\d+)"
    r"(?P<unit>(?! ?M(?:ach)? ?[\d.]) ?[^\s\d,;:!?]+)?"
    r"|(?P<word>[^\W\d_]+)"
)
_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
    "November", "December",
)  # fmt: skip
_NEVER_READ = frozenset({"in"})
"""Signs of units that are likelier to be words of the sentence: "2 in each"."""
_LONGEST = 15
"""Figures that a number may have to be said in full; a longer one is said figure by figure."""
_VOWELS = frozenset("AEIOUY")


class _Manner(NamedTuple):
    """What saying a text takes: units by their sign, the lexicon, and whether figures are said one by one."""

    units: Units
    signs: dict[str, str]
    lexicon: Mapping[str, str]
    digits: bool


def spoken(text: str, units: Units, lexicon: Mapping[str, str], digits: bool = False) -> str:
    """Return the text as it is to be said: "sixty-eight degrees either way at fifteen knots."

    lexicon: written form to spoken form, capitals counting. digits: say amounts as on the radio.
    The result holds no figure, bracket, semicolon or dash, and ends with a stop unless it asks something.
    """
    manner = _Manner(units, _signs(units), lexicon, digits)
    said = _with_lexicon_signs(_joined_lines(text), lexicon)
    said = _without_references(_without_brackets(said))
    said = _breaks_as_stops(_dates_in_words(_ranges_in_words(said, manner)))
    return _tidy(_PIECE.sub(lambda match: _said(match, manner), said))


def _signs(units: Units) -> dict[str, str]:
    """Symbols by the sign that display writes; the first unit of a sign has it ("°C" is a temperature)."""
    signs: dict[str, str] = {}
    for unit in units:
        sign = unit.show.strip()
        if sign and sign not in _NEVER_READ:
            signs.setdefault(sign, unit.symbol)
    return signs


def _joined_lines(text: str) -> str:
    """One line of sentences: the items of a list lose their marks and end with a stop each."""
    lines = [line.strip() for line in text.replace("\u00a0", " ").replace("\u202f", " ").splitlines()]
    lines = [line for line in lines if line]
    if len(lines) < 2:
        return " ".join(lines)
    numbered = all(any(line.startswith(f"{n}. ") for line in lines) for n in (1, 2))
    mark = re.compile(r"\d{1,2}\. " if numbered else r"[-*•–] +")
    return " ".join(_stopped(mark.sub("", line, count=1) if mark.match(line) else line) for line in lines)


def _stopped(item: str) -> str:
    return item if item.endswith((".", "?", "!", ":")) else item.rstrip(",;") + "."


def _with_lexicon_signs(text: str, lexicon: Mapping[str, str]) -> str:
    """Say the entries that are more than one plain word ("J/(kg·K)", "→"), longest first."""
    found = [key for key in lexicon if not key.isalpha() and key in text]
    for key in sorted(found, key=len, reverse=True):
        if not key[0].isalnum() and not key[-1].isalnum():
            text = text.replace(key, f" {lexicon[key]} ")
        else:
            text = _replaced_word(text, key, lexicon[key])
    return text


def _replaced_word(text: str, key: str, said: str) -> str:
    """The text with an entry said wherever it stands apart from letters and figures."""
    before = r"(?<![^\W_])" if key[0].isalnum() else ""
    after = r"(?![^\W_])" if key[-1].isalnum() else ""
    return re.sub(before + re.escape(key) + after, said.replace("\\", r"\\"), text)


def _without_brackets(text: str) -> str:
    while any(sign in text for sign in "([{"):
        text, count = re.subn(_BRACKETED, "", text)
        if not count:
            break
    return text


def _without_references(text: str) -> str:
    """Drop paragraphs where the sentence stands without them; say the others, which it is about."""
    if "." not in text:
        return text
    text = re.sub(_VERDICT, r"\1 limits", text)
    text = re.sub(_TRAILING, "", text)
    return re.sub(r"\b([A-LN-Z])\.(?=\d)", r"\1 point ", text)  # "M.60" is a Mach number


def _ranges_in_words(text: str, manner: _Manner) -> str:
    """Say "60–110 mm" with a "to"; a hyphen means a range only of an amount, and joins figures otherwise."""
    if "–" in text:
        text = re.sub(r"(?<=[\w°%²])–(?=\d)", " to ", text)

    def ranged(match: re.Match[str]) -> str:
        joint = "to " if match[3] and _sign_length(match[3].lstrip(" "), manner) else ""
        return f"{match[1]} {joint}{match[2]}{match[3] or ''}"

    if "-" in text:
        text = re.sub(_HYPHENED, ranged, re.sub(_DATE, _kept_date, text))
        text = re.sub(r"(?<=[^\W\d_])-(?=\d)", " ", text)
    return text


def _kept_date(match: re.Match[str]) -> str:
    """A date with marks that no range has, until it is said."""
    return "{}_{}_{}".format(*match.groups())


def _dates_in_words(text: str) -> str:
    def said(match: re.Match[str]) -> str:
        year, month, day = map(int, match.groups())
        if not 1 <= month <= len(_MONTHS) or year % 100 < 10:
            return match[0].replace("_", " ")
        name = _MONTHS[month - 1]
        return f"{number_words(day)} {name} {number_words(year // 100)} {number_words(year % 100)}"

    return re.sub(r"\b(\d{4})_(\d\d)_(\d\d)\b", said, text) if "_" in text else text


def _breaks_as_stops(text: str) -> str:
    """Turn semicolons and dashes into stops; what follows an ellipsis is heard after one too."""
    return re.sub(r" *(?:;|…|—|–| - )[ ]*", ". ", text)


def _said(match: re.Match[str], manner: _Manner) -> str:
    glued = match.start() > 0 and match.string[match.start() - 1].isalnum()
    if match["word"]:
        return (" " if glued else "") + _word(match["word"], manner.lexicon)
    number, rest = match["number"], match["unit"] or ""
    if match["mach"]:
        if match["mach"][0:4] == "Mach" or "." in number:
            return _amount(number, "Mach", manner) + _PIECE.sub(lambda m: _said(m, manner), rest)
        return f"{match['mach'].strip()} {_plain_number(number, manner)}" + _rest(rest, manner)
    length = _sign_length(rest.lstrip(" "), manner)
    before = " " if glued else ""
    if length:
        sign, left = rest.lstrip(" ")[:length], rest.lstrip(" ")[length:]
        return before + _amount(number, manner.signs[sign], manner) + _rest(left, manner)
    return before + _plain_number(number, manner) + _rest(rest, manner)


def _rest(text: str, manner: _Manner) -> str:
    """What was taken for a unit and is none: words of their own, apart from the number."""
    said = _PIECE.sub(lambda match: _said(match, manner), text)
    return f" {said}" if said[:1].isalnum() else said


def _sign_length(text: str, manner: _Manner) -> int:
    """How many characters of a text are the sign of a unit; 0 when it begins with none."""
    for end in range(len(text), 0, -1):
        if text[:end] in manner.signs and not text[end : end + 1].isalnum():
            return end
    return 0


def _amount(number: str, symbol: str, manner: _Manner) -> str:
    plain = number.replace(",", "").replace("\u2212", "-")
    if plain.count(".") > 1 or len(plain) > _LONGEST:
        return f"{_plain_number(number, manner)} {manner.units.get(symbol).say_many}"
    return spoken_amount(float(plain), symbol, manner.units, manner.digits)


def _plain_number(number: str, manner: _Manner) -> str:
    """A number without a unit; the parts of a paragraph are said as numbers with "point" between them."""
    plain = number.replace(",", "").replace("\u2212", "-")
    if plain.count(".") > 1:
        return " point ".join(_plain_number(part, manner) for part in plain.split("."))
    if len(plain) > _LONGEST:
        figures = plain.lstrip("-")
        return " ".join("point" if figure == "." else number_words(int(figure)) for figure in figures)
    if manner.digits:
        return spoken_amount(float(plain), "count", manner.units, digits=True)
    return number_words(float(plain))


def _word(word: str, lexicon: Mapping[str, str]) -> str:
    """A word as its entry says; capitals without an entry are a word if they can be, else letters."""
    said = lexicon.get(word)
    if said is not None:
        return said
    if len(word) < 2 or not word.isupper():
        return word
    return word.lower() if _VOWELS & set(word) else " ".join(word)


def _tidy(text: str) -> str:
    """One clean line: no sign that is not said, no doubled stop or space."""
    text = re.sub(r"(?<=\w)/(?=\w)", " or ", text)
    text = re.sub(r"[^\w\s'’,.:?!-]|_", " ", text)
    text = re.sub(r"(?<!\w)-|-(?!\w)", " ", text)
    text = re.sub(r"\s+", " ", text)
    text = re.sub(r" (?=[,.:?!])", "", text)
    text = re.sub(r"[,.:]*([.?!])[,.:?!]*", r"\1", text).strip(" ,.:")
    return text if not text or text.endswith(("?", "!")) else f"{text}."
