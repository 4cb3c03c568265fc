"""Composers for schedules, planning models and conversions: the number first, then how it came about."""

from __future__ import annotations

from itertools import pairwise
from math import isinf, isnan

from assistant.answering.figures import is_counted
from assistant.answering.parts import Parts, as_given, joined, rounded, stop, upper
from assistant.answering.verdicts import apart, difference, number, setting, verdict
from assistant.knowledge.records import Limit, Schedule, Source
from assistant.quantities.show import exact_shown, given_shown
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge, Question

_LINKING = frozenset({"with", "without", "for", "to", "at", "by", "in", "of", "from", "on", "as"})
"""Words that tie a case to the number before it; else a comma does."""
_CAUTIONS = ("Planning model for training, not a performance computation.",)
_EXACT = (Source("NIST811", "appendix B.8"),)
"""Where the factors of conversions stand, if the document is loaded."""


def schedule(result: r.ScheduleResult, question: Question, know: Knowledge) -> Parts:
    """A schedule's value at an input, the inputs for a value, or the whole schedule."""
    record = result.schedule
    if isnan(result.given):
        return Parts(_whole(record, know), record.sources, record.id, _points(record), _points_words(record, know))
    if result.value is None:
        return _inverse(result, know)
    given = as_given(result.given, record.input_unit, question, know)
    value = rounded(result.value, record.output_unit, know)
    text = (
        f"{value} either way at {given}: {record.of}."
        if record.output == "angle"
        else f"{value} at {given}: {record.of}."
    )
    if result.given >= record.points[-1][0] and record.above:
        text += f" At and above {rounded(record.points[-1][0], record.input_unit, know)}: {stop(record.above)}"
    if result.against is not None:
        text += apart(result.value, result.against, record.output_unit, know)
    for variant, other in result.other:
        text += f" On the {know.base.variants[variant].show}: {rounded(other, record.output_unit, know)}."
    values = (
        (record.output, result.value, record.output_unit),
        (record.input, result.given, record.input_unit),
    )
    return Parts(text, record.sources, record.id, values, _points_words(record, know))


def _inverse(result: r.ScheduleResult, know: Knowledge) -> Parts:
    record = result.schedule
    output = rounded(result.given, record.output_unit, know)
    if not result.found:
        most = max(y for _, y in record.points)
        text = f"Never: {record.of} is at most {rounded(most, record.output_unit, know)}, and {output} is more."
        return Parts(
            text,
            record.sources,
            record.id,
            (("maximum", most, record.output_unit),),
            _points_words(record, know),
        )
    words, values = [], []
    for low, high in result.found:
        if isinf(high):
            words.append(f"from {rounded(low, record.input_unit, know)} up")
            values.append((record.input, low, record.input_unit))
        elif high - low < 1e-9:
            words.append(f"at {rounded(low, record.input_unit, know)}")
            values.append((record.input, low, record.input_unit))
        else:
            words.append(
                f"up to {rounded(high, record.input_unit, know)}"
                if low <= record.points[0][0]
                else f"from {rounded(low, record.input_unit, know)} to {rounded(high, record.input_unit, know)}"
            )
            values += [(record.input, high, record.input_unit), (record.input, low, record.input_unit)]
    text = f"{upper(joined(words, 'or'))} ({record.basis or record.input}), {record.of} is {output}."
    return Parts(
        text,
        record.sources,
        record.id,
        (*values, (record.output, result.given, record.output_unit)),
        _points_words(record, know),
    )


def _whole(record: Schedule, know: Knowledge) -> str:
    pieces = []
    points = record.points
    for (x0, y0), (x1, y1) in pairwise(points):
        unit_in, unit_out = record.input_unit, record.output_unit
        if y0 == y1:
            pieces.append(f"{exact_shown(y0, unit_out, know.units)} up to {exact_shown(x1, unit_in, know.units)}")
        elif not pieces and x0 > 0:
            pieces.append(f"{exact_shown(y0, unit_out, know.units)} at {exact_shown(x0, unit_in, know.units)}")
        if y0 != y1:
            pieces.append(
                f"then straight to {exact_shown(y1, unit_out, know.units)} at {exact_shown(x1, unit_in, know.units)}"
            )
    above = f"; above, {record.above}" if record.above else ""
    return f"{upper(', '.join(pieces))}{above}: {record.of} by {record.basis or record.input}."


def _points(record: Schedule) -> tuple[tuple[str, float, str], ...]:
    return tuple((record.output, y, record.output_unit) for _, y in record.points)


def _points_words(record: Schedule, know: Knowledge) -> str:
    words = [
        f"{exact_shown(y, record.output_unit, know.units)} at {exact_shown(x, record.input_unit, know.units)}"
        for x, y in record.points
        if x > 0
    ]
    return ", straight to ".join(words)


def model(result: r.ModelResult, question: Question, know: Knowledge) -> Parts:
    """The number of a planning model, once for each alternative left open, with its working."""
    record = result.model
    if not result.values:
        return Parts(f"No answer exists for {record.of}: {stop(result.note)}", result.sources, record.id)
    if result.solved and result.against is not None:
        return _by_setting(result, know)
    name = f"{_solved(result)} for {_target(result, know)}" if result.solved else record.of
    numbers = [_number(v, result.against, know) for v in result.values]
    text = f"{verdict(result, question, know)}{upper(joined(numbers, 'or'))}: {name}."
    first = result.values[0]
    counted = name.removeprefix("how many ")
    if result.solved and first.unit == "count" and is_counted(counted):
        text = f"{upper(joined(numbers, 'or'))} {counted}."
    apart_by = difference(result, question)
    if apart_by is not None:
        text = f"{rounded(apart_by, first.unit, know)} between the two. {text}"
    text += _compared(result, know) + _held(result, know) + _over(result, know)
    aloud = []
    if first.extra:
        listed = "; ".join(f"{label} {rounded(value, unit, know)}" for label, value, unit in first.extra)
        text += f" {upper(listed)}."
        if any("√" in label for label, _, _ in first.extra):
            aloud.append((f" {upper(listed)}.", ""))  # formulas are for the eye
    if result.assumed:
        text += f" Assumed: {'; '.join(a.rstrip('.') for a in result.assumed)}."
    if result.note and len(result.values) == 1:
        text += f" {upper(stop(result.note))}"
    values = [(v.quantity, v.value, v.unit) for v in result.values]
    if apart_by is not None:
        values.insert(0, (first.quantity, apart_by, first.unit))
    values += [(label, value, unit) for v in result.values for label, value, unit in v.extra]
    working = " / ".join(dict.fromkeys(v.working for v in result.values))
    return Parts(text, result.sources, record.id, tuple(values), working, _CAUTIONS, aloud=tuple(aloud))


def _by_setting(result: r.ModelResult, know: Knowledge) -> Parts:
    """The setting that gives a result, with what every setting gives."""
    record, first = result.model, result.picked or 0
    values = (*result.values[first:], *result.values[:first])
    text = setting(result, know)
    if result.assumed:
        text += f" Assumed: {'; '.join(a.rstrip('.') for a in result.assumed)}."
    working = " / ".join(dict.fromkeys(v.working for v in values))
    told = tuple((v.quantity, v.value, v.unit) for v in values)
    return Parts(text, result.sources, record.id, told, working, _CAUTIONS)


def _target(result: r.ModelResult, know: Knowledge) -> str:
    """Return what an input was solved for: the result given, or the limit that it is held to."""
    if result.to:
        return f"{_bound(result.to, know)}, {result.to.of}"
    solved = _solved(result)
    return f"that {result.model.of.removesuffix(f' of a {solved}').removesuffix(f' of an {solved}')}"


def _compared(result: r.ModelResult, know: Knowledge) -> str:
    """Return how a result stands to the one that the question gives: "That is 92 m less than 1,200 m." """
    if result.against is None:
        return ""
    pieces = [apart(value.value, result.against, value.unit, know) for value in result.values]
    return "".join(dict.fromkeys(pieces))


def _held(result: r.ModelResult, know: Knowledge) -> str:
    """Return how a result stands to its limit, and what follows beyond it: "That is within LIM 3.1, 195 kt." """
    figure = result.limit.maximum if result.limit else None
    if result.limit is None or figure is None or len(result.values) != 1 or result.values[0].unit != figure.unit:
        return ""
    if result.values[0].value <= figure.value:
        return f" That is within {_bound(result.limit, know)}."
    after = f" {stop(result.limit.exceeded)}" if result.limit.exceeded else ""
    return f" That is outside {_bound(result.limit, know)}.{after}"


def _over(result: r.ModelResult, know: Knowledge) -> str:
    """Return which amounts given are beyond what is allowed: "75° is outside LIM 3.2, 68°." """
    return "".join(
        f" {given_shown(value, limit.maximum.unit, know.units)} is outside {_bound(limit, know)}."
        for limit, value in result.over
        if limit.maximum
    )


def _bound(limit: Limit, know: Knowledge) -> str:
    figure, source = limit.maximum, limit.sources[0]
    shown = exact_shown(figure.value, figure.unit, know.units) if figure else ""
    return f"{source.document} {source.paragraph}, {shown}"


def _solved(result: r.ModelResult) -> str:
    """Return what an input that was solved for is called."""
    asks = {i.id: i.ask.removeprefix("the ") for i in result.model.inputs}
    name = asks.get(result.solved) or result.solved.replace("_", " ")
    return f"{name.removesuffix(' now')} at first" if name.endswith(" now") else name


def _number(value: r.ModelValue, against: float | None, know: Knowledge) -> str:
    text = number(value.value, value.unit, against, know)
    if not value.under:
        return text
    return f"{text} {value.under}" if value.under.split()[0] in _LINKING else f"{text}, {value.under}"


def conversion(result: r.Conversion, question: Question, know: Knowledge) -> Parts:
    """An amount in another unit, to six significant figures; four are said."""
    left = ("a difference of " if result.difference else "") + exact_shown(result.value, result.unit, know.units)
    shown = _figures(result.result, 6, result.target, know)
    text = upper(f"{left} is {shown}.")
    heard = _figures(result.result, 4, result.target, know)
    aloud = ((text, text if heard == shown else upper(f"{left} is about {heard}.")),)
    values = (("converted", result.result, result.target), ("given", result.value, result.unit))
    sources = tuple(source for source in _EXACT if source.document in know.base.documents)
    working = f"{left} = {shown}, factors exact by definition (NIST SP 811)"
    return Parts(text, sources, "conversion", values, working, aloud=aloud)


def _figures(value: float, figures: int, unit: str, know: Knowledge) -> str:
    return exact_shown(float(f"{value:.{figures}g}"), unit, know.units)
