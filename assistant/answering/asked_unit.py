"""Say a figure in the unit that a question asks for, beside the document's own: "the tyre limit in mph"."""

from __future__ import annotations

from assistant.answering.parts import Parts, rounded
from assistant.quantities.units import Unit
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge, Question

_ASKING = frozenset(("in", "into", "as", "many", "which", "what"))
_SHORT = 6
"""In a question of a few words a unit at the end asks for it; in a sentence it may be any word."""
_FIGURES = (r.LimitResult, r.FactResult, r.ScheduleResult, r.ModelResult)


def in_asked_unit(parts: Parts, result: r.Result, question: Question, know: Knowledge) -> Parts:
    """Return the parts with the first figure converted, where the question names another unit for it."""
    if not isinstance(result, _FIGURES) or not parts.values:
        return parts
    name, value, symbol = parts.values[0]
    unit = _asked(question, know.units.get(symbol), know)
    if unit is None or value != value:
        return parts
    converted = know.units.convert(value, symbol, unit.symbol)
    said = rounded(converted, unit.symbol, know)
    working = f"{value:g} {symbol} = {converted:.6g} {unit.symbol}"
    return parts._replace(
        text=f"{said}. {parts.text}",
        values=((name, converted, unit.symbol), *parts.values),
        working="; ".join(w for w in (parts.working, working) if w),
    )


def _asked(question: Question, own: Unit, know: Knowledge) -> Unit | None:
    """Return a unit of the same kind that stands alone in the question, after a word that asks for it or at its end."""
    words = question.reading.words
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
