"""Find every amount in a question: a number with its unit, however typed or spoken.

An amount keeps the unit as it was given ("48 t" stays tonnes): what a number without a unit measures, and
whether "degrees" is an angle or a temperature, is for the caller, who knows the concept asked about.
"""

from __future__ import annotations

from assistant.frozen import NamedTuple
from assistant.quantities.amount_forms import Found, Reading, may_begin, read_form
from assistant.quantities.numbers import is_typed
from assistant.quantities.tokens import Token, tokenize
from assistant.quantities.units import Units


class Amount(NamedTuple):
    """A value read from tokens[start:end].

    unit: a unit symbol, or None when none was given. raw: the words as written. spoken: read from number
    words, not figures. approx: said to be approximate.
    """

    start: int
    end: int
    value: float
    unit: str | None
    raw: str
    spoken: bool
    approx: bool


_APPROXIMATE = frozenset(
    {"about", "around", "approx", "approximately", "roughly", "nearly", "almost", "circa", "some"}
)
_QUESTIONS = frozenset({"what", "how"})
_JOINERS = frozenset({"to", "or", "-", "/", "till", "until", "through", "thru"})
_ONWARD = frozenset({"to", "-", "till", "until"})


def read_amounts(tokens: list[Token], units: Units, skip: frozenset[int] = frozenset()) -> list[Amount]:
    """Return the amounts in order of place.

    skip: indices of tokens that belong to a name (the 1 of "System 1"), never read as a number or a unit.
    """
    reading = Reading(tokens, [token.text for token in tokens], units, skip)
    amounts: list[Amount] = []
    end = 0
    for i in [k for k, word in enumerate(reading.words) if may_begin(word)]:
        found = read_form(reading, i) if i >= end else None
        if found and found.unit and _is_share(reading, i, found):
            found = None  # "one quarter psi" is a quarter of something, given in psi
        if found:
            amounts.append(_amount(reading, i, found))
            end = found.end
    return _share_units(reading, amounts) if len(amounts) > 1 else amounts


def amounts_in(text: str, units: Units) -> list[Amount]:
    """Return the amounts of a text in order of place."""
    return read_amounts(tokenize(text), units)


def _is_share(reading: Reading, i: int, found: Found) -> bool:
    """Return whether a part in words stands before a unit that nobody halves or quarters in words."""
    parts = {"half", "quarter", "quarters"}.intersection(reading.words[i : found.end])
    dimension = reading.units.get(found.unit).dimension if found.unit else ""
    return bool(parts) and found.value < 1 and dimension not in ("time", "length", "angle", "mass", "speed")


def _amount(reading: Reading, i: int, found: Found) -> Amount:
    loose = (reading.word(found.end), reading.word(found.end + 1)) == ("or", "so")
    end = found.end + 2 if loose else found.end
    before = reading.word(i - 1) in _APPROXIMATE and reading.word(i - 2) not in _QUESTIONS
    approx = before or loose or "ish" in reading.words[i:end]
    spoken = not any(is_typed(word) for word in reading.words[i:end])
    return Amount(i, end, found.value, found.unit, _raw(reading.tokens[i:end]), spoken, approx)


def _raw(tokens: list[Token]) -> str:
    """Return the words as written, with a space wherever there was any."""
    text, end = "", tokens[0].start
    for token in tokens:
        text += (" " if token.start > end else "") + token.raw
        end = token.end
    return text


# Units said once for two numbers.


def _share_units(reading: Reading, amounts: list[Amount]) -> list[Amount]:
    """Give both ends of a range the unit said at one: "60 to 110 mm", "from 400 degC to 150"."""
    shared = list(amounts)
    for n in range(len(shared) - 2, -1, -1):
        a, b = shared[n], shared[n + 1]
        if b.unit and _same_kind(a.unit, b.unit) and _joined(reading, a, b):
            shared[n] = a._replace(unit=b.unit)
    for n in range(1, len(shared)):
        a, b = shared[n - 1], shared[n]
        if a.unit and b.unit is None and _onward(reading, a, b):
            shared[n] = b._replace(unit=a.unit)
    return shared


def _same_kind(first: str | None, second: str) -> bool:
    return first is None or (first == "deg" and second in ("degC", "degF"))


def _joined(reading: Reading, a: Amount, b: Amount) -> bool:
    between = [reading.word(i) for i in range(a.end, b.start)]
    if len(between) == 2 and between[0] in ("down", "up") and between[1] == "to":
        return True
    if len(between) != 1:
        return False
    return between[0] in _JOINERS or (between[0] == "and" and reading.word(a.start - 1) == "between")


def _onward(reading: Reading, a: Amount, b: Amount) -> bool:
    return _joined(reading, a, b) and reading.word(b.start - 1) in _ONWARD
