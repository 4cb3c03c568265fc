"""Write and say a value with its unit: computed values rounded, documented values exactly as they are.

Rounding is for display alone, half away from zero; answers carry the full value beside it. Speech comes in
two manners: in full, for ease, and digit by digit as on the radio (ICAO Annex 10 Volume II, 5.2.1.4; FAA AIM
4-2-8 to 4-2-11): whole hundreds and thousands are said as such, except of speeds, Mach numbers and angles.
"""

from math import floor

from assistant.quantities.units import Units

# Step of display by unit: (step below the bound, bound, step from the bound on).
_STEPS: dict[str, tuple[float, float, float]] = {
    "deg": (0.1, 0, 0.1), "rad": (0.001, 0, 0.001), "Mach": (0.01, 0, 0.01), "factor": (0.01, 0, 0.01),
    "percent": (0.1, 10, 1), "kt": (1, 0, 1), "mph": (1, 0, 1), "km/h": (1, 0, 1), "m/s": (0.1, 0, 0.1),
    "degC": (1, 0, 1), "degF": (1, 0, 1), "K": (1, 0, 1), "degF difference": (1, 0, 1),
    "s": (0.1, 10, 1), "min": (0.1, 10, 1), "h": (0.1, 0, 0.1), "m": (1, 100, 10), "ft": (1, 100, 10),
    "mm": (1, 0, 1), "km": (0.1, 0, 0.1), "NM": (0.1, 0, 0.1), "MJ": (0.1, 0, 0.1), "psi": (1, 0, 1),
    "bar": (0.1, 0, 0.1), "kPa": (1, 0, 1), "kg": (1, 0, 1), "t": (0.1, 0, 0.1), "lb": (1, 0, 1),
    "m/s2": (0.01, 0, 0.01), "g": (0.01, 0, 0.01), "count": (1, 0, 1),
}  # fmt: skip
_OTHER_STEP = (0.1, 10, 1)
_MACH_PLACES = 2
_GIVEN_PLACES, _DUST = 3, 1e-9
"""Decimals with which people give a value; what has more was converted."""
_DIGIT_BY_DIGIT = frozenset({"speed", "mach", "angle"})

_ONES = (
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
    "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
)  # fmt: skip
_TENS = ("", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_GROUPS = ((10**12, "trillion"), (10**9, "billion"), (10**6, "million"), (1000, "thousand"))
_RADIO_DIGITS = {str(n): word for n, word in enumerate((*_ONES[:9], "niner"))}


def round_shown(value: float, unit: str, units: Units) -> str:
    """Return a computed value for display: "2.0°", "114 kt", "Mach 0.56", "1,240 m"."""
    return _with_unit(_rounded(value, unit), unit, units)


def exact_shown(value: float, unit: str, units: Units) -> str:
    """Return a documented value for display, never rounded: "68°", "56,000 kg", "Mach 0.60", "1.4 m/s²"."""
    return _with_unit(_exact(value, unit), unit, units)


def given_shown(value: float, unit: str, units: Units) -> str:
    """Return a value that somebody gave, as exactly as they said it; one that was converted first is rounded."""
    said = round(value, _GIVEN_PLACES)
    if abs(said - value) > _DUST:
        return round_shown(value, unit, units)
    return exact_shown(said, unit, units)


def spoken(value: float, unit: str, units: Units, digits: bool = False, rounded: bool = False) -> str:
    """Return a value in words: "two hundred and thirty knots", "Mach zero point six zero", "minus five degrees".

    digits: say it as on the radio, "two three zero knots". rounded: say what `round_shown` writes, not the
    exact value.
    """
    known = units.get(unit)
    number = (_rounded(value, unit) if rounded else _exact(value, unit)).replace(",", "")
    every_digit = known.dimension in _DIGIT_BY_DIGIT
    words = _radio(number, every_digit) if digits else _in_full(number, unit)
    name = known.say_one if abs(float(number)) == 1 else known.say_many
    return f"{name} {words}" if known.show.endswith(" ") else f"{words} {name}".strip()


def in_minutes(value: float, unit: str) -> list[tuple[float, str]]:
    """Return an amount as it is said: the part of an hour as minutes, if it is whole ones ("0.25 h": fifteen)."""
    minutes = round(60 * value, 6)
    if unit != "h" or value == int(value) or minutes != int(minutes) or value < 0:
        return [(value, unit)]
    hours = float(int(value))
    return [*([(hours, unit)] if hours else []), (minutes - 60 * hours, "min")]


def _in_full(number: str, unit: str) -> str:
    """Return a number in full words; a Mach number keeps its two decimals, 0.60 "zero point six zero"."""
    whole, _, decimals = number.partition(".")
    if unit != "Mach" or len(decimals) != _MACH_PLACES:
        return number_words(float(number))
    return f"{number_words(int(whole))} point {' '.join(_ONES[int(digit)] for digit in decimals)}"


def number_words(value: float) -> str:
    """Return a number in full words: 68 "sixty-eight", -1.4 "minus one point four"."""
    sign = "minus " if value < 0 else ""
    whole, _, decimals = _plain(abs(value)).partition(".")
    tail = " point " + " ".join(_ONES[int(digit)] for digit in decimals) if decimals else ""
    return sign + _whole_words(int(whole)) + tail


def numeral_words(figures: str) -> str:
    """Return figures that name something and count nothing, as people read them: a year, the number of a document."""
    first, last = int(figures[:-2]), int(figures[-2:])
    if len(figures) != len("2026") or figures[0] == "0":
        return _each(figures)
    if last == 0 or (last < 10 and figures.startswith("20")):
        return number_words(int(figures))
    return _each(figures) if last < 10 else f"{number_words(first)} {number_words(last)}"


def _each(figures: str) -> str:
    return " ".join(_ONES[int(figure)] for figure in figures)


def _rounded(value: float, unit: str) -> str:
    fine, bound, coarse = _STEPS.get(unit, _OTHER_STEP)
    step = fine if abs(_to_step(value, fine)) < bound else coarse
    places = 0 if step >= 1 else len(f"{step:g}") - 2
    return f"{_to_step(value, step):,.{places}f}"


def _to_step(value: float, step: float) -> float:
    """Return the nearest multiple of the step."""
    count = floor(abs(value) / step + 0.5 + 1e-9)  # the small term forgives float dust at a half
    return 0.0 if count == 0 else count * step * (-1 if value < 0 else 1)


def _exact(value: float, unit: str) -> str:
    text = _plain(value, grouped=True)
    if unit == "Mach":
        whole, _, decimals = text.partition(".")
        return f"{whole}.{decimals.ljust(_MACH_PLACES, '0')}"
    return text


def _plain(value: float, grouped: bool = False) -> str:
    """Return the shortest decimal text, without float dust or exponent."""
    text = f"{value:,.10f}" if grouped else f"{value:.10f}"
    text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _with_unit(number: str, unit: str, units: Units) -> str:
    show = units.get(unit).show
    return show + number if show.endswith(" ") else number + show


def _whole_words(n: int) -> str:
    if n < 20:
        return _ONES[n]
    if n < 100:
        return _TENS[n // 10] + (f"-{_ONES[n % 10]}" if n % 10 else "")
    if n < 1000:
        return f"{_ONES[n // 100]} hundred" + (f" and {_whole_words(n % 100)}" if n % 100 else "")
    for size, name in _GROUPS:
        if n >= size:
            joint = " and " if 0 < n % size < 100 else " "
            return f"{_whole_words(n // size)} {name}" + (joint + _whole_words(n % size) if n % size else "")
    raise AssertionError("unreachable: a thousand is the smallest group")


def _radio(number: str, every_digit: bool) -> str:
    """Return a number as on the radio: "13500" is "one three thousand five hundred"."""
    sign = "minus " if number.startswith("-") else ""
    whole, _, decimals = number.lstrip("-").partition(".")
    n = int(whole)
    if decimals:
        return f"{sign}{_digits(whole)} decimal {_digits(decimals)}"
    if every_digit or n == 0 or n % 100:
        return sign + _digits(whole)
    thousands = f"{_digits(str(n // 1000))} thousand" if n >= 1000 else ""
    hundreds = f"{_digits(str(n % 1000 // 100))} hundred" if n % 1000 else ""
    return sign + " ".join(part for part in (thousands, hundreds) if part)


def _digits(text: str) -> str:
    return " ".join(_RADIO_DIGITS[digit] for digit in text)
