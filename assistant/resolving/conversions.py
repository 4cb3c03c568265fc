"""Unit conversions: an amount, and a unit named with it that measures the same thing."""

from __future__ import annotations

from assistant.quantities.units import UnitError
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Conversion

_ASKING = frozenset(("in", "to", "into", "as", "convert", "many", "equal", "equals", "equivalent", "=", "is", "what"))

_DIFFERENCE = frozenset(("difference", "differ", "apart", "rise", "hotter", "cooler", "warmer", "colder", "change"))


def conversion(question: Question, know: Knowledge) -> Conversion | None:
    """Return the conversion a question asks for, if it asks for one and for nothing else."""
    reading = question.reading
    if len(reading.amounts) != 1 or reading.amounts[0].unit is None:
        return None
    amount = reading.amounts[0]
    unit = amount.unit
    words = reading.words
    target = _target(words, amount.start, amount.end, unit, know)
    if target is None or unit is None:
        return None
    symbol, place = target
    if any(not _harmless(m.concepts, know) for m in reading.mentions if not m.weak and place not in m.taken):
        return None
    try:
        result = know.units.convert(amount.value, unit, symbol)
        differing = bool(_DIFFERENCE.intersection(words)) and know.units.get(unit).dimension == "temperature"
        if differing:
            result -= know.units.convert(0.0, unit, symbol)  # a scale's zero point plays no part in a difference
    except UnitError:
        return None
    return Conversion(amount.value, unit, result, symbol, differing)


def _target(words: tuple[str, ...], start: int, end: int, unit: str | None, know: Knowledge) -> tuple[str, int] | None:
    for i in range(len(words)):
        if start <= i < end:
            continue
        found = know.units.match(words, i)
        if found is None or found[0].symbol == unit or unit is None:
            continue
        if know.units.get(unit).dimension != found[0].dimension:
            continue
        before = words[i - 1] if i else ""
        if before in _ASKING or (i and words[i - 1] == "many") or i == len(words) - 1 or i == 0:
            return found[0].symbol, i
    return None


def _harmless(concepts: frozenset[str], know: Knowledge) -> bool:
    """Quantities and question words go with a conversion; any thing makes it another question."""
    return all(
        know.lexicon.kinds.get(c) in ("quantity", "ask", "ask!", "filler") or c == "convert" or c.startswith("@")
        for c in concepts
    ) or not concepts.isdisjoint(("convert", "mach"))
