"""Units of measure as data: which words name them, and exact conversion inside one dimension.

The table itself is `knowledge_base/language/units.yaml`, handed in as the plain mapping it compiles to, so
that this module needs no YAML reader. Factors are kept as the quotient they are written as, because dividing
last keeps round conversions (60 min to 1 h) exact.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from assistant.frozen import NamedTuple
from assistant.quantities.tokens import words_of


class UnitError(ValueError):
    """An unknown unit, an entry that cannot be read, or a conversion between two dimensions."""


class Unit(NamedTuple):
    """One unit: SI value = (value + offset) * factor, in the base unit of its dimension."""

    symbol: str
    dimension: str
    factor: float
    offset: float
    names: tuple[tuple[str, ...], ...]
    glued: tuple[tuple[str, ...], ...]
    say_one: str
    say_many: str
    show: str
    numerator: float
    denominator: float


class _Name(NamedTuple):
    words: tuple[str, ...]
    unit: Unit
    glued: bool


class Units:
    """All units, found by symbol or by the words that name them."""

    def __init__(self, table: Mapping[str, Any]) -> None:
        """Read the mapping of units.yaml: {"units": [entry, ...]}, its scalars as text or numbers.

        Raises UnitError for an entry that cannot be read, a symbol given twice or a name of two units.
        """
        self._by_symbol: dict[str, Unit] = {}
        self._by_first_word: dict[str, list[_Name]] = {}
        for entry in table["units"]:
            self._add(_read_unit(entry))
        for names in self._by_first_word.values():
            names.sort(key=lambda name: -len(name.words))

    def __iter__(self) -> Iterator[Unit]:
        """Iterate over the units in the order of the file."""
        return iter(self._by_symbol.values())

    def get(self, symbol: str) -> Unit:
        """Return the unit of this symbol. Raises UnitError when there is none."""
        try:
            return self._by_symbol[symbol]
        except KeyError:
            raise UnitError(f"there is no unit '{symbol}'") from None

    def find(self, words: Sequence[str]) -> Unit | None:
        """Return the unit that these words begin with, longest name first."""
        found = self.match(words, 0, glued=True)
        return found[0] if found else None

    def match(self, words: Sequence[str], start: int, glued: bool = False) -> tuple[Unit, int] | None:
        """Return the unit named at words[start:] and the index after its name, longest name first.

        glued: whether the first word was written against its number, which lets names such as "in" count.
        """
        if start >= len(words):
            return None
        for name in self._by_first_word.get(words[start], ()):
            end = start + len(name.words)
            if (glued or not name.glued) and tuple(words[start:end]) == name.words:
                return name.unit, end
        return None

    def to_si(self, value: float, symbol: str) -> float:
        """Return a value of this unit in the SI base unit of its dimension."""
        unit = self.get(symbol)
        return (value + unit.offset) * unit.numerator / unit.denominator

    def from_si(self, value: float, symbol: str) -> float:
        """Return an SI value in this unit."""
        unit = self.get(symbol)
        return value * unit.denominator / unit.numerator - unit.offset

    def convert(self, value: float, source: str, target: str) -> float:
        """Return a value of one unit in another. Raises UnitError when the dimensions differ."""
        a, b = self.get(source), self.get(target)
        if a.dimension != b.dimension:
            kinds = f"one measures {_words(a.dimension)}, the other {_words(b.dimension)}"
            raise UnitError(f"'{source}' does not convert to '{target}': {kinds}")
        if a is b:
            return value
        ratio_above, ratio_below = a.numerator * b.denominator, a.denominator * b.numerator
        result = (value + a.offset) * ratio_above / ratio_below - b.offset
        # Subtracting an offset leaves float dust: 212 degF would be 100.00000000000006 degC.
        return round(result, 9) if a.offset or b.offset else result

    def _add(self, unit: Unit) -> None:
        if unit.symbol in self._by_symbol:
            raise UnitError(f"unit '{unit.symbol}' is given twice")
        self._by_symbol[unit.symbol] = unit
        for names, glued in ((unit.names, False), (unit.glued, True)):
            for words in names:
                self._add_name(_Name(words, unit, glued))

    def _add_name(self, name: _Name) -> None:
        known = self._by_first_word.setdefault(name.words[0], [])
        for other in known:
            if other.words == name.words:
                both = f"'{other.unit.symbol}' and '{name.unit.symbol}'"
                raise UnitError(f"'{' '.join(name.words)}' names {both}")
        known.append(name)


def _read_unit(entry: Mapping[str, Any]) -> Unit:
    """Return the unit of one entry. Raises UnitError naming the symbol and what is wrong with it."""
    symbol = str(entry.get("symbol", "?"))
    try:
        numerator, denominator = _quotient(str(entry["factor"]))
        one, many = (str(text) for text in entry["say"])
        return Unit(
            symbol, str(entry["dimension"]), numerator / denominator, float(entry.get("offset", 0)),
            _names(entry["names"]), _names(entry.get("glued", ())), one, many, str(entry["show"]),
            numerator, denominator,
        )
    except KeyError as missing:
        raise UnitError(f"unit '{symbol}': {missing} is missing") from None
    except (TypeError, ValueError, ZeroDivisionError) as problem:
        raise UnitError(f"unit '{symbol}': {problem}") from None


def _quotient(text: str) -> tuple[float, float]:
    """Return numerator and denominator of "1852/3600", "0.3048*4.4" or "60"."""
    above, _, below = text.partition("/")
    return _product(above), _product(below or "1")


def _product(text: str) -> float:
    result = 1.0
    for part in text.split("*"):
        result *= float(part)
    return result


def _names(names: Sequence[str]) -> tuple[tuple[str, ...], ...]:
    """Return names cut into words as questions are; a name that is no word at all is an error."""
    cut = tuple(_cut(str(name)) for name in names)
    if () in cut:
        raise ValueError("a name has no letters")
    return cut


def _cut(name: str) -> tuple[str, ...]:
    """Return the words of a name; plain words, nearly all of them, skip the tokenizer to start faster."""
    words = name.lower().split()
    return tuple(words) if name.isascii() and "".join(words).isalpha() else words_of(name)


def _words(dimension: str) -> str:
    return dimension.replace("_", " ")
