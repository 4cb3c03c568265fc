"""Unit conversions: an amount, and a unit named with it that measures the same thing."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.frozen import NamedTuple
from assistant.quantities.units import UnitError
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Conversion
from assistant.understanding.mentions import Mention

_ASKING = frozenset(("in", "to", "into", "as", "convert", "many", "equal", "equals", "equivalent", "=", "is", "what"))

_ONE = frozenset(("a", "an", "one", "the", "per"))
_FROM = frozenset(("convert", "converting", "from", "of", "turn"))
_BECOMING = (["to"], ["into"], ["in"], ["versus"], ["vs"], ["and"])
_CONVERT = frozenset(("convert", "converting"))
_ARTICLES = frozenset(("the", "our", "my", "that", "this", "a"))
_PAUSE = ((":",), (",",), (";",))
_DIFFERENCE = frozenset(("difference", "differ", "apart", "rise", "hotter", "cooler", "warmer", "colder", "change"))


class _From(NamedTuple):
    """What is converted: its value and unit, and the words that tell it."""

    value: float
    unit: str
    start: int
    end: int


def conversion(question: Question, know: Knowledge) -> Conversion | None:
    """Return the conversion a question asks for, if it asks for one and for nothing else."""
    reading = question.reading
    words = reading.words
    given = _given(question, know)
    target = _target(words, given.start, given.end, given.unit, know) if given else None
    if given is None or target is None:
        return None
    symbol, place = target
    told = {place, *range(given.start, given.end)}
    others = [m for m in reading.mentions if not m.weak and told.isdisjoint(m.taken) and not _harmless(m, know)]
    if others and not _converts_it(given, others, words):
        return None
    unit = given.unit
    try:
        result = know.units.convert(given.value, unit, symbol)
        differing = bool(_DIFFERENCE.intersection(words)) and know.units.get(unit).dimension == "temperature"
        if differing:
            result -= know.units.convert(0.0, unit, symbol)  # a scale's zero point plays no part in a difference
    except UnitError:
        return None
    return Conversion(given.value, unit, result, symbol, differing)


def _converts_it(given: _From, others: Sequence[Mention], words: Sequence[str]) -> bool:
    """Return whether an amount is to be converted, and what is named besides says of what it is: "convert the 195 knot
    | tyre limit | to mph".
    """
    ordered = bool(given.start) and _CONVERT.issuperset([w for w in words[: given.start] if w not in _ARTICLES][-1:])
    return ordered and all(m.start >= given.end and not m.is_outside for m in others)


def _given(question: Question, know: Knowledge) -> _From | None:
    """Return the one amount of a question, or the unit of which one is meant."""
    amounts = question.reading.amounts
    if len(amounts) == 1 and amounts[0].unit is not None:
        return _From(amounts[0].value, amounts[0].unit, amounts[0].start, amounts[0].end)
    return None if amounts else _one_of(question.reading.words, know)


def _one_of(words: tuple[str, ...], know: Knowledge) -> _From | None:
    """Return the unit of which one is converted where just two are named and no amount: "litres in a gallon", "psi to
    bar". Temperatures are not told by one degree.
    """
    named: list[tuple[str, int, int]] = []
    i = 0
    while i < len(words):
        found = know.units.match(words, i)
        if found is None:
            i += 1
        else:
            named.append((found[0].symbol, i, found[1]))
            i = found[1]
    if len(named) != 2 or know.units.get(named[0][0]).dimension == "temperature":
        return None
    single = [each for each in named if words[max(0, each[1] - 1) : each[1]] and words[each[1] - 1] in _ONE]
    begins = named[0][1] == 0 or words[named[0][1] - 1] in _FROM
    if not single and begins and list(words[named[0][2] : named[1][1]]) in _BECOMING:
        single = named[:1]
    return _From(1.0, *single[0]) if len(single) == 1 else None


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
        ends = i == len(words) - 1 or words[found[1] : found[1] + 1] in _PAUSE
        if before in _ASKING or (i and words[i - 1] == "many") or ends or i == 0:
            return found[0].symbol, i
    return None


def _harmless(mention: Mention, know: Knowledge) -> bool:
    """Quantities, question words and chatter go with a conversion; any thing makes it another question."""
    concepts = mention.concepts
    return (mention.passing and mention.is_plain) or all(
        know.lexicon.kinds.get(c) in ("quantity", "ask", "ask!", "filler") or c == "convert" or c.startswith("@")
        for c in concepts
    ) or not concepts.isdisjoint(("convert", "mach"))
