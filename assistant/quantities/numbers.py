"""Read one number, typed or spoken, at a place in the tokens.

Pilots say numbers in three manners and mix them: in full ("two hundred and seventy-five"), digit by digit
("two seven five", with the radiotelephony forms "tree", "fower", "fife", "ait", "niner"; ICAO Annex 10
Volume II, 5.2.1.4.3) and in pairs ("two thirty"). General number-word libraries read the first manner alone
and add the digits of the second, hence these readers of our own.

Every private reader takes the words and an index, and returns the value and the index after it, or None.
"""

from __future__ import annotations

from assistant.frozen import NamedTuple
from assistant.quantities.tokens import Token

_DIGITS = {
    "zero": 0, "oh": 0, "nought": 0, "naught": 0, "one": 1, "wun": 1, "two": 2, "three": 3, "tree": 3,
    "four": 4, "fower": 4, "five": 5, "fife": 5,
    "six": 6, "seven": 7, "eight": 8, "ait": 8, "nine": 9, "niner": 9,
}  # fmt: skip
_TEENS = {
    "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16,
    "seventeen": 17, "eighteen": 18, "nineteen": 19,
}  # fmt: skip
_TENS = {
    "twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60, "seventy": 70,
    "eighty": 80, "ninety": 90, "ninty": 90,
}  # fmt: skip
_TIMES = {"double": 2, "triple": 3, "treble": 3}
"""How often the digit behind is said: "one six double zero"."""
_SCALES = {"hundred": 100, "thousand": 1000, "million": 1_000_000, "dozen": 12}
_PARTS = {"half": 0.5, "quarter": 0.25, "quarters": 0.25, "third": 1 / 3, "thirds": 1 / 3}
_POINTS = frozenset({"point", "decimal"})
_SIGNS = {"minus": -1.0, "negative": -1.0, "plus": 1.0}
_ARTICLES = frozenset({"a", "an"})
# Alone, these are more often another word than a number: "which one", "oh, and ...".
_NEVER_ALONE = frozenset({"one", "oh", "wun", "tree", "naught"})

# No quantity of an aeroplane is longer than this, in figures or in words; a bound keeps hostile input cheap.
_LONGEST = 18

# Words that can begin a spoken number; everything else is rejected by one look-up.
STARTERS = frozenset({*_DIGITS, *_TEENS, *_TENS, *_SCALES, *_POINTS, *_SIGNS, *_ARTICLES, "half", "quarter"})
TENS = frozenset(_TENS)
DIGITS = dict(_DIGITS)


class _Read(NamedTuple):
    value: float
    end: int


def is_typed(text: str) -> bool:
    """Return whether a token text is a number in figures: not an ordinal, not a paragraph reference."""
    return typed_value(text) is not None


def typed_value(text: str) -> float | None:
    """Return the value of a number in figures, or None."""
    if len(text) > _LONGEST or not text[-1:].isdigit() or not text.isascii():
        return None
    try:
        return float(text.replace(",", ""))
    except ValueError:
        return None


def read_number(
    tokens: list[Token], i: int, lone: bool = False, stop: int | None = None
) -> tuple[float, int] | None:
    """Return the number that begins at tokens[i] and the index after it, or None.

    lone: read also a lone "one" or "oh", which are otherwise taken for words ("which one").
    stop: index to read no further than.
    """
    end = min(len(tokens) if stop is None else stop, len(tokens), i + _LONGEST)
    if not 0 <= i < end:
        return None
    first = tokens[i].text
    if first not in STARTERS and not (first[-1].isdigit() and first.isascii()):
        return None
    words = [token.text for token in tokens[max(i - 1, 0) : end]]
    at = min(i, 1)
    read = _signed(words, at)
    if read is None or (not lone and read.end == at + 1 and first in _NEVER_ALONE):
        return None
    return float(read.value), i + read.end - at


def _signed(words: list[str], i: int) -> _Read | None:
    sign = _SIGNS.get(words[i])
    if sign is None:
        return _unsigned(words, i)
    read = _unsigned(words, i + 1)
    return read and _Read(sign * read.value + 0.0, read.end)  # adding 0.0 turns -0.0 into 0.0


def _unsigned(words: list[str], i: int) -> _Read | None:
    if i >= len(words):
        return None
    return _typed(words, i) or _part(words, i) or _spoken(words, i)


def _typed(words: list[str], i: int) -> _Read | None:
    """Read figures, with what is said after them: "20 thousand", "1 point 6", "19 and a half"."""
    value = typed_value(words[i])
    if value is None:
        return None
    if "." not in words[i] and (tail := _decimals(words, i + 1)):
        return _Read(float(f"{value:.0f}{tail[0]}"), tail[1])
    if words[i + 1 : i + 2] == ["and"] and "." not in words[i] and (part := _and_part(words, i + 2)):
        return _scaled(words, _Read(value + part.value, part.end))
    return _scaled(words, _Read(value, i + 1))


def _part(words: list[str], i: int) -> _Read | None:
    """Read "half", "a half", "a quarter", "three quarters", "half a dozen"."""
    start = i + 1 if words[i] in _ARTICLES else i
    if start < len(words) and words[start] in ("half", "quarter"):
        if words[start + 1 : start + 3] == ["a", "dozen"]:
            return _Read(12 * _PARTS[words[start]], start + 3)
        return _Read(_PARTS[words[start]], start + 1)
    if i + 1 < len(words) and words[i + 1] in _PARTS and words[i] in _DIGITS:
        return _Read(_DIGITS[words[i]] * _PARTS[words[i + 1]], i + 2)
    return None


def _spoken(words: list[str], i: int) -> _Read | None:
    """Read a whole number in words, then what follows it: a decimal part or "and a half"."""
    whole = _Read(0, i) if words[i] in _POINTS else _whole(words, i)
    if whole is None:
        return None
    if tail := _decimals(words, whole.end):
        return _scaled(words, _Read(float(f"{whole.value:.0f}{tail[0]}"), tail[1]))
    if words[whole.end : whole.end + 1] == ["and"] and (part := _and_part(words, whole.end + 1)):
        return _scaled(words, _Read(whole.value + part.value, part.end))
    return whole if whole.end > i else None


def _scaled(words: list[str], read: _Read) -> _Read:
    """Multiply by the scale words that follow: "20 thousand", "one point five million"."""
    value, end = read
    while end < len(words) and words[end] in _SCALES:
        value, end = value * _SCALES[words[end]], end + 1
    return _Read(value, end)


def _and_part(words: list[str], i: int) -> _Read | None:
    """Read "a half" or "three quarters" after "two and"; a bare "half" there is another thing's half."""
    if i >= len(words) or words[i] in _PARTS:
        return None
    part = _part(words, i)
    return part if part and part.value < 1 else None


def _decimals(words: list[str], i: int) -> tuple[str, int] | None:
    """Return ".60" of "point six zero" or "point sixty" and the index after it."""
    if i + 1 >= len(words) or words[i] not in _POINTS:
        return None
    digits, end = "", i + 1
    while end < len(words) and (words[end] in _DIGITS or words[end].isdecimal()):
        digits += words[end] if words[end].isdecimal() else str(_DIGITS[words[end]])
        end += 1
    if not digits and (pair := _below_hundred(words, end)):
        digits, end = f"{pair.value:.0f}", pair.end
    return ("." + digits, end) if digits else None


def _whole(words: list[str], i: int) -> _Read | None:
    """Read a whole number, leaving alone the "and" between two: "between one hundred and twenty"."""
    read = _with_thousands(words, i, joined=True)
    if read is None or i == 0 or words[i - 1] != "between":
        return read
    joined = not {"and", "to"}.isdisjoint(words[read.end : read.end + 5])
    return _with_thousands(words, i, joined)


def _with_thousands(words: list[str], i: int, joined: bool) -> _Read | None:
    head = _bare_scale(words, i, "thousand")
    if head is None:
        head = _with_hundreds(words, i, joined) or _bare_scale(words, i, "dozen") or _bare_scale(words, i, "million")
        if head is None or words[head.end : head.end + 1] != ["thousand"]:
            return head and _scaled(words, head)
        head = _Read(head.value * 1000, head.end + 1)
    rest = _rest(words, head.end, joined, "thousand")
    return _Read(head.value + rest.value, rest.end) if rest else head


def _rest(words: list[str], i: int, joined: bool, scale: str) -> _Read | None:
    """Read what adds to a hundred or a thousand ("and fifty"), unless it begins the next number."""
    start = i + 1 if joined and words[i : i + 1] == ["and"] else i
    rest = _below_hundred(words, start) if scale == "hundred" else _with_hundreds(words, start, joined)
    if rest is None or not 0 < rest.value < _SCALES[scale]:
        return None
    if words[rest.end : rest.end + 1] != [scale]:
        return rest
    return _rest(words, i, False, scale) if joined and scale == "thousand" else None


def _with_hundreds(words: list[str], i: int, joined: bool) -> _Read | None:
    """Read "two hundred and seventy-five", "twenty-five hundred", or a number without a hundred."""
    head = _bare_scale(words, i, "hundred")
    if head is None:
        head = _digits_or_pair(words, i)
        if head is None or head.value >= 100 or words[head.end : head.end + 1] != ["hundred"]:
            return head
        head = _Read(head.value * 100, head.end + 1)
    rest = _rest(words, head.end, joined, "hundred")
    return _Read(head.value + rest.value, rest.end) if rest else head


def _bare_scale(words: list[str], i: int, scale: str) -> _Read | None:
    """Read "hundred", "a hundred", "a dozen" as one of them."""
    start = i + 1 if i < len(words) and words[i] in _ARTICLES else i
    if start < len(words) and words[start] == scale:
        return _Read(_SCALES[scale], start + 1)
    return None


def _digits_or_pair(words: list[str], i: int) -> _Read | None:
    """Read "one eight zero", "one six double zero", "one eighty five", "fourteen fifty", "ninety"."""
    if i >= len(words):
        return None
    if words[i] not in _DIGITS:
        return _teens_pair(words, i) or _below_hundred(words, i)
    if words[i] != "zero" and (pair := _below_hundred(words, i + 1)) and pair.value >= 10:
        return _Read(_DIGITS[words[i]] * 100 + pair.value, pair.end)
    value, end = 0, i
    while end < len(words):
        times = _TIMES.get(words[end], 0) if end > i else 0
        digit = _DIGITS.get(words[end + 1] if times and end + 1 < len(words) else words[end])
        if digit is None:
            break
        for _ in range(times or 1):
            value = value * 10 + digit
        end += 2 if times else 1
    return _Read(value, end)


def _teens_pair(words: list[str], i: int) -> _Read | None:
    """Read "fourteen fifty" as 1450; two plain tens ("fifty twenty") stay two numbers."""
    if words[i] in _TEENS and i + 1 < len(words) and words[i + 1] in _TENS:
        pair = _below_hundred(words, i + 1)
        return pair and _Read(_TEENS[words[i]] * 100 + pair.value, pair.end)
    return None


def _below_hundred(words: list[str], i: int) -> _Read | None:
    """Read "seven", "fifteen", "eighty", "eighty five"."""
    word = words[i] if 0 <= i < len(words) else ""
    if word in _TENS:
        unit = _DIGITS.get(words[i + 1], 0) if i + 1 < len(words) else 0
        return _Read(_TENS[word] + unit, i + 2 if unit else i + 1)
    value = _TEENS.get(word, _DIGITS.get(word))
    return None if value is None else _Read(value, i + 1)
