"""An amount held against the figure that a step of a procedure gives: "stay at 255 kt or less", "is 250 all right?"."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.knowledge.records import Bands, Limit, Procedure, Value
from assistant.quantities.amounts import Amount
from assistant.resolving import limits as limit_rules
from assistant.resolving.amounts_for import fits
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import BandResult, CheckResult
from assistant.understanding.clauses import asking, asks_whether

_TIMES = 2.5
"""How many times larger or smaller than the figure of a step a bare number may be that is held against it."""


def asked_of_a_step(procedure: Procedure, question: Question, know: Knowledge) -> BandResult | CheckResult | None:
    """Return the verdict on the one amount of which it is asked whether it will do, in the case that a procedure is
    for: "the lever is stuck and the gear stays down: is 250 knots all right?". None where no step gives such a figure,
    or several do.
    """
    reading = question.reading
    if len(reading.amounts) != 1 or not reading.has("can") or not asks_whether(reading.words):
        return None
    amount = reading.amounts[0]
    if amount.unit is None or amount.start not in asking(reading.words):
        return None
    steps = range(len(procedure.steps))
    fitting = [i for i in steps if any(is_like(amount, f, know) for f in figures_in(procedure.steps[i].do, know))]
    return judged_by_step(procedure, fitting[0], amount, question, know) if len(fitting) == 1 else None


def figures_in(text: str, knowledge: Knowledge) -> list[Amount]:
    """Return the amounts with a unit that a text gives."""
    return [amount for amount in knowledge.phrase(text).amounts if amount.unit]


def is_like(amount: Amount, figure: Amount, knowledge: Knowledge) -> bool:
    """Return whether an amount may be held against a figure: by its unit, or by its size without one."""
    given = fits(amount, figure.unit or "", knowledge.units)
    if given is None:
        return False
    return amount.unit is not None or figure.value / _TIMES <= given <= figure.value * _TIMES


def judged_by_step(
    procedure: Procedure, step: int, amount: Amount, question: Question, knowledge: Knowledge
) -> BandResult | CheckResult | None:
    """Return what is loaded of the figure of a step, with an amount held against it."""
    for figure in figures_in(procedure.steps[step].do, knowledge):
        if not is_like(amount, figure, knowledge):
            continue
        unit = figure.unit or ""
        given = amount if amount.unit else amount._replace(unit=unit)
        for record in _records_of(Value(figure.value, unit), procedure, step, knowledge):
            if isinstance(record, Bands):
                judged = limit_rules.judge(record, question, knowledge, (given,))
                if judged:
                    return judged
            elif found := limit_rules.check(record, given, question, knowledge):
                return CheckResult((found,))
    return None


def _records_of(figure: Value, procedure: Procedure, step: int, knowledge: Knowledge) -> Iterator[Bands | Limit]:
    """Yield the bands and limits that hold a figure of a step, those of the procedure's paragraph first."""
    own = set(procedure.sources)
    limits = [knowledge.base.records[name] for name in knowledge.base.ids("limits")]
    bands = (knowledge.base.records[name] for name in knowledge.base.ids("bands"))
    yield from (b for b in bands if own & set(b.sources) and any(_same(figure, r.value, r.unit) for r in b.rules))
    holding = [limit for limit in limits if holds(limit, figure)]
    yield from (limit for limit in holding if own & set(limit.sources))
    done = knowledge.phrase(procedure.steps[step].do).concepts
    others = [limit for limit in holding if limit.maximum and not limit.when and not own & set(limit.sources)]
    others.sort(key=lambda limit: -len(done & knowledge.phrase(limit.of).concepts))
    yield from (limit for limit in others if done & knowledge.phrase(limit.of).named)


def holds(limit: Limit, figure: Value) -> bool:
    """Return whether a limit has a figure for its bound."""
    bound = limit_rules.bound_value(limit)
    return bound is not None and _same(figure, bound.value, bound.unit)


def _same(figure: Value, value: float, unit: str) -> bool:
    return figure.value == value and unit in ("", figure.unit)
