"""The written answer for the ear: signs, units and abbreviations in words, nothing for the eye alone.

`by_ear` shapes the sentences; here their words and numbers are said. How a word of the trade or of one type is
said, and a digit on the radio, is data, so it is handed in: as a lexicon, and as the words of the radio.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache

from assistant.frozen import NamedTuple
from assistant.quantities.show import in_minutes, number_words, numeral_words
from assistant.quantities.show import spoken as spoken_amount
from assistant.quantities.units import Units
from assistant.rendering.by_ear import sentences_by_ear
from assistant.rendering.dates import dates_in_words, dates_kept, slashed_dates
from assistant.rendering.labels import labels_named
from assistant.rendering.sayable import is_sayable

_INCHES = r"(?<![\d.,/])(\d[\d.,]*) in(?= is | \(\d|[.;)]|$)"
_NUMERALS = r"(?<![\w.])\d+(?:-\d+){2,}(?!\w|\.\d)"
"""Three numbers and more, joined by hyphens: of a paragraph or a document."""
_HYPHENED = r"(\d)-(\d[\d,.]*)( ?[^\s\d,;:!?]+)?"
# The rarer patterns above are texts: each is compiled at its first use, which most questions never come to.
_PIECE = re.compile(
    r"(?:(?<![^\W_])(?P<mach>M(?:ach)? ?))?"
    r"(?P<number>(?:(?<![\w°%)])[\u2212-])?(?:\d{1,3}(?:,\d{3})+(?!\d)|\d+)(?:\.\d+)*|(?<!\w)\.\d+|(?<=M)\.\d+)"
    r"(?P<unit>(?! ?M(?:ach)? ?[\d.]) ?[^\s\d,;:!?]+)?"
    r"|(?P<word>[^\W\d_]+)"
)
_NEVER_READ = frozenset({"in"})
"""Signs of units that are likelier to be words of the sentence: "2 in each"."""
_NUMERAL = 4
"""Figures from which a number that is not grouped, and has no unit, names something and counts nothing."""
_LONGEST = 15
"""Figures that a number may have to be said in full; a longer one is said figure by figure."""
_EXPLAINED = r"\b([a-z]+(?: [a-z]+){1,3})(s?), \1\b,?"
"""An abbreviation that is said in words already, and is explained by the same words."""
_POWERS = {"²": "squared", "³": "cubed"}


class _Manner(NamedTuple):
    """What saying a text takes: units by their sign, the lexicon, and whether figures are said one by one."""

    units: Units
    signs: dict[str, str]
    lexicon: Mapping[str, str]
    digits: bool
    radio: Mapping[str, str]


def spoken(
    text: str,
    units: Units,
    lexicon: Mapping[str, str],
    digits: bool = False,
    radio: Mapping[str, str] | None = None,
    labels: Mapping[str, str] | None = None,
) -> str:
    """Return the text as it is to be said: "sixty-eight degrees either way at fifteen knots."

    lexicon: written form to spoken form, capitals counting. digits: say amounts digit by digit, as on the
    radio, with the words that radio has for them ("three": "tree"). labels: a label in capitals to what it is called
    where the sentence does not tell its kind ("NORMAL": "normal mode"). The result holds no figure, bracket,
    semicolon or dash, and ends with a stop unless it asks something.
    """
    manner = _Manner(units, _signs(units), lexicon, digits, radio or {})
    said = labels_named(text, labels) if labels else text
    said = _amounts_apart(said, manner)
    said = _divided(slashed_dates(_roots_multiplied(_inches(said))))
    said = _ranges_in_words(_with_lexicon_signs(_rates(said, manner), manner), manner)
    said = dates_in_words(sentences_by_ear(said, _written(units)))
    if digits:
        said = re.sub(r"(?<=\d) point (?=\d)", " decimal ", said)
    return _tidy(_PIECE.sub(lambda match: _said(match, manner), said))


@lru_cache(maxsize=4)
def _written(units: Units) -> list[str]:
    """How units are written behind a number, their space included."""
    return [unit.show for unit in units if unit.show.strip() and not unit.show.endswith(" ")]


@lru_cache(maxsize=4)
def _signs(units: Units) -> dict[str, str]:
    """Symbols by the sign that display writes; the first unit of a sign has it ("°C" is a temperature)."""
    signs: dict[str, str] = {}
    for unit in units:
        sign = unit.show.strip()
        if sign and sign not in _NEVER_READ:
            signs.setdefault(sign, unit.symbol)
    return signs


def _inches(text: str) -> str:
    """An inch that something is said of, or told in another unit, is no word of the sentence: "3 in is 76.2 mm"."""
    if " in" not in text:
        return text
    return re.sub(_INCHES, lambda m: f"{m[1]} inch{'' if m[1] == '1' else 'es'}", text)


def _amounts_apart(text: str, manner: _Manner) -> str:
    """Two amounts in a row that are of different kinds are heard apart: "for more than 5 min, 400 °C"."""

    def said(match: re.Match[str]) -> str:
        one, other = (manner.units.get(manner.signs[sign]).dimension for sign in (match[2], match[3]))
        return match[1] if one == other else f"{match[1]},"

    return _two_amounts(manner.units).sub(said, text)


@lru_cache(maxsize=4)
def _two_amounts(units: Units) -> re.Pattern[str]:
    """The end of an amount that another one follows, with the signs of both."""
    signs = "|".join(re.escape(sign) for sign in sorted(_signs(units), key=len, reverse=True))
    return re.compile(rf"(\d ?({signs}))(?= \d[\d,.]* ?({signs})(?!\w))")


def _roots_multiplied(text: str) -> str:
    """A number before a root multiplies it: "9.0 √p" is nine times the square root."""
    return re.sub(r"(?<=\d) ?√", " times √", text) if "√" in text else text


def _divided(text: str) -> str:
    """A stroke between spaces is a division; between units it is "per", and between single letters nothing."""
    if "/" not in text:
        return text
    text = re.sub(r"(?<=\S) / (?=\S)", " divided by ", text)
    return re.sub(r"\b([A-Za-z])/([A-Za-z])\b(?![²³])", _letters_apart, text)


def _letters_apart(match: re.Match[str]) -> str:
    return match[0] if match[0] == "m/s" else f"{match[1].upper()} {match[2].upper()}"


def _rates(text: str, manner: _Manner) -> str:
    """A unit by another is said "per": "2 kt/s"; a time of day is two numbers."""
    if ":" in text:
        text = re.sub(r"\b([01]?\d|2[0-3]):([0-5]\d)\b(?!:)", r"\1 \2", text)
    if "/" not in text:
        return text
    signs = "|".join(re.escape(sign) for sign in sorted(manner.signs, key=len, reverse=True))

    def said(match: re.Match[str]) -> str:
        if f"{match[1]}/{match[2]}" in manner.signs:
            return match[0]
        return f"{match[1]} per {manner.units.get(manner.signs[match[2]]).say_one}"

    return re.sub(rf"(?:(?<=\d)|(?<=\d ))({signs})/({signs})(?![\w²³])", said, text)


def _with_lexicon_signs(text: str, manner: _Manner) -> str:
    """Say the entries that are more than one plain word ("J/(kg·K)", "→"), longest first."""
    lexicon = manner.lexicon
    found = [key for key in lexicon if not key.isalpha() and key in text]
    for key in sorted(found, key=len, reverse=True):
        if not key[0].isalnum() and not key[-1].isalnum():
            text = text.replace(key, f" {lexicon[key]} ")
        else:
            text = _replaced_word(text, key, manner)
    return text


def _replaced_word(text: str, key: str, manner: _Manner) -> str:
    """The text with an entry said wherever it stands apart from letters and figures, and is no amount."""
    before = r"(?<![^\W_])" if key[0].isalnum() else ""
    before += r"(?<!\d )(?<!\d)" if key in manner.signs else ""
    after = r"(?![^\W_])" if key[-1].isalnum() else ""
    if key[-1].isdigit():
        signs = "|".join(re.escape(sign) for sign in manner.signs)
        after += rf"(?![.,]\d| ?(?:{signs})(?![^\W_]))"
    return re.sub(before + re.escape(key) + after, manner.lexicon[key].replace("\\", r"\\"), text)


def _ranges_in_words(text: str, manner: _Manner) -> str:
    """Say "60–110 mm" with a "to"; a hyphen means a range only of an amount, and joins figures otherwise."""
    if "–" in text:
        text = re.sub(r"(?<=[\w°%²])–(?=\d)", " to ", text)

    def ranged(match: re.Match[str]) -> str:
        joint = "to " if match[3] and _sign_length(match[3].lstrip(" "), manner) else ""
        if not joint and match[1] == "0" and len(match[2].strip(",.")) == 1:
            joint = "dash "  # "90-7" is not 97
        return f"{match[1]} {joint}{match[2]}{match[3] or ''}"

    if "-" in text:
        text = re.sub(_NUMERALS, lambda match: match[0].replace("-", " "), dates_kept(text))
        text = re.sub(_HYPHENED, ranged, text)
        text = re.sub(r"(?<=[^\W\d_])-(?=\d)", " ", text)
    return text


def _said(match: re.Match[str], manner: _Manner) -> str:
    glued = match.start() > 0 and match.string[match.start() - 1].isalnum()
    if match["word"]:
        return (" " if glued else "") + _word(match["word"], manner.lexicon, begins=_after_stop(match))
    number, rest = match["number"], match["unit"] or ""
    if match["mach"]:
        if match["mach"][0:4] == "Mach" or "." in number:
            return _amount(number, "Mach", manner) + _PIECE.sub(lambda m: _said(m, manner), rest)
        return f"{match['mach'].strip()} {_plain_number(number, manner)}" + _rest(rest, manner)
    length = _sign_length(rest.lstrip(" "), manner)
    if length == 1 and re.match(r" [A-Z][²³]?(?!\w)", match.string[match.end() :]):
        length = 0  # a letter among the letters of a formula is no unit
    before = " " if glued else ""
    if _begins_item(match, rest):
        return number_words(int(number)) + _rest(rest, manner)
    if length:
        sign, left = rest.lstrip(" ")[:length], rest.lstrip(" ")[length:]
        said = _amount(number, manner.signs[sign], manner)
        if left.strip() == "" and re.search(r"\ba $", match.string[: match.start()]):
            unit = manner.units.get(manner.signs[sign])
            said = said.removesuffix(unit.say_many) + unit.say_one  # "a 180° turn" is of so many degree
        return before + said + _rest(left, manner)
    return before + _plain_number(number, manner) + _rest(rest, manner)


def _begins_item(match: re.Match[str], rest: str) -> bool:
    """Whether a number is that of a step or a choice, which is said in full whatever the manner: "Three, …"."""
    follows = match.string.startswith(", ", match.end())
    return follows and not rest and match["number"].isdigit() and len(match["number"]) < 3 and _after_stop(match)


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
    parts = in_minutes(float(plain), symbol)
    said = " and ".join(spoken_amount(value, unit, manner.units, manner.digits) for value, unit in parts)
    return _on_the_radio(said, manner)


def _plain_number(number: str, manner: _Manner) -> str:
    """A number without a unit; the parts of a paragraph are said as numbers with "point" between them."""
    plain = number.replace(",", "").replace("\u2212", "-")
    if plain.count(".") > 1:
        return " point ".join(_plain_number(part, manner) for part in plain.split("."))
    if plain.isdigit() and len(plain) >= _NUMERAL and number == plain and not manner.digits:
        return numeral_words(plain)
    if len(plain) > _LONGEST:
        figures = plain.lstrip("-")
        return " ".join("point" if figure == "." else number_words(int(figure)) for figure in figures)
    if manner.digits:
        return _on_the_radio(spoken_amount(float(plain), "count", manner.units, digits=True), manner)
    return number_words(float(plain))


def _on_the_radio(words: str, manner: _Manner) -> str:
    """The words of a number as the radio has them, where it is said digit by digit."""
    if not manner.digits or not manner.radio:
        return words
    return " ".join(manner.radio.get(word, word) for word in words.split(" "))


def _after_stop(match: re.Match[str]) -> bool:
    before = match.string[: match.start()].rstrip(" “\"'")
    return not before or before[-1] in ".?!"


def _word(word: str, lexicon: Mapping[str, str], begins: bool) -> str:
    """A word as its entry says; capitals without an entry are a word if they can be, else letters.

    begins: whether it begins a sentence.
    """
    said = lexicon.get(word)
    if said is not None:
        return said
    if word[-1] in _POWERS and len(word) > 1:
        return f"{_word(word[:-1], lexicon, begins)} {_POWERS[word[-1]]}"
    if len(word) < 2 or not word.isupper():
        return word
    if not is_sayable(word):
        return " ".join(word)
    return word.capitalize() if begins else word.lower()


def _tidy(text: str) -> str:
    """One clean line: no sign that is not said, no doubled stop or space."""
    text = re.sub(r"(?<=\w)/(?=\w)", " or ", text)
    text = re.sub(r"[^\w\s'’,.:?!-]|_", " ", text)
    text = re.sub(r"(?<!\w)-|-(?!\w)", " ", text)
    text = re.sub(r"\s+", " ", text)
    text = re.sub(_EXPLAINED, r"\1\2", text)
    text = re.sub(r" (?=[,.:?!])", "", text)
    text = re.sub(r"[,.:]*([.?!])[,.:?!]*", r"\1", text).strip(" ,.:")
    return text if not text or text.endswith(("?", "!")) else f"{text}."
