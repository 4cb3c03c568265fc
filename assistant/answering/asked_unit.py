"""Say a figure in the unit that a question asks for, beside the document's own: "the tyre limit in mph"."""

from __future__ import annotations

from assistant.answering.parts import Parts, rounded
from assistant.quantities.amounts import read_amounts
from assistant.quantities.show import exact_shown
from assistant.quantities.tokens import tokenize
from assistant.quantities.units import Unit
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge, Question

_ASKING = frozenset(("in", "into", "as", "many", "which", "what"))
_SHORT = 6
"""In a question of a few words a unit at the end asks for it; in a sentence it may be any word."""
_ROUNDED = 0.01
"""Share by which a figure that is given in two units may differ, being rounded in one."""
_COARSE = 100
"""Size from which display may round to tens."""
_FIGURES = (r.LimitResult, r.FactResult, r.ScheduleResult, r.ModelResult)


def in_asked_unit(parts: Parts, result: r.Result, question: Question, know: Knowledge) -> Parts:
    """Return the parts with the first figure converted, where the question names another unit for it."""
    if not isinstance(result, _FIGURES) or not parts.values:
        return parts
    name, value, symbol = parts.values[0]
    unit = _asked(question, know.units.get(symbol), know)
    if unit is None and isinstance(result, r.ModelResult):
        unit = _given(question, know.units.get(symbol), know)
    if unit is None or value != value:
        return parts
    stated = _stated(parts, unit, know)
    if stated is not None:  # the figure stands in the text already
        return parts._replace(values=((name, stated, unit.symbol), *parts.values))
    converted = know.units.convert(value, symbol, unit.symbol)
    said = rounded(converted, unit.symbol, know)
    if not isinstance(result, r.ModelResult) and abs(converted) >= _COARSE:
        said = exact_shown(round(converted), unit.symbol, know.units)  # a figure of a document is no estimate
    working = f"{value:g} {symbol} = {converted:.6g} {unit.symbol}"
    return parts._replace(
        text=f"{said}. {parts.text}",
        values=((name, converted, unit.symbol), *parts.values),
        working="; ".join(w for w in (parts.working, working) if w),
    )


def _asked(question: Question, own: Unit, know: Knowledge) -> Unit | None:
    """Return a unit of the same kind that stands alone in the question, after a word that asks for it or at its end."""
    words, wanted = question.reading.words, question.reading.unit
    if wanted and wanted.symbol != own.symbol and know.units.get(wanted.symbol).dimension == own.dimension:
        return know.units.get(wanted.symbol)
    inside = {k for a in question.reading.amounts for k in range(a.start, a.end)}
    for i, before in enumerate(("", *words[:-1])):
        found = None if i in inside else know.units.match(words, i, glued=before in _ASKING)
        if found is None:
            continue
        unit, end = found
        last = end == len(words) <= _SHORT
        if unit.symbol != own.symbol and unit.dimension == own.dimension and (before in _ASKING or last):
            return unit
    return None


def _given(question: Question, own: Unit, know: Knowledge) -> Unit | None:
    """Return the one unit in which a question gives amounts of the kind that is its answer: feet in, feet out."""
    units = {a.unit for a in question.reading.amounts if a.unit and know.units.get(a.unit).dimension == own.dimension}
    return know.units.get(units.pop()) if len(units) == 1 and own.symbol not in units else None


def _stated(parts: Parts, unit: Unit, know: Knowledge) -> float | None:
    """Return the first figure as the text itself gives it in another unit, or None."""
    _, value, symbol = parts.values[0]
    for amount in read_amounts(tokenize(parts.text), know.units):
        if amount.unit == unit.symbol and abs(know.units.convert(amount.value, unit.symbol, symbol) - value) <= (
            _ROUNDED * abs(value)
        ):
            return amount.value
    return None
