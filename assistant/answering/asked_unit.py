"""Say a figure in the unit that a question asks for, beside the document's own: "the tyre limit in mph"."""

from __future__ import annotations

from assistant.answering.parts import Parts, rounded
from assistant.quantities.show import exact_shown
from assistant.quantities.units import Unit
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge, Question

_ASKING = frozenset(("in", "into", "as", "many", "which", "what"))
_SHORT = 6
"""In a question of a few words a unit at the end asks for it; in a sentence it may be any word."""
_ROUNDED = 0.01
"""Share by which a figure that is given in two units may differ, being rounded in one."""
_PAIR = 2
"""Figures of a statement that are all said in another unit; of more, the first alone."""
_COARSE = 100
"""Size from which display may round to tens."""
_SMALL = 10
"""Size below which whole numbers are too coarse for a figure of a document: a knot is 1.15 mph."""
_ITSELF = 1e-6
"""What a unit may differ from one of itself: "a foot is 0.3048 m" tells nothing in feet."""
_VERDICTS = (r.CheckResult, r.BandResult)
_FIGURES = (r.LimitResult, r.FactResult, r.ScheduleResult, r.ModelResult)


def in_asked_unit(parts: Parts, result: r.Result, question: Question, know: Knowledge) -> Parts:
    """Return the parts with the first figure converted, where the question names another unit for it."""
    if isinstance(result, _VERDICTS):
        return _with_the_reading(parts, question, know)
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
    stated_ones = [(name, value) for name, value, own in parts.values if own == symbol] if _tells_all(result) else []
    figures = [(n, v, know.units.convert(v, symbol, unit.symbol)) for n, v in stated_ones or [(name, value)]]
    if isinstance(result, r.FactResult) and abs(figures[0][2] - 1) < _ITSELF:
        return parts
    said = " and ".join(_said(c, unit.symbol, isinstance(result, r.ModelResult), know) for _, _, c in figures)
    working = "; ".join(f"{v:g} {symbol} = {c:.6g} {unit.symbol}" for _, v, c in figures)
    return parts._replace(
        text=f"{said}. {parts.text}",
        values=(*((n, c, unit.symbol) for n, _, c in figures), *parts.values),
        working="; ".join(w for w in (parts.working, working) if w),
    )


def _with_the_reading(parts: Parts, question: Question, know: Knowledge) -> Parts:
    """Return a verdict with the reading said in another unit before it, where it is wanted in that: "140 in bar"."""
    unit, amounts = question.reading.unit, question.reading.amounts
    if unit is None or not unit.outright or len(amounts) != 1 or amounts[0].end + 1 != unit.start:
        return parts
    judged = [(n, v, own) for n, v, own in parts.values if v == amounts[0].value and own != unit.symbol]
    alike = [each for each in judged if know.units.get(each[2]).dimension == know.units.get(unit.symbol).dimension]
    if not alike:
        return parts
    name, value, own = alike[0]
    converted = know.units.convert(value, own, unit.symbol)
    said = f"{exact_shown(value, own, know.units)} is {_said(converted, unit.symbol, False, know)}."
    return parts._replace(text=f"{said} {parts.text}", values=((name, converted, unit.symbol), *parts.values))


def _tells_all(result: r.Result) -> bool:
    """Return whether several figures are told of equal standing: two limits, or a statement of two."""
    if isinstance(result, r.LimitResult):
        return len(result.limits) > 1 and all(x.second is None for x in result.limits)
    return isinstance(result, r.FactResult) and len(result.fact.values) == _PAIR


def _said(value: float, unit: str, estimated: bool, know: Knowledge) -> str:
    """Return a converted figure as it is shown; one of a document is no estimate."""
    if not estimated and abs(value) >= _COARSE:
        return exact_shown(round(value), unit, know.units)
    if not estimated and abs(value) < _SMALL:
        return exact_shown(float(f"{value:.3g}"), unit, know.units)
    return rounded(value, unit, know)


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
        if _names_a_thing(i, end, question):
            continue
        last = end == len(words) <= _SHORT
        if unit.symbol != own.symbol and unit.dimension == own.dimension and (before in _ASKING or last):
            return unit
    return None


def _names_a_thing(start: int, end: int, question: Question) -> bool:
    """Return whether a word for a unit rather says whose quantity is asked for: "what | bar | pressure"."""
    at_once = (m for m in question.reading.mentions if m.start == end)
    things = (m for m in question.reading.mentions if m.start == start and len(m.concepts) > 1)
    return any(things) and any(not m.concepts.isdisjoint(question.reading.asked) for m in at_once)


def _given(question: Question, own: Unit, know: Knowledge) -> Unit | None:
    """Return the one unit in which a question gives amounts of the kind that is its answer: feet in, feet out."""
    units = {a.unit for a in question.reading.amounts if a.unit and know.units.get(a.unit).dimension == own.dimension}
    return know.units.get(units.pop()) if len(units) == 1 and own.symbol not in units else None


def _stated(parts: Parts, unit: Unit, know: Knowledge) -> float | None:
    """Return the first figure as the text itself gives it in another unit, or None."""
    _, value, symbol = parts.values[0]
    for amount in know.amounts(parts.text):
        if amount.unit == unit.symbol and abs(know.units.convert(amount.value, unit.symbol, symbol) - value) <= (
            _ROUNDED * abs(value)
        ):
            return amount.value
    return None
