"""The forms that one amount can take at a place in the tokens, each read by a small function.

Forms that need more than "number, then unit" (Mach, flight levels, "an hour and a half") stand before the
plain one in the list `_READERS`; adding a form is one function and one line.
"""

from __future__ import annotations

from collections.abc import Callable

from assistant.frozen import NamedTuple
from assistant.quantities.numbers import STARTERS, is_typed, read_number, typed_value
from assistant.quantities.tokens import Token
from assistant.quantities.units import Unit, Units


class Reading(NamedTuple):
    """What the readers look at: the tokens, their texts, the units, and where names bound them."""

    tokens: list[Token]
    words: list[str]
    units: Units
    skip: frozenset[int]

    def stop(self, i: int) -> int:
        """Return the index of the first token after i that belongs to a name."""
        return min((taken for taken in self.skip if taken > i), default=len(self.words))

    def word(self, i: int) -> str:
        """Return the text at i, or "" outside the tokens or inside a name."""
        return self.words[i] if 0 <= i < len(self.words) and i not in self.skip else ""

    def touches(self, i: int) -> bool:
        """Return whether token i is written against the one before it."""
        return 0 < i < len(self.tokens) and self.tokens[i - 1].end == self.tokens[i].start

    def number(self, i: int, lone: bool = False) -> tuple[float, int] | None:
        """Return the number at i and the index after it."""
        return read_number(self.tokens, i, lone, self.stop(i)) if self.word(i) else None

    def unit(self, i: int) -> tuple[Unit, int] | None:
        """Return the unit named at i and the index after it."""
        found = self.units.match(self.words, i, self.touches(i)) if self.word(i) else None
        return found if found and found[1] <= self.stop(i) else None


class Found(NamedTuple):
    """A value, its unit symbol if one was given, and the index after both."""

    value: float
    unit: str | None
    end: int


_MONEY = {"$": "USD", "€": "EUR", "£": "GBP"}
_ARTICLES = frozenset({"a", "an"})
# "a second" is nearly always "another"; these are not.
_SINGLE = frozenset({"hour", "hr", "h", "minute", "min", "day"})
_BEFORE_ZERO = frozenset({"at", "to", "from", "reads", "shows"})
_BELOW = frozenset({"zero", "0", "freezing"})
_INTO = frozenset({"in", "to", "into", "as", "="})
_OUTDOORS = frozenset({"outside", "out", "outdoors", "ambient", "oat"})
_NOT_A_SHARE = frozenset({"first", "second", "third", "last", "next", "further", "each", "every", "per"})
_SHARES = {"1/2": 1 / 2, "1/4": 1 / 4, "3/4": 3 / 4, "1/3": 1 / 3, "2/3": 2 / 3}
_PARTS_OF = {"h": ("min", 1 / 60), "min": ("s", 1 / 60)}
_BEGINS = STARTERS | {"mach", "m", "mn", "fl", "flight", "hour", "x", "times", "+", *_MONEY}


def may_begin(word: str) -> bool:
    """Return whether an amount may begin with a word: most begin none, and are passed over by this alone."""
    return word in _BEGINS or word[-1].isdigit()


def read_form(reading: Reading, i: int) -> Found | None:
    """Return the amount that begins at token i, or None."""
    if i in reading.skip or not may_begin(reading.words[i]):
        return None
    for reader in _READERS:
        if found := reader(reading, i):
            return found
    return None


# Readers, most particular first: each returns what begins at i, or None.


def _read_mach(reading: Reading, i: int) -> Found | None:
    """Read "M.60", "M 0.6", "mach point six", "mach number of 0.6"; "mach sixty" is 0.60."""
    word = reading.word(i)
    if word not in ("m", "mn", "mach"):
        return None
    if word != "mach" and reading.touches(i) and is_typed(reading.word(i - 1)):  # the metre of "20m"
        return None
    start = i + 1
    while word == "mach" and reading.word(start) in ("number", "no", "of", "."):
        start += 1
    number = reading.number(start)
    if number is None or (word != "mach" and not ("." in reading.word(start) and 0 < number[0] < 2)):
        return None
    own = reading.unit(number[1])
    if own and own[0].symbol != "Mach":
        return None  # "the Mach number of 240 knots"
    value = number[0] / 100 if 10 <= number[0] < 100 else number[0]
    return Found(value, "Mach", _after_unit(reading, number[1], "Mach"))


def _read_flight_level(reading: Reading, i: int) -> Found | None:
    """Read "FL190" and "flight level one niner zero" as 19,000 ft."""
    if reading.word(i) == "fl":
        number = reading.number(i + 1)
    elif (reading.word(i), reading.word(i + 1)) == ("flight", "level"):
        number = reading.number(i + 2)
    else:
        return None
    return number and Found(number[0] * 100, "ft", number[1])


def _read_money(reading: Reading, i: int) -> Found | None:
    unit = _MONEY.get(reading.word(i))
    number = reading.number(i + 1) if unit else None
    return number and Found(number[0], unit, number[1])


def _read_article(reading: Reading, i: int) -> Found | None:
    """Read "an hour", "a minute", "an hour and a half", "an hour and ten minutes"."""
    start = i + 1 if reading.word(i) in _ARTICLES else i
    if reading.word(start) not in _SINGLE or (start == i and not _half_after(reading, i + 1)):
        return None
    unit = reading.unit(start)
    return unit and _with_parts(reading, Found(1.0, unit[0].symbol, unit[1]))


def _read_signed(reading: Reading, i: int) -> Found | None:
    if reading.word(i) != "+" or not reading.touches(i + 1):
        return None
    return _read_plain(reading, i + 1)


def _read_multiple(reading: Reading, i: int) -> Found | None:
    """Read "x1.6" and "×1.6" as a factor."""
    sign = reading.word(i) == "x" or reading.tokens[i].raw == "×"
    glued = sign and reading.touches(i + 1) and is_typed(reading.word(i + 1))
    number = reading.number(i + 1) if glued else None
    return number and Found(number[0], "factor", number[1])


def _read_plain(reading: Reading, i: int) -> Found | None:
    """Read a number and the unit after it, if any."""
    fraction = _fraction(reading, i)
    read = fraction or _grouped(reading, i) or reading.number(i)
    if read is None:
        return _read_lone(reading, i)
    value, end = read
    share = 0 < value < 1 and (fraction is not None or not is_typed(reading.word(i)))
    if share and reading.word(i - 1) in _NOT_A_SHARE:
        return None
    if _is_thousand(reading, end):
        value, end = value * 1000, end + 1
    if reading.word(end) == "ish":
        end += 1
    unit = reading.unit(_past_article(reading, end) if share else end) or _inches(reading, end)
    if unit is None:
        return _below_zero(reading, Found(value, None, end))
    found = Found(value, _mach_or_metre(reading, unit[0].symbol, value, end), unit[1])
    return _with_parts(reading, _below_zero(reading, found))


def _read_lone(reading: Reading, i: int) -> Found | None:
    """Read "one hour": a lone "one" is a number only with a unit in full behind it; "at zero" is one."""
    if reading.word(i) == "zero" and reading.word(i - 1) in _BEFORE_ZERO and reading.unit(i + 1) is None:
        return Found(0.0, None, i + 1)
    number = reading.number(i, lone=True)
    unit = reading.unit(number[1]) if number else None
    if number is None or unit is None:
        return None
    if unit[1] == number[1] + 1 and len(reading.word(number[1])) == 1:  # "one t" is a slip, or a name
        return None
    return _with_parts(reading, Found(number[0], unit[0].symbol, unit[1]))


_READERS: tuple[Callable[[Reading, int], Found | None], ...] = (
    _read_mach, _read_flight_level, _read_money, _read_article, _read_signed, _read_multiple, _read_plain,
)  # fmt: skip


# Pieces of the readers.


def _inches(reading: Reading, i: int) -> tuple[Unit, int] | None:
    """Return the inch for an "in" before a word of conversion and a length: "12 in to mm", "10 in in mm"."""
    if reading.word(i) != "in" or reading.word(i + 1) not in _INTO:
        return None
    target, inch = reading.unit(i + 2), reading.units.match(["inches"], 0)
    return (inch[0], i + 1) if target and inch and target[0].dimension == "length" else None


def _is_thousand(reading: Reading, i: int) -> bool:
    """Return whether the k at i means thousand ("3k psi", "3k"), not kelvin ("15K")."""
    if reading.word(i) != "k" or not reading.touches(i):
        return False
    return reading.tokens[i].raw == "k" or reading.unit(i + 1) is not None


def _grouped(reading: Reading, i: int) -> tuple[float, int] | None:
    """Read "3 000 psi": thousands set apart by one space, believed only with a unit behind them."""
    text, end = reading.word(i), i + 1
    if not (text.isdecimal() and len(text) <= 3 and text[0] != "0"):
        return None
    while _is_group(reading, end):
        text, end = text + reading.word(end), end + 1
    return (float(text), end) if 1 < end - i < 4 and reading.unit(end) else None


def _is_group(reading: Reading, i: int) -> bool:
    word = reading.word(i)
    return len(word) == 3 and word.isdecimal() and reading.tokens[i].start == reading.tokens[i - 1].end + 1


def _fraction(reading: Reading, i: int) -> tuple[float, int] | None:
    """Read "1/2 h" and "2 1/2 h"; without a unit a stroke may as well mean "or"."""
    whole = typed_value(reading.word(i)) if reading.word(i + 2) == "/" else 0.0
    start = i + 1 if reading.word(i + 2) == "/" else i
    share = _SHARES.get("".join(reading.word(n) for n in range(start, start + 3)))
    if whole is None or share is None or reading.unit(_past_article(reading, start + 3)) is None:
        return None
    return whole + share, start + 3


def _past_article(reading: Reading, i: int) -> int:
    """Return the index after "of an", "an" or nothing: "half an hour", "a quarter of an hour"."""
    after = i + 1 if reading.word(i) == "of" else i
    return after + 1 if reading.word(after) in _ARTICLES else i


def _half_after(reading: Reading, i: int) -> tuple[float, int] | None:
    """Return the 0.5 of "and a half" at i."""
    if reading.word(i) != "and" or reading.word(i + 1) not in (*_ARTICLES, "three"):
        return None
    number = reading.number(i + 1)
    return number if number and 0 < number[0] < 1 else None


def _with_parts(reading: Reading, found: Found) -> Found:
    """Add the minutes of an hour or the seconds of a minute: "1h30", "1 h 30 min", "an hour and a half"."""
    part = _PARTS_OF.get(found.unit or "")
    if part is None:
        return found
    if half := _half_after(reading, found.end):
        return Found(found.value + half[0], found.unit, half[1])
    start = found.end + 1 if reading.word(found.end) == "and" else found.end
    number = reading.number(start)
    if number is None or not 0 < number[0] < 60:
        return found
    unit = reading.unit(number[1])
    if unit and unit[0].symbol == part[0]:
        return Found(found.value + number[0] * part[1], found.unit, unit[1])
    glued = unit is None and reading.touches(start)
    return Found(found.value + number[0] * part[1], found.unit, number[1]) if glued else found


def _below_zero(reading: Reading, found: Found) -> Found:
    """Read "five below", said of temperatures: "5 degrees below zero"."""
    following = reading.word(found.end + 1)
    if reading.word(found.end) != "below" or found.unit not in (None, "deg", "degC"):
        return found
    if following in _OUTDOORS:
        return Found(-found.value, "degC", found.end + 1)
    return Found(-found.value, "degC", found.end + 2) if following in _BELOW else found


def _mach_or_metre(reading: Reading, symbol: str, value: float, unit_at: int) -> str:
    """Read a capital M glued to a decimal below one ("0.60M") as Mach."""
    capital = symbol == "m" and reading.tokens[unit_at].raw == "M" and reading.touches(unit_at)
    return "Mach" if capital and 0 < value < 1 else symbol


def _after_unit(reading: Reading, i: int, symbol: str) -> int:
    unit = reading.unit(i)
    return unit[1] if unit and unit[0].symbol == symbol else i
